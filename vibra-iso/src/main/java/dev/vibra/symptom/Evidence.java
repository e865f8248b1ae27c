package dev.vibra.symptom;

import dev.vibra.internal.Require;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachinePart;
import dev.vibra.point.PointChange;
import dev.vibra.point.PointSurvey;
import dev.vibra.severity.MachineKind;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * What hypotheses are weighed on.
 *
 * @param machine what is known of the machine
 * @param points what was worked out at its points
 * @param references what was worked out of recordings of the same points from a time when the machine was known to be
 *     sound, in the same state; none of them is judged for itself
 */
public record Evidence(MachineDescription machine, List<PointSurvey> points, List<PointSurvey> references) {
    /** Pistons and teeth knock in health. */
    private static final Set<MachineKind> IMPULSIVE_IN_HEALTH = EnumSet.of(MachineKind.GEARBOX,
            MachineKind.RECIPROCATING_COMPRESSOR, MachineKind.RECIPROCATING_ENGINE, MachineKind.GENERATING_SET);

    /**
     * Copies the lists.
     *
     * @param machine see the record
     * @param points see the record
     * @param references see the record
     */
    public Evidence {
        Objects.requireNonNull(machine, "machine");
        points = Require.copy("points", points);
        references = Require.copy("references", references);
    }

    /**
     * Takes a machine without references.
     *
     * @param machine what is known of the machine
     * @param points what was worked out at its points
     * @return the evidence
     */
    public static Evidence of(MachineDescription machine, List<PointSurvey> points) {
        return new Evidence(machine, points, List.of());
    }

    /**
     * Finds the reference of a point.
     *
     * @param point a point of the machine
     * @return what was worked out of its reference recording, if there is one
     */
    public Optional<PointSurvey> reference(PointSurvey point) {
        Objects.requireNonNull(point, "point");
        return references.stream().filter(one -> one.point().id().equals(point.point().id())).findFirst();
    }

    /** {@return each point that has a reference held against it} */
    public List<PointChange> changes() {
        return points.stream().flatMap(point -> reference(point).map(then -> PointChange.of(point, then)).stream())
                .toList();
    }

    /**
     * Finds the kind of what a point lies on.
     *
     * @param point a point of the machine
     * @return kind of its part, or of the machine as a whole, if known
     */
    public Optional<MachineKind> kindAt(PointSurvey point) {
        Objects.requireNonNull(point, "point");
        return point.point().part().map(machine::part).map(MachinePart::machine).orElse(machine.machine()).kind();
    }

    /**
     * Tells whether knocks belong to the machine.
     *
     * @param point a point of the machine
     * @return true for gears and machines with pistons
     */
    public boolean isImpulsiveInHealth(PointSurvey point) {
        Objects.requireNonNull(point, "point");
        return !machine.train().gears().isEmpty() || kindAt(point).filter(IMPULSIVE_IN_HEALTH::contains).isPresent();
    }

    /** Returns machine and number of points. */
    @Override
    public String toString() {
        return "evidence of " + machine;
    }
}
