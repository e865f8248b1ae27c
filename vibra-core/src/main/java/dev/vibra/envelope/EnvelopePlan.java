package dev.vibra.envelope;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.transform.ComplexTransform;
import dev.vibra.transform.RealTransform;
import java.util.Arrays;

/**
 * Amplitude envelope of a band: the lines of the band, doubled, are moved down to 0 Hz and transformed back; the magnitude
 * is the envelope. The move doesn't change the magnitude, and the shorter inverse transform samples the envelope at no more
 * than its bandwidth asks.
 *
 * <p>The transform takes the recording as periodic; where its ends don't meet, the first and last few milliseconds of the
 * envelope carry the jump. The band is a brick wall at line resolution.
 *
 * <p>Holds workspace: not thread-safe, one per thread; allocates nothing once made.
 */
public final class EnvelopePlan {
    private final RealTransform forward;
    private final ComplexTransform back;
    private final double[] spectrum;
    private final double[] analytic;
    private final int firstLine;
    private final int lastLine;
    private final double outputSampleRate;

    private EnvelopePlan(int length, double sampleRate, Band band) {
        Require.atLeast("length", length, 4);
        Require.positive("sampleRateHertz", sampleRate, "Hz");
        band.requireBelowNyquist(sampleRate);
        double resolution = sampleRate / length;
        firstLine = (int) Math.ceil(band.lowestHertz() / resolution - 1e-9);
        lastLine = Math.min(length / 2, (int) Math.floor(band.highestHertz() / resolution + 1e-9));
        if (lastLine <= firstLine) {
            throw new IllegalArgumentException("band must hold at least two lines, " + resolution + " Hz apart: " + band);
        }
        forward = RealTransform.of(length);
        back = ComplexTransform.of(outputLength(length, lastLine - firstLine + 1));
        spectrum = new double[2 * forward.lines()];
        analytic = new double[2 * back.length()];
        outputSampleRate = sampleRate * back.length() / length;
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
        return new EnvelopePlan(length, sampleRateHertz, band);
    }

    /** The square of the envelope is twice as wide as the band: so many samples hold it without aliasing. */
    private static int outputLength(int length, int lines) {
        return (int) Math.min(length, Long.highestOneBit(2L * lines - 1) << 1);
    }

    /**
     * Returns the number of samples of the envelope.
     *
     * @return number of samples, at most the length of the recording
     */
    public int outputLength() {
        return back.length();
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
     * @param out receives {@link #outputLength()} values, zero or more, in the unit of the samples
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
        for (int i = 0; i < outputLength(); i++) {
            out[i] = Math.hypot(analytic[2 * i], analytic[2 * i + 1]);
        }
        return out;
    }

    /** Returns lengths. */
    @Override
    public String toString() {
        return "envelope of " + forward.length() + " samples, " + outputLength() + " out";
    }
}
