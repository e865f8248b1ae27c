package dev.vibra.diagnosis;

import dev.vibra.symptom.Evidence;
import dev.vibra.bearing.Pulsation;
import dev.vibra.point.BearingSurvey;
import dev.vibra.point.Impulsiveness;
import dev.vibra.point.PointSurvey;
import java.util.List;
import java.util.Optional;

/**
 * A high band that pulsates as deep as with a clear bearing defect, at a rate that nothing in the description makes: a
 * bearing whose geometry was given wrong, another bearing, a rub, something beside the machine.
 */
final class PulsationHypothesis implements Observation {
    private static final String SOURCE = "envelope symptoms: ISO 13373-2:2016 (from memory, unverified); depth: common"
            + " practice, no source";

    @Override
    public String fault() {
        return "periodic knocks of unknown origin";
    }

    @Override
    public Optional<String> notExamined(Evidence evidence) {
        return evidence.points().stream().anyMatch(point -> !point.bearings().isEmpty()
                || point.unknownBearing().filter(search -> search.obstacle().isEmpty()).isPresent()) ? Optional.empty()
                : Optional.of(fault() + " (no envelope could be examined at a known speed)");
    }

    @Override
    public List<Finding> weigh(Evidence evidence) {
        Weighing weighing = new Weighing("periodic-impacts", fault(), 0.6);
        evidence.points().forEach(point -> hear(point, weighing));
        if (!weighing.isShown()) {
            return List.of();
        }
        weighing.opposes(0, "no rate of the shaft, a described bearing or what else is described lies there");
        weighing.decidedBy("geometry and speed in the description, held against the bearing that is fitted",
                "a bearing of another make has other rates; with the right ones the line may name an element");
        weighing.decidedBy("the same recording with neighbouring machines at rest",
                "what goes with them is theirs; what stays belongs to this machine");
        weighing.alikeTo("rolling-bearing-outer-race", "rolling-bearing-inner-race",
                "rolling-bearing-rolling-element", "rolling-bearing-cage", "rub", "gear-tooth");
        return List.of(weighing.finding(0.7, Rank.WATCH, false, SOURCE));
    }

    private static void hear(PointSurvey point, Weighing weighing) {
        String id = point.point().id();
        point.bearings().stream().map(BearingSurvey::diagnosis).map(one -> one.unexplained())
                .flatMap(Optional::stream).map(Pulsation::toString).findFirst()
                .ifPresent(pulsation -> weighing.shownAt(id, "pulsation at " + pulsation));
        point.unknownBearing().filter(search -> !search.pulsations().isEmpty()).ifPresent(search -> {
            weighing.shownAt(id, "pulsation at " + search.pulsations().get(0));
            weighing.supports(0, id + (search.candidates().isEmpty()
                    ? ": no rolling bearing of usual proportions makes it" : ": proportions that would explain it, none of them a verdict: " + search));
        });
        if (weighing.points().contains(id)) {
            point.impulsiveness().filter(Impulsiveness::isImpulsive)
                    .ifPresent(one -> weighing.supports(0.1, id + ": " + one));
        }
    }

    /** {@return true if periodic impacts of unknown origin are heard at a point} */
    static boolean isHeard(PointSurvey point) {
        return point.bearings().stream().anyMatch(bearing -> bearing.diagnosis().unexplained().isPresent())
                || point.unknownBearing().filter(search -> !search.pulsations().isEmpty()).isPresent();
    }
}
