package dev.vibra.rotation;

import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;

/**
 * One point of a run-up or coast-down.
 *
 * @param seconds time in s
 * @param speed speed of rotation
 * @param vector amplitude and phase of the order that is followed
 */
public record SpeedPoint(double seconds, RotationSpeed speed, OrderVector vector) implements Serializable {
    /** Returns speed and vector. */
    @Override
    public String toString() {
        return speed + ": " + vector;
    }
}
