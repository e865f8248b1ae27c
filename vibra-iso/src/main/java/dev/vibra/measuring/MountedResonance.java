package dev.vibra.measuring;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.io.Serializable;
import java.util.Objects;

/**
 * The resonance of a mounted sensor and what it does below: sensor and fixing as an undamped mass on a spring.
 *
 * <p>{@code deviation(f) = 1/(1 − (f/f_r)²) − 1}: 4.2 % at a fifth of the resonance, 12.5 % at a third.
 *
 * @param hertz mounted resonance f_r in Hz, finite, above zero
 * @see "ISO 5348:2021 on the mounted resonance; closed form of the undamped system of one degree of freedom"
 */
public record MountedResonance(double hertz) implements Serializable {
    /** By how much the resonance should lie above the highest frequency of interest: 5 times. */
    public static final double WANTED_RATIO = 5;

    /**
     * Checks the value.
     *
     * @param hertz mounted resonance in Hz, finite, above zero
     * @throws IllegalArgumentException if the value is out of range
     */
    public MountedResonance {
        Require.positive("mounted resonance", hertz, "Hz");
    }

    /**
     * Makes a resonance.
     *
     * @param hertz mounted resonance in Hz, finite, above zero
     * @return the resonance
     * @throws IllegalArgumentException if the value is out of range
     */
    public static MountedResonance ofHertz(double hertz) {
        return new MountedResonance(hertz);
    }

    /**
     * Returns by how much a reading is too large.
     *
     * @param frequencyHertz frequency in Hz, zero or more, below the resonance
     * @return deviation, a plain number (0.042 is 4.2 %)
     * @throws IllegalArgumentException if the frequency is out of range
     */
    public double deviationAt(double frequencyHertz) {
        if (!(frequencyHertz >= 0 && frequencyHertz < hertz)) {
            throw Require.failure("frequency", "from 0 to below the resonance, " + hertz + " Hz", frequencyHertz);
        }
        double ratio = frequencyHertz / hertz;
        return 1 / (1 - ratio * ratio) - 1;
    }

    /**
     * Returns up to which frequency a reading is too large by no more than said: {@code f_r·√(d/(1 + d))}.
     *
     * @param deviation d, a plain number, finite, above zero
     * @return frequency in Hz
     * @throws IllegalArgumentException if the deviation is out of range
     */
    public double highestHertz(double deviation) {
        Require.positive("deviation", deviation, "");
        return hertz * Math.sqrt(deviation / (1 + deviation));
    }

    /**
     * Returns the resonance with more mass on the same fixing: {@code f_r·√(m/(m + Δm))}.
     *
     * @param sensorGrams mass of the sensor in g, finite, above zero
     * @param addedGrams mass added, of a magnet for example, in g, finite, zero or more
     * @return the lower resonance
     * @throws IllegalArgumentException if a mass is out of range
     */
    public MountedResonance loaded(double sensorGrams, double addedGrams) {
        Require.positive("sensor mass", sensorGrams, "g");
        Require.notNegative("added mass", addedGrams, "g");
        return new MountedResonance(hertz * Math.sqrt(sensorGrams / (sensorGrams + addedGrams)));
    }

    /**
     * Tells whether the resonance lies at least 5 times above a band.
     *
     * @param band band of interest
     * @return true if it does
     */
    public boolean isHighEnoughFor(Band band) {
        Objects.requireNonNull(band, "band");
        return hertz >= WANTED_RATIO * band.highestHertz();
    }

    private static String whole(double hertz) {
        return Digits.compact(hertz < 100 ? hertz : Math.rint(hertz), 4);
    }

    /** Returns the resonance and its reach, as in {@code mounted resonance 25000 Hz, within 5 % up to 5455 Hz}. */
    @Override
    public String toString() {
        return "mounted resonance " + whole(hertz) + " Hz, within 5 % up to " + whole(highestHertz(0.05)) + " Hz";
    }
}
