package dev.vibra.envelope;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.transform.ComplexTransform;
import dev.vibra.transform.RealTransform;
import java.util.Arrays;

/**
 * Amplitude envelope of a band, or its square: the lines of the band, doubled, are moved down to 0 Hz and transformed
 * back; the magnitude is the envelope. The move doesn't change the magnitude.
 *
 * <p>The square of the envelope is exactly as wide as the band, so it is sampled at little more than twice that. The
 * envelope itself has no end of frequencies where it touches zero; it is taken at eight times that rate (at most that
 * of the recording) and its lines above the width of the band are cut off before it is handed out at the lower rate, so
 * that they can't come back as false ones. That may leave it slightly below zero.
 *
 * <p>The transform takes the recording as periodic; where its ends don't meet, the first and last few milliseconds of
 * the envelope carry the jump. The band is a brick wall at line resolution.
 *
 * <p>Holds workspace: not thread-safe, one per thread; allocates nothing once made.
 */
public final class EnvelopePlan {
    private static final int FINER = 8;

    private final RealTransform forward;
    private final ComplexTransform back;
    private final boolean squared;
    private final double[] spectrum;
    private final double[] analytic;
    private final int firstLine;
    private final int lastLine;
    private final int outputLength;
    private final double outputSampleRate;
    /** Cuts the envelope down to its output rate; null where it is there already. */
    private final RateReduction reduction;

    private EnvelopePlan(int length, double sampleRate, Band band, boolean squared) {
        Require.atLeast("length", length, 4);
        Require.positive("sampleRateHertz", sampleRate, "Hz");
        band.requireBelowNyquist(sampleRate);
        double resolution = sampleRate / length;
        firstLine = (int) Math.ceil(band.lowestHertz() / resolution - 1e-9);
        lastLine = Math.min(length / 2, (int) Math.floor(band.highestHertz() / resolution + 1e-9));
        if (lastLine <= firstLine) {
            throw new IllegalArgumentException("band must hold at least two lines, " + resolution + " Hz apart: "
                    + band);
        }
        this.squared = squared;
        outputLength = powerOfTwoAbove(2L * (lastLine - firstLine + 1), length);
        int fine = squared ? outputLength : powerOfTwoAbove(2L * FINER * (lastLine - firstLine + 1), length);
        forward = RealTransform.of(length);
        back = ComplexTransform.of(fine);
        spectrum = new double[2 * forward.lines()];
        analytic = new double[2 * fine];
        outputSampleRate = sampleRate * outputLength / length;
        reduction = fine == outputLength ? null : new RateReduction(fine, outputLength, lastLine - firstLine);
    }

    private static int powerOfTwoAbove(long least, int most) {
        return (int) Math.min(most, Long.highestOneBit(least - 1) << 1);
    }

    /**
     * Makes a plan.
     *
     * @param length number of samples of a recording, at least 4
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param band band up to half the sample rate that holds at least two lines of the whole recording
     * @return a plan with its workspace
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static EnvelopePlan of(int length, double sampleRateHertz, Band band) {
        return new EnvelopePlan(length, sampleRateHertz, band, false);
    }

    /**
     * Makes a plan for the squared envelope.
     *
     * @param length number of samples of a recording, at least 4
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param band band up to half the sample rate that holds at least two lines of the whole recording
     * @return a plan with its workspace
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static EnvelopePlan squared(int length, double sampleRateHertz, Band band) {
        return new EnvelopePlan(length, sampleRateHertz, band, true);
    }

    /**
     * Returns the number of samples of the envelope.
     *
     * @return number of samples, at most the length of the recording
     */
    public int outputLength() {
        return outputLength;
    }

    /**
     * Returns the sample rate of the envelope.
     *
     * @return sample rate in Hz
     */
    public double outputSampleRateHertz() {
        return outputSampleRate;
    }

    /**
     * Computes the envelope.
     *
     * @param in samples; left alone
     * @param offset index of the first sample
     * @param out receives {@link #outputLength()} values in the unit of the samples, or its square
     * @return the output array
     * @throws IllegalArgumentException if a range leaves its array
     */
    public double[] process(double[] in, int offset, double[] out) {
        Require.range("out", 0, outputLength(), out.length);
        forward.forward(in, offset, spectrum);
        Arrays.fill(analytic, 0);
        double scale = (double) back.length() / forward.length();
        for (int k = firstLine; k <= lastLine; k++) {
            boolean single = k == 0 || 2 * k == forward.length();
            double factor = single ? scale : 2 * scale;
            analytic[2 * (k - firstLine)] = factor * spectrum[2 * k];
            analytic[2 * (k - firstLine) + 1] = factor * spectrum[2 * k + 1];
        }
        back.inverse(analytic, 0);
        double[] fine = reduction == null ? out : reduction.input();
        for (int i = 0; i < back.length(); i++) {
            double re = analytic[2 * i];
            double im = analytic[2 * i + 1];
            fine[i] = squared ? re * re + im * im : Math.hypot(re, im);
        }
        if (reduction != null) {
            reduction.reduce(out);
        }
        return out;
    }

    /** Returns lengths. */
    @Override
    public String toString() {
        return "envelope of " + forward.length() + " samples, " + outputLength() + " out";
    }
}
