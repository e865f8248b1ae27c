package dev.vibra.diagnosis;

import dev.vibra.symptom.Evidence;
import dev.vibra.point.Impulsiveness;
import dev.vibra.point.PointSurvey;
import java.util.List;
import java.util.Optional;

/**
 * Knocks that nothing found so far explains, and that repeat at no rate. Gears and machines with pistons knock in
 * health: there only a change tells.
 */
final class ImpulsivenessHypothesis implements Observation {
    private static final String SOURCE = "ISO 13373-2:2016, crest factor and kurtosis (from memory, unverified); limit:"
            + " common practice, no source";
    /** That much louder than where a defect is heard, knocks have a source of their own; common practice, no source. */
    private static final double LOUDER = 1.5;

    @Override
    public String fault() {
        return "knocks of unknown origin";
    }

    @Override
    public Optional<String> notExamined(Evidence evidence) {
        List<PointSurvey> heard = evidence.points().stream()
                .filter(point -> point.impulsiveness().isPresent()).toList();
        return heard.stream().anyMatch(point -> !evidence.isImpulsiveInHealth(point)) ? Optional.empty()
                : Optional.of("knocks (" + (heard.isEmpty() ? "no sound recording of acceleration"
                        : "gears and pistons knock in health: only a change tells") + ")");
    }

    @Override
    public List<Finding> weigh(Evidence evidence) {
        double explained = evidence.points().stream().filter(PointSurvey::showsBearingDefect)
                .flatMap(point -> point.impulsiveness().stream()).mapToDouble(Impulsiveness::peak).max().orElse(0);
        Weighing weighing = new Weighing("impulsiveness", fault(), 0.9);
        for (PointSurvey point : evidence.points()) {
            point.impulsiveness().filter(Impulsiveness::isImpulsive)
                    .filter(one -> !evidence.isImpulsiveInHealth(point) && !point.showsBearingDefect()
                            && !PulsationHypothesis.isHeard(point))
                    .filter(one -> one.peak() > LOUDER * explained)
                    .ifPresent(one -> weighing.shownAt(point.point().id(), one.toString()));
        }
        if (!weighing.isShown()) {
            return List.of();
        }
        weighing.opposes(0, "what knocks is not known: a bearing, a loose part, a rub, a coupling, the process or"
                + " something beside the machine");
        weighing.notMeasured("rates of the rolling bearings, unless their geometry and the speed are given");
        weighing.decidedBy("the same recording again, and one a hand's breadth away",
                "knocks that stay belong to the machine; others to handling or the surroundings");
        weighing.decidedBy("geometry of the bearings in the description, with the speed",
                "knocks at the rate of an element name it; knocks at another rate have another source");
        weighing.decidedBy("temperature, noise and lubricant of the bearings",
                "a bearing that is warm, loud or dry is looked at first");
        weighing.alikeTo("rolling-bearing-outer-race", "rolling-bearing-inner-race",
                "rolling-bearing-rolling-element", "looseness", "rub", "gear-tooth");
        return List.of(weighing.finding(0.9, Rank.WATCH, false, SOURCE));
    }
}
