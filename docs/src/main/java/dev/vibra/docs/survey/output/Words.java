package dev.vibra.docs.survey.output;

import dev.vibra.descriptor.DescriptorValue;
import dev.vibra.descriptor.Descriptors;
import dev.vibra.diagnosis.Decider;
import dev.vibra.diagnosis.Finding;
import dev.vibra.diagnosis.Rank;
import dev.vibra.diagnosis.Sign;
import dev.vibra.evidence.Confidence;
import dev.vibra.fault.FaultTable;
import dev.vibra.machine.MachineDescription;
import dev.vibra.point.Omission;
import dev.vibra.point.PartCriterion;
import dev.vibra.point.PointSurvey;
import dev.vibra.point.SpeedFound;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.CriterionSet;
import dev.vibra.severity.Judgement;
import dev.vibra.severity.Machine;
import dev.vibra.severity.Verdict;
import dev.vibra.severity.Zone;
import dev.vibra.survey.MachineSurvey;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Wording shared by the printed summary and the report. */
final class Words {
    /** Of each list of a finding so many lines fit into the summary. */
    private static final int MOST = 3;
    /** The level that severity standards speak of. */
    static final String VELOCITY = Descriptors.rms(Quantity.VELOCITY, Descriptors.USUAL_BAND).name();
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);
    private static final Set<SpeedFound.Source> FOUND = EnumSet.of(SpeedFound.Source.TACHOMETER,
            SpeedFound.Source.RECORDING);

    private final Phrases phrases;

    Words(Phrases phrases) {
        this.phrases = phrases;
    }

    /** Says what was surveyed, and when, as in {@code fan, 45 kW, rigid support; 1 measuring point}. */
    String machine(MachineSurvey survey) {
        List<String> words = new ArrayList<>(List.of(plates(survey)));
        survey.machine().measured().ifPresent(when -> words.add(phrases.say("machine.measured", time(when))));
        survey.machine().state().ifPresent(state -> words.add(phrases.say("machine.state", state)));
        return String.join("; ", words);
    }

    /** What the plates of the machine and its parts say, and how many points there are. */
    String plates(MachineSurvey survey) {
        MachineDescription machine = survey.machine();
        List<String> words = new ArrayList<>(List.of(plate(machine.machine())));
        machine.parts().forEach(part -> words.add(part.id() + ": " + Optional.of(plate(part.machine()))
                .filter(plate -> !plate.isEmpty()).orElse(phrases.say("machine.part-unknown"))));
        words.add(phrases.counted("machine.points", survey.points().size()));
        words.removeIf(String::isEmpty);
        return String.join("; ", words);
    }

    private String plate(Machine machine) {
        List<String> words = new ArrayList<>();
        machine.kind().ifPresent(kind -> words.add(kind.toString()));
        machine.ratedPowerWatts().ifPresent(watts -> words.add(PlainNumber.of(watts / 1000) + " kW"));
        machine.shaftHeightMetres().ifPresent(metres ->
                words.add(phrases.say("machine.shaft-height", PlainNumber.of(1000 * metres))));
        machine.support().ifPresent(support -> words.add(phrases.say("machine.support", support)));
        return String.join(", ", words);
    }

    /** Returns a time for people, as in {@code 2026-03-04 10:20 UTC}. */
    static String time(Instant when) {
        return TIME.format(when);
    }

    /** Says how the machine stands; where a verdict rests on limits that aren't firm, the reasons say so. */
    static String headline(MachineSurvey survey) {
        return survey.machine().name() + ": " + survey.condition().word();
    }

    /** How the machine stands, as a sentence. */
    String condition(MachineSurvey survey) {
        return survey.condition().rank().map(rank -> phrases.say("condition." + rank.name()))
                .orElse(phrases.say("condition.NONE"));
    }

    private String urgency(Rank rank) {
        return phrases.say("urgency." + rank.name());
    }

    /** What leads to the condition; findings stand by themselves, and are only hinted at where they come first. */
    List<String> reasons(MachineSurvey survey) {
        Set<String> found = survey.findings().stream().map(one -> one.fault() + " at "
                + String.join(", ", one.points())).collect(Collectors.toSet());
        List<String> because = survey.condition().because();
        List<String> reasons = new ArrayList<>(because.stream().filter(reason -> !found.contains(reason)).toList());
        if (!because.isEmpty() && found.contains(because.get(0))) {
            reasons.add(0, phrases.say("front.because-found"));
        }
        return reasons;
    }

    /**
     * Says what the worst rating means by its standard, which speaks of the level and of nothing else; a good one is
     * left out where anything speaks against the machine.
     */
    Optional<String> meaning(MachineSurvey survey) {
        boolean healthy = survey.condition().rank().filter(Rank.NO_OBJECTION::equals).isPresent();
        return survey.worst()
                .filter(verdict -> healthy || verdict.zone().map(zone -> zone.isWorseThan(Zone.B)).orElse(true))
                .map(verdict -> phrases.say("condition.level-alone", verdict.rating(), verdict.meaning()));
    }

    /** Criterion of a part with all that has to be known of it, the choice first. */
    static List<String> criterion(PartCriterion criterion) {
        String part = criterion.part().map(id -> id + ": ").orElse("");
        return Stream.concat(Stream.of(part + criterion.obstacle().orElse(criterion.choice().reason())),
                criterion.choice().remarks().stream()).toList();
    }

    /** The speed as found at the points, that of the main shaft, and as given; why the given one had to do. */
    String speed(MachineSurvey survey) {
        List<Double> found = survey.points().stream().filter(point -> FOUND.contains(point.speed().source()))
                .map(point -> point.speed().speed().orElseThrow().revolutionsPerMinute()
                        / survey.machine().ratioAt(point.point())).sorted().toList();
        List<String> words = new ArrayList<>();
        if (!found.isEmpty()) {
            String low = decimal(found.get(0), 1);
            String high = decimal(found.get(found.size() - 1), 1);
            words.add(low.equals(high) ? phrases.say("speed.found", low, found.size(), survey.points().size())
                    : phrases.say("speed.found-between", low, high, found.size(), survey.points().size()));
        }
        survey.machine().speed().ifPresent(given -> words.add(phrases.say("speed.given", given)));
        survey.points().stream().filter(point -> point.speed().source() == SpeedFound.Source.GIVEN && !point.refused())
                .map(point -> point.speed().remark()).filter(remark -> !remark.isEmpty()).distinct().forEach(words::add);
        return words.isEmpty() ? phrases.say("not-determined") : String.join("; ", words);
    }

    /** Returns value, uncertainty, unit and detector, as in {@code 4.31 ± 0.22 mm/s rms}. */
    static String value(Judgement judgement, ShownUnits units) {
        Unit unit = judgement.criterion().unit();
        double value = units.shown(judgement.value(), unit);
        return PlainNumber.forPeople(value) + " \u00b1 "
                + PlainNumber.withPlacesOf(units.shown(judgement.expandedUncertainty(), unit), value) + " "
                + units.of(unit) + " " + judgement.criterion().detector();
    }

    /** Returns the limits, as in {@code 1.4 / 2.8 / 4.5}. */
    static String limits(Criterion criterion) {
        return criterion.limits().stream().map(PlainNumber::of).collect(Collectors.joining(" / "));
    }

    /** Where a fact is missing and several sets of criteria may hold, returns which of them ask for these limits. */
    Optional<String> candidates(Verdict verdict, Criterion criterion) {
        List<CriterionSet> holding = verdict.choice().candidates().stream()
                .filter(set -> set.criteria().contains(criterion)).toList();
        return holding.size() == verdict.choice().candidates().size() ? Optional.empty()
                : Optional.of(phrases.say("severity.if", holding.stream().map(CriterionSet::label)
                        .collect(Collectors.joining(phrases.say("or")))));
    }

    /** Returns the doubt about limits that aren't firm. */
    static Optional<String> flag(Criterion criterion) {
        return Optional.of(criterion.confidence()).filter(one -> one != Confidence.FIRM).map(Confidence::toString);
    }

    /** Returns the ratings that the uncertainty reaches in the standard's own words, the letter alone for a zone. */
    static List<String> ratings(Judgement judgement) {
        Criterion criterion = judgement.criterion();
        return judgement.zonesWithinUncertainty().stream().map(zone -> name(criterion, zone)).distinct().toList();
    }

    /** Names a zone: its letter, or letters where a standard joins two, or the standard's own word. */
    static String name(Criterion criterion, Zone zone) {
        return criterion.hasOwnRatings() ? criterion.rating(zone).replaceFirst("^zone ", "") : zone.name();
    }

    /** Returns the rating, and where the uncertainty reaches others, these too, as in {@code zone C (B or C)}. */
    String rating(Judgement judgement) {
        List<String> ratings = ratings(judgement);
        return judgement.criterion().rating(judgement.zone()) + (ratings.size() < 2 ? ""
                : " (" + String.join(phrases.say("or"), ratings) + ")");
    }

    /** Says why a point has no verdict, and the level if there is one. */
    String noVerdict(PointSurvey point) {
        String level = point.description().numbers().stream().filter(one -> one.name().equals(VELOCITY)).findFirst()
                .map(Words::descriptor).orElse("");
        String why = Stream.of(Omission.Subject.SEVERITY, Omission.Subject.RECORDING)
                .flatMap(subject -> point.omissions().stream().filter(one -> one.subject() == subject))
                .findFirst().map(Omission::reason).orElse(phrases.say("severity.no-reason"));
        return level.isEmpty() ? phrases.say("severity.none", why) : phrases.say("severity.level-only", level, why);
    }

    static String descriptor(DescriptorValue one) {
        return one.name() + " " + PlainNumber.forPeople(one.value()) + (one.unit().equals("1") ? "" : " " + one.unit());
    }

    /** Names what is found; where others look alike, no one of them alone. */
    String title(Finding one) {
        return capital(one.alikeTo().isEmpty() ? one.fault() : phrases.say("finding.or-alike", one.fault()));
    }

    /** Urgency, confidence and place of a finding. */
    String standing(Finding one) {
        String confidence = one.alikeTo().isEmpty() ? phrases.say("finding.confidence", decimal(one.confidence(), 2))
                : one.lookAlikes().isEmpty() ? phrases.say("finding.confidence-group", decimal(one.groupConfidence(), 2))
                : phrases.say("finding.confidence-alike", decimal(one.groupConfidence(), 2),
                        decimal(one.confidence(), 2));
        return phrases.say("finding.standing", urgency(one.urgency()), confidence, String.join(", ", one.points()));
    }

    /**
     * Returns fault, urgency and confidence, as in {@code unbalance: plan a remedy, confidence 0.82}; with look-alikes
     * also that it is one of them.
     */
    static String finding(Finding one) {
        return String.format(Locale.ROOT, "%s: %s, confidence %.2f", one.fault(), one.urgency(), one.confidence())
                + (one.alikeTo().isEmpty() ? "" : String.format(Locale.ROOT, ", with look-alikes %.2f",
                        one.groupConfidence()));
    }

    /** Codes as words. */
    static List<String> codes(List<String> codes) {
        return codes.stream().map(code -> code.replace('-', ' ')).toList();
    }

    /**
     * What the printed summary tells of a finding, by a short label, in the order in which it is of use: what else it may
     * be, where, what to do next, and then the reasons; of each list what fits. Labels without words are left out.
     */
    Map<String, List<String>> partsInShort(Finding one) {
        Map<String, List<String>> parts = new LinkedHashMap<>();
        parts.put("looks alike", one.alikeTo().isEmpty() ? List.of() : List.of(String.join(", ", codes(one.alikeTo()))));
        parts.put("at", List.of(String.join(", ", one.points())));
        parts.put("next", few(one.decidedBy().stream().map(this::decider).toList()));
        parts.put("for", few(one.evidence().stream().map(Words::withoutCounts).toList()));
        parts.put("against", few(one.against().stream().map(Words::withoutCounts).toList()));
        parts.put("not measured", few(one.notMeasured()));
        parts.values().removeIf(List::isEmpty);
        return parts;
    }

    private static String withoutCounts(Sign one) {
        return new Sign(one.statement(), one.figures(), "").toString();
    }

    private List<String> few(List<String> words) {
        List<String> few = new ArrayList<>(words.subList(0, Math.min(MOST, words.size())));
        if (words.size() > MOST) {
            few.add(phrases.say("finding.more", words.size() - MOST, ReportFiles.REPORT));
        }
        return few;
    }

    /** A measurement, what its outcomes mean, and under which code a crew enters what it found. */
    String decider(Decider one) {
        return isObservation(one) ? phrases.say("finding.enter-as", one, one.symptom()) : one.toString();
    }

    /** True if a crew answers it, and no recording. */
    static boolean isObservation(Decider one) {
        return FaultTable.standard().tests().contains(one.symptom());
    }

    /** What was looked for, and what was not. */
    static String lookedFor(MachineSurvey survey) {
        return survey.omissions().stream().filter(one -> one.subject() == Omission.Subject.FAULTS)
                .map(one -> capital(one.reason()) + ".").collect(Collectors.joining(" "));
    }

    /** What was not determined for the machine as a whole, but for what stands with criterion and findings. */
    static List<String> omissions(MachineSurvey survey) {
        return survey.omissions().stream().filter(one -> one.subject() != Omission.Subject.FAULTS
                && one.subject() != Omission.Subject.SEVERITY).map(Words::omission).toList();
    }

    static String omission(Omission one) {
        return one.part() + ": " + one.reason();
    }

    static String decimal(double value, int places) {
        return String.format(Locale.ROOT, "%." + places + "f", value);
    }

    static String capital(String words) {
        return words.isEmpty() ? words : Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
