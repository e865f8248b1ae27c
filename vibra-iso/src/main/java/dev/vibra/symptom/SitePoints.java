package dev.vibra.symptom;

import dev.vibra.internal.ShaftSpeeds;
import dev.vibra.machine.CoupledParts;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.point.Aspect;
import dev.vibra.point.PointSurvey;
import java.util.LinkedHashMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Which points count for a site, of those whose recording is good for what is asked. */
final class SitePoints {
    /** Speeds of one state of operation differ by less; common practice, no source. */
    private static final double SAME_STATE = 0.02;

    private static final double LOUD = 0.5;

    private SitePoints() {}

    /** Points that may speak of motion. */
    static List<PointSurvey> of(Evidence evidence, Site site) {
        return of(evidence, site, Aspect.MOTION);
    }

    static List<PointSurvey> of(Evidence evidence, Site site, Aspect aspect) {
        return evidence.points().stream().filter(point -> isGoodFor(point, aspect))
                .filter(point -> counts(evidence.machine(), site, point.point())).toList();
    }

    /** A number that was insisted on shows nothing. */
    private static boolean isGoodFor(PointSurvey point, Aspect aspect) {
        return !point.insisted() && point.recording().filter(one -> !one.refused().contains(aspect)).isPresent();
    }

    static boolean counts(MachineDescription machine, Site site, MeasuringPoint point) {
        return switch (site.kind()) {
            case SHAFT -> turnsWith(machine, site, point);
            case COUPLING -> turnsWith(machine, site, point) && Sites.coupling(machine, site).filter(coupled ->
                    point.part().flatMap(coupled::coupledTo).isPresent()).isPresent();
            case MOTOR -> !Sites.hasMotorPart(machine) || point.part().map(machine::part).filter(part ->
                    Sites.isMotor(part.machine())).isPresent();
            case BEARING -> point.bearing().filter(site.owner()::equals).isPresent();
            case MACHINE, GEAR, BLADES, BELT -> true;
        };
    }

    private static boolean turnsWith(MachineDescription machine, Site site, MeasuringPoint point) {
        return ShaftSpeeds.areSame(machine.ratioAt(point), site.ratio());
    }

    /**
     * Points whose largest multiple reaches half of that of the loudest: what supports and noise make of the small lines
     * of quiet points tells nothing of a fault; common practice, no source.
     */
    static List<PointSurvey> loud(List<PointSurvey> points) {
        return loud(points, LOUD);
    }

    static List<PointSurvey> loud(List<PointSurvey> points, double share) {
        double loudest = points.stream().mapToDouble(point -> ShaftLines.largest(point).orElse(0)).max().orElse(0);
        return points.stream().filter(point -> ShaftLines.largest(point).orElse(0) >= share * loudest).toList();
    }

    /** Points at one side of a coupling. */
    static List<PointSurvey> ofPart(List<PointSurvey> points, String part) {
        return points.stream().filter(point -> point.point().part().filter(part::equals).isPresent()).toList();
    }

    static CoupledParts coupling(Evidence evidence, Site site) {
        return Sites.coupling(evidence.machine(), site).orElseThrow(() -> new IllegalArgumentException(
                "site must be a coupling of the machine: " + site));
    }

    /** By the housing that they lie at; without those of which it isn't known. */
    static Map<String, List<PointSurvey>> byHousing(List<PointSurvey> points) {
        Map<String, List<PointSurvey>> housings = new LinkedHashMap<>();
        points.forEach(point -> point.point().housing().ifPresent(housing ->
                housings.computeIfAbsent(housing, key -> new ArrayList<>()).add(point)));
        return housings;
    }

    /** A point and how it was when the machine was known to be sound. */
    record Pair(PointSurvey now, PointSurvey then) {}

    /** Those of some points whose reference was taken in the same state; the others are noted as unable to tell. */
    static List<Pair> withReference(Evidence evidence, List<PointSurvey> points, Tally tally) {
        List<Pair> pairs = new ArrayList<>();
        for (PointSurvey point : points) {
            String obstacle = evidence.reference(point).map(then -> !isGoodFor(then, Aspect.MOTION)
                    ? "the reference isn't sound" : sameState(point, then) ? ""
                    : "the reference was taken at another speed, or its speed isn't known")
                    .orElse("there is no reference");
            if (obstacle.isEmpty()) {
                pairs.add(new Pair(point, evidence.reference(point).orElseThrow()));
            } else {
                tally.cannot(LineSize.id(point), obstacle);
            }
        }
        return pairs;
    }

    private static boolean sameState(PointSurvey now, PointSurvey then) {
        return now.speed().speed().isPresent() && then.speed().speed().isPresent() && Math.abs(
                now.speed().speed().get().hertz() / then.speed().speed().get().hertz() - 1) <= SAME_STATE;
    }
}
