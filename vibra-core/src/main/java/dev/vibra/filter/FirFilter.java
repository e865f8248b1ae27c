package dev.vibra.filter;

import dev.vibra.internal.Convolution;
import dev.vibra.internal.Convolver;
import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;
import java.util.Arrays;
import java.util.Objects;

/**
 * A running non-recursive filter: {@code y[n] = Σ h[k]·x[n-k]}. Blocks of any size give the output of one pass, to the
 * last digit. Each sample in gives its sample out at once, also of a filter of more than 256 taps, whose later taps are
 * convolved by transforms; there a sample that is not finite spoils up to two blocks of 128 samples (512 from 8193 taps
 * on) more than the length of the filter.
 *
 * <p>Holds state: not thread-safe, one per signal; allocates nothing once made.
 */
public final class FirFilter implements Resumable<FirFilter> {
    /** Taps beyond would carry samples out of the range of a double. */
    private static final double MOST = 1e100;

    private static final StateFormat FORMAT = new StateFormat("fir", 1);
    private static final StateFormat LONG_FORMAT = new StateFormat("fir-long", 1);
    /** More taps are convolved by transforms: of a stream, which has to hand out each sample, and of a whole signal. */
    private static final int MOST_DIRECT = 256;
    private static final int MOST_DIRECT_OF_WHOLE = 96;

    private final double[] taps;
    private final StateFormat format;
    private final Convolution convolution;
    private final int settings;

    private FirFilter(double[] taps) {
        settings = StateFormat.settings(StateFormat.rounded(taps));
        this.taps = taps;
        boolean direct = taps.length <= MOST_DIRECT;
        format = direct ? FORMAT : LONG_FORMAT;
        convolution = direct ? new Convolver(taps) : new LongConvolution(taps);
    }

    /**
     * Makes a filter at rest.
     *
     * @param taps impulse response, at least one value, all finite; copied
     * @return the filter
     * @throws IllegalArgumentException if there is no tap or one is not finite
     */
    public static FirFilter of(double... taps) {
        double[] copy = Objects.requireNonNull(taps, "taps").clone();
        Require.atLeast("number of taps", copy.length, 1);
        Require.allFinite("taps", copy);
        for (double tap : copy) {
            Require.within("taps", tap, -MOST, MOST, "");
        }
        return new FirFilter(copy);
    }

    /**
     * Returns the impulse response.
     *
     * @return a new array
     */
    public double[] taps() {
        return taps.clone();
    }

    /**
     * Returns the delay of a symmetric filter.
     *
     * @return delay in samples, half a sample more for an even number of taps
     */
    public double delaySamples() {
        return 0.5 * (taps.length - 1);
    }

    /**
     * Computes the magnitude of the frequency response.
     *
     * @param hertz frequency in Hz, from 0 to half the sample rate
     * @param sampleRateHertz sample rate in Hz, above zero
     * @return gain, zero or more
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double gain(double hertz, double sampleRateHertz) {
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        Require.within("hertz", hertz, 0, sampleRateHertz / 2, "Hz");
        double re = 0;
        double im = 0;
        for (int k = 0; k < taps.length; k++) {
            double angle = 2 * Math.PI * hertz / sampleRateHertz * k;
            re += taps[k] * Math.cos(angle);
            im += taps[k] * Math.sin(angle);
        }
        return Math.hypot(re, im);
    }

    /**
     * Filters a block and remembers the state for the next one.
     *
     * @param in input samples; left alone unless it is also the output
     * @param inOffset index of the first input sample
     * @param out receives the output; may be the input array at the same offset
     * @param outOffset index of the first output sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if a range leaves its array
     */
    public void process(double[] in, int inOffset, double[] out, int outOffset, int length) {
        Require.range("in", in, inOffset, length);
        Require.range("out", out, outOffset, length);
        convolution.process(in, inOffset, out, outOffset, length);
    }

    /**
     * Filters a whole signal from rest; what this filter holds of its stream is left alone. More than 96 taps are
     * convolved by transforms over blocks, so that the values agree with those of the stream within rounding.
     *
     * @param samples samples, all finite; left alone
     * @return a new array of the same length
     * @throws IllegalArgumentException if a sample is not finite
     */
    public double[] filtered(double[] samples) {
        Require.allFinite("samples", Objects.requireNonNull(samples, "samples"));
        if (taps.length > MOST_DIRECT_OF_WHOLE && samples.length > taps.length) {
            return BlockConvolution.of(taps, samples);
        }
        double[] out = new double[samples.length];
        of(taps).process(samples, 0, out, 0, out.length);
        return out;
    }

    /** Puts the filter at rest. */
    public void reset() {
        convolution.reset();
    }

    @Override
    public Recipe<FirFilter> recipe() {
        return new Made(taps.clone());
    }

    /** What makes such a filter; the array is its own. */
    private record Made(double[] taps) implements Recipe<FirFilter> {
        private Made {
            taps = taps.clone();
        }

        @Override
        public FirFilter make() {
            return of(taps);
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Made made && Arrays.equals(taps, made.taps);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(taps);
        }

        @Override
        public String toString() {
            return "non-recursive filter of " + taps.length + " taps";
        }
    }

    @Override
    public int stateLength() {
        return StateFormat.HEADER + convolution.stateLength();
    }

    @Override
    public int snapshotTo(double[] out, int offset) {
        return convolution.put(out, format.write(out, offset, stateLength(), settings));
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        reset();
        try {
            return convolution.take(in, format.check(in, offset, stateLength(), settings));
        } catch (IllegalArgumentException e) {
            reset();
            throw e;
        }
    }

    /** Returns the number of taps. */
    @Override
    public String toString() {
        return "non-recursive filter of " + taps.length + " taps";
    }
}
