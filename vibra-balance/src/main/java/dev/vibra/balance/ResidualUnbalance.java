package dev.vibra.balance;

import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.OptionalDouble;

/** Unbalance that a rotor has in one plane by its vibration and influence coefficients. */
public final class ResidualUnbalance implements Serializable {
    private static final long serialVersionUID = 1;

    private final String plane;
    private final PlacedMass unbalance;
    private final Double permissibleGramMillimetres; // null without a tolerance

    ResidualUnbalance(String plane, PlacedMass unbalance, OptionalDouble permissibleGramMillimetres) {
        this.plane = Objects.requireNonNull(plane, "plane");
        this.unbalance = Objects.requireNonNull(unbalance, "unbalance");
        this.permissibleGramMillimetres = checked(permissibleGramMillimetres);
    }

    /** A permissible unbalance above zero; null if there is none. */
    static Double checked(OptionalDouble permissible) {
        return permissible.isPresent()
                ? Double.valueOf(Require.positive("permissible residual unbalance", permissible.getAsDouble(), "g·mm"))
                : null;
    }

    /** Unbalance, and what is permissible of it. */
    static String text(double gramMillimetres, Double permissible) {
        String text = Digits.significant(gramMillimetres, 4) + " g·mm";
        return permissible == null ? text : text + " of " + Digits.significant(permissible, 4) + " g·mm";
    }

    /**
     * Returns the plane.
     *
     * @return name of the plane
     */
    public String plane() {
        return plane;
    }

    /**
     * Returns the unbalance as a mass.
     *
     * @return mass at the radius of the plane
     */
    public PlacedMass unbalance() {
        return unbalance;
    }

    /**
     * Returns the unbalance.
     *
     * @return unbalance in g·mm, zero or more
     */
    public double gramMillimetres() {
        return unbalance.gramMillimetres();
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

    /** Two are equal if plane, unbalance and what is permissible are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof ResidualUnbalance that && plane.equals(that.plane) && unbalance.equals(that.unbalance)
                && Objects.equals(permissibleGramMillimetres, that.permissibleGramMillimetres);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(plane, unbalance, permissibleGramMillimetres);
    }

    /** Returns plane, unbalance and what is permissible. */
    @Override
    public String toString() {
        return plane + " " + text(gramMillimetres(), permissibleGramMillimetres);
    }
}
