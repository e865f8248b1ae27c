package dev.vibra.level;

import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;

/**
 * Largest magnitude of a stream, held and decaying: {@code h ← max(|x|, h·d)}, d falling to 1/e in the time constant;
 * an infinite time constant holds for ever.
 *
 * <p>Holds state: not thread-safe, one per signal; allocates nothing.
 */
public final class PeakHold implements Resumable<PeakHold> {
    private static final StateFormat FORMAT = new StateFormat("peak-hold", 1);

    private final Made made;
    private final double decay;
    private double held;

    private PeakHold(Made made) {
        this.made = made;
        decay = Math.exp(-1 / (made.timeConstantSeconds * made.sampleRateHertz));
    }

    /**
     * Makes a hold that decays.
     *
     * @param timeConstantSeconds time constant in s, above zero; infinity never decays
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @return a hold at zero
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static PeakHold of(double timeConstantSeconds, double sampleRateHertz) {
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        if (!(timeConstantSeconds > 0)) {
            throw Require.failure("timeConstantSeconds", "> 0 s", timeConstantSeconds);
        }
        return new PeakHold(new Made(timeConstantSeconds, sampleRateHertz));
    }

    /**
     * Takes in a block.
     *
     * @param samples samples, all finite and within ±1e70
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if the range leaves the array or a sample is out of range; nothing is taken in
     */
    public void push(double[] samples, int offset, int length) {
        Require.samples(samples, offset, length);
        double largest = held;
        for (int i = offset; i < offset + length; i++) {
            double magnitude = Math.abs(samples[i]);
            double decayed = largest * decay;
            largest = magnitude > decayed ? magnitude : decayed;
        }
        held = largest;
    }

    /**
     * Returns the reading.
     *
     * @return held magnitude, zero or more
     */
    public double peak() {
        return held;
    }

    /** Falls to zero. */
    public void reset() {
        held = 0;
    }

    @Override
    public Recipe<PeakHold> recipe() {
        return made;
    }

    /** What makes such a hold. */
    private record Made(double timeConstantSeconds, double sampleRateHertz) implements Recipe<PeakHold> {
        @Override
        public PeakHold make() {
            return of(timeConstantSeconds, sampleRateHertz);
        }

        int code() {
            return StateFormat.settings(timeConstantSeconds, sampleRateHertz);
        }

        @Override
        public String toString() {
            return "peak hold, " + (timeConstantSeconds < Double.POSITIVE_INFINITY
                    ? "time constant " + timeConstantSeconds + " s" : "for ever") + " at " + sampleRateHertz + " Hz";
        }
    }

    @Override
    public int stateLength() {
        return StateFormat.HEADER + 1;
    }

    @Override
    public int snapshotTo(double[] out, int offset) {
        int at = FORMAT.write(out, offset, stateLength(), made.code());
        out[at] = held;
        return at + 1;
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        reset();
        int at = FORMAT.check(in, offset, stateLength(), made.code());
        StateFormat.notNegative(in, at, 1);
        held = in[at];
        return at + 1;
    }

    /** Returns the reading. */
    @Override
    public String toString() {
        return "peak hold at " + held;
    }
}
