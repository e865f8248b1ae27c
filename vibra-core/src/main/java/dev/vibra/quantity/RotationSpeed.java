package dev.vibra.quantity;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Speed of rotation of a shaft; direction is not part of it.
 *
 * @param hertz revolutions per second, finite, above zero
 */
public record RotationSpeed(double hertz) implements Serializable {
    /**
     * Checks the value.
     *
     * @param hertz see the record
     */
    public RotationSpeed {
        Require.positive("rotation speed", hertz, "Hz");
    }

    /**
     * Makes a speed of revolutions per minute.
     *
     * @param value speed in r/min, finite, above zero
     * @return the speed
     * @throws IllegalArgumentException if the value is out of range
     */
    public static RotationSpeed ofRevolutionsPerMinute(double value) {
        return new RotationSpeed(Require.positive("rotation speed", value, "r/min") / 60);
    }

    /**
     * Makes a speed of revolutions per second.
     *
     * @param value speed in Hz, finite, above zero
     * @return the speed
     * @throws IllegalArgumentException if the value is out of range
     */
    public static RotationSpeed ofHertz(double value) {
        return new RotationSpeed(value);
    }

    /**
     * Returns the speed in revolutions per minute.
     *
     * @return speed in r/min
     */
    public double revolutionsPerMinute() {
        return hertz * 60;
    }

    /**
     * Returns the angular speed.
     *
     * @return speed in rad/s
     */
    public double radiansPerSecond() {
        return 2 * Math.PI * hertz;
    }

    /**
     * Returns the frequency that belongs to an order, a multiple of the rotation frequency.
     *
     * @param order order, finite
     * @return frequency in Hz
     */
    public double hertzOfOrder(double order) {
        return Require.finite("frequency of the order", Require.finite("order", order) * hertz);
    }

    /** Written out: the JDK holds the class loader of the record whose generated one ran last. */
    @Override
    public boolean equals(Object other) {
        return other instanceof RotationSpeed that && Double.compare(hertz, that.hertz) == 0;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Double.hashCode(hertz);
    }

    /** Returns the speed, as in {@code 1480 r/min (24.67 Hz)}. */
    @Override
    public String toString() {
        return Digits.compact(Math.round(revolutionsPerMinute() * 10) / 10.0, 6) + " r/min ("
                + Digits.significant(hertz, 4)
                + " Hz)";
    }
}
