package dev.vibra.balance.rotor;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Bearing with its support as springs and dampers across and up, without cross coupling.
 *
 * @param positionMetres place along the axis in m, finite
 * @param stiffnessHorizontal stiffness across in N/m, finite, above zero
 * @param stiffnessVertical stiffness up in N/m, finite, above zero
 * @param dampingHorizontal damping across in N·s/m, finite, zero or more
 * @param dampingVertical damping up in N·s/m, finite, zero or more
 */
public record Bearing(double positionMetres, double stiffnessHorizontal, double stiffnessVertical,
        double dampingHorizontal, double dampingVertical) implements Serializable {
    /**
     * Checks the values.
     *
     * @param positionMetres place along the axis in m, finite
     * @param stiffnessHorizontal stiffness across in N/m, finite, above zero
     * @param stiffnessVertical stiffness up in N/m, finite, above zero
     * @param dampingHorizontal damping across in N·s/m, finite, zero or more
     * @param dampingVertical damping up in N·s/m, finite, zero or more
     */
    public Bearing {
        Require.finite("position of bearing", positionMetres);
        Require.positive("horizontal stiffness", stiffnessHorizontal, "N/m");
        Require.positive("vertical stiffness", stiffnessVertical, "N/m");
        Require.notNegative("horizontal damping", dampingHorizontal, "N·s/m");
        Require.notNegative("vertical damping", dampingVertical, "N·s/m");
    }

    /**
     * Makes a bearing that is alike in all directions.
     *
     * @param positionMetres place along the axis in m, finite
     * @param stiffness stiffness in N/m, finite, above zero
     * @param damping damping in N·s/m, finite, zero or more
     * @return the bearing
     * @throws IllegalArgumentException if a value is out of range
     */
    public static Bearing of(double positionMetres, double stiffness, double damping) {
        return new Bearing(positionMetres, stiffness, stiffness, damping, damping);
    }

    /** Returns place and stiffnesses. */
    @Override
    public String toString() {
        return "bearing at " + Digits.compact(positionMetres, 4) + " m, " + Digits.significant(stiffnessHorizontal, 3)
                + " N/m across, " + Digits.significant(stiffnessVertical, 3) + " N/m up";
    }
}
