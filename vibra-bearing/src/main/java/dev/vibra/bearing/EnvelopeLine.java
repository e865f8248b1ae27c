package dev.vibra.bearing;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * One line of an envelope spectrum that carries a verdict: harmonic {@code h} of the element's frequency, or a sideband
 * {@code h·f + n·modulation} of it.
 *
 * @param harmonic number of the harmonic, from 1
 * @param sideband number of the sideband, negative below the harmonic; 0 for the harmonic itself
 * @param frequencyHertz measured frequency in Hz
 * @param depth depth of pulsation, zero or more
 * @param timesFloor depth over that of the noise floor
 * @param log10Probability decimal logarithm of the probability that noise alone reaches this line, 0 or less
 */
public record EnvelopeLine(int harmonic, int sideband, double frequencyHertz, double depth, double timesFloor,
        double log10Probability) implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * Checks the values.
     *
     * @param harmonic see the record
     * @param sideband see the record
     * @param frequencyHertz see the record
     * @param depth see the record
     * @param timesFloor see the record
     * @param log10Probability see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public EnvelopeLine {
        Require.atLeast("harmonic", harmonic, 1);
        Require.positive("frequencyHertz", frequencyHertz, "Hz");
        Require.notNegative("depth", depth, "");
        Require.notNegative("timesFloor", timesFloor, "");
        requireLogarithm(log10Probability);
    }

    static void requireLogarithm(double log10Probability) {
        if (!(log10Probability <= 0 && log10Probability > Double.NEGATIVE_INFINITY)) {
            throw Require.failure("log10Probability", "finite and 0 or less", log10Probability);
        }
    }

    /**
     * Tells whether this is a sideband.
     *
     * @return false for a harmonic
     */
    public boolean isSideband() {
        return sideband != 0;
    }

    /**
     * Returns the short name of the line.
     *
     * @return for example {@code 2f} or {@code 1f−2m}, m being the modulation rate
     */
    public String label() {
        if (sideband == 0) {
            return harmonic + "f";
        }
        return harmonic + "f" + (sideband < 0 ? "−" : "+") + (Math.abs(sideband) == 1 ? "" : Math.abs(sideband)) + "m";
    }

    /** Returns name, frequency, depth and height over the floor, as in {@code 2f 214.9 Hz depth 0.71 (95 × floor)}. */
    @Override
    public String toString() {
        return label() + " " + Digits.significant(frequencyHertz, 4) + " Hz depth " + Digits.significant(depth, 2)
                + " (" + Digits.significant(timesFloor, 2) + " × floor)";
    }
}
