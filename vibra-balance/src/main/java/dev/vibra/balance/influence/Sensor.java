package dev.vibra.balance.influence;

import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.util.Objects;

/**
 * Place where the vibration is read, and how its amplitude is told.
 *
 * @param name name of the measuring point, not blank
 * @param unit unit of the amplitudes
 * @param detector detector of the amplitudes
 */
public record Sensor(String name, Unit unit, Detector detector) implements Serializable {
    /**
     * Checks the parts.
     *
     * @param name name of the measuring point
     * @param unit unit of the amplitudes
     * @param detector detector of the amplitudes
     */
    public Sensor {
        Layout.requireName("sensor", Objects.requireNonNull(name, "name"));
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(detector, "detector");
    }

    /** Returns name, unit and detector, as in {@code DE-H in mm/s rms}. */
    @Override
    public String toString() {
        return name + " in " + unit + " " + detector;
    }
}
