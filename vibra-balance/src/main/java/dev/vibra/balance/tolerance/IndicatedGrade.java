package dev.vibra.balance.tolerance;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.Objects;

/**
 * Grade that a vibration velocity would mean for a rotor free to move; a comparison, never an acceptance.
 *
 * @param millimetresPerSecond zero-to-peak velocity at rotation frequency in mm/s, finite, zero or more
 * @param speed speed of rotation
 * @see "ISO 21940-11:2016, Table 1: the grade is a product of eccentricity and angular speed, not a vibration"
 */
public record IndicatedGrade(double millimetresPerSecond, RotationSpeed speed) implements Serializable {
    /** What has to be said with every indicated grade. */
    public static final String WARNING = "An indicated grade equals eccentricity times angular speed only for a rotor"
            + " that is free to move, far above its critical speeds in soft bearings. In any other machine stiffness,"
            + " damping and foundation decide how much of the unbalance shows. It is no acceptance.";

    /**
     * Checks the parts.
     *
     * @param millimetresPerSecond zero-to-peak velocity at rotation frequency in mm/s
     * @param speed speed of rotation
     */
    public IndicatedGrade {
        Require.notNegative("velocity at rotation frequency", millimetresPerSecond, "mm/s");
        Objects.requireNonNull(speed, "speed");
    }

    /**
     * Makes the indicated grade of a velocity at rotation frequency.
     *
     * @param velocity velocity of the component at rotation frequency alone
     * @param speed speed of rotation
     * @return the indicated grade, from the zero-to-peak value of the sine
     * @throws IllegalArgumentException if the level is no velocity
     */
    public static IndicatedGrade of(Level velocity, RotationSpeed speed) {
        Objects.requireNonNull(velocity, "velocity");
        Objects.requireNonNull(speed, "speed");
        if (velocity.quantity() != Quantity.VELOCITY) {
            throw new IllegalArgumentException("velocity must be a velocity: " + velocity);
        }
        Level peak = velocity.sineAs(Quantity.VELOCITY, Detector.ZERO_TO_PEAK, speed.hertz());
        return new IndicatedGrade(peak.si() * 1000, speed);
    }

    /** Returns the value and that it is no acceptance. */
    @Override
    public String toString() {
        return "indicated grade G" + Digits.significant(millimetresPerSecond, 2) + " at " + speed
                + " (for a rotor free to move; no acceptance)";
    }
}
