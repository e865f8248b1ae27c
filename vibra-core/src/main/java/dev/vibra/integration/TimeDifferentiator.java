package dev.vibra.integration;

import dev.vibra.filter.FirFilter;
import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;
import dev.vibra.window.Window;

/**
 * Differentiation over time of a stream: the ideal differentiator's impulse response {@code (-1)^n·fs/n}, 65 taps under
 * a Kaiser window. Within 0.01 % up to 0.4 times the sample rate; delays by 32 samples.
 *
 * <p>Holds state: not thread-safe, one per signal; allocates nothing once made.
 *
 * @see "Oppenheim and Schafer, Discrete-Time Signal Processing, 3rd ed. 2010, section 7.6.3 (discrete-time
 *     differentiator)"
 */
public final class TimeDifferentiator implements Resumable<TimeDifferentiator> {
    private static final StateFormat FORMAT = new StateFormat("derive", 1);

    /** Samples by which the output lags. */
    public static final int DELAY = 32;

    private final double sampleRateHertz;
    private final FirFilter filter;

    private TimeDifferentiator(double sampleRateHertz) {
        this.sampleRateHertz = Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        double[] taps = Window.kaiser(10).closedSamples(2 * DELAY + 1);
        for (int i = 0; i < taps.length; i++) {
            int n = i - DELAY;
            taps[i] *= n == 0 ? 0 : (n % 2 == 0 ? 1 : -1) * sampleRateHertz / n;
        }
        filter = FirFilter.of(taps);
    }

    /**
     * Makes a differentiator at rest.
     *
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @return the differentiator
     * @throws IllegalArgumentException if the sample rate is out of range
     */
    public static TimeDifferentiator at(double sampleRateHertz) {
        return new TimeDifferentiator(sampleRateHertz);
    }

    /**
     * Computes the gain over an ideal differentiator.
     *
     * @param hertz frequency in Hz, above zero, at most half the sample rate
     * @return gain, 1 where the differentiator is exact
     * @throws IllegalArgumentException if the frequency is out of range
     */
    public double gain(double hertz) {
        // Flat below, where quotients of the smallest numbers are none.
        double flat = Math.max(Require.positive("hertz", hertz, "Hz"), 1e-9 * sampleRateHertz);
        return filter.gain(flat, sampleRateHertz) / (2 * Math.PI * flat);
    }

    /**
     * Differentiates a block.
     *
     * @param in samples; left alone unless it is also the output
     * @param inOffset index of the first input sample
     * @param out receives the derivative, {@value #DELAY} samples late; may be the input array at the same offset
     * @param outOffset index of the first output sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if a range leaves its array
     */
    public void process(double[] in, int inOffset, double[] out, int outOffset, int length) {
        filter.process(in, inOffset, out, outOffset, length);
    }

    /** Puts the differentiator at rest. */
    public void reset() {
        filter.reset();
    }

    @Override
    public Recipe<TimeDifferentiator> recipe() {
        return new Made(sampleRateHertz);
    }

    /** What makes such a differentiator. */
    private record Made(double sampleRateHertz) implements Recipe<TimeDifferentiator> {
        @Override
        public TimeDifferentiator make() {
            return at(sampleRateHertz);
        }

        @Override
        public String toString() {
            return "differentiator at " + sampleRateHertz + " Hz";
        }
    }

    @Override
    public int stateLength() {
        return StateFormat.HEADER + filter.stateLength();
    }

    @Override
    public int snapshotTo(double[] out, int offset) {
        int at = FORMAT.write(out, offset, stateLength(), StateFormat.settings(sampleRateHertz));
        return filter.snapshotTo(out, at);
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        reset();
        int at = FORMAT.check(in, offset, stateLength(), StateFormat.settings(sampleRateHertz));
        return filter.resumeFrom(in, at);
    }

    /** Returns the sample rate. */
    @Override
    public String toString() {
        return "differentiator at " + sampleRateHertz + " Hz";
    }
}
