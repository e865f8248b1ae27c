package dev.vibra.balance.placement;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * What can be fitted in a plane: its positions, the largest mass on each and in all, and the sizes that are at hand.
 *
 * @param positions places for masses
 * @param eachGrams largest mass on one position in g, above zero, infinite if there is no limit
 * @param allGrams largest sum of masses in the plane in g, above zero, infinite if there is no limit
 * @param sizesGrams masses that exist, each above zero, any number of each, one to a position; empty if any mass can be
 * made
 */
public record PlaneFitting(Positions positions, double eachGrams, double allGrams, List<Double> sizesGrams)
        implements Serializable {
    private static final int SHOWN = 12;

    /**
     * Checks the values.
     *
     * @param positions places for masses
     * @param eachGrams largest mass on one position in g, above zero, infinite if there is no limit
     * @param allGrams largest sum of masses in the plane in g, above zero, infinite if there is no limit
     * @param sizesGrams masses that exist, each above zero, any number of each, one to a position; empty if any mass
     * can be made
     */
    public PlaneFitting {
        Objects.requireNonNull(positions, "positions");
        requireLimit("largest mass on a position", eachGrams);
        requireLimit("largest mass in the plane", allGrams);
        sizesGrams = Require.copy("sizesGrams", sizesGrams);
        sizesGrams.forEach(size -> Require.positive("size", size, "g"));
    }

    private static void requireLimit(String name, double grams) {
        if (!(grams > 0)) {
            throw Require.failure(name, "above 0 g", grams);
        }
    }

    /**
     * Makes positions without limits, for masses of any size.
     *
     * @param positions places for masses
     * @return the fitting
     */
    public static PlaneFitting on(Positions positions) {
        return new PlaneFitting(positions, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, List.of());
    }

    /**
     * Sets the largest mass on one position.
     *
     * @param grams mass in g, above zero
     * @return a changed copy
     * @throws IllegalArgumentException if the mass is out of range
     */
    public PlaneFitting atMostEach(double grams) {
        return new PlaneFitting(positions, grams, allGrams, sizesGrams);
    }

    /**
     * Sets the largest sum of masses in the plane.
     *
     * @param grams mass in g, above zero
     * @return a changed copy
     * @throws IllegalArgumentException if the mass is out of range
     */
    public PlaneFitting atMostInAll(double grams) {
        return new PlaneFitting(positions, eachGrams, grams, sizesGrams);
    }

    /**
     * Sets the masses that are at hand.
     *
     * @param grams sizes in g, each above zero
     * @return a changed copy
     * @throws IllegalArgumentException if a size is out of range
     */
    public PlaneFitting withSizes(double... grams) {
        Objects.requireNonNull(grams, "grams");
        return new PlaneFitting(positions, eachGrams, allGrams,
                Arrays.stream(grams).boxed().toList());
    }

    /**
     * Tells whether there is an end to the mass that can go on.
     *
     * @return true if the mass on each position or in the plane has a limit, or only given sizes exist
     */
    public boolean isLimited() {
        return eachGrams < Double.POSITIVE_INFINITY || allGrams < Double.POSITIVE_INFINITY || !sizesGrams.isEmpty();
    }

    /** Returns positions and limits in one line. */
    @Override
    public String toString() {
        return positions + (eachGrams < Double.POSITIVE_INFINITY ? ", at most " + Digits.compact(eachGrams, 4)
                + " g each"
                : "") + (allGrams < Double.POSITIVE_INFINITY ? ", at most " + Digits.compact(allGrams, 4) + " g in all"
                : "")
                + (sizesGrams.isEmpty() ? "" : ", sizes of "
                + String.join(", ", sizesGrams.stream().limit(SHOWN).map(s -> Digits.compact(s, 4)).toList())
                + (sizesGrams.size() > SHOWN ? ", … " + sizesGrams.size() + " sizes" : "") + " g");
    }
}
