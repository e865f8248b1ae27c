package dev.vibra.balance.vector;

import dev.vibra.internal.Require;
import java.util.Objects;

/** Sense in which angles on the rotor are counted from the mark. */
public enum AngleSense {
    /**
     * Angles grow against the direction of rotation: a point at 90° passes a fixed place a quarter turn after the mark.
     */
    AGAINST_ROTATION("against rotation", -1),
    /**
     * Angles grow with the direction of rotation: a point at 90° passes a fixed place a quarter turn before the mark.
     */
    WITH_ROTATION("with rotation", 1);

    private final String label;
    private final int sign;

    AngleSense(String label, int sign) {
        this.label = label;
        this.sign = sign;
    }

    /**
     * Turns an angle in this sense into one counted with rotation.
     *
     * @param radians angle in this sense, rad
     * @return the same place counted with rotation, rad
     */
    public double toWithRotation(double radians) {
        return sign * Require.finite("radians", radians);
    }

    /**
     * Returns the argument of a phasor in this sense.
     *
     * @param phasor phasor whose argument is an angle with rotation
     * @return angle in degrees, from 0 up to, not including, 360
     */
    public double degreesOf(Phasor phasor) {
        return Angles.degrees(sign * Objects.requireNonNull(phasor, "phasor").argument());
    }

    /** Returns {@code against rotation} or {@code with rotation}. */
    @Override
    public String toString() {
        return label;
    }
}
