package dev.vibra.balance.rotor;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Sensor of a rotor model: a place along the axis and a direction across it.
 *
 * @param positionMetres place along the axis in m, finite
 * @param directionDegrees direction in degrees from the horizontal, with rotation; 0 is horizontal, 90 vertical
 */
public record Probe(double positionMetres, double directionDegrees) implements Serializable {
    /**
     * Checks the values.
     *
     * @param positionMetres place along the axis in m, finite
     * @param directionDegrees direction in degrees from the horizontal, with rotation; 0 is horizontal, 90 vertical
     */
    public Probe {
        Require.finite("position of sensor", positionMetres);
        Require.finite("direction of sensor in degrees", directionDegrees);
    }

    /**
     * Makes a sensor.
     *
     * @param positionMetres place along the axis in m, finite
     * @param directionDegrees direction in degrees from the horizontal, with rotation
     * @return the sensor
     * @throws IllegalArgumentException if a value is not finite
     */
    public static Probe of(double positionMetres, double directionDegrees) {
        return new Probe(positionMetres, directionDegrees);
    }

    Phasor reads(Phasor horizontal, Phasor vertical) {
        double direction = Math.toRadians(directionDegrees);
        return horizontal.times(Math.cos(direction)).plus(vertical.times(Math.sin(direction)));
    }

    /** Returns place and direction. */
    @Override
    public String toString() {
        return "sensor at " + Digits.compact(positionMetres, 4) + " m, " + Digits.compact(directionDegrees, 4) + "°";
    }
}
