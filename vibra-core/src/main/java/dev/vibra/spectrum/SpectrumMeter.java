package dev.vibra.spectrum;

import dev.vibra.internal.BlockCutter;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;

/**
 * Averaged spectrum of a stream: push blocks of any size, read at any time. The spectrum equals {@link Spectrum#of}
 * over the same samples.
 *
 * <p>Holds state: not thread-safe, one per signal; allocates nothing while pushing.
 */
public final class SpectrumMeter {
    private static final int LONGEST = 1 << 28;

    private final Quantity quantity;
    private final double sampleRateHertz;
    private final SpectrumSettings settings;
    private final SpectrumPlan plan;
    private final Accumulator accumulator;
    private final BlockCutter cutter;

    private SpectrumMeter(Quantity quantity, double sampleRateHertz, SpectrumSettings settings) {
        this.quantity = quantity;
        this.sampleRateHertz = sampleRateHertz;
        this.settings = settings;
        int length = settings.blockLength(sampleRateHertz, LONGEST + 1);
        if (length > LONGEST) {
            throw Require.failure("resolutionHertz", "at least " + sampleRateHertz / LONGEST
                    + " Hz at this sample rate",
                    settings.resolutionHertz());
        }
        plan = SpectrumPlan.of(length, settings.window());
        accumulator = new Accumulator(plan, settings.averaging());
        cutter = new BlockCutter(length, settings.step(length), block -> accumulator.add(block, 0));
    }

    /**
     * Makes a meter.
     *
     * @param quantity what the stream measures
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param settings window, resolution, overlap, averaging
     * @return a meter that has seen nothing
     * @throws IllegalArgumentException if the resolution doesn't fit the sample rate
     */
    public static SpectrumMeter of(Quantity quantity, double sampleRateHertz, SpectrumSettings settings) {
        return new SpectrumMeter(quantity, sampleRateHertz, settings);
    }

    /**
     * Takes in a block.
     *
     * @param samples samples in the SI unit of the quantity, all finite; left alone
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if the range leaves the array or a sample is not finite; samples before it count
     */
    public void push(double[] samples, int offset, int length) {
        cutter.push(samples, offset, length);
    }

    /**
     * Returns the number of blocks averaged so far.
     *
     * @return blocks, zero or more
     */
    public int blocks() {
        return accumulator.count();
    }

    /**
     * Returns the averaged spectrum; allocates it.
     *
     * @return spectrum of the whole blocks so far
     * @throws IllegalStateException if no block is complete
     */
    public Spectrum spectrum() {
        if (accumulator.count() == 0) {
            throw new IllegalStateException("no block of " + plan.length() + " samples is complete yet");
        }
        double[] meanSquares = new double[plan.lines()];
        accumulator.meanSquares(meanSquares);
        return new Spectrum(quantity, sampleRateHertz, plan, settings, accumulator.count(), meanSquares);
    }

    /** Begins anew. */
    public void reset() {
        accumulator.reset();
        cutter.reset();
    }

    /** Returns blocks and settings. */
    @Override
    public String toString() {
        return "spectrum meter, " + accumulator.count() + " blocks, " + settings;
    }
}
