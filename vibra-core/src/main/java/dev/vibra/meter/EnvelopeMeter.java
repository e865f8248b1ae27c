package dev.vibra.meter;

import dev.vibra.envelope.EnvelopePlan;
import dev.vibra.internal.OrderedBlocks;
import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.level.RunningMoments;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumMeter;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.state.Arrival;
import dev.vibra.state.Continuity;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;
import dev.vibra.transform.PlanCache;
import java.util.List;
import java.util.Objects;

/**
 * Envelope of a band of a stream, frame by frame: its level and its averaged spectrum.
 *
 * <p>The stream is cut into frames one after the other; each frame's envelope is that of {@code Envelope.of} on it, its
 * spectrum a block of the average. Readings cover whole frames since the start, the last restart or reset. Told where a
 * block belongs, it takes no frame across a gap: what was begun before the gap is thrown away. Not thread-safe;
 * allocates nothing while pushing.
 */
public final class EnvelopeMeter implements Resumable<EnvelopeMeter> {
    private static final StateFormat FORMAT = new StateFormat("envelope", 1);
    private static final int LONGEST = 1 << 24;
    /** Plans of one meter: of the envelope, and two of its spectrum. */
    private static final int PLANS = 3;

    private final Made made;
    private final OrderedBlocks stream;
    private final Workspace workspace;
    private final RunningMoments moments = new RunningMoments();
    private final SpectrumMeter spectrum;

    private EnvelopeMeter(Made made, PlanCache plans) {
        this.made = made;
        workspace = plans.get(Workspace.class, List.of(made.frameLength, made.sampleRateHertz, made.band),
                () -> new Workspace(EnvelopePlan.of(made.frameLength, made.sampleRateHertz, made.band)));
        stream = new OrderedBlocks(made.frameLength, made.frameLength);
        EnvelopePlan plan = workspace.plan;
        double resolution = plan.outputSampleRateHertz() / plan.outputLength();
        spectrum = SpectrumMeter.of(made.quantity, plan.outputSampleRateHertz(),
                SpectrumSettings.withDefaults().withResolution(resolution).withOverlap(0), plans);
    }

    /** What is used from the end of a frame to the end of its evaluation, and may be shared. */
    private static final class Workspace {
        private final EnvelopePlan plan;
        private final double[] envelope;

        private Workspace(EnvelopePlan plan) {
            this.plan = plan;
            envelope = new double[plan.outputLength()];
        }
    }

    /**
     * Makes a meter.
     *
     * @param quantity what the stream measures
     * @param band band up to half the sample rate
     * @param frameLength samples of a frame, 4 to 2²⁴; the envelope spectrum has lines one over the frame's duration
     *     apart
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @return a meter that has seen nothing
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static EnvelopeMeter of(Quantity quantity, Band band, int frameLength, double sampleRateHertz) {
        return of(quantity, band, frameLength, sampleRateHertz, PlanCache.ofSize(PLANS));
    }

    /**
     * Makes a meter that shares plans and their workspace with others, so that many need little more memory than what
     * they hold of their own streams. All that share them must run in one thread. A meter that is resumed by {@code
     * StreamState.resume} has plans of its own; {@link #resumeFrom} keeps them shared.
     *
     * @param quantity what the stream measures
     * @param band band up to half the sample rate
     * @param frameLength samples of a frame, 4 to 2²⁴
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param plans plans of the thread
     * @return a meter that has seen nothing
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static EnvelopeMeter of(Quantity quantity, Band band, int frameLength, double sampleRateHertz,
            PlanCache plans) {
        return new EnvelopeMeter(new Made(quantity, band, frameLength, sampleRateHertz),
                Objects.requireNonNull(plans, "plans"));
    }

    /** What makes such a meter. */
    private record Made(Quantity quantity, Band band, int frameLength, double sampleRateHertz)
            implements Recipe<EnvelopeMeter> {
        private Made {
            Objects.requireNonNull(quantity, "quantity");
            Objects.requireNonNull(band, "band");
            Require.within("frameLength", frameLength, 4, LONGEST, "samples");
        }

        @Override
        public EnvelopeMeter make() {
            return new EnvelopeMeter(this, PlanCache.ofSize(PLANS));
        }

        int code() {
            return StateFormat.settings(quantity.name().hashCode(), band.lowestHertz(), band.highestHertz(),
                    frameLength, sampleRateHertz);
        }

        @Override
        public String toString() {
            return "envelope of " + quantity + " " + band + ", frames of " + frameLength + " samples at "
                    + sampleRateHertz + " Hz";
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
        demodulate();
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
        demodulate();
        return arrival;
    }

    private void demodulate() {
        while (stream.next()) {
            double[] envelope = workspace.plan.process(stream.block(), 0, workspace.envelope);
            moments.push(envelope, 0, envelope.length);
            spectrum.push(envelope, 0, envelope.length);
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
     * Returns the number of frames so far.
     *
     * @return whole frames, zero or more
     */
    public int frames() {
        return spectrum.blocks();
    }

    /**
     * Returns the mean of the envelope.
     *
     * @return mean in the SI unit of the quantity
     * @throws IllegalStateException if no frame is complete
     */
    public double mean() {
        return moments.mean();
    }

    /**
     * Returns the kurtosis of the envelope.
     *
     * @return kurtosis
     * @throws IllegalStateException if no frame is complete or the envelope is constant
     */
    public double kurtosis() {
        return moments.kurtosis();
    }

    /**
     * Returns the averaged envelope spectrum; allocates it.
     *
     * @return spectrum of the frames so far
     * @throws IllegalStateException if no frame is complete
     */
    public Spectrum spectrum() {
        return spectrum.spectrum();
    }

    /** Begins anew, also with the numbers of samples. */
    public void reset() {
        restartReading();
        stream.reset();
    }

    /** Begins a new reading: of samples from here on only; their numbers go on. */
    public void restartReading() {
        stream.restart();
        moments.reset();
        spectrum.reset();
    }

    @Override
    public Recipe<EnvelopeMeter> recipe() {
        return made;
    }

    @Override
    public int stateLength() {
        return StateFormat.HEADER + stream.stateLength() + moments.stateLength()
                + spectrum.stateLength();
    }

    @Override
    public int snapshotTo(double[] out, int offset) {
        int at = FORMAT.write(out, offset, stateLength(), made.code());
        at = stream.put(out, at);
        return spectrum.snapshotTo(out, moments.snapshotTo(out, at));
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        try {
            int at = FORMAT.check(in, offset, stateLength(), made.code());
            at = stream.resume(in, at);
            return spectrum.resumeFrom(in, moments.resumeFrom(in, at));
        } catch (IllegalArgumentException e) {
            reset();
            throw e;
        }
    }

    /** Returns band, frames and sample rate. */
    @Override
    public String toString() {
        return "meter, " + made;
    }
}
