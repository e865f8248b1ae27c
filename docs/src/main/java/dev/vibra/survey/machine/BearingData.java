package dev.vibra.survey.machine;

import dev.vibra.internal.Digits;
import java.io.Serializable;

/**
 * One rolling bearing of a machine and its inner geometry.
 *
 * @param id name of the bearing on this machine, for example {@code drive end}
 * @param rollingElements number of rolling elements, 3 or more
 * @param ballDiameterMetres diameter of a rolling element in m
 * @param pitchDiameterMetres diameter of the circle of the element centres in m, above that of an element
 * @param contactAngleRadians contact angle in rad, from 0 to below π/2
 * @param rotatingRing ring that turns
 */
public record BearingData(String id, int rollingElements, double ballDiameterMetres, double pitchDiameterMetres,
        double contactAngleRadians, Ring rotatingRing) implements Serializable {
    /** Returns the bearing, as in {@code drive end: 9 elements of 7.94 mm on 39.04 mm}. */
    @Override
    public String toString() {
        return id + ": " + rollingElements + " elements of " + Digits.compact(ballDiameterMetres * 1e3, 5) + " mm on "
                + Digits.compact(pitchDiameterMetres * 1e3, 5) + " mm";
    }
}
