package dev.vibra.filter;

import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;
import java.util.Arrays;
import java.util.Objects;

/**
 * A running non-recursive filter: {@code y[n] = Σ h[k]·x[n-k]}. Blocks of any size give the output of one pass.
 *
 * <p>Holds state: not thread-safe, one per signal; allocates nothing once made.
 */
public final class FirFilter implements Resumable<FirFilter> {
    private static final StateFormat FORMAT = new StateFormat("fir", 1);

    private final double[] taps;
    /** The newest samples, kept twice so that a run of them is never broken. */
    private final double[] history;
    private int place;
    private final int settings;

    private FirFilter(double[] taps) {
        settings = StateFormat.settings(StateFormat.rounded(taps));
        this.taps = taps;
        this.history = new double[2 * taps.length];
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
        for (int i = 0; i < length; i++) {
            place = place == 0 ? taps.length - 1 : place - 1;
            history[place] = in[inOffset + i];
            history[place + taps.length] = in[inOffset + i];
            double sum = 0;
            for (int k = 0; k < taps.length; k++) {
                sum += taps[k] * history[place + k];
            }
            out[outOffset + i] = sum;
        }
    }

    /** Puts the filter at rest. */
    public void reset() {
        Arrays.fill(history, 0);
        place = 0;
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
        return StateFormat.HEADER + taps.length;
    }

    /** The newest sample first: the place in the ring is nobody's business. */
    @Override
    public int snapshotTo(double[] out, int offset) {
        int at = FORMAT.write(out, offset, stateLength(), settings);
        for (int k = 0; k < taps.length; k++) {
            out[at + k] = StateFormat.sound(history[place + k]);
        }
        return at + taps.length;
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        reset();
        int at = FORMAT.check(in, offset, stateLength(), settings);
        System.arraycopy(in, at, history, 0, taps.length);
        System.arraycopy(in, at, history, taps.length, taps.length);
        return at + taps.length;
    }

    /** Returns the number of taps. */
    @Override
    public String toString() {
        return "non-recursive filter of " + taps.length + " taps";
    }
}
