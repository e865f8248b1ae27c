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

    private final Made made;
    private final EnvelopePlan plan;
    private final OrderedBlocks stream;
    private final double[] envelope;
    private final RunningMoments moments = new RunningMoments();
    private final SpectrumMeter spectrum;

    private EnvelopeMeter(Made made) {
        this.made = made;
        plan = EnvelopePlan.of(made.frameLength, made.sampleRateHertz, made.band);
        stream = new OrderedBlocks(made.frameLength, made.frameLength);
        envelope = new double[plan.outputLength()];
        double resolution = plan.outputSampleRateHertz() / plan.outputLength();
        spectrum = SpectrumMeter.of(made.quantity, plan.outputSampleRateHertz(),
                SpectrumSettings.withDefaults().withResolution(resolution).withOverlap(0));
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
        return new EnvelopeMeter(new Made(quantity, band, frameLength, sampleRateHertz));
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
            return new EnvelopeMeter(this);
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
            plan.process(stream.block(), 0, envelope);
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
