package dev.vibra.level;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import java.util.Objects;

/**
 * Levels in decibels: {@code L = 20·lg(x/x0)}, x the rms value, x0 1 µm/s² for acceleration, 1 nm/s for velocity and 1
 * pm for displacement.
 *
 * @see "ISO 1683:2015, Table 3 (by secondary sources; velocity re 50 nm/s is also in use and reads 33.98 dB less)"
 */
public final class Decibels {
    private Decibels() {}

    /**
     * Expresses an rms level in decibels.
     *
     * @param level rms level of a motion, above zero
     * @return level in dB re the standard's reference
     * @throws IllegalArgumentException if the level is not rms, not of a motion, or zero
     */
    public static double of(Level level) {
        if (Objects.requireNonNull(level, "level").detector() != Detector.RMS) {
            throw new IllegalArgumentException("detector must be rms: " + level.detector());
        }
        Require.positive("level", level.si(), "(" + level.quantity() + " in SI units)");
        return 20 * Math.log10(level.si() / reference(level.quantity()));
    }

    /**
     * Returns the rms level that a value in decibels stands for.
     *
     * @param decibels level in dB re the standard's reference, finite
     * @param quantity motion
     * @return the level
     * @throws IllegalArgumentException if the value is not finite or the quantity not a motion
     */
    public static Level toLevel(double decibels, Quantity quantity) {
        Objects.requireNonNull(quantity, "quantity");
        Require.finite("decibels", decibels);
        return Level.ofSi(reference(quantity) * Math.pow(10, decibels / 20), quantity, Detector.RMS);
    }

    /**
     * Returns the reference value of a quantity.
     *
     * @param quantity motion
     * @return reference in SI units: 1e-6 m/s², 1e-9 m/s or 1e-12 m
     * @throws IllegalArgumentException if the quantity is not a motion
     */
    public static double reference(Quantity quantity) {
        return switch (Objects.requireNonNull(quantity, "quantity")) {
            case ACCELERATION -> 1e-6;
            case VELOCITY -> 1e-9;
            case DISPLACEMENT -> 1e-12;
            case VOLTAGE -> throw new IllegalArgumentException("quantity must be a motion: " + quantity);
        };
    }
}
