package dev.vibra.fault;

import dev.vibra.internal.ShaftSpeeds;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.symptom.Site;
import java.util.Objects;
import java.util.Optional;

/** What a machine must have for a fault to sit on it; what has a site of its own is asked by its site. */
public enum Presence {
    /** Nothing. */
    ANY("any"),
    /** A rotor with points at two housings or more. */
    TWO_ENDS("two ends"),
    /** A rotor that is said to lie beyond its bearings, or of which that isn't said. */
    OVERHUNG("overhung"),
    /** A coupling. */
    COUPLING("coupling"),
    /** A belt. */
    BELT("belt"),
    /** An induction motor. */
    INDUCTION_MOTOR("induction motor"),
    /** A gear stage. */
    GEAR("gear"),
    /** A wheel with blades or vanes. */
    BLADES("blades"),
    /** A rolling bearing of known geometry. */
    ROLLING_BEARING("rolling bearing");

    private final String label;

    Presence(String label) {
        this.label = label;
    }

    static Presence ofName(String name) {
        for (Presence presence : values()) {
            if (presence.label.equals(name)) {
                return presence;
            }
        }
        throw new IllegalArgumentException("on must be a known presence: " + name);
    }

    /** Tells whether the fault can sit at a site of its kind. */
    boolean isAt(MachineDescription machine, Site site) {
        Objects.requireNonNull(site, "site");
        return switch (this) {
            case ANY, COUPLING, INDUCTION_MOTOR, GEAR, BLADES, ROLLING_BEARING -> true;
            case BELT -> !machine.train().belts().isEmpty();
            case OVERHUNG -> machine.rotor().arrangement().isEmpty() || machine.rotor().isOverhung();
            case TWO_ENDS -> machine.points().stream()
                    .filter(point -> ShaftSpeeds.areSame(machine.ratioAt(point), site.ratio()))
                    .map(MeasuringPoint::housing).flatMap(Optional::stream).distinct().count() > 1;
        };
    }

    /** Returns the word in the table of faults. */
    @Override
    public String toString() {
        return label;
    }
}
