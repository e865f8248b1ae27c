package dev.vibra.survey.machine;

import dev.vibra.internal.Digits;
import java.io.Serializable;

/**
 * Mass that went on the rotor.
 *
 * @param plane correction plane
 * @param massGrams mass in g, zero or more
 * @param angleDegrees angle in degrees, counted as the job counts
 * @param radiusMillimetres radius in mm, above zero; NaN for that of the plane
 */
public record SheetMass(String plane, double massGrams, double angleDegrees, double radiusMillimetres)
        implements Serializable {
    /** Returns plane, mass and angle, as in {@code drive end, 12 g at 0°}. */
    @Override
    public String toString() {
        return plane + ", " + Digits.compact(massGrams, 4) + " g at " + Digits.compact(angleDegrees, 4) + "°";
    }
}
