package dev.vibra.balance.vector;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Mass at an angle on a rotor, with its radius where that is known.
 *
 * <p>Without a radius the mass stands for itself: all masses of a plane then have to be at one and the same radius, and
 * no unbalance in kg·m can be told.
 */
public final class PlacedMass implements Serializable {
    private static final long serialVersionUID = 1;

    private final Phasor kilograms; // argument is the angle with rotation
    private final Double radiusMetres; // null: not known
    private final AngleSense sense;

    private PlacedMass(Phasor kilograms, Double radiusMetres, AngleSense sense) {
        this.kilograms = Objects.requireNonNull(kilograms, "kilograms");
        this.radiusMetres = radiusMetres == null ? null
                : Double.valueOf(Require.positive("radius", radiusMetres, "m"));
        this.sense = Objects.requireNonNull(sense, "sense");
    }

    private Object readResolve() {
        return new PlacedMass(kilograms, radiusMetres, sense);
    }

    /**
     * Makes a mass whose radius is left open.
     *
     * @param grams mass in g, finite, zero or more
     * @param angleDegrees angle from the mark in degrees, finite
     * @param sense sense in which the angle is counted
     * @return the mass
     * @throws IllegalArgumentException if a value is out of range
     */
    public static PlacedMass ofGrams(double grams, double angleDegrees, AngleSense sense) {
        Objects.requireNonNull(sense, "sense");
        Require.notNegative("mass", grams, "g");
        double angle = sense.toWithRotation(Math.toRadians(Require.finite("angle in degrees", angleDegrees)));
        return new PlacedMass(Phasor.polar(grams / 1000, angle), null, sense);
    }

    /**
     * Makes a mass of a phasor; its radius is left open.
     *
     * @param kilograms mass in kg with the angle counted with rotation as its argument
     * @param sense sense in which the angle is to be shown
     * @return the mass
     */
    public static PlacedMass ofPhasor(Phasor kilograms, AngleSense sense) {
        return new PlacedMass(kilograms, null, sense);
    }

    /**
     * Makes the mass that gives an unbalance at a radius.
     *
     * @param unbalance unbalance in kg·m with the angle counted with rotation as its argument
     * @param radiusMillimetres radius in mm, finite, above zero
     * @param sense sense in which the angle is to be shown
     * @return the mass
     * @throws IllegalArgumentException if the radius is out of range
     */
    public static PlacedMass ofUnbalance(Phasor unbalance, double radiusMillimetres, AngleSense sense) {
        Objects.requireNonNull(unbalance, "unbalance");
        PlacedMass nothing = new PlacedMass(Phasor.ZERO, null, sense).atRadius(radiusMillimetres);
        return new PlacedMass(unbalance.times(1 / nothing.radiusMetres), nothing.radiusMetres, sense);
    }

    /**
     * Puts this mass at a radius; the mass stays the same.
     *
     * @param radiusMillimetres radius in mm, finite, above zero
     * @return the same mass at that radius
     * @throws IllegalArgumentException if the radius is out of range
     */
    public PlacedMass atRadius(double radiusMillimetres) {
        return new PlacedMass(kilograms, Require.positive("radius", radiusMillimetres, "mm") / 1000, sense);
    }

    /**
     * Moves this mass to another radius so that its unbalance stays: the mass changes by the inverse ratio of the
     * radii.
     *
     * @param radiusMillimetres new radius in mm, finite, above zero
     * @return a mass that acts alike
     * @throws IllegalArgumentException if the radius is out of range
     * @throws IllegalStateException if the radius of this mass was left open
     */
    public PlacedMass movedTo(double radiusMillimetres) {
        return ofUnbalance(unbalance(), radiusMillimetres, sense);
    }

    /**
     * Returns the mass on the opposite side: removing it acts as adding this one does.
     *
     * @return the same mass and radius, 180° away
     */
    public PlacedMass toRemoveInstead() {
        return new PlacedMass(kilograms.negated(), radiusMetres, sense);
    }

    /**
     * Makes one mass of several: their unbalances are added as vectors.
     *
     * @param masses masses of one plane, each with its radius, at least one; negative masses are not possible, a
     *     removed mass is added on the opposite side
     * @param radiusMillimetres radius of the one mass in mm, finite, above zero
     * @return the mass that acts as all of them do, angles in the sense of the first
     * @throws IllegalArgumentException if there is none or the radius is out of range
     * @throws IllegalStateException if a radius was left open
     */
    public static PlacedMass combined(List<PlacedMass> masses, double radiusMillimetres) {
        Objects.requireNonNull(masses, "masses");
        if (masses.isEmpty()) {
            throw new IllegalArgumentException("masses must not be empty");
        }
        Phasor sum = Phasor.ZERO;
        for (PlacedMass mass : masses) {
            sum = sum.plus(Objects.requireNonNull(mass, "mass").unbalance());
        }
        return ofUnbalance(sum, radiusMillimetres, masses.get(0).sense);
    }

    /**
     * Shows the angle in another sense.
     *
     * @param newSense sense in which angles are counted
     * @return the same mass in the same place
     */
    public PlacedMass in(AngleSense newSense) {
        return new PlacedMass(kilograms, radiusMetres, newSense);
    }

    /**
     * Returns the mass with its angle.
     *
     * @return phasor in kg, argument counted with rotation
     */
    public Phasor kilograms() {
        return kilograms;
    }

    /**
     * Returns the mass in grams.
     *
     * @return mass in g, zero or more
     */
    public double grams() {
        return kilograms.magnitude() * 1000;
    }

    /**
     * Returns the angle from the mark in the sense of this mass.
     *
     * @return angle in degrees, from 0 up to, not including, 360
     */
    public double angleDegrees() {
        return sense.degreesOf(kilograms);
    }

    /**
     * Returns the radius.
     *
     * @return radius in mm; empty if left open
     */
    public OptionalDouble radiusMillimetres() {
        return radiusMetres == null ? OptionalDouble.empty() : OptionalDouble.of(radiusMetres * 1000);
    }

    /**
     * Returns the sense in which the angle is counted.
     *
     * @return the sense
     */
    public AngleSense sense() {
        return sense;
    }

    /**
     * Returns mass times radius.
     *
     * @return unbalance in kg·m, argument counted with rotation
     * @throws IllegalStateException if the radius was left open
     */
    public Phasor unbalance() {
        if (radiusMetres == null) {
            throw new IllegalStateException("radius must be known to tell an unbalance: " + this);
        }
        return kilograms.times(radiusMetres);
    }

    /**
     * Returns mass times radius in the unit of balancing sheets.
     *
     * @return unbalance in g·mm, zero or more
     * @throws IllegalStateException if the radius was left open
     */
    public double gramMillimetres() {
        return unbalance().magnitude() * 1e6;
    }

    /** Two masses are equal if mass, angle, radius and sense are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof PlacedMass m && kilograms.equals(m.kilograms)
                && Objects.equals(radiusMetres, m.radiusMetres) && sense == m.sense;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(kilograms, radiusMetres, sense);
    }

    /**
     * Returns the mass as one writes it: {@code 14.2 g at 231.0° against rotation, radius 160 mm}; zero has no angle.
     */
    @Override
    public String toString() {
        String text = Digits.significant(grams(), 3) + " g";
        if (grams() == 0) {
            return text;
        }
        text += " at " + Angles.text(angleDegrees()) + " " + sense;
        return radiusMetres == null ? text : text + ", radius " + Digits.compact(radiusMetres * 1000, 4) + " mm";
    }
}
