package dev.vibra.survey.machine;

import dev.vibra.internal.Digits;
import java.io.Serializable;

/**
 * One balancing reading as it was written down: amplitude and phase in the unit, detector and phase convention of the
 * job.
 *
 * @param amplitude amplitude in the unit of the job, zero or more
 * @param phaseDegrees phase in degrees in the convention of the job
 */
public record Phasor(double amplitude, double phaseDegrees) implements Serializable {
    /** Returns amplitude and phase, as in {@code 5.1 at 63°}. */
    @Override
    public String toString() {
        return Digits.compact(amplitude, 4) + " at " + Digits.compact(phaseDegrees, 4) + "\u00b0";
    }
}
