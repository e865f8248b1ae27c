package dev.vibra.spectrum;

import dev.vibra.internal.Digits;
import java.io.Serializable;

/**
 * Interval in which a value lies with a stated probability.
 *
 * @param lower lower end
 * @param upper upper end
 */
public record Interval(double lower, double upper) implements Serializable {
    /** Returns the ends. */
    @Override
    public String toString() {
        return Digits.significant(lower, 3) + " to " + Digits.significant(upper, 3);
    }
}
