package dev.vibra.survey;

import dev.vibra.descriptor.DominantLine;
import dev.vibra.symptom.Evidence;
import dev.vibra.diagnosis.Finding;
import dev.vibra.diagnosis.Rank;
import dev.vibra.internal.Digits;
import dev.vibra.point.ChangeSurvey;
import dev.vibra.point.Impulsiveness;
import dev.vibra.point.Omission;
import dev.vibra.point.PartCriterion;
import dev.vibra.point.PointSurvey;
import dev.vibra.point.SpeedFound;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.Measurement;
import dev.vibra.severity.Verdict;
import dev.vibra.severity.Zone;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/** Weighs what is known of all points into one condition. */
final class ConditionWeighing {
    private static final double LEAST_PLAUSIBLE = 0.007;

    private final Evidence evidence;
    private final List<PartCriterion> criteria;
    private final List<PointSurvey> points;
    private final List<Finding> findings;
    private final List<Reason> reasons = new ArrayList<>();

    private record Reason(Rank rank, String text) {}

    private ConditionWeighing(Evidence evidence, List<PartCriterion> criteria, List<Finding> findings) {
        this.evidence = evidence;
        this.criteria = criteria;
        this.points = evidence.points();
        this.findings = findings;
    }

    static Condition of(Evidence evidence, List<PartCriterion> criteria, List<Finding> findings) {
        return new ConditionWeighing(evidence, criteria, findings).condition();
    }

    private Condition condition() {
        weighVerdicts();
        weighChanges();
        findings.forEach(finding -> add(finding.urgency(), finding.fault() + " at "
                + String.join(", ", finding.points())));
        weighRecordings();
        reasons.sort(Comparator.comparing(Reason::rank).reversed());
        Rank rank = reasons.stream().map(Reason::rank).reduce(Rank.NO_OBJECTION, Rank::orWorse);
        // Beside what asks for a remedy, good zones elsewhere are no reasons.
        List<String> because = reasons.stream().filter(reason -> rank.compareTo(Rank.PLAN_REMEDY) < 0
                || reason.rank() != Rank.NO_OBJECTION).map(Reason::text).toList();
        if (points.stream().allMatch(point -> point.severity().isEmpty())) {
            List<String> all = new ArrayList<>(List.of("no point has a verdict"));
            all.addAll(because);
            return Condition.notDetermined(all);
        }
        return Condition.of(rank, because, rank == Rank.NO_OBJECTION && points.stream().allMatch(this::isSound));
    }

    private void add(Rank rank, String text) {
        reasons.add(new Reason(rank, text));
    }

    /** One reason for the points of one rating, or one kind of doubt. */
    private void addGrouped(Rank rank, Predicate<PointSurvey> filter, Function<PointSurvey, String> text) {
        Map<String, List<String>> byText = new LinkedHashMap<>();
        points.stream().filter(filter).forEach(point -> byText.computeIfAbsent(text.apply(point),
                key -> new ArrayList<>()).add(point.point().id()));
        byText.forEach((words, ids) -> add(rank, words + " at " + String.join(", ", ids)));
    }

    private void weighVerdicts() {
        for (Rank rank : List.of(Rank.DECIDE_NOW, Rank.PLAN_REMEDY)) {
            addGrouped(rank, point -> rankOf(point) == rank, point -> ratingText(point.severity().orElseThrow()));
        }
        addGrouped(Rank.WATCH, point -> isOpen(point) && rankOf(point) == Rank.WATCH, point -> {
            Verdict verdict = point.severity().orElseThrow();
            return verdict.rating() + ", depending on " + String.join(", ", verdict.undecidedBy());
        });
        addGrouped(Rank.WATCH, point -> rankOf(point) == Rank.NO_OBJECTION && mayBeWorse(point),
                point -> "zone C within the uncertainty");
        addGrouped(Rank.WATCH, point -> point.severity().filter(verdict -> !verdict.notJudged().isEmpty()).isPresent(),
                point -> "not all limits could be judged");
        criteria.forEach(one -> one.choice().outOfScope().ifPresent(scope -> add(Rank.WATCH,
                "judged out of scope, as requested" + one.part().map(part -> " for " + part).orElse("") + ": "
                + scope.reason())));
        addGrouped(Rank.NO_OBJECTION, point -> point.severity().isPresent() && rankOf(point) == Rank.NO_OBJECTION,
                point -> ratingText(point.severity().orElseThrow()));
    }

    private static String ratingText(Verdict verdict) {
        return verdict.rating() + verdict.restsOnFlagged()
                .map(flag -> " (rests on limits that are not firm: " + flag + ")").orElse("");
    }

    private static boolean isOpen(PointSurvey point) {
        return point.severity().isPresent() && point.zone().isEmpty();
    }

