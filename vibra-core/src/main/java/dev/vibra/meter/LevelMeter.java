package dev.vibra.meter;

import dev.vibra.integration.BandLimitingChain;
import dev.vibra.internal.Require;
import dev.vibra.level.RunningMoments;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.quantity.Quantity;

/**
 * Levels of a stream of acceleration: broad-band acceleration, and velocity through the severity chain.
 *
 * <p>Readings cover all samples since the start or the last reset; the velocity begins when the chain has settled. They
 * equal those of {@code Waveform.moments()} and {@code Waveform.throughSeverityChain} over the same samples. Not
 * thread-safe; pushing and the readings in SI units allocate nothing.
 *
 * @see "ISO 2954:2012, 5.3 and 5.4"
 */
public final class LevelMeter {
    private static final int PIECE = 1024;

    private final Band band;
    private final BandLimitingChain chain;
    private final RunningMoments acceleration = new RunningMoments();
    private final RunningMoments velocity = new RunningMoments();
    private final double[] piece = new double[PIECE];
    private long unsettled;

    private LevelMeter(Band band, double sampleRateHertz) {
        this.band = band;
        chain = BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, band, sampleRateHertz);
        unsettled = chain.settlingSamples();
    }

    /**
     * Returns the settings of a meter for 10 Hz to 1000 Hz.
     *
     * @return settings, to be finished with {@link Settings#at}
     */
    public static Settings withDefaults() {
        return new Settings(Band.of(10, 1000));
    }

    /**
     * What a meter measures.
     *
     * @param band band of the velocity, from above 0 Hz
     */
    public record Settings(Band band) {
        /**
         * Returns these settings with another band.
         *
         * @param newBand band of the velocity, from above 0 Hz
         * @return the new settings
         */
        public Settings withBand(Band newBand) {
            return new Settings(newBand);
        }

        /**
         * Makes the meter.
         *
         * @param sampleRateHertz sample rate in Hz, at least 2.5 times the upper end of the band
         * @return a meter that has seen nothing
         * @throws IllegalArgumentException if the band doesn't fit the sample rate
         */
        public LevelMeter at(double sampleRateHertz) {
            return new LevelMeter(band, sampleRateHertz);
        }
    }

    /**
     * Takes in a block.
     *
     * @param samples acceleration in m/s², all finite; left alone
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if the range leaves the array or a sample is not finite; nothing of a piece of
     *     1024 samples that holds one is taken in
     */
    public void push(double[] samples, int offset, int length) {
        Require.range("samples", offset, length, samples.length);
        for (int done = 0; done < length; done += PIECE) {
            pushPiece(samples, offset + done, Math.min(PIECE, length - done));
        }
    }

    private void pushPiece(double[] samples, int offset, int length) {
        for (int i = offset; i < offset + length; i++) {
            if (!(Math.abs(samples[i]) < Double.POSITIVE_INFINITY)) {
                throw Require.failure("samples[" + i + "]", "finite", samples[i]);
            }
        }
        acceleration.push(samples, offset, length);
        chain.process(samples, offset, piece, 0, length);
        int skipped = (int) Math.min(unsettled, length);
        unsettled -= skipped;
        velocity.push(piece, skipped, length - skipped);
    }

    /**
     * Tells whether the chain has settled, so that there is a velocity to read.
     *
     * @return true once a velocity was measured
     */
    public boolean isSettled() {
        return velocity.count() > 0;
    }

    /**
     * Returns the rms velocity in the band.
     *
     * @return level by the severity chain
     * @throws IllegalStateException if the chain has not settled yet
     */
    public Level velocityRms() {
        return inBand(velocityRmsSi(), Detector.RMS);
    }

    /**
     * Returns the largest velocity in the band.
     *
     * @return zero-to-peak level by the severity chain
     * @throws IllegalStateException if the chain has not settled yet
     */
    public Level velocityPeak() {
        return inBand(velocityPeakSi(), Detector.ZERO_TO_PEAK);
    }

    /**
     * Returns the rms acceleration.
     *
     * @return level of the whole signal
     * @throws IllegalStateException if nothing was pushed
     */
    public Level accelerationRms() {
        return whole(accelerationRmsSi(), Detector.RMS);
    }

    /**
     * Returns the largest acceleration.
     *
     * @return zero-to-peak level of the whole signal
     * @throws IllegalStateException if nothing was pushed
     */
    public Level accelerationPeak() {
        return whole(accelerationPeakSi(), Detector.ZERO_TO_PEAK);
    }

    private Level inBand(double si, Detector detector) {
        return Level.ofSi(si, Quantity.VELOCITY, detector).within(band).by(LevelMethod.SEVERITY_CHAIN);
    }

    private static Level whole(double si, Detector detector) {
        return Level.ofSi(si, Quantity.ACCELERATION, detector).by(LevelMethod.WHOLE_SIGNAL);
    }

    /**
     * Returns what {@link #velocityRms()} reads; allocates nothing.
     *
     * @return rms velocity in m/s
     * @throws IllegalStateException if the chain has not settled yet
     */
    public double velocityRmsSi() {
        return settled().rms();
    }

    /**
     * Returns what {@link #velocityPeak()} reads; allocates nothing.
     *
     * @return zero-to-peak velocity in m/s
     * @throws IllegalStateException if the chain has not settled yet
     */
    public double velocityPeakSi() {
        return settled().peak();
    }

    /**
     * Returns what {@link #accelerationRms()} reads; allocates nothing.
     *
     * @return rms acceleration in m/s²
     * @throws IllegalStateException if nothing was pushed
     */
    public double accelerationRmsSi() {
        return acceleration.rms();
    }

    /**
     * Returns what {@link #accelerationPeak()} reads; allocates nothing.
     *
     * @return zero-to-peak acceleration in m/s²
     * @throws IllegalStateException if nothing was pushed
     */
    public double accelerationPeakSi() {
        return acceleration.peak();
    }

    private RunningMoments settled() {
        if (unsettled > 0) {
            throw new IllegalStateException("the chain has not settled yet: " + unsettled + " samples more");
        }
        return velocity;
    }

    /**
     * Returns the crest factor of the acceleration.
     *
     * @return crest factor, at least 1
     * @throws IllegalStateException if the samples don't vary
     */
    public double crestFactor() {
        return acceleration.crestFactor();
    }

    /**
     * Returns the kurtosis of the acceleration.
     *
     * @return kurtosis, 3 for normal noise
     * @throws IllegalStateException if the samples don't vary
     */
    public double kurtosis() {
        return acceleration.kurtosis();
    }

    /** Begins anew: readings are forgotten and the chain settles again. */
    public void reset() {
        acceleration.reset();
        velocity.reset();
        chain.reset();
        unsettled = chain.settlingSamples();
    }

    /** Begins a new reading: what was read is forgotten, the chain stays settled. */
    public void restartReading() {
        acceleration.reset();
        velocity.reset();
    }

    /** Returns the band. */
    @Override
    public String toString() {
        return "level meter " + band;
    }
}
