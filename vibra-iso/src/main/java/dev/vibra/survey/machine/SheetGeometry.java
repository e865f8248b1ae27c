package dev.vibra.survey.machine;

import java.io.Serializable;
import java.util.Map;

/**
 * Where masses can go on a rotor.
 *
 * @param radiusMillimetres correction radius in mm by plane; planes may be missing
 * @param positions number of equally spaced positions by plane; planes may be missing
 * @param firstPositionDegrees angle of position 1 in degrees by plane; zero where missing
 * @param axial places along the axis; null if not told
 */
public record SheetGeometry(Map<String, Double> radiusMillimetres, Map<String, Integer> positions,
        Map<String, Double> firstPositionDegrees, AxialSheet axial) implements Serializable {
    /**
     * Copies the maps.
     *
     * @param radiusMillimetres see the record
     * @param positions see the record
     * @param firstPositionDegrees see the record
     * @param axial see the record
     */
    public SheetGeometry {
        radiusMillimetres = Map.copyOf(radiusMillimetres);
        positions = Map.copyOf(positions);
        firstPositionDegrees = Map.copyOf(firstPositionDegrees);
    }

    /**
     * Returns a geometry of which nothing is told.
     *
     * @return empty maps, no places
     */
    public static SheetGeometry unknown() {
        return new SheetGeometry(Map.of(), Map.of(), Map.of(), null);
    }

    /** Returns what is known, as in {@code radius of 2 plane(s), positions in 2}. */
    @Override
    public String toString() {
        return "radius of " + radiusMillimetres.size() + " plane(s), positions in " + positions.size()
                + (axial == null ? "" : ", places along the axis");
    }
}
