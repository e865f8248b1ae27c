package dev.vibra.filter;

import dev.vibra.internal.Require;
import dev.vibra.window.Window;
import java.util.Objects;

/**
 * Change of the sample rate by a ratio of whole numbers: as if zeros were put between the samples, a low-pass filter of
 * linear phase applied, and samples taken from what comes out; only the samples that are kept are computed.
 *
 * <p>The filter has {@code 20·max(up, down) + 1} taps under a Kaiser window of β = 5: half amplitude at the lower of
 * the two half sample rates, pass band to about 0.82 of it, stop band of about -55 dB from about 1.18 of it on. Use a
 * window of larger β for more. Edge rule: the signal is taken as zero outside; ten periods of the lower sample rate at
 * each end are shaped by that.
 *
 * <p>Immutable and thread-safe.
 *
 * @see "R. E. Crochiere, L. R. Rabiner, Multirate Digital Signal Processing, Prentice Hall 1983, section 2.4"
 */
public final class Resampling {
    private static final int PERIODS = 10;
    private static final int LARGEST = 1 << 16;

    private final int up;
    private final int down;
    private final int half;
    private final double[] taps;

    private Resampling(int up, int down, Window window) {
        int divisor = divisor(Require.atLeast("up", up, 1), Require.atLeast("down", down, 1));
        this.up = up / divisor;
        this.down = down / divisor;
        int longest = Math.max(this.up, this.down);
        if (longest > LARGEST) {
            throw new IllegalArgumentException("up and down must be at most " + LARGEST + " in lowest terms: "
                    + this.up + "/" + this.down);
        }
        Objects.requireNonNull(window, "window");
        half = PERIODS * longest;
        taps = longest == 1 ? new double[2 * half + 1]
                : FirDesign.lowPass(2 * half + 1, 1, 2.0 * longest, window).taps();
        if (longest == 1) {
            taps[half] = 1;
        }
        for (int i = 0; i < taps.length; i++) {
            taps[i] *= this.up;
        }
    }

    /**
     * Makes a change of the sample rate by {@code up/down} with a Kaiser window of β = 5.
     *
     * @param up factor of the new rate, at least 1
     * @param down divisor of the new rate, at least 1
     * @return the resampling
     * @throws IllegalArgumentException if a factor is below 1 or, in lowest terms, above 2¹⁶
     */
    public static Resampling by(int up, int down) {
        return new Resampling(up, down, Window.kaiser(5));
    }

    /**
     * Makes a change of the sample rate by {@code up/down} with a chosen window.
     *
     * @param up factor of the new rate, at least 1
     * @param down divisor of the new rate, at least 1
     * @param window window of the low-pass filter
     * @return the resampling
     * @throws IllegalArgumentException if a factor is below 1 or, in lowest terms, above 2¹⁶
     */
    public static Resampling by(int up, int down, Window window) {
        return new Resampling(up, down, window);
    }

    /**
     * Returns the number of samples that come out.
     *
     * @param length number of samples that go in, zero or more
     * @return {@code ceil(length·up/down)}
     * @throws IllegalArgumentException if the length is negative or more than 2²⁶ samples would come of fewer
     */
    public int outputLength(int length) {
        long out = (Require.atLeast("length", length, 0) * (long) up + down - 1) / down;
        if (out > Require.MOST_SAMPLES && up > down) {
            throw new IllegalArgumentException("length must be at most " + (long) Require.MOST_SAMPLES * down / up
                    + " for " + this + ": " + length);
        }
        return (int) out;
    }

    /**
     * Returns the new sample rate.
     *
     * @param sampleRateHertz old sample rate in Hz
     * @return new sample rate in Hz
     * @throws IllegalArgumentException if the sample rate is out of range
     */
    public double outputSampleRateHertz(double sampleRateHertz) {
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        return Require.positive("new sample rate", sampleRateHertz * up / down, "Hz");
    }

    /**
     * Resamples a whole signal.
     *
     * @param samples samples; left alone
     * @return a new array of {@link #outputLength} samples, the first at the same time as the first sample
     * @throws IllegalArgumentException if too many samples would come out
     */
    public double[] process(double[] samples) {
        double[] out = new double[outputLength(Objects.requireNonNull(samples, "samples").length)];
        for (int m = 0; m < out.length; m++) {
            long at = (long) m * down + half; // place of the newest tap on the finer grid of the samples with zeros
            int last = (int) Math.min(samples.length - 1, at / up);
            int first = (int) Math.max(0, (at - taps.length + up) / up);
            double sum = 0;
            for (int i = first; i <= last; i++) {
                sum += samples[i] * taps[(int) (at - (long) i * up)];
            }
            out[m] = sum;
        }
        return out;
    }

    private static int divisor(int a, int b) {
        return b == 0 ? a : divisor(b, a % b);
    }

    /** Returns the ratio. */
    @Override
    public String toString() {
        return "resampling by " + up + "/" + down;
    }
}
