package dev.vibra.spectrum;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.Objects;

/**
 * A line of a spectrum that stands above its neighbours, between the bins.
 *
 * @param frequencyHertz interpolated frequency in Hz
 * @param level interpolated amplitude, corrected for the window
 */
public record SpectralPeak(double frequencyHertz, Level level) implements Serializable {
    /**
     * Checks the values.
     *
     * @param frequencyHertz see the record
     * @param level see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public SpectralPeak {
        Require.positive("frequencyHertz", frequencyHertz, "Hz");
        Objects.requireNonNull(level, "level");
    }

    /**
     * Returns the multiple of the speed of rotation that this line is.
     *
     * @param speed speed of rotation
     * @return order, above zero
     */
    public double order(RotationSpeed speed) {
        return frequencyHertz / Objects.requireNonNull(speed, "speed").hertz();
    }

    /** Returns frequency and level, as in {@code 24.63 Hz  3.6 mm/s rms}. */
    @Override
    public String toString() {
        return Digits.significant(frequencyHertz, 5) + " Hz  " + level;
    }
}
