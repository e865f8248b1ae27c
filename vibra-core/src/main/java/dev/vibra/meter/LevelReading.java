package dev.vibra.meter;

import dev.vibra.integration.BandLimitingChain;
import dev.vibra.internal.StateFormat;
import dev.vibra.level.RunningMoments;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.quantity.Quantity;
import java.util.Objects;
import java.util.Optional;

/**
 * One place of a {@link LevelMeter}: what it has measured of one motion in one band, or of the whole acceleration,
 * since the reading began. It goes on with its meter; methods whose name ends in {@code Si}, and {@link #si}, allocate
 * nothing.
 */
public final class LevelReading {
    private final Quantity quantity;
    /** Null for the whole signal. */
    private final Band band;
    /** Null for the whole signal. */
    private final BandLimitingChain chain;
    private final RunningMoments moments = new RunningMoments();
    private long unsettled;

    private LevelReading(Quantity quantity, Band band, BandLimitingChain chain) {
        this.quantity = quantity;
        this.band = band;
        this.chain = chain;
        settleAnew();
    }

    static LevelReading wholeAcceleration() {
        return new LevelReading(Quantity.ACCELERATION, null, null);
    }

    static LevelReading of(Measurand measurand, double sampleRateHertz) {
        return new LevelReading(measurand.quantity(), measurand.band(), BandLimitingChain.of(Quantity.ACCELERATION,
                measurand.quantity(), measurand.band(), sampleRateHertz));
    }

    /** Takes in a piece; the scratch array holds at least as many samples. */
    void push(double[] samples, int offset, int length, double[] scratch) {
        if (chain == null) {
            moments.push(samples, offset, length);
            return;
        }
        chain.process(samples, offset, scratch, 0, length);
        int skipped = (int) Math.min(unsettled, length);
        unsettled -= skipped;
        moments.push(scratch, skipped, length - skipped);
    }

    /** What the filters hold is thrown away. */
    void settleAnew() {
        if (chain != null) {
            chain.reset();
            unsettled = chain.settlingSamples();
        }
    }

    void restart() {
        moments.reset();
    }

    /**
     * Returns the motion.
     *
     * @return quantity of the levels
     */
    public Quantity quantity() {
        return quantity;
    }

    /**
     * Returns the band.
     *
     * @return band; empty for the whole signal
     */
    public Optional<Band> band() {
        return Optional.ofNullable(band);
    }

    boolean is(Quantity motion, Band range) {
        return quantity == motion && Objects.requireNonNull(range, "band").equals(band);
    }

    /**
     * Returns how many samples the reading covers: those since it began without those during which filters settle.
     *
     * @return count, zero or more
     */
    public long samples() {
        return moments.count();
    }

    /**
     * Tells whether there is something to read.
     *
     * @return true once a sample behind settled filters came
     */
    public boolean isReadable() {
        return moments.count() > 0;
    }

    /**
     * Returns the rms level.
     *
     * @return level with quantity, band and method
     * @throws IllegalStateException if there is nothing to read
     */
    public Level rms() {
        return level(Detector.RMS);
    }

    /**
     * Returns the largest distance from the mean.
     *
     * @return zero-to-peak level with quantity, band and method
     * @throws IllegalStateException if there is nothing to read
     */
    public Level peak() {
        return level(Detector.ZERO_TO_PEAK);
    }

    /**
     * Returns the distance from the lowest to the highest value.
     *
     * @return true peak-to-peak level with quantity, band and method
     * @throws IllegalStateException if there is nothing to read
     */
    public Level peakToPeak() {
        return level(Detector.PEAK_TO_PEAK);
    }

    private Level level(Detector detector) {
        Level level = Level.ofSi(si(detector), quantity, detector);
        return band == null ? level.by(LevelMethod.WHOLE_SIGNAL)
                : level.within(band).by(LevelMethod.SEVERITY_CHAIN);
    }

    /**
     * Returns what {@link #rms()} reads; allocates nothing.
     *
     * @return rms in the SI unit of the quantity
     * @throws IllegalStateException if there is nothing to read
     */
    public double rmsSi() {
        return readable().rms();
    }

    /**
     * Returns what {@link #peak()} reads; allocates nothing.
     *
     * @return zero-to-peak value in the SI unit of the quantity
     * @throws IllegalStateException if there is nothing to read
     */
    public double peakSi() {
        return readable().peak();
    }

    /**
     * Returns what {@link #peakToPeak()} reads; allocates nothing.
     *
     * @return peak-to-peak value in the SI unit of the quantity
     * @throws IllegalStateException if there is nothing to read
     */
    public double peakToPeakSi() {
        return readable().peakToPeak();
    }

    /**
     * Returns one level as a number; allocates nothing.
     *
     * @param detector detector
     * @return value in the SI unit of the quantity
     * @throws IllegalStateException if there is nothing to read
     */
    public double si(Detector detector) {
        return switch (Objects.requireNonNull(detector, "detector")) {
            case RMS -> rmsSi();
            case ZERO_TO_PEAK -> peakSi();
            case PEAK_TO_PEAK -> peakToPeakSi();
            case DERIVED_PEAK -> Math.sqrt(2) * rmsSi();
        };
    }

    /**
     * Returns the crest factor.
     *
     * @return crest factor, at least 1
     * @throws IllegalStateException if there is nothing to read, or samples don't vary
     */
    public double crestFactor() {
        return readable().crestFactor();
    }

    /**
     * Returns the kurtosis.
     *
     * @return kurtosis, 3 for normal noise
     * @throws IllegalStateException if there is nothing to read, or samples don't vary
     */
    public double kurtosis() {
        return readable().kurtosis();
    }

    private RunningMoments readable() {
        if (unsettled > 0 && moments.count() == 0) {
            throw new IllegalStateException("the chain has not settled yet: " + unsettled + " samples more");
        }
        return moments;
    }

    int stateLength() {
        return moments.stateLength() + (chain == null ? 0 : 1 + chain.stateLength());
    }

    int put(double[] out, int at) {
        int next = moments.snapshotTo(out, at);
        if (chain == null) {
            return next;
        }
        out[next] = unsettled;
        return chain.snapshotTo(out, next + 1);
    }

    int take(double[] in, int at) {
        int next = moments.resumeFrom(in, at);
        if (chain == null) {
            return next;
        }
        unsettled = StateFormat.count(in, next, chain.settlingSamples());
        return chain.resumeFrom(in, next + 1);
    }

    /** Returns what is measured and the rms, if there is one. */
    @Override
    public String toString() {
        if (isReadable()) {
            return quantity + ": " + rms();
        }
        return (band == null ? quantity : new Measurand(quantity, band)) + ": nothing to read yet";
    }
}
