package dev.vibra.trend;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * A best value with the ends of its confidence interval.
 *
 * @param lowest lower end
 * @param best best estimate
 * @param highest upper end
 */
public record Interval(double lowest, double best, double highest) implements Serializable {
    /**
     * Checks the order.
     *
     * @param lowest lower end, not above the best value
     * @param best best estimate
     * @param highest upper end, not below the best value
     * @throws IllegalArgumentException if the values are out of order or not finite
     */
    public Interval {
        if (!(lowest <= best && best <= highest)) {
            throw new IllegalArgumentException(
                    "lowest, best and highest must rise: " + lowest + ", " + best + ", " + highest);
        }
        Require.finite("lowest", lowest);
        Require.finite("highest", highest);
    }

    /**
     * Tells whether a value lies within the interval, ends included.
     *
     * @param value value to test
     * @return true if it does
     */
    public boolean contains(double value) {
        return value >= lowest && value <= highest;
    }

    /** Returns best value and ends, as in {@code 47.2 (38.9 to 61)}. */
    @Override
    public String toString() {
        return Digits.compact(best, 3) + " (" + Digits.compact(lowest, 3) + " to " + Digits.compact(highest, 3) + ")";
    }
}
