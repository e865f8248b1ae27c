package dev.vibra.spectrum;

import dev.vibra.internal.OrderedBlocks;
import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.quantity.Quantity;
import dev.vibra.state.Arrival;
import dev.vibra.state.Continuity;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;
import dev.vibra.transform.PlanCache;
import java.util.Objects;

/**
 * Averaged spectrum of a stream: push blocks of any size, read at any time. The spectrum equals {@link Spectrum#of}
 * over the same samples.
 *
 * <p>Told where a block belongs, it averages no block of the spectrum across a gap: what was begun before the gap is
 * thrown away. Holds state: not thread-safe, one per signal; allocates nothing while pushing.
 */
public final class SpectrumMeter implements Resumable<SpectrumMeter> {
    private static final StateFormat FORMAT = new StateFormat("spectrum", 1);
    private static final int LONGEST = 1 << 24;

    private final Made made;
    private final SpectrumPlan plan;
    private final Accumulator accumulator;
    private final OrderedBlocks stream;
    private final int code;

    private SpectrumMeter(Made made, PlanCache plans) {
        this.made = made;
        SpectrumSettings settings = made.settings;
        int length = settings.blockLength(made.sampleRateHertz, LONGEST + 1);
        if (length > LONGEST) {
            throw Require.failure("resolutionHertz", "at least " + made.sampleRateHertz / LONGEST
                    + " Hz at this sample rate",
                    settings.resolutionHertz());
        }
        plan = SpectrumPlan.of(length, settings.window(), plans);
        accumulator = new Accumulator(plan, settings.averaging(), plan.worker(plans));
        stream = new OrderedBlocks(length, settings.step(length));
        code = made.code(plan);
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
        return of(quantity, sampleRateHertz, settings, PlanCache.ofSize(2));
    }

    /**
     * Makes a meter that shares plans and their workspace with others, so that many need little more memory than what
     * they hold of their own streams. All that share them must run in one thread. A meter that is resumed by {@code
     * StreamState.resume} has plans of its own; {@link #resumeFrom} keeps them shared.
     *
     * @param quantity what the stream measures
     * @param sampleRateHertz sample rate in Hz
     * @param settings window, resolution, overlap, averaging
     * @param plans plans of the thread
     * @return a meter that has seen nothing
     * @throws IllegalArgumentException if the resolution doesn't fit the sample rate
     */
    public static SpectrumMeter of(Quantity quantity, double sampleRateHertz, SpectrumSettings settings,
            PlanCache plans) {
        return new SpectrumMeter(new Made(quantity, sampleRateHertz, settings),
                Objects.requireNonNull(plans, "plans"));
    }

    /** What makes such a meter. */
    private record Made(Quantity quantity, double sampleRateHertz, SpectrumSettings settings)
            implements Recipe<SpectrumMeter> {
        private Made {
            Objects.requireNonNull(quantity, "quantity");
            Objects.requireNonNull(settings, "settings");
        }

        @Override
        public SpectrumMeter make() {
            return new SpectrumMeter(this, PlanCache.ofSize(2));
        }

        int code(SpectrumPlan plan) {
            Averaging averaging = settings.averaging();
            return StateFormat.settings(quantity.name().hashCode(), sampleRateHertz, plan.length(),
                    settings.step(plan.length()), (float) plan.noiseBandwidth(), averaging.kind().name().hashCode(),
                    averaging.newestWeight());
        }

        @Override
        public String toString() {
            return "spectrum of " + quantity + " at " + sampleRateHertz + " Hz, " + settings;
        }
    }

    /**
     * Takes in a block that follows the last one.
     *
     * @param samples samples in the SI unit of the quantity, all finite and within ±1e70; left alone
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if the range leaves the array or a sample is out of range; nothing is taken in
     */
    public void push(double[] samples, int offset, int length) {
        stream.take(samples, offset, length);
        average();
    }

    /**
     * Takes in a block of which it is known where it belongs.
     *
     * @param firstSample number of its first sample in the stream, from 0
     * @param samples samples in the SI unit of the quantity, all finite and within ±1e70; left alone
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @return how it came; what had come already is left out
     * @throws IllegalArgumentException if the range leaves the array, or the number or a sample is out of range;
     *     nothing is taken in
     */
    public Arrival push(long firstSample, double[] samples, int offset, int length) {
        Arrival arrival = stream.take(firstSample, samples, offset, length);
        average();
        return arrival;
    }

    private void average() {
        while (stream.next()) {
            accumulator.add(stream.block(), 0);
        }
    }

    /**
     * Returns what came of the stream's order since the meter was made or reset; allocates it.
     *
     * @return gaps and repeats so far
     */
    public Continuity continuity() {
        return stream.continuity();
    }

    /**
     * Returns the number of blocks averaged so far.
     *
     * @return blocks, zero or more
     */
    public int blocks() {
        return (int) Math.min(accumulator.count(), Integer.MAX_VALUE);
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
        return new Spectrum(made.quantity, made.sampleRateHertz, plan, made.settings, blocks(), meanSquares);
    }

    /** Begins anew, also with the numbers of samples. */
    public void reset() {
        accumulator.reset();
        stream.reset();
    }

    /** Begins a new average: of samples from here on only; their numbers go on. */
    public void restartReading() {
        accumulator.reset();
        stream.restart();
    }

    @Override
    public Recipe<SpectrumMeter> recipe() {
        return made;
    }

    @Override
    public int stateLength() {
        return StateFormat.HEADER + stream.stateLength() + accumulator.stateLength();
    }

    @Override
    public int snapshotTo(double[] out, int offset) {
        int at = FORMAT.write(out, offset, stateLength(), code);
        return accumulator.put(out, stream.put(out, at));
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        try {
            int at = FORMAT.check(in, offset, stateLength(), code);
            return accumulator.take(in, stream.resume(in, at));
        } catch (IllegalArgumentException e) {
            reset();
            throw e;
        }
    }

    /** Returns blocks and settings. */
    @Override
    public String toString() {
        return "spectrum meter, " + accumulator.count() + " blocks, " + made.settings;
    }
}
