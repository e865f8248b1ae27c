package dev.vibra.survey;

import dev.vibra.diagnosis.Decider;
import dev.vibra.diagnosis.Finding;
import dev.vibra.diagnosis.Rank;
import dev.vibra.evidence.Remark;
import dev.vibra.point.Aspect;
import dev.vibra.point.PointSurvey;
import dev.vibra.severity.Verdict;
import dev.vibra.survey.AdviceStep.Kind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What to do next. One sentence speaks of the condition, so that no two can contradict each other. */
final class Advice {
    private static final String CAUTION =
            "This survey supports the judgement of qualified staff and does not replace it."
            + " Keep away from moving parts; stop, isolate and secure the machine before any work on it. The maker's"
            + " instructions and local rules come first.";

    private static final String BOLTS = "Loosen or tighten no hold-down bolt while the machine runs.";

    private final Condition condition;
    private final List<PointSurvey> points;
    private final List<Finding> findings;
    private final Map<Kind, String> steps = new EnumMap<>(Kind.class);

    private Advice(Condition condition, List<PointSurvey> points, List<Finding> findings) {
        this.condition = condition;
        this.points = points;
        this.findings = findings;
    }

    static List<AdviceStep> of(Condition condition, List<PointSurvey> points, List<Finding> findings,
            Optional<BalancingSurvey> balancing) {
        Advice advice = new Advice(condition, points, findings);
        advice.forCondition();
        advice.forFacts();
        advice.forChange();
        advice.forRecordings();
        advice.forFindings(balancing);
        advice.add(Kind.CAUTION, CAUTION);
        return advice.steps.entrySet().stream().map(step -> new AdviceStep(step.getKey(), step.getValue())).toList();
    }

    private void add(Kind kind, String text) {
        steps.merge(kind, text, (before, more) -> before + " " + more);
    }

    private void forCondition() {
        if (condition.rank().isEmpty()) {
            add(Kind.CONDITION, "The condition was not determined: nothing is to be concluded before "
                    + (points.stream().allMatch(PointSurvey::refused) ? "there are sound recordings."
                            : "there is a verdict; what is missing stands with criterion and points."));
            return;
        }
        boolean refused = points.stream().flatMap(point -> point.severity().stream())
                .anyMatch(verdict -> verdict.isAcceptance() && verdict.zone()
                        .filter(zone -> ConditionWeighing.rankOf(zone) != Rank.NO_OBJECTION).isPresent());
        add(Kind.CONDITION, switch (condition.rank().get()) {
            case NO_OBJECTION -> "Nothing speaks against running on as it is: measure again at the usual interval.";
            case WATCH -> "Clear up what stands above, and measure again sooner than at the usual interval.";
            case PLAN_REMEDY -> refused ? "Not accepted: agree on the remedy with supplier and owner before the machine"
                    + " is taken over." : "Plan a remedy: find the cause, run for a limited time only and measure more"
                    + " often until then.";
            case DECIDE_NOW -> "Have qualified staff decide at once whether the machine may run on.";
        });
        if (condition.mayServeAsBaseline()) {
            add(Kind.BASELINE, "These values may serve as a baseline for this state of operation.");
        }
    }

    private void forFacts() {
        Set<String> facts = new LinkedHashSet<>();
        points.forEach(point -> point.severity().map(Verdict::undecidedBy).ifPresent(facts::addAll));
        if (!facts.isEmpty()) {
            add(Kind.FACTS, "Find out and add to the description, since the zone depends on it: "
                    + String.join(", ", facts) + ".");
        }
    }

    private void forChange() {
        String ids = ids(points.stream().filter(point -> point.changes().stream()
                .anyMatch(one -> one.change().isSignificant())).toList());
        if (!ids.isEmpty()) {
            add(Kind.CHANGE, "The change against the baseline matters at " + ids + ", whatever the zone: make sure that"
                    + " load and speed are those of the baseline, then find the cause.");
        }
    }

    /** Points that lack the same are told together, with what could be concluded all the same. */
    private void forRecordings() {
        Map<String, List<PointSurvey>> byLoss = new LinkedHashMap<>();
        points.stream().filter(point -> point.refused() || point.insisted()).forEach(point ->
                byLoss.computeIfAbsent(loss(point), key -> new ArrayList<>()).add(point));
        byLoss.forEach((loss, lost) -> add(Kind.RECORD_AGAIN, "Record " + ids(lost) + " again: " + loss + "."));
        String knocked = ids(points.stream().filter(ConditionWeighing::isKnocked).toList());
        if (!knocked.isEmpty()) {
            add(Kind.RECORD_AGAIN, "Record " + knocked + " again: one single knock makes up its peak and kurtosis.");
        }
        String unsteady = ids(points.stream()
                .filter(point -> point.partlySteady() && !ConditionWeighing.isKnocked(point)).toList());
        if (!unsteady.isEmpty()) {
            add(Kind.RECORD_AGAIN, "Record " + unsteady + " again at steady load and speed, or find out what changed"
                    + " during the recording.");
        }
        if (ConditionWeighing.standsStill(points)) {
            add(Kind.STANDSTILL, "Make sure that the machine was running and the sensor connected"
                    + (ConditionWeighing.strangeLine(points).isPresent() ? ", and that the speed given is right" : "")
                    + ": no line of its own rates stands out at any point.");
        }
    }

    private static String loss(PointSurvey point) {
        if (point.insisted()) {
            return "numbers and verdict were insisted on, although the recording is not sound";
        }
        Set<Aspect> refused = point.recording().map(one -> one.refused()).orElse(Set.of(Aspect.values()));
        String doubts = point.recording().map(one -> one.quality().remarks().stream().filter(Remark::disqualifying)
                .map(Remark::code).distinct().collect(Collectors.joining(", ", " (", ")"))).orElse("");
        return (refused.size() == Aspect.values().length ? "nothing was concluded"
                : "nothing was concluded on " + refused.stream().sorted().map(Aspect::toString)
                        .collect(Collectors.joining(", "))) + doubts;
    }

    private void forFindings(Optional<BalancingSurvey> balancing) {
        List<Decider> first = findings.stream().flatMap(finding -> finding.decidedBy().stream().limit(1))
                .sorted(Comparator.comparing(Decider::effort)).toList();
        if (!first.isEmpty()) {
            add(Kind.DECIDE, "To decide on the findings, begin with: " + first.stream().map(Decider::measurement).distinct()
                    .collect(Collectors.joining("; ")) + ".");
        }
        if (mayBe("looseness") || mayBe("soft-foot")) {
            add(Kind.BOLTS, BOLTS);
        }
        if (points.stream().anyMatch(PointSurvey::showsBearingDefect)) {
            add(Kind.BEARINGS, "Follow the bearing whatever the zone says: broad-band vibration shows a rolling-bearing"
                    + " defect late, and a good zone does not clear it.");
        }
        if (mayBe("unbalance") || balancing.isPresent()) {
            add(Kind.BALANCING, "Before balancing, look for deposits, wear, loose parts and soft feet; balancing only"
                    + " hides them.");
        }
        balancing.ifPresent(job -> BalancingAdvice.of(job).forEach(text -> add(Kind.BALANCING, text)));
    }

    /** True if a finding has the code, or can't be told apart from it. */
    private boolean mayBe(String code) {
        return findings.stream().anyMatch(finding -> finding.code().equals(code) || finding.alikeTo().contains(code));
    }

    private static String ids(List<PointSurvey> points) {
        return points.stream().map(point -> point.point().id()).collect(Collectors.joining(", "));
    }
}
