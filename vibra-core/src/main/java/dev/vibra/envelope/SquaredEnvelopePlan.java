package dev.vibra.envelope;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.transform.ComplexTransform;
import dev.vibra.transform.RealTransform;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Squares of the amplitude envelopes of several bands: the recording is transformed once, and each band back. With the
 * candidate bands of a bearing diagnosis that takes a third of the time of one plan a band.
 *
 * <p>The square of an envelope is exactly as wide as its band, so it is sampled at little more than twice that. The
 * transform takes the recording as periodic; where its ends don't meet, the first and last few milliseconds of the
 * envelope carry the jump.
 *
 * <p>Holds workspace: not thread-safe, one per thread; allocates nothing once made.
 *
 * @see EnvelopePlan
 */
public final class SquaredEnvelopePlan {
    private final double sampleRateHertz;
    private final RealTransform forward;
    private final AnalyticBand[] bands;
    private final ComplexTransform[] back;
    private final double[] spectrum;
    private final double[] analytic;

    private SquaredEnvelopePlan(int length, double sampleRateHertz, List<Band> bands) {
        this.sampleRateHertz = sampleRateHertz;
        this.bands = bands.stream().map(band -> new AnalyticBand(length, sampleRateHertz, band))
                .toArray(AnalyticBand[]::new);
        forward = RealTransform.of(length);
        back = new ComplexTransform[this.bands.length];
        Map<Integer, ComplexTransform> made = new HashMap<>();
        int most = 0;
        for (int i = 0; i < back.length; i++) {
            int samples = this.bands[i].samples(1);
            back[i] = made.computeIfAbsent(samples, ComplexTransform::of);
            most = Math.max(most, samples);
        }
        spectrum = new double[2 * forward.lines()];
        analytic = new double[2 * most];
    }

    /**
     * Makes a plan.
     *
     * @param length number of samples of a recording, 4 to 2²⁶
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param bands one band or more, each up to half the sample rate and of at least two lines of the whole recording
     * @return a plan with its workspace
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static SquaredEnvelopePlan of(int length, double sampleRateHertz, List<Band> bands) {
        Require.atLeast("number of bands", Require.copy("bands", bands).size(), 1);
        return new SquaredEnvelopePlan(length, sampleRateHertz, bands);
    }

    /**
     * Returns the number of samples of a squared envelope.
     *
     * @param band number of the band from 0
     * @return number of samples, at most the length of the recording
     * @throws IndexOutOfBoundsException if there is no such band
     */
    public int outputLength(int band) {
        return back[Objects.checkIndex(band, back.length)].length();
    }

    /**
     * Returns the sample rate of a squared envelope.
     *
     * @param band number of the band from 0
     * @return sample rate in Hz
     * @throws IndexOutOfBoundsException if there is no such band
     */
    public double outputSampleRateHertz(int band) {
        return sampleRateHertz * outputLength(band) / forward.length();
    }

    /**
     * Takes a recording, whose envelopes are then asked for.
     *
     * @param in samples; left alone
     * @param offset index of the first sample
     * @throws IllegalArgumentException if the range leaves the array
     */
    public void load(double[] in, int offset) {
        forward.forward(Objects.requireNonNull(in, "in"), offset, spectrum);
    }

    /**
     * Computes the squared envelope of one band of the recording taken last: twice the power in the band over time.
     *
     * @param band number of the band from 0
     * @param out receives {@link #outputLength(int)} values in the unit of the samples squared
     * @return the output array
     * @throws IllegalArgumentException if the output array is too short
     * @throws IndexOutOfBoundsException if there is no such band
     */
    public double[] squares(int band, double[] out) {
        int samples = outputLength(band);
        Require.range("out", out, 0, samples);
        bands[band].fill(spectrum, back[band], analytic);
        for (int i = 0; i < samples; i++) {
            out[i] = analytic[2 * i] * analytic[2 * i] + analytic[2 * i + 1] * analytic[2 * i + 1];
        }
        return out;
    }

    /** Returns length and number of bands. */
    @Override
    public String toString() {
        return "squared envelopes of " + forward.length() + " samples, " + bands.length + " band(s)";
    }
}
