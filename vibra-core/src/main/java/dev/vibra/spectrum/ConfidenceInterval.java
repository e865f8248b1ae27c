package dev.vibra.spectrum;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Interval in which a value lies with a stated probability.
 *
 * @param lower lower end, finite
 * @param upper upper end, finite, at least the lower one
 */
public record ConfidenceInterval(double lower, double upper) implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * Checks the order.
     *
     * @param lower see the record
     * @param upper see the record
     * @throws IllegalArgumentException if the ends are out of order or not finite
     */
    public ConfidenceInterval {
        Require.finite("lower", lower);
        Require.finite("upper", upper);
        if (!(lower <= upper)) {
            throw Require.failure("upper", "at least lower, " + lower, upper);
        }
    }

    /** Returns the ends. */
    @Override
    public String toString() {
        return Digits.significant(lower, 3) + " to " + Digits.significant(upper, 3);
    }
}
