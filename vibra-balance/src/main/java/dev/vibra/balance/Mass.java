package dev.vibra.balance;

import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Mass as it stands on a balancing sheet; the sense of its angle is that of the job.
 *
 * @param grams mass in g, finite, zero or more
 * @param angleDegrees angle from the mark in degrees, finite
 * @param radiusMillimetres radius in mm, finite, above zero; NaN for the radius of the plane
 */
public record Mass(double grams, double angleDegrees, double radiusMillimetres) implements Serializable {
    /**
     * Checks the values.
     *
     * @param grams mass in g, finite, zero or more
     * @param angleDegrees angle from the mark in degrees, finite
     * @param radiusMillimetres radius in mm, finite, above zero; NaN for the radius of the plane
     */
    public Mass {
        Require.notNegative("mass", grams, "g");
        Require.finite("angle of a mass in degrees", angleDegrees);
        if (!Double.isNaN(radiusMillimetres)) {
            Require.positive("radius of a mass", radiusMillimetres, "mm");
        }
    }

    /**
     * Says the radius, where it is not that of the plane.
     *
     * @param newRadiusMillimetres radius in mm, finite, above zero
     * @return the same mass at that radius
     * @throws IllegalArgumentException if the radius is out of range
     */
    public Mass atRadius(double newRadiusMillimetres) {
        return new Mass(grams, angleDegrees, Require.positive("radius of a mass", newRadiusMillimetres, "mm"));
    }

    PlacedMass in(AngleSense sense) {
        PlacedMass open = PlacedMass.ofGrams(grams, angleDegrees, sense);
        return Double.isNaN(radiusMillimetres) ? open : open.atRadius(radiusMillimetres);
    }

    /** Returns mass and angle, as in {@code 12 g at 0°}. */
    @Override
    public String toString() {
        String text = Digits.compact(grams, 6) + " g at " + Digits.compact(angleDegrees, 6) + "°";
        return Double.isNaN(radiusMillimetres) ? text : text + ", radius " + Digits.compact(radiusMillimetres, 6)
                + " mm";
    }
}
