package dev.vibra.descriptor;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.machine.Rate;
import dev.vibra.quantity.Level;
import java.io.Serializable;
import java.util.Objects;

/**
 * A multiple of a rate, looked for in the spectrum of a recording: where it is, how large, and how sure.
 *
 * @param rate the rate
 * @param order which multiple of it, &gt; 0
 * @param hertz frequency of the line, or where it would lie, in Hz
 * @param level rms velocity of the line; of the noise there, if none stands out
 * @param log10Probability decimal logarithm of the probability that noise alone makes a line of that size, 0 or below
 * @param stands true if the line stands out of the noise
 */
public record NamedLine(Rate rate, int order, double hertz, Level level, double log10Probability, boolean stands)
        implements Serializable {
    /**
     * Checks what it is given.
     *
     * @param rate see the record
     * @param order see the record
     * @param hertz see the record
     * @param level see the record
     * @param log10Probability see the record
     * @param stands see the record
     */
    public NamedLine {
        Objects.requireNonNull(rate, "rate");
        Require.atLeast("order", order, 1);
        Require.positive("hertz", hertz, "Hz");
        Objects.requireNonNull(level, "level");
        if (!(log10Probability <= 0)) {
            throw Require.failure("log10Probability", "0 or below", log10Probability);
        }
    }

    /** {@return multiple and rate in words, as in {@code 2 × shaft speed}; without the multiple for the rate itself} */
    public String name() {
        return order == 1 ? rate.name() : order + " \u00d7 " + rate.name();
    }

    /** Returns name, frequency and level, as in {@code 2 × shaft speed 49.50 Hz 0.466 mm/s rms}. */
    @Override
    public String toString() {
        return name() + " " + Digits.significant(hertz, 4) + " Hz " + level + (stands ? "" : ", in the noise");
    }
}
