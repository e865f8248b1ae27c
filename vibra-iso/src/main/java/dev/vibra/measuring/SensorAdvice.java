package dev.vibra.measuring;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Which accelerometer suits: sensitivity by the highest acceleration, resonance and lower limit by the band, mass by
 * the structure.
 *
 * <p>The output swing divided by three times the highest peak is the most sensitivity that doesn't overload (factor
 * three for impacts: common practice, no source); of the usual ones, 10, 50, 100 and 500 mV/g, the largest below it is
 * advised. The mounted resonance should be 5 times the top of the band, the sensor's mass below a tenth of the mass
 * that moves with the point. Immutable.
 *
 * @see "ISO 5348:2021 (resonance at least 5 times the highest frequency; mass below a tenth), through secondary
 *     sources"
 */
public final class SensorAdvice implements Serializable {
    private static final long serialVersionUID = 1;

    private static final double[] USUAL_MILLIVOLTS_PER_G = {500, 100, 50, 10};
    private static final double MARGIN = 3;
    private static final double SWING_VOLTS = 5;

    private final double peakG;
    private final Band band;

    private SensorAdvice(double peakG, Band band) {
        this.peakG = Require.positive("highest", peakG, "g");
        this.band = Objects.requireNonNull(band, "band");
    }

    private Object readResolve() {
        return new SensorAdvice(peakG, band);
    }

    /**
     * Takes what is to be measured.
     *
     * @param highest highest acceleration to expect, zero to peak, above zero
     * @param band band of interest
     * @return the advice
     * @throws IllegalArgumentException if the level is no acceleration, not zero to peak, or zero
     */
    public static SensorAdvice of(Level highest, Band band) {
        Objects.requireNonNull(highest, "highest");
        if (highest.quantity() != Quantity.ACCELERATION || highest.detector() != Detector.ZERO_TO_PEAK) {
            throw new IllegalArgumentException("highest must be an acceleration, zero to peak: " + highest);
        }
        return new SensorAdvice(highest.in(Unit.G), band);
    }

    /**
     * Returns the largest sensitivity that leaves the margin, for an output of ±5 V.
     *
     * @return sensitivity in mV/g
     */
    public double highestSensitivityMillivoltsPerG() {
        return 1000 * SWING_VOLTS / (MARGIN * peakG);
    }

    /**
     * {@return the usual sensitivity to take, 50, 100 and 500 mV/g that leaves the margin; 10 where none does, see
     * {@link #hints()}}
     */
    public double usualSensitivityMillivoltsPerG() {
        for (double usual : USUAL_MILLIVOLTS_PER_G) {
            if (usual <= highestSensitivityMillivoltsPerG()) {
                return usual;
            }
        }
        return USUAL_MILLIVOLTS_PER_G[USUAL_MILLIVOLTS_PER_G.length - 1];
    }

    /** {@return the mounted resonance that is wanted: 5 times the top of the band} */
    public MountedResonance wantedResonance() {
        return MountedResonance.ofHertz(MountedResonance.WANTED_RATIO * band.highestHertz());
    }

    /**
     * Tells whether a sensor is light enough for the structure: a tenth of the mass that moves with the point at most.
     *
     * @param sensorGrams mass of the sensor in g, finite, above zero
     * @param structureGrams effective mass of the structure at the point in g, finite, above zero
     * @return true if it is
     * @throws IllegalArgumentException if a mass is out of range
     */
    public static boolean isLightEnough(double sensorGrams, double structureGrams) {
        return Require.positive("sensor mass", sensorGrams, "g")
                <= 0.1 * Require.positive("structure mass", structureGrams, "g");
    }

    /**
     * Returns the advice in words.
     *
     * @return unmodifiable list of phrases
     */
    public List<String> hints() {
        List<String> hints = new ArrayList<>();
        hints.add("sensitivity " + Digits.compact(usualSensitivityMillivoltsPerG(), 3) + " mV/g (at most "
                + Digits.compact(highestSensitivityMillivoltsPerG(), 3) + " mV/g for peaks of "
                + Digits.compact(peakG, 3) + " g with a margin of three at ±5 V)");
        if (usualSensitivityMillivoltsPerG() > highestSensitivityMillivoltsPerG()) {
            hints.add("even 10 mV/g leaves less than the margin: take a sensor for shock");
        }
        hints.add("mounted resonance at least " + Digits.compact(wantedResonance().hertz(), 4) + " Hz");
        if (band.lowestHertz() == 0) {
            hints.add("a sensor that measures from 0 Hz on: piezoelectric ones don't");
        } else if (band.lowestHertz() < 2) {
            hints.add("lower limit of the sensor (3 dB) at or below " + Digits.compact(band.lowestHertz() / 2, 3)
                    + " Hz and low noise there: a slow machine's velocity is small in acceleration");
        }
        return List.copyOf(hints);
    }

    /** Two are equal if level and band are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof SensorAdvice advice && Double.compare(peakG, advice.peakG) == 0
                && band.equals(advice.band);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(peakG, band);
    }

    /** Returns the hints in one line. */
    @Override
    public String toString() {
        return String.join("; ", hints());
    }
}
