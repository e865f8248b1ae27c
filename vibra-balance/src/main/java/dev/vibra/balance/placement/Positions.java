package dev.vibra.balance.placement;

import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Equally spaced places for masses on one circle: holes, blades, bolts. They are numbered from 1; position 1 is at
 * angle 0 and the others follow in the sense in which angles are counted.
 *
 * @param count number of positions, at least 3
 * @param sense sense in which positions and angles are counted
 */
public record Positions(int count, AngleSense sense) implements Serializable {
    /** Shares below this part of the mass are rounding, not a second mass. */
    private static final double NOTHING = 1e-9;

    /**
     * Checks the count.
     *
     * @param count number of positions, at least 3
     * @param sense sense in which positions and angles are counted
     */
    public Positions {
        Require.atLeast("count of positions", count, 3);
        Objects.requireNonNull(sense, "sense");
    }

    /**
     * Makes positions.
     *
     * @param count number of positions, at least 3
     * @param sense sense in which positions and angles are counted
     * @return the positions
     * @throws IllegalArgumentException if there are fewer than 3
     */
    public static Positions of(int count, AngleSense sense) {
        return new Positions(count, sense);
    }

    /**
     * Returns the angle of a position.
     *
     * @param position number from 1 to the count
     * @return angle in degrees in this sense, from 0 up to, not including, 360
     * @throws IllegalArgumentException if there is no such position
     */
    public double angleDegrees(int position) {
        if (position < 1 || position > count) {
            throw new IllegalArgumentException("position must be within 1 to " + count + ": " + position);
        }
        return 360.0 * (position - 1) / count;
    }

    /**
     * Returns the direction of a position.
     *
     * @param position number from 1 to the count
     * @return phasor of magnitude 1, argument with rotation
     * @throws IllegalArgumentException if there is no such position
     */
    public Phasor direction(int position) {
        return Phasor.polar(1, sense.toWithRotation(Math.toRadians(angleDegrees(position))));
    }

    /**
     * Splits a mass onto the two positions beside its angle; on a position it stays whole.
     *
     * <p>With spacing δ and the angle ψ behind the first of the two: {@code m₁ = m·sin(δ−ψ)/sin δ}, {@code m₂ = m·sin
     * ψ/sin δ}. Their vector sum is the mass.
     *
     * @param mass mass to split
     * @return one or two masses at positions; none for a mass of zero
     */
    public List<PositionedMass> split(PlacedMass mass) {
        double spacing = 360.0 / count;
        double steps = sense.degreesOf(mass.kilograms()) / spacing;
        int before = (int) Math.floor(steps);
        double psi = Math.toRadians((steps - before) * spacing);
        double delta = Math.toRadians(spacing);
        double whole = mass.kilograms().magnitude();
        List<PositionedMass> parts = new ArrayList<>();
        add(parts, before, whole * Math.sin(delta - psi) / Math.sin(delta), whole);
        add(parts, before + 1, whole * Math.sin(psi) / Math.sin(delta), whole);
        return List.copyOf(parts);
    }

    private void add(List<PositionedMass> parts, int index, double kilograms, double whole) {
        if (kilograms > NOTHING * whole) {
            parts.add(new PositionedMass(index % count + 1, kilograms * 1000));
        }
    }

    /**
     * Returns the vector sum of masses at positions.
     *
     * @param masses masses at positions of this circle
     * @return the one mass that acts like all of them; its radius is left open
     * @throws IllegalArgumentException if a position does not exist
     */
    public PlacedMass combined(List<PositionedMass> masses) {
        Phasor sum = Phasor.ZERO;
        for (PositionedMass mass : masses) {
            sum = sum.plus(direction(mass.position()).times(mass.grams() / 1000));
        }
        return PlacedMass.ofPhasor(sum, sense);
    }

    /** Returns the count and where they start. */
    @Override
    public String toString() {
        return count + " positions, 1 at the mark, counted " + sense;
    }
}
