package dev.vibra.balance;

import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Unbalance that a rotor has by its vibration and influence coefficients: in a correction plane or, the rotor taken as
 * rigid, as seen in a bearing plane.
 *
 * @see "ISO 21940-11:2016, tolerance planes"
 */
public final class ResidualUnbalance implements Serializable {
    private static final long serialVersionUID = 1;

    private final String plane;
    private final Phasor kilogramMetres;
    private final AngleSense sense;
    private final Double permissibleGramMillimetres; // null without a tolerance for this plane

    ResidualUnbalance(String plane, Phasor kilogramMetres, AngleSense sense, OptionalDouble permissible) {
        this.plane = Objects.requireNonNull(plane, "plane");
        this.kilogramMetres = Objects.requireNonNull(kilogramMetres, "unbalance");
        this.sense = Objects.requireNonNull(sense, "sense");
        permissibleGramMillimetres = permissible.isEmpty() ? null
                : Double.valueOf(Require.positive("permissible residual unbalance", permissible.getAsDouble(), "g·mm"));
    }

    private Object readResolve() {
        return new ResidualUnbalance(plane, kilogramMetres, sense, permissibleGramMillimetres());
    }

    /**
     * Returns the plane.
     *
     * @return name of the correction plane or of the bearing
     */
    public String plane() {
        return plane;
    }

    /**
     * Returns the unbalance.
     *
     * @return unbalance in g·mm, zero or more
     */
    public double gramMillimetres() {
        return kilogramMetres.magnitude() * 1e6;
    }

    /**
     * Returns the angle of the unbalance.
     *
     * @return angle in degrees in the sense of the job
     */
    public double angleDegrees() {
        return sense.degreesOf(kilogramMetres);
    }

    /**
     * Returns the permissible residual unbalance of the plane.
     *
     * @return unbalance in g·mm, above zero; empty without a tolerance for this plane
     */
    public OptionalDouble permissibleGramMillimetres() {
        return permissibleGramMillimetres == null ? OptionalDouble.empty()
                : OptionalDouble.of(permissibleGramMillimetres);
    }

    /** The unbalance in kg·m, its argument the angle with rotation. */
    Phasor kilogramMetres() {
        return kilogramMetres;
    }

    /** Returns plane, unbalance and what is permissible. */
    @Override
    public String toString() {
        String text = plane + " " + Digits.significant(gramMillimetres(), 4) + " g·mm";
        return permissibleGramMillimetres == null ? text
                : text + " of " + Digits.significant(permissibleGramMillimetres, 4) + " g·mm";
    }
}
