package dev.vibra.diagnosis;

import dev.vibra.internal.Require;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachinePart;
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
 */
public record Evidence(MachineDescription machine, List<PointSurvey> points) {
    /** Pistons and teeth knock in health. */
    private static final Set<MachineKind> IMPULSIVE_IN_HEALTH = EnumSet.of(MachineKind.GEARBOX,
            MachineKind.RECIPROCATING_COMPRESSOR, MachineKind.RECIPROCATING_ENGINE, MachineKind.GENERATING_SET);

    /**
     * Copies the list.
     *
     * @param machine see the record
     * @param points see the record
     */
    public Evidence {
        Objects.requireNonNull(machine, "machine");
        points = Require.copy("points", points);
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
