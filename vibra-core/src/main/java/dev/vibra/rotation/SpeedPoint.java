package dev.vibra.rotation;

import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.Objects;

/**
 * One point of a run-up or coast-down.
 *
 * @param seconds time in s, finite
 * @param speed speed of rotation
 * @param vector amplitude and phase of the order that is followed
 */
public record SpeedPoint(double seconds, RotationSpeed speed, OrderVector vector) implements Serializable {
    /**
     * Checks the values.
     *
     * @param seconds see the record
     * @param speed see the record
     * @param vector see the record
     * @throws IllegalArgumentException if the time is not finite
     */
    public SpeedPoint {
        Require.finite("seconds", seconds);
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(vector, "vector");
    }

    /** Returns speed and vector. */
    @Override
    public String toString() {
        return speed + ": " + vector;
    }
}
