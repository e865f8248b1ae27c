package dev.vibra.meter;

import dev.vibra.envelope.EnvelopePlan;
import dev.vibra.internal.BlockCutter;
import dev.vibra.level.RunningMoments;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumMeter;
import dev.vibra.spectrum.SpectrumSettings;

/**
 * Envelope of a band of a stream, frame by frame: its level and its averaged spectrum.
 *
 * <p>The stream is cut into frames one after the other; each frame's envelope is that of {@code Envelope.of} on it, its
 * spectrum a block of the average. Readings cover whole frames since the start or the last reset. Not thread-safe;
 * allocates nothing while pushing.
 */
public final class EnvelopeMeter {
    private final EnvelopePlan plan;
    private final BlockCutter cutter;
    private final double[] envelope;
    private final RunningMoments moments = new RunningMoments();
    private final SpectrumMeter spectrum;

    private EnvelopeMeter(Band band, int frameLength, double sampleRateHertz, Quantity quantity) {
        plan = EnvelopePlan.of(frameLength, sampleRateHertz, band);
        cutter = new BlockCutter(frameLength, frameLength, this::process);
        envelope = new double[plan.outputLength()];
        double resolution = plan.outputSampleRateHertz() / plan.outputLength();
        spectrum = SpectrumMeter.of(quantity, plan.outputSampleRateHertz(),
                SpectrumSettings.withDefaults().withResolution(resolution).withOverlap(0));
    }

    /**
     * Makes a meter.
     *
     * @param quantity what the stream measures
     * @param band band up to half the sample rate
     * @param frameLength samples of a frame, at least 4; the envelope spectrum has lines one over the frame's duration
     *     apart
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @return a meter that has seen nothing
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static EnvelopeMeter of(Quantity quantity, Band band, int frameLength, double sampleRateHertz) {
        return new EnvelopeMeter(band, frameLength, sampleRateHertz, quantity);
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

    private void process(double[] frame) {
        plan.process(frame, 0, envelope);
        moments.push(envelope, 0, envelope.length);
        spectrum.push(envelope, 0, envelope.length);
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

    /** Begins anew. */
    public void reset() {
        cutter.reset();
        moments.reset();
        spectrum.reset();
    }

    /** Returns the plan of a frame. */
    @Override
    public String toString() {
        return "meter, " + plan;
    }
}
