package dev.vibra.signal;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import java.util.Arrays;
import java.util.Objects;

/**
 * Collects samples block by block and makes a waveform of them, which takes over the memory without a copy if as much
 * was reserved as came: {@code WaveformBuilder.of(Quantity.ACCELERATION, 25_600).reserve(102_400).add(block, 0, 1024)}.
 *
 * <p>Holds state: not thread-safe.
 */
public final class WaveformBuilder {
    private static final int FIRST_CAPACITY = 1 << 12;
    private static final int MOST_SAMPLES = Integer.MAX_VALUE - 8;

    private final Quantity quantity;
    private final double sampleRateHertz;
    private double startSeconds;
    private double[] samples = {};
    private int length;

    private WaveformBuilder(Quantity quantity, double sampleRateHertz) {
        this.quantity = Objects.requireNonNull(quantity, "quantity");
        this.sampleRateHertz = Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
    }

    /**
     * Begins a waveform.
     *
     * @param quantity what the samples measure
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @return the builder without a sample
     * @throws IllegalArgumentException if the sample rate is out of range
     */
    public static WaveformBuilder of(Quantity quantity, double sampleRateHertz) {
        return new WaveformBuilder(quantity, sampleRateHertz);
    }

    /**
     * Sets the time of the first sample; 0 by default.
     *
     * @param seconds time in s, finite
     * @return this
     * @throws IllegalArgumentException if the time is not finite
     */
    public WaveformBuilder startingAt(double seconds) {
        startSeconds = Require.finite("seconds", seconds);
        return this;
    }

    /**
     * Takes memory for samples before they come.
     *
     * @param count number of samples expected in all, zero or more; more may come
     * @return this
     * @throws IllegalArgumentException if the number is negative or beyond 2,147,483,639
     * @throws OutOfMemoryError if the heap hasn't room for them; what was added before stays
     */
    public WaveformBuilder reserve(int count) {
        Require.count("count", count, 0, MOST_SAMPLES);
        if (count > samples.length) {
            samples = Arrays.copyOf(samples, count);
        }
        return this;
    }

    /**
     * Adds samples behind those that came before.
     *
     * @param block array that holds the samples, in the SI unit of the quantity, within ±1e70; left alone
     * @param offset index of the first one
     * @param count number of samples, zero or more
     * @return this
     * @throws IllegalArgumentException if the range leaves the array or a sample is out of range; nothing is added
     * @throws IllegalStateException if there would be more than 2,147,483,639 samples
     */
    public WaveformBuilder add(double[] block, int offset, int count) {
        Require.range("block", block, offset, count);
        Require.samples(block, offset, count);
        long needed = (long) length + count;
        if (needed > MOST_SAMPLES) {
            throw new IllegalStateException("a waveform may have up to " + MOST_SAMPLES + " samples: " + needed);
        }
        if (needed > samples.length) {
            samples = Arrays.copyOf(samples, (int) Math.min(MOST_SAMPLES, Math.max(FIRST_CAPACITY, Math.max(needed,
                    2L * samples.length))));
        }
        System.arraycopy(block, offset, samples, length, count);
        length += count;
        return this;
    }

    /**
     * Returns the number of samples so far.
     *
     * @return number of samples, zero or more
     */
    public int length() {
        return length;
    }

    /**
     * Makes the waveform; this builder is without a sample again.
     *
     * @return the waveform
     * @throws IllegalStateException if no sample came
     */
    public Waveform waveform() {
        if (length == 0) {
            throw new IllegalStateException("a waveform must have at least 1 sample: 0");
        }
        double[] owned = length == samples.length ? samples : Arrays.copyOf(samples, length);
        samples = new double[0];
        length = 0;
        return Waveform.ofChecked(quantity, sampleRateHertz, startSeconds, owned);
    }

    /** Returns number of samples, rate and quantity, as in {@code 1024 samples at 25600.0 Hz so far, acceleration}. */
    @Override
    public String toString() {
        return length + " samples at " + sampleRateHertz + " Hz so far, " + quantity;
    }
}
