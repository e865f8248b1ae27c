package dev.vibra.diagnosis;

import dev.vibra.fault.Effort;
import java.util.ArrayList;
import java.util.List;

/** Notes of one hypothesis while it is weighed; it ends as a {@link Finding}. */
final class Weighing {
    private final String code;
    private final String fault;
    private final List<String> points = new ArrayList<>();
    private final List<Sign> evidence = new ArrayList<>();
    private final List<Sign> against = new ArrayList<>();
    private final List<String> notMeasured = new ArrayList<>();
    private final List<Decider> decidedBy = new ArrayList<>();
    private final List<String> alikeTo = new ArrayList<>();
    private double confidence;

    Weighing(String code, String fault, double confidence) {
        this.code = code;
        this.fault = fault;
        this.confidence = confidence;
    }

    void shownAt(String point, String why) {
        points.add(point);
        evidence.add(Sign.of(point + ": " + why));
    }

    /** Something that adds to the confidence. */
    void supports(double share, String why) {
        confidence += share;
        evidence.add(Sign.of(why));
    }

    /** Something that takes from the confidence. */
    void opposes(double share, String why) {
        confidence -= share;
        against.add(Sign.of(why));
    }

    void notMeasured(String what) {
        notMeasured.add(what);
    }

    void decidedBy(String measurement, String meaning) {
        decidedBy.add(new Decider(code, Effort.RUNNING, measurement, meaning));
    }

    void alikeTo(String... codes) {
        alikeTo.addAll(List.of(codes));
    }

    boolean isShown() {
        return !points.isEmpty();
    }

    List<String> points() {
        return points;
    }

    Finding finding(double highest, Rank urgency, boolean explainsLevel, String source) {
        double bounded = Math.max(0.1, Math.min(highest, confidence));
        return new Finding(code, fault, bounded, bounded, urgency, points, explainsLevel, evidence, against, notMeasured,
                decidedBy, alikeTo, List.of(), source);
    }
}
