package dev.vibra.balance.vector;

import java.io.Serializable;
import java.util.Objects;

/**
 * How a balancing sheet counts: phase of the readings, and angle of the masses.
 *
 * <p>The two are independent. Lag goes naturally with angles against rotation, and lead with angles along rotation:
 * moving a mass by 10° then moves the phase by 10° the same way. The mixed pairs are in use too, and there a sheet that
 * treats its numbers as if they matched puts the mass in the wrong place; the library converts each by its own sense.
 *
 * @param phase sense of the phase of readings
 * @param angle sense of angles on the rotor
 */
public record Convention(PhaseSense phase, AngleSense angle) implements Serializable {
    /** Phase lag, angles against rotation: the library's default. */
    public static final Convention LAG_AGAINST_ROTATION = new Convention(PhaseSense.LAG, AngleSense.AGAINST_ROTATION);

    /** Phase lead, angles with rotation. */
    public static final Convention LEAD_WITH_ROTATION = new Convention(PhaseSense.LEAD, AngleSense.WITH_ROTATION);

    /**
     * Checks the parts.
     *
     * @param phase sense of the phase of readings
     * @param angle sense of angles on the rotor
     */
    public Convention {
        Objects.requireNonNull(phase, "phase");
        Objects.requireNonNull(angle, "angle");
    }

    /**
     * Makes a convention.
     *
     * @param phase sense of the phase of readings
     * @param angle sense of angles on the rotor
     * @return the convention
     */
    public static Convention of(PhaseSense phase, AngleSense angle) {
        return new Convention(phase, angle);
    }

    /** Returns the convention in words, as it is printed with each result. */
    @Override
    public String toString() {
        return "phase is " + phase + " to the tachometer mark, angles are counted " + angle + " from the mark";
    }
}
