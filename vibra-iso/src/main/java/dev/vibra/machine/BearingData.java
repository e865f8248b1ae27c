package dev.vibra.machine;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import java.io.Serializable;
import java.util.Objects;

/**
 * One rolling bearing of a machine.
 *
 * @param id name of the bearing on this machine, for example {@code drive end}
 * @param geometry inner geometry
 * @param rotatingRing ring that turns
 */
public record BearingData(String id, BearingGeometry geometry, RotatingRing rotatingRing) implements Serializable {
    /**
     * Checks that all are there.
     *
     * @param id see the record
     * @param geometry see the record
     * @param rotatingRing see the record
     */
    public BearingData {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(geometry, "geometry");
        Objects.requireNonNull(rotatingRing, "rotatingRing");
    }

    /** Returns the bearing, as in {@code drive end: 9 × 7.94 mm on 39.04 mm, 0°}. */
    @Override
    public String toString() {
        return id + ": " + geometry;
    }
}
