package dev.vibra.balance;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Residual unbalance as seen in a bearing plane, the rotor taken as rigid.
 *
 * @see "ISO 21940-11:2016, tolerance planes"
 */
public final class BearingUnbalance implements Serializable {
    private static final long serialVersionUID = 1;

    private final String bearing;
    private final double gramMillimetres;
    private final double angleDegrees;
    private final Double permissibleGramMillimetres; // null without a tolerance

    BearingUnbalance(String bearing, double gramMillimetres, double angleDegrees,
            OptionalDouble permissibleGramMillimetres) {
        this.bearing = Objects.requireNonNull(bearing, "bearing");
        this.gramMillimetres = Require.notNegative("unbalance of a bearing plane", gramMillimetres, "g·mm");
        this.angleDegrees = Require.finite("angle of an unbalance in degrees", angleDegrees);
        this.permissibleGramMillimetres = ResidualUnbalance.checked(permissibleGramMillimetres);
    }

    /**
     * Returns which of the two bearings.
     *
     * @return name of the bearing
     */
    public String bearing() {
        return bearing;
    }

    /**
     * Returns the unbalance.
     *
     * @return unbalance in g·mm, zero or more
     */
    public double gramMillimetres() {
        return gramMillimetres;
    }

    /**
     * Returns the angle of the unbalance.
     *
     * @return angle in degrees in the sense of the job
     */
    public double angleDegrees() {
        return angleDegrees;
    }

    /**
     * Returns the permissible residual unbalance in that plane.
     *
     * @return unbalance in g·mm, above zero; empty without a tolerance
     */
    public OptionalDouble permissibleGramMillimetres() {
        return permissibleGramMillimetres == null ? OptionalDouble.empty()
                : OptionalDouble.of(permissibleGramMillimetres);
    }

    /** Two are equal if bearing, unbalance, angle and what is permissible are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof BearingUnbalance that && bearing.equals(that.bearing)
                && Double.compare(gramMillimetres, that.gramMillimetres) == 0
                && Double.compare(angleDegrees, that.angleDegrees) == 0
                && Objects.equals(permissibleGramMillimetres, that.permissibleGramMillimetres);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(bearing, gramMillimetres, angleDegrees, permissibleGramMillimetres);
    }

    /** Returns bearing, unbalance and what is permissible. */
    @Override
    public String toString() {
        return bearing + " " + ResidualUnbalance.text(gramMillimetres, permissibleGramMillimetres);
    }
}
