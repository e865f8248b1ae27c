package dev.vibra.balance.placement;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Mass at a numbered position.
 *
 * @param position number of the position, from 1
 * @param grams mass in g, finite; negative means to remove
 */
public record PositionedMass(int position, double grams) implements Serializable {
    /**
     * Checks the values.
     *
     * @param position number of the position, from 1
     * @param grams mass in g, finite; negative means to remove
     */
    public PositionedMass {
        Require.atLeast("position", position, 1);
        Require.finite("mass in g", grams);
    }

    /** Returns mass and position, as in {@code 8.20 g at position 3}. */
    @Override
    public String toString() {
        return Digits.significant(grams, 3) + " g at position " + position;
    }
}
