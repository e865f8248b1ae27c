package dev.vibra.survey.machine;

import java.io.Serializable;
import java.util.List;
import java.util.Objects;

/**
 * Readings of a balancing job in the units they were written down in.
 *
 * @param speedRevolutionsPerMinute speed of all runs in r/min, above zero; NaN if not given
 * @param reading how the readings were written down
 * @param sensors names of the sensors
 * @param planes names of the correction planes
 * @param runs what was read
 * @param geometry where masses can go
 */
public record BalancingSheet(double speedRevolutionsPerMinute, SheetReading reading, List<String> sensors,
        List<String> planes, SheetRuns runs, SheetGeometry geometry) implements Serializable {
    /**
     * Copies the lists.
     *
     * @param speedRevolutionsPerMinute see the record
     * @param reading see the record
     * @param sensors see the record
     * @param planes see the record
     * @param runs see the record
     * @param geometry see the record
     */
    public BalancingSheet {
        Objects.requireNonNull(reading, "reading");
        sensors = List.copyOf(sensors);
        planes = List.copyOf(planes);
        Objects.requireNonNull(runs, "runs");
        Objects.requireNonNull(geometry, "geometry");
    }

    /** Returns the size of the job, as in {@code balancing in 2 planes with 2 sensors, mm/s rms, phase lag}. */
    @Override
    public String toString() {
        return "balancing in " + count(planes.size(), "plane") + " with " + count(sensors.size(), "sensor") + ", "
                + reading;
    }

    private static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
