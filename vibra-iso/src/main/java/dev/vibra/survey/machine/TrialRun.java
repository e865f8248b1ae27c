package dev.vibra.survey.machine;

import dev.vibra.internal.Digits;
import java.io.Serializable;
import java.util.List;

/**
 * One trial run of a balancing job.
 *
 * @param plane correction plane that carried the trial mass
 * @param massGrams trial mass in g, above zero
 * @param angleDegrees angle of the trial mass in degrees
 * @param radiusMillimetres radius of the trial mass in mm, above zero; NaN if not given
 * @param readings one reading per sensor, in the order of the sensors
 */
public record TrialRun(String plane, double massGrams, double angleDegrees, double radiusMillimetres,
        List<Phasor> readings) implements Serializable {
    /**
     * Copies the list.
     *
     * @param plane see the record
     * @param massGrams see the record
     * @param angleDegrees see the record
     * @param radiusMillimetres see the record
     * @param readings see the record
     */
    public TrialRun {
        readings = List.copyOf(readings);
    }

    /** Returns the trial, as in {@code drive end, 12 g at 0°}. */
    @Override
    public String toString() {
        return plane + ", " + Digits.compact(massGrams, 4) + " g at " + Digits.compact(angleDegrees, 4) + "\u00b0";
    }
}
