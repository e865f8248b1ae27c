package dev.vibra.spectrum;

import dev.vibra.internal.Digits;
import java.io.Serializable;

/**
 * Interval in which a value lies with a stated probability.
 *
 * @param lower lower end
 * @param upper upper end
 */
public record ConfidenceInterval(double lower, double upper) implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * Checks the order.
     *
     * @param lower see the record
     * @param upper see the record
     * @throws IllegalArgumentException if the ends are out of order or not numbers
     */
    public ConfidenceInterval {
        if (!(lower <= upper)) {
            throw new IllegalArgumentException("lower and upper must rise: " + lower + ", " + upper);
        }
    }

    /** Returns the ends. */
    @Override
    public String toString() {
        return Digits.significant(lower, 3) + " to " + Digits.significant(upper, 3);
    }
}
