package dev.vibra.speedrun;

import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.Objects;

/**
 * Mean place of a shaft in its bearing at one speed, from where it was at the slowest.
 *
 * @param speed speed of rotation
 * @param right distance to the right in m
 * @param up distance upwards in m
 */
public record CentrePoint(RotationSpeed speed, double right, double up) implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * Checks the values.
     *
     * @param speed see the record
     * @param right see the record
     * @param up see the record
     * @throws IllegalArgumentException if a distance is not finite
     */
    public CentrePoint {
        Objects.requireNonNull(speed, "speed");
        Require.finite("right", right);
        Require.finite("up", up);
    }
}
