package dev.vibra.level;

import dev.vibra.internal.Require;

/**
 * Largest magnitude of a stream, held and decaying: {@code h ← max(|x|, h·d)}, d falling to 1/e in the time constant;
 * an infinite time constant holds for ever.
 *
 * <p>Holds state: not thread-safe, one per signal; allocates nothing.
 */
public final class PeakHold {
    private final double decay;
    private double held;

    private PeakHold(double decay) {
        this.decay = decay;
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
        return new PeakHold(Math.exp(-1 / (timeConstantSeconds * sampleRateHertz)));
    }

    /**
     * Takes in a block.
     *
     * @param samples samples
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if the range leaves the array or a sample is not finite; samples before it count
     */
    public void push(double[] samples, int offset, int length) {
        Require.range("samples", offset, length, samples.length);
        for (int i = offset; i < offset + length; i++) {
            double magnitude = Math.abs(samples[i]);
            if (!(magnitude < Double.POSITIVE_INFINITY)) {
                throw Require.failure("sample", "finite", samples[i]);
            }
            held = Math.max(magnitude, held * decay);
        }
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

    /** Returns the reading. */
    @Override
    public String toString() {
        return "peak hold at " + held;
    }
}
