package dev.vibra.uncertainty;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.measuring.MountedResonance;
import dev.vibra.measuring.Mounting;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.Objects;

/**
 * The uncertainty of a severity level, from the recording and from what is told of sensor and mounting:
 *
 * <pre>{@code
 * var judged = wave.throughSeverityChain(Quantity.VELOCITY, Band.of(10, 1000));
 * LevelUncertainty.withDefaults().withSensor(5).withMounting(Mounting.MAGNET).of(judged);
 * }</pre>
 *
 * <p>Contributions: {@code sensor} as told; {@code mounting}, by which the resonance of the mounted sensor lifts this
 * very spectrum: between nothing and the rise of the lowest resonance that is likely; {@code chain}, the sampled chain
 * about the nominal response of ISO 2954 (the nominal response itself is what the limits mean, and no error); {@code
 * estimation}, how far the level of another stretch of the same length would differ, see {@link EstimationError}. Not
 * in it: another place on the housing, another load.
 *
 * <p>Defaults, marked {@code (assumed)}: a sensor of 10 % expanded uncertainty, as much as ISO 2954 allows a whole
 * instrument in its pass-band (+0.83 and -0.92 dB, by secondary sources; that it be taken as k = 2 is common practice,
 * no source); a magnet (common practice, no source). The lowest resonance of a mounting is three times the lowest
 * usable frequency that a source gives for it, where the rise is 12.5 %. Immutable.
 *
 * @see "JCGM 100:2008, 4.3, 5.1.6; ISO 2954:2012, 5.3 and 5.4; ISO 5348:2021"
 */
public final class LevelUncertainty implements Serializable {
    private static final long serialVersionUID = 1;
    /** Expanded uncertainty (k = 2) over the value of a sensor of which nothing is told, see above. */
    public static final double NOT_TOLD = 0.1;

    private static final double RESONANCE_OVER_USABLE = 3;
    /** Bound on the error of the sampled chain in its band and a third above, see {@code BandLimitingChain}. */
    private static final double CHAIN = 0.001;

    private final Double sensorPercent;
    private final MountedResonance resonance;

    private LevelUncertainty(Double sensorPercent, MountedResonance resonance) {
        this.sensorPercent = sensorPercent == null ? null
                : Double.valueOf(Require.notNegative("expandedPercent", sensorPercent, "%"));
        this.resonance = resonance;
    }

    private Object readResolve() {
        return new LevelUncertainty(sensorPercent, resonance);
    }

    /**
     * Starts with nothing told: a sensor of 10 %, a magnet, both assumed.
     *
     * @return the defaults
     */
    public static LevelUncertainty withDefaults() {
        return new LevelUncertainty(null, null);
    }

    /**
     * States the sensor and what it is connected to.
     *
     * @param expandedPercent expanded uncertainty (k = 2) in the band of the level, as on a certificate; finite, zero
     *     or more
     * @return these with that sensor
     * @throws IllegalArgumentException if the value is out of range
     */
    public LevelUncertainty withSensor(double expandedPercent) {
        return new LevelUncertainty(expandedPercent, resonance);
    }

    /**
     * States how the sensor is fixed.
     *
     * @param mounting way of fixing
     * @return these with the lowest resonance that is likely for it
     */
    public LevelUncertainty withMounting(Mounting mounting) {
        Objects.requireNonNull(mounting, "mounting");
        return withResonance(lowestOf(mounting));
    }

    /**
     * States the resonance of the mounted sensor.
     *
     * @param lowest the lowest that it may be
     * @return these with that resonance
     */
    public LevelUncertainty withResonance(MountedResonance lowest) {
        return new LevelUncertainty(sensorPercent, Objects.requireNonNull(lowest, "lowest"));
    }

    private static MountedResonance lowestOf(Mounting mounting) {
        return MountedResonance.ofHertz(RESONANCE_OVER_USABLE * mounting.lowestFigureHertz());
    }

    /**
     * Puts the budget of a level together.
     *
     * @param judged recording behind the severity chain, whose rms is the level
     * @return contributions {@code sensor}, {@code mounting}, {@code chain} and {@code estimation}
     * @throws IllegalArgumentException if the waveform doesn't come from {@link Waveform#throughSeverityChain}
     */
    public UncertaintyBudget of(Waveform judged) {
        Objects.requireNonNull(judged, "judged");
        if (judged.method() != LevelMethod.SEVERITY_CHAIN) {
            throw new IllegalArgumentException("waveform must come through the severity chain: " + judged.method());
        }
        EstimationError error = EstimationError.of(judged);
        MountedResonance lowest = resonance == null ? lowestOf(Mounting.MAGNET) : resonance;
        Contribution mounting = Contribution.oneSided("mounting", error.rise(lowest));
        return UncertaintyBudget.empty().with(sensor()).with(resonance == null ? mounting.asAssumed() : mounting)
                .withBounds("chain", CHAIN).with(error.contribution());
    }

    /**
     * Puts the budget of a level together whose recording isn't at hand: without mounting and estimation, so it is the
     * least that it can be.
     *
     * @param level level, measured or stated
     * @return contribution {@code sensor}, which stands for the whole instrument, and {@code chain} if it was this one
     */
    public UncertaintyBudget of(Level level) {
        Objects.requireNonNull(level, "level");
        UncertaintyBudget budget = UncertaintyBudget.empty().with(sensor());
        return level.method() == LevelMethod.SEVERITY_CHAIN ? budget.withBounds("chain", CHAIN) : budget;
    }

    private Contribution sensor() {
        UncertaintyBudget one = UncertaintyBudget.empty()
                .withExpanded("sensor", sensorPercent == null ? NOT_TOLD : sensorPercent / 100);
        return sensorPercent == null ? one.contributions().get(0).asAssumed() : one.contributions().get(0);
    }

    /**
     * Returns the uncertainty of the mean of repeated readings: {@code s/(x̄·√n)} with n − 1 degrees of freedom.
     *
     * @param readings repeated readings in one unit, at least two, finite, zero or more, mean above zero
     * @return the contribution {@code repetition}
     * @throws IllegalArgumentException if there are fewer than two or a reading is out of range
     * @see "JCGM 100:2008, 4.2.3"
     */
    public static Contribution repetition(double... readings) {
        Objects.requireNonNull(readings, "readings");
        double[] copy = readings.clone();
        Require.atLeast("number of readings", copy.length, 2);
        double mean = 0;
        for (double reading : copy) {
            mean += Require.notNegative("reading", reading, "") / copy.length;
        }
        double squares = 0;
        for (double reading : copy) {
            squares += (reading - mean) * (reading - mean);
        }
        double ofMean = Math.sqrt(squares / (copy.length - 1.0) / copy.length);
        return new Contribution("repetition", ofMean / Require.positive("mean of the readings", mean, ""),
                copy.length - 1.0);
    }

    /** Returns what was told, as in {@code sensor 5 %, resonance from 6000 Hz}. */
    @Override
    public String toString() {
        return (sensorPercent == null ? "sensor not told" : "sensor " + Digits.compact(sensorPercent, 3) + " %")
                + (resonance == null ? ", mounting not told" : ", " + resonance);
    }
}
