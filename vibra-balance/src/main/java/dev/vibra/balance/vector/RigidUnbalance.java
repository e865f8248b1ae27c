package dev.vibra.balance.vector;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * Unbalance of a rigid rotor as resultant and resultant moment about a place on the axis; it can be told in any two
 * planes.
 *
 * @param resultant vector sum of all unbalances in kg·m, argument with rotation
 * @param moment sum of unbalance times distance from the place, in kg·m²
 * @param placeMetres place along the axis in m, finite
 * @see "ISO 21940-2, resultant unbalance and resultant moment unbalance"
 */
public record RigidUnbalance(Phasor resultant, Phasor moment, double placeMetres) implements Serializable {
    /**
     * Checks the values.
     *
     * @param resultant vector sum of all unbalances in kg·m, argument with rotation
     * @param moment sum of unbalance times distance from the place, in kg·m²
     * @param placeMetres place along the axis in m, finite
     */
    public RigidUnbalance {
        Objects.requireNonNull(resultant, "resultant");
        Objects.requireNonNull(moment, "moment");
        Require.finite("place", placeMetres);
    }

    /**
     * Makes the unbalance of one plane.
     *
     * @param unbalance unbalance in kg·m, argument with rotation
     * @param placeMetres place of the plane along the axis in m, finite
     * @return the unbalance about that place
     * @throws IllegalArgumentException if the place is not finite
     */
    public static RigidUnbalance inPlane(Phasor unbalance, double placeMetres) {
        return new RigidUnbalance(unbalance, Phasor.ZERO, placeMetres);
    }

    /**
     * Tells the moment about another place.
     *
     * @param newPlaceMetres place along the axis in m, finite
     * @return the same unbalance about that place
     * @throws IllegalArgumentException if the place is not finite
     */
    public RigidUnbalance about(double newPlaceMetres) {
        Require.finite("place", newPlaceMetres);
        return new RigidUnbalance(resultant, moment.plus(resultant.times(placeMetres - newPlaceMetres)),
                newPlaceMetres);
    }

    /**
     * Adds an unbalance of the same rotor.
     *
     * @param other unbalance about any place
     * @return the sum about the place of this one
     */
    public RigidUnbalance plus(RigidUnbalance other) {
        Objects.requireNonNull(other, "other");
        RigidUnbalance here = other.about(placeMetres);
        return new RigidUnbalance(resultant.plus(here.resultant), moment.plus(here.moment), placeMetres);
    }

    /**
     * Tells the unbalance in two planes, for example to bring residuals from correction planes to the bearing planes
     * that tolerances are for.
     *
     * @param firstMetres place of the first plane in m, finite
     * @param secondMetres place of the second plane in m, finite, apart from the first
     * @return unbalances in kg·m that act as this one does
     * @throws IllegalArgumentException if a place is not finite or the planes coincide
     */
    public Phasor[] inPlanes(double firstMetres, double secondMetres) {
        double span = Require.finite("second plane", secondMetres) - Require.finite("first plane", firstMetres);
        if (!(Math.abs(span) > 0)) {
            throw Require.failure("second plane", "apart from the first, " + firstMetres + " m", secondMetres);
        }
        Phasor second = about(firstMetres).moment.times(1 / span);
        return new Phasor[] {resultant.minus(second), second};
    }

    /** Returns resultant and moment. */
    @Override
    public String toString() {
        return "resultant " + Digits.significant(resultant.magnitude() * 1e6, 3) + " g·mm, moment "
                + Digits.significant(moment.magnitude() * 1e9, 3) + " g·mm² about " + Digits.compact(placeMetres, 4)
                + " m";
    }
}
