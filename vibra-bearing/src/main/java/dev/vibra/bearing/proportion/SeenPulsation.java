package dev.vibra.bearing.proportion;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.io.Serializable;
import java.util.Objects;

/**
 * Pulsation of a band found without knowing where to look: a rate with its harmonics.
 *
 * @param band band whose envelope shows it best
 * @param hertz rate fitted to all harmonics seen, Hz
 * @param depth depth that the fundamental and at least one other harmonic reach, 0 to 2
 * @param log10Probability decimal logarithm of the probability that stationary noise makes such a family at any rate
 *     and in any band searched; 0 (certain) or less
 * @param rate the rate as multiple of the speed, with its sidebands
 */
public record SeenPulsation(Band band, double hertz, double depth, double log10Probability, ObservedRate rate)
        implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * Checks the values.
     *
     * @param band see the record
     * @param hertz see the record
     * @param depth see the record
     * @param log10Probability see the record
     * @param rate see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public SeenPulsation {
        Objects.requireNonNull(band, "band");
        Require.positive("hertz", hertz, "Hz");
        Require.notNegative("depth", depth, "");
        Require.notNegative("-log10Probability", -log10Probability, "");
        Objects.requireNonNull(rate, "rate");
    }

    /** Returns rate, depth and band, as in {@code 106.8 Hz = 3.567x, depth 0.71, in 2000–4000 Hz}. */
    @Override
    public String toString() {
        return Digits.significant(hertz, 4) + " Hz = " + rate + ", depth " + Digits.significant(depth, 2) + ", in "
                + band;
    }
}
