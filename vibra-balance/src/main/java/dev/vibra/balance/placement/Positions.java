package dev.vibra.balance.placement;

import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * Places for masses on one circle: holes, blades, bolts. They are numbered from 1; those in use already can be left
 * out.
 */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
public final class Positions implements Serializable {
    private static final long serialVersionUID = 1;
    /** A mass so near to a position, in rad, stands on it: what would go beside it is rounding. */
    private static final double NOTHING = 1e-9;
    /** Two positions closer than this are one that was typed twice; the library's own bound. */
    private static final double CLOSEST_DEGREES = 0.01;
    private static final int MOST = 10_000;

    private final double[] anglesDegrees; // by number less one, in the sense
    private final AngleSense sense;
    private final List<Integer> free; // numbers in the order of their angles

    private Positions(double[] anglesDegrees, AngleSense sense, List<Integer> free) {
        double[] angles = anglesDegrees.clone();
        Require.allFinite("anglesDegrees", angles);
        requireApart(angles);
        this.anglesDegrees = Arrays.stream(angles).map(Positions::wrapped).toArray();
        this.sense = Objects.requireNonNull(sense, "sense");
        Require.atLeast("count of free positions", free.size(), 1);
        free.forEach(this::requireNumber);
        this.free = free.stream().distinct().sorted(Comparator.comparingDouble(this::angleDegrees)).toList();
    }

    private Object readResolve() {
        return new Positions(anglesDegrees, sense, free);
    }

    /** Neighbours on the circle are compared, the last with the first, too. */
    private static void requireApart(double[] angles) {
        Require.atLeast("count of positions", angles.length, 1);
        int[] order = IntStream.range(0, angles.length).boxed()
                .sorted(Comparator.comparingDouble(i -> wrapped(angles[i]))).mapToInt(Integer::intValue).toArray();
        for (int k = 0; k < order.length && order.length > 1; k++) {
            int one = order[k];
            int other = order[(k + 1) % order.length];
            if (Math.abs(Math.IEEEremainder(angles[one] - angles[other], 360)) < CLOSEST_DEGREES * (1 - 1e-9)) {
                int first = Math.min(one, other);
                int second = Math.max(one, other);
                throw Require.failure("anglesDegrees[" + second + "]", "away from anglesDegrees[" + first + "], "
                        + angles[first], angles[second]);
            }
        }
    }

    private static Positions allFree(double[] anglesDegrees, AngleSense sense) {
        List<Integer> numbers = new ArrayList<>();
        for (int number = 1; number <= anglesDegrees.length; number++) {
            numbers.add(number);
        }
        return new Positions(anglesDegrees, sense, numbers);
    }

    /**
     * Makes equally spaced positions; the first is at angle 0, the others follow in the sense in which angles are
     * counted.
     *
     * @param count number of positions, from 3 to 10000
     * @param sense sense in which positions and angles are counted
     * @return the positions
     * @throws IllegalArgumentException if the count is out of range
     */
    public static Positions of(int count, AngleSense sense) {
        if (Require.atLeast("count of positions", count, 3) > MOST) {
            throw new IllegalArgumentException("count of positions must be at most " + MOST + ": " + count);
        }
        double[] angles = new double[count];
        for (int i = 0; i < count; i++) {
            angles[i] = 360.0 * i / count;
        }
        return allFree(angles, sense);
    }

    /**
     * Makes positions at angles of their own.
     *
     * @param sense sense in which the angles are counted
     * @param anglesDegrees angle of each position from the mark in degrees, finite, at least one, all different; the
     *     first is position 1
     * @return the positions
     * @throws IllegalArgumentException if there is no angle, one is not finite, or two are less than 0.01° apart
     */
    public static Positions at(AngleSense sense, double... anglesDegrees) {
        return allFree(Objects.requireNonNull(anglesDegrees, "anglesDegrees"), sense);
    }

    private static double wrapped(double degrees) {
        double angle = degrees % 360;
        double positive = angle < 0 ? angle + 360 : angle;
        return positive >= 360 ? 0 : positive + 0.0; // a tiny negative angle plus 360 rounds to 360; and -0.0 is 0
    }

    /**
     * Turns all positions, for a mark that is not at the first of them.
     *
     * @param degrees angle of position 1 from the mark in degrees in this sense, finite
     * @return a changed copy
     * @throws IllegalArgumentException if the angle is not finite
     */
    public Positions startingAt(double degrees) {
        Require.finite("angle of position 1 in degrees", degrees);
        double turn = wrapped(degrees) - anglesDegrees[0];
        return new Positions(Arrays.stream(anglesDegrees).map(angle -> wrapped(angle + turn)).toArray(), sense, free);
    }