    /** Where a missing fact leaves the zone open the best of them is sure, and something is to be cleared up. */
    private static Rank rankOf(PointSurvey point) {
        if (point.severity().isEmpty()) {
            return Rank.NO_OBJECTION;
        }
        Verdict verdict = point.severity().get();
        return verdict.zone().map(ConditionWeighing::rankOf)
                .orElseGet(() -> rankOf(verdict.zonesPossible().get(0)).orWorse(Rank.WATCH));
    }

    static Rank rankOf(Zone zone) {
        return switch (zone) {
            case A, B -> Rank.NO_OBJECTION;
            case C -> Rank.PLAN_REMEDY;
            case D -> Rank.DECIDE_NOW;
        };
    }

    private static boolean mayBeWorse(PointSurvey point) {
        return point.severity().filter(verdict -> verdict.judgements().stream()
                .flatMap(one -> one.zonesWithinUncertainty().stream())
                .anyMatch(zone -> zone.isWorseThan(Zone.B))).isPresent();
    }

    private void weighChanges() {
        addGrouped(Rank.WATCH, point -> point.changes().stream().anyMatch(ChangeSurvey::rose),
                point -> "a rise that matters");
        addGrouped(Rank.WATCH, point -> point.changes().stream().anyMatch(one -> one.change().isSignificant()
                && !one.rose()), point -> "a fall that matters");
    }

    private void weighRecordings() {
        addGrouped(Rank.WATCH, PointSurvey::refused, point -> point.recording().isEmpty() ? "no recording"
                : "not everything could be concluded from the recording");
        addGrouped(Rank.WATCH, PointSurvey::insisted, point -> "a verdict was insisted on, the recording is not sound");
        addGrouped(Rank.WATCH, PointSurvey::partlySteady,
                point -> "steady in a part of the recording only, which the numbers are taken from,");
        addGrouped(Rank.WATCH, point -> !point.refused() && point.severity().isEmpty(), point -> "no verdict");
        addGrouped(Rank.WATCH, ConditionWeighing::isKnocked, point -> "one single knock");
        addGrouped(Rank.WATCH, ConditionWeighing::isTooQuiet,
                point -> "a vibration smaller than running machines have: sensor, cable and scale are in doubt");
        addGrouped(Rank.NO_OBJECTION, this::knocksInHealth, point -> "knocks (kurtosis " + Digits.significant(
                point.impulsiveness().orElseThrow().kurtosis(), 3)
                + "), which gears and pistons make in health too: only a change tells,");
        if (standsStill(points)) {
            add(Rank.WATCH, "no line of the machine's own rates stands out at any point: " + strangeLine(points)
                    .map(line -> "the speed given may be wrong (" + line.level() + " at "
                            + Digits.significant(line.hertz(), 4) + " Hz), or ").orElse("")
                    + "it may not have been running");
        }
    }

    private boolean knocksInHealth(PointSurvey point) {
        return evidence.isImpulsiveInHealth(point)
                && point.impulsiveness().filter(Impulsiveness::isImpulsive).isPresent();
    }

    /** The largest line beside a speed that was given, of no known rate of the machine or the mains. */
    static Optional<DominantLine> strangeLine(List<PointSurvey> points) {
        return points.stream().filter(point -> point.speed().source() == SpeedFound.Source.GIVEN)
                .flatMap(point -> point.dominantLines().stream()).filter(line -> line.name().isEmpty())
                .max(Comparator.comparingDouble(line -> line.level().si()));
    }

    /**
     * Below a hundredth of the smoothest limit in use, 0.71 mm/s (ISO 10816-1:1995, class I); common practice, no
     * source.
     */
    private static boolean isTooQuiet(PointSurvey point) {
        return point.measurements().stream().map(Measurement::level)
                .anyMatch(level -> level.quantity() == Quantity.VELOCITY && level.in(Unit.MM_PER_S) < LEAST_PLAUSIBLE);
    }

    static boolean isKnocked(PointSurvey point) {
        return point.impulsiveness().filter(Impulsiveness::isSingleKnock).isPresent();
    }

    /** Only what the lines were looked for in can tell. */
    static boolean standsStill(List<PointSurvey> points) {
        List<PointSurvey> looked = points.stream().filter(point -> !point.description().numbers().isEmpty()).toList();
        return !looked.isEmpty() && looked.stream().noneMatch(PointSurvey::showsRotation);
    }

    private boolean isSound(PointSurvey point) {
        return point.sound() && !point.refused() && !point.insisted() && point.zone().isPresent()
                && point.omissions().stream().noneMatch(one -> one.subject() == Omission.Subject.BEARINGS
                || one.subject() == Omission.Subject.LIMIT);
    }
}
