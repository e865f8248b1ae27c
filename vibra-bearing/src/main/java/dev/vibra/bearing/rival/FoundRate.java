package dev.vibra.bearing.rival;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.internal.Require;
import java.util.Objects;

/**
 * A rate of the bearing that is found already.
 *
 * @param element element it belongs to
 * @param hertz rate as found, Hz
 * @param depth depth of the pulsation
 */
public record FoundRate(BearingElement element, double hertz, double depth) {
    /**
     * Checks the values.
     *
     * @param element see the record
     * @param hertz see the record
     * @param depth see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public FoundRate {
        Objects.requireNonNull(element, "element");
        Require.positive("hertz", hertz, "Hz");
        Require.notNegative("depth", depth, "");
    }
}
