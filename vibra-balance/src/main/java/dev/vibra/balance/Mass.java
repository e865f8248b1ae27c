package dev.vibra.balance;

import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Mass as it stands on a balancing sheet; the sense of its angle is that of the job.
 */
public final class Mass implements Serializable {
    private static final long serialVersionUID = 1;

    private final double grams;
    private final double angleDegrees;
    private final Double radiusMillimetres; // null: that of the plane

    private Mass(double grams, double angleDegrees, Double radiusMillimetres) {
        this.grams = Require.notNegative("mass", grams, "g");
        this.angleDegrees = Require.finite("angle of a mass in degrees", angleDegrees);
        this.radiusMillimetres = radiusMillimetres == null ? null
                : Double.valueOf(Require.positive("radius of a mass", radiusMillimetres, "mm"));
    }

    private Object readResolve() {
        return new Mass(grams, angleDegrees, radiusMillimetres);
    }

    static Mass of(double grams, double angleDegrees) {
        return new Mass(grams, angleDegrees, null);
    }

    /**
     * Says the radius, where it is not that of the plane.
     *
     * @param newRadiusMillimetres radius in mm, finite, above zero
     * @return the same mass at that radius
     * @throws IllegalArgumentException if the radius is out of range
     */
    public Mass atRadius(double newRadiusMillimetres) {
        return new Mass(grams, angleDegrees, newRadiusMillimetres);
    }

    /**
     * Returns the mass.
     *
     * @return mass in g, zero or more
     */
    public double grams() {
        return grams;
    }

    /**
     * Returns the angle.
     *
     * @return angle from the mark in degrees, in the sense of the job
     */
    public double angleDegrees() {
        return angleDegrees;
    }

    /**
     * Returns the radius.
     *
     * @return radius in mm; empty for the radius of the plane
     */
    public OptionalDouble radiusMillimetres() {
        return radiusMillimetres == null ? OptionalDouble.empty() : OptionalDouble.of(radiusMillimetres);
    }

    PlacedMass in(AngleSense sense) {
        PlacedMass open = PlacedMass.ofGrams(grams, angleDegrees, sense);
        return radiusMillimetres == null ? open : open.atRadius(radiusMillimetres);
    }

    /** Two are equal if mass, angle and radius are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Mass that && Double.compare(grams, that.grams) == 0
                && Double.compare(angleDegrees, that.angleDegrees) == 0
                && Objects.equals(radiusMillimetres, that.radiusMillimetres);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(grams, angleDegrees, radiusMillimetres);
    }

    /** Returns mass and angle, as in {@code 12 g at 0°}. */
    @Override
    public String toString() {
        String text = Digits.compact(grams, 6) + " g at " + Digits.compact(angleDegrees, 6) + "°";
        return radiusMillimetres == null ? text : text + ", radius " + Digits.compact(radiusMillimetres, 6)
                + " mm";
    }
}
