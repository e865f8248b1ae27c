package dev.vibra.bearing;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;

/**
 * Significant pulsation of one band at the rate of an element.
 *
 * @param band band whose envelope shows it
 * @param hertz rate fitted to all harmonics seen, Hz
 * @param depth depth that the fundamental and at least one other harmonic reach, 0 to 2
 * @param log10Probability decimal logarithm of the probability that stationary noise makes such a family of harmonics
 *     at any place searched: corrected for all rates, elements and bands tried; 0 (certain) or less
 * @param lines lines that carry the evidence, harmonics first, then sidebands
 */
public record Pulsation(Band band, double hertz, double depth, double log10Probability, List<EnvelopeLine> lines)
        implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * Checks the values and copies the list.
     *
     * @param band see the record
     * @param hertz see the record
     * @param depth see the record
     * @param log10Probability see the record
     * @param lines see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public Pulsation {
        Objects.requireNonNull(band, "band");
        Require.positive("hertz", hertz, "Hz");
        Require.notNegative("depth", depth, "");
        EnvelopeLine.requireLogarithm(log10Probability);
        lines = Require.copy("lines", lines);
    }

    /** Returns rate, depth and band, as in {@code 107.6 Hz, depth 0.71, in 2000–4000 Hz}. */
    @Override
    public String toString() {
        return Digits.significant(hertz, 4) + " Hz, depth " + Digits.significant(depth, 2) + ", in " + band;
    }
}
