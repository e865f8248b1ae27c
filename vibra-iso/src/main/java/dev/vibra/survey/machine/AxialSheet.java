package dev.vibra.survey.machine;

import dev.vibra.internal.Digits;
import java.io.Serializable;
import java.util.Map;

/**
 * Places along the axis of a rotor, all from one and the same end.
 *
 * @param firstBearingMillimetres place of one bearing in mm
 * @param secondBearingMillimetres place of the other bearing in mm, apart from the first
 * @param centreOfMassMillimetres place of the centre of mass in mm; NaN if not known, taken midway between the bearings
 * @param planesMillimetres place of each correction plane in mm
 * @see "ISO 21940-11:2016, tolerance planes and correction planes"
 */
public record AxialSheet(double firstBearingMillimetres, double secondBearingMillimetres,
        double centreOfMassMillimetres, Map<String, Double> planesMillimetres) implements Serializable {
    /**
     * Copies the map.
     *
     * @param firstBearingMillimetres see the record
     * @param secondBearingMillimetres see the record
     * @param centreOfMassMillimetres see the record
     * @param planesMillimetres see the record
     */
    public AxialSheet {
        planesMillimetres = Map.copyOf(planesMillimetres);
    }

    /** Returns the places of the bearings, as in {@code bearings at 0 and 900 mm}. */
    @Override
    public String toString() {
        return "bearings at " + Digits.compact(firstBearingMillimetres, 5) + " and "
                + Digits.compact(secondBearingMillimetres, 5) + " mm";
    }
}
