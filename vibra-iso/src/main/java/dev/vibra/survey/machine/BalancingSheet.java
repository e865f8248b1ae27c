package dev.vibra.survey.machine;

import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.util.List;
import java.util.Map;

/**
 * Readings of a balancing job in the units they were written down in.
 *
 * @param speedRevolutionsPerMinute speed of all runs in r/min, above zero; NaN if not given
 * @param unit unit of the amplitudes
 * @param detector detector of the amplitudes
 * @param phaseIsLag true if phases lag behind the mark and angles count against rotation; false if they lead
 * @param sensors names of the sensors
 * @param planes names of the correction planes
 * @param initial one reading per sensor without trial mass
 * @param trials one trial run per plane
 * @param finalRun one reading per sensor after correction; empty if there was none
 * @param radiusMillimetres correction radius in mm by plane; planes may be missing
 * @param positions number of equally spaced positions by plane; planes may be missing
 */
public record BalancingSheet(double speedRevolutionsPerMinute, Unit unit, Detector detector, boolean phaseIsLag,
        List<String> sensors, List<String> planes, List<Phasor> initial, List<TrialRun> trials, List<Phasor> finalRun,
        Map<String, Double> radiusMillimetres, Map<String, Integer> positions) implements Serializable {
    /**
     * Copies lists and maps.
     *
     * @param speedRevolutionsPerMinute see the record
     * @param unit see the record
     * @param detector see the record
     * @param phaseIsLag see the record
     * @param sensors see the record
     * @param planes see the record
     * @param initial see the record
     * @param trials see the record
     * @param finalRun see the record
     * @param radiusMillimetres see the record
     * @param positions see the record
     */
    public BalancingSheet {
        sensors = List.copyOf(sensors);
        planes = List.copyOf(planes);
        initial = List.copyOf(initial);
        trials = List.copyOf(trials);
        finalRun = List.copyOf(finalRun);
        radiusMillimetres = Map.copyOf(radiusMillimetres);
        positions = Map.copyOf(positions);
    }

    /** Returns the size of the job, as in {@code balancing in 2 planes with 2 sensors, mm/s rms, phase lag}. */
    @Override
    public String toString() {
        return "balancing in " + count(planes.size(), "plane") + " with " + count(sensors.size(), "sensor") + ", "
                + unit
                + " " + detector + ", phase " + (phaseIsLag ? "lag" : "lead");
    }

    private static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
