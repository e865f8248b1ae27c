package dev.vibra.envelope;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.transform.ComplexTransform;
import dev.vibra.transform.RealTransform;
import java.util.Objects;

/**
 * Amplitude envelope of a band: the lines of the band, doubled, are moved down to 0 Hz and transformed back; the
 * magnitude is the envelope. The move doesn't change the magnitude.
 *
 * <p>The envelope has no end of frequencies where it touches zero; it is taken at sixteen times the width of the band
 * (at most at the rate of the recording) and its lines above that width are cut off before it is handed out at a lower
 * rate, so that they can't come back as false ones. That may leave it slightly below zero.
 *
 * <p>The transform takes the recording as periodic; where its ends don't meet, the first and last few milliseconds of
 * the envelope carry the jump. The band is a brick wall at line resolution.
 *
 * <p>Holds workspace: not thread-safe, one per thread; allocates nothing once made.
 *
 * @see SquaredEnvelopePlan
 */
public final class EnvelopePlan {
    private static final int FINER = 8;
    /** A sum of squares between these has lost nothing that matters; outside, roots are taken with more care and time. */
    private static final double SMALLEST = 1e-200;
    private static final double LARGEST = 1e300;

    private final RealTransform forward;
    private final ComplexTransform back;
    private final AnalyticBand band;
    private final double[] spectrum;
    private final double[] analytic;
    private final int outputLength;
    private final double outputSampleRate;
    /** Cuts the envelope down to its output rate; null where it is there already. */
    private final RateReduction reduction;

    private EnvelopePlan(int length, double sampleRate, Band band) {
        this.band = new AnalyticBand(length, sampleRate, band);
        outputLength = this.band.samples(1);
        int fine = this.band.samples(FINER);
        forward = RealTransform.of(length);
        back = ComplexTransform.of(fine);
        spectrum = new double[2 * forward.lines()];
        analytic = new double[2 * fine];
        outputSampleRate = sampleRate * outputLength / length;
        reduction = fine == outputLength ? null : new RateReduction(fine, outputLength, this.band.width());
    }

    /**
     * Makes a plan.
     *
     * @param length number of samples of a recording, 4 to 2²⁶
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param band band up to half the sample rate that holds at least two lines of the whole recording
     * @return a plan with its workspace
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static EnvelopePlan of(int length, double sampleRateHertz, Band band) {
        return new EnvelopePlan(length, sampleRateHertz, Objects.requireNonNull(band, "band"));
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
     * @param out receives {@link #outputLength()} values in the unit of the samples
     * @return the output array
     * @throws IllegalArgumentException if a range leaves its array
     */
    public double[] process(double[] in, int offset, double[] out) {
        Require.range("out", out, 0, outputLength());
        forward.forward(Objects.requireNonNull(in, "in"), offset, spectrum);
        band.fill(spectrum, back, analytic);
        double[] fine = reduction == null ? out : reduction.input();
        magnitudes(fine);
        if (reduction != null) {
            reduction.reduce(out);
        }
        return out;
    }

    /** Squares first and roots in a loop of their own, which the compiler turns into several at a time. */
    private void magnitudes(double[] out) {
        double real = 0;
        double imaginary = 0;
        for (int i = 0; i < back.length(); i++) {
            double re = analytic[2 * i] * analytic[2 * i];
            double im = analytic[2 * i + 1] * analytic[2 * i + 1];
            out[i] = re + im;
            real += re;
            imaginary += im;
        }
        if (real + imaginary > SMALLEST && real + imaginary < LARGEST) {
            for (int i = 0; i < back.length(); i++) {
                out[i] = Math.sqrt(out[i]);
            }
        } else {
            for (int i = 0; i < back.length(); i++) {
                out[i] = Math.hypot(analytic[2 * i], analytic[2 * i + 1]);
            }
        }
    }

    /** Returns lengths. */
    @Override
    public String toString() {
        return "envelope of " + forward.length() + " samples, " + outputLength() + " out";
    }
}
