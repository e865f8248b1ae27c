package dev.vibra.balance.uncertainty;

import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * Ellipse in the plane of a vector that holds the true value with a stated probability.
 *
 * @param centre the vector found
 * @param major half of the long axis, in the unit of the vector, finite, zero or more
 * @param minor half of the short axis, at most the long one
 * @param majorRadians argument of the long axis in rad
 * @param coverage probability, above 0 and below 1
 */
public record Ellipse(Phasor centre, double major, double minor, double majorRadians, double coverage)
        implements Serializable {
    /**
     * Checks the values.
     *
     * @param centre the vector found
     * @param major half of the long axis, in the unit of the vector, finite, zero or more
     * @param minor half of the short axis, at most the long one
     * @param majorRadians argument of the long axis in rad
     * @param coverage probability, above 0 and below 1
     */
    public Ellipse {
        Objects.requireNonNull(centre, "centre");
        Require.notNegative("long half axis", major, "");
        Require.within("short half axis", minor, 0, major, "");
        Require.finite("argument of the long axis", majorRadians);
        if (!(coverage > 0 && coverage < 1)) {
            throw Require.failure("coverage", "above 0 and below 1", coverage);
        }
    }

    /**
     * Returns the direction of the long axis as a sheet counts it.
     *
     * @param sense sense in which angles are counted; the argument of the ellipse is counted with rotation
     * @return direction in degrees, from 0 up to, not including, 180
     */
    public double majorDegrees(AngleSense sense) {
        Objects.requireNonNull(sense, "sense");
        return sense.degreesOf(Phasor.polar(1, majorRadians)) % 180;
    }

    /**
     * Tells whether a vector lies inside or on the ellipse.
     *
     * @param vector vector in the unit of the ellipse
     * @return true if inside or on it
     */
    public boolean contains(Phasor vector) {
        Objects.requireNonNull(vector, "vector");
        Phasor turned = vector.minus(centre).times(Phasor.polar(1, -majorRadians));
        return square(turned.re(), major) + square(turned.im(), minor) <= 1;
    }

    private static double square(double part, double halfAxis) {
        if (halfAxis == 0) {
            return part == 0 ? 0 : Double.POSITIVE_INFINITY;
        }
        return part / halfAxis * (part / halfAxis);
    }

    /** Returns the half axes and the coverage; their unit is that of the vector. */
    @Override
    public String toString() {
        return "ellipse of half axes " + Digits.significant(major, 3) + " and " + Digits.significant(minor, 3)
                + " about " + centre + ", coverage " + Digits.compact(coverage * 100, 3) + " %";
    }
}
