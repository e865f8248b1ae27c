package dev.vibra.survey;

import dev.vibra.severity.Zone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What to do next, in the order in which it matters. */
final class Advice {
    private static final String NOT_FOR_BEARINGS = "The zone speaks of broad-band vibration, in which a rolling-bearing"
            + " defect shows late: it does not clear the bearing.";
    private static final String BEFORE_BALANCING =
            "Before balancing, look for deposits, wear, loose parts and soft feet;"
            + " balancing only hides them.";
    private static final String CAUTION =
            "This survey supports the judgement of qualified staff and does not replace it."
            + " Keep away from moving parts; stop, isolate and secure the machine before any work on it. The maker's"
            + " instructions and local rules come first.";

    private Advice() {}

    /** The balancing job may be null. */
    static List<String> of(List<PointSurvey> points, List<Finding> findings, BalancingSurvey balancing) {
        List<String> advice = new ArrayList<>();
        zone(points).map(Advice::forZone).ifPresent(advice::add);
        insisted(points).ifPresent(advice::add);
        changed(points).ifPresent(advice::add);
        if (isRaised(findings, BearingHypothesis.FAULT)) {
            advice.add(NOT_FOR_BEARINGS);
        }
        repeat(points).ifPresent(advice::add);
        findings.forEach(finding -> advice.add("To confirm " + finding.fault() + ": " + finding.confirmBy() + "."));
        if (isRaised(findings, UnbalanceHypothesis.FAULT)) {
            advice.add(BEFORE_BALANCING);
        }
        if (balancing != null) {
            advice.addAll(BalancingAdvice.of(balancing));
        }
        advice.add(CAUTION);
        return advice;
    }

    private static boolean isRaised(List<Finding> findings, String fault) {
        return findings.stream().anyMatch(finding -> finding.fault().startsWith(fault));
    }

    private static Optional<String> insisted(List<PointSurvey> points) {
        List<String> ids = points.stream().filter(PointSurvey::insisted).map(point -> point.point().id()).toList();
        return ids.isEmpty() ? Optional.empty() : Optional.of("Record " + String.join(", ", ids)
                + " again: numbers and verdict were insisted on, although the recording is not sound.");
    }

    private static Optional<String> changed(List<PointSurvey> points) {
        List<String> ids = points.stream().filter(point -> point.changes().stream()
                .anyMatch(one -> one.change().isSignificant())).map(point -> point.point().id()).toList();
        return ids.isEmpty() ? Optional.empty() : Optional.of("The change against the baseline matters at "
                + String.join(", ", ids) + ", whatever the zone: make sure that load and speed are those of the"
                + " baseline, then find the cause.");
    }

    private static Optional<String> repeat(List<PointSurvey> points) {
        List<String> doubtful = points.stream().filter(point -> !point.sound() && !point.insisted())
                .map(point -> point.point().id())
                .toList();
        return doubtful.isEmpty() ? Optional.empty() : Optional.of("Record " + String.join(", ", doubtful)
                + " again: nothing was concluded from " + (doubtful.size() == 1 ? "this point." : "these points."));
    }

    private static Optional<Zone> zone(List<PointSurvey> points) {
        return points.stream().flatMap(point -> point.zone().stream()).max(Zone::compareTo);
    }

    private static String forZone(Zone zone) {
        return switch (zone) {
            case A -> "Zone A: nothing to do for the level of vibration; keep these values as a reference.";
            case B -> "Zone B: nothing to do for the level of vibration; measure again at the usual interval.";
            case C ->
                    "Zone C, not fit for continuous long-term running: plan the remedy, run for a limited time only and"
                    + " measure more often until then.";
            case D -> "Zone D, severe enough to damage the machine: have qualified staff decide at once whether it may"
                    + " run on.";
        };
    }
}