    /**
     * Leaves out positions that are taken already; the others keep their numbers.
     *
     * @param numbers numbers of positions that nothing can go on
     * @return a changed copy
     * @throws IllegalArgumentException if there is no such position, or none is left
     */
    public Positions without(int... numbers) {
        Objects.requireNonNull(numbers, "numbers");
        TreeSet<Integer> left = new TreeSet<>(free);
        for (int number : numbers) {
            left.remove(requireNumber(number));
        }
        if (left.isEmpty()) {
            throw new IllegalArgumentException("at least one position must be left: without "
                    + Arrays.toString(numbers) + " of " + count());
        }
        return new Positions(anglesDegrees, sense, List.copyOf(left));
    }

    /**
     * Counts all positions, free ones and others.
     *
     * @return the highest number
     */
    public int count() {
        return anglesDegrees.length;
    }

    /**
     * Returns the positions that masses can go on.
     *
     * @return numbers in the order of their angles
     */
    public List<Integer> free() {
        return free;
    }

    /**
     * Returns how angles are counted.
     *
     * @return the sense
     */
    public AngleSense sense() {
        return sense;
    }

    /**
     * Returns the angle of a position.
     *
     * @param position number from 1 to the count
     * @return angle in degrees in this sense, from 0 up to, not including, 360
     * @throws IllegalArgumentException if there is no such position
     */
    public double angleDegrees(int position) {
        return anglesDegrees[requireNumber(position) - 1];
    }

    private int requireNumber(int position) {
        if (position < 1 || position > count()) {
            throw new IllegalArgumentException("position must be within 1 to " + count() + ": " + position);
        }
        return position;
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
     * Tells whether a mass can be split: it stands on a free position, or between two less than half a turn apart.
     *
     * @param mass mass to split
     * @return true if {@link #split} has an answer
     */
    public boolean canHold(PlacedMass mass) {
        Objects.requireNonNull(mass, "mass");
        Gap gap = gapAround(mass);
        return mass.kilograms().magnitude() == 0 || gap.standsOn() > 0 || gap.delta() < Math.PI - NOTHING;
    }

    /**
     * Splits a mass onto the two free positions beside its angle; on a position it stays whole.
     *
     * <p>With spacing δ and the angle ψ behind the first of the two: {@code m₁ = m·sin(δ−ψ)/sin δ}, {@code m₂ = m·sin
     * ψ/sin δ}. Their vector sum is the mass.
     *
     * @param mass mass to split
     * @return one or two masses at positions; none for a mass of zero
     * @throws IllegalArgumentException if the free positions beside the angle are half a turn apart or more
     */
    public List<PositionedMass> split(PlacedMass mass) {
        Objects.requireNonNull(mass, "mass");
        double grams = mass.grams();
        if (grams == 0) {
            return List.of();
        }
        Gap gap = gapAround(mass);
        if (gap.standsOn() > 0) {
            return List.of(new PositionedMass(gap.standsOn(), grams));
        }
        if (!canHold(mass)) {
            throw new IllegalArgumentException("mass must lie between free positions less than half a turn apart: "
                    + mass + " between positions " + gap.before() + " and " + gap.after());
        }
        double sine = Math.sin(gap.delta());
        return List.of(new PositionedMass(gap.before(), grams * Math.sin(gap.delta() - gap.psi()) / sine),
                new PositionedMass(gap.after(), grams * Math.sin(gap.psi()) / sine));
    }

    /** Free positions beside an angle: their distance δ and the angle's distance ψ from the first, in rad. */
    private record Gap(int before, int after, double delta, double psi, int standsOn) {}

    private Gap gapAround(PlacedMass mass) {
        double angle = sense.degreesOf(mass.kilograms());
        int next = 0;
        while (next < free.size() && angleDegrees(free.get(next)) <= angle) {
            next++;
        }
        int before = free.get((next + free.size() - 1) % free.size());
        int after = free.get(next % free.size());
        int standsOn = 0;
        for (int beside : new int[] {before, after}) {
            double apart = Math.IEEEremainder(angle - angleDegrees(beside), 360);
            standsOn = Math.abs(Math.toRadians(apart)) <= NOTHING ? beside : standsOn;
        }
        double delta = before == after ? 360 : wrapped(angleDegrees(after) - angleDegrees(before));
        return new Gap(before, after, Math.toRadians(delta), Math.toRadians(wrapped(angle - angleDegrees(before))),
                standsOn);
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
        for (PositionedMass mass : Require.copy("masses", masses)) {
            sum = sum.plus(direction(mass.position()).times(mass.grams() / 1000));
        }
        return PlacedMass.ofPhasor(sum, sense);
    }

    /** Two circles are equal if angles, sense and free positions are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Positions p && Arrays.equals(anglesDegrees, p.anglesDegrees) && sense == p.sense
                && free.equals(p.free);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(Arrays.hashCode(anglesDegrees), sense, free);
    }

    /** Returns the count and where they start. */
    @Override
    public String toString() {
        String start = anglesDegrees[0] == 0 ? "1 at the mark" : "1 at " + Digits.compact(anglesDegrees[0], 4) + "°";
        return count() + " position(s), " + start + ", counted " + sense
                + (free.size() < count() ? ", " + free.size() + " free" : "");
    }
}
