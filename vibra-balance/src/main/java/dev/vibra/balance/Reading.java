package dev.vibra.balance;

import dev.vibra.balance.influence.Sensor;
import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Reading as it stands on a balancing sheet; unit, detector and sense are those of the job.
 *
 * @param amplitude amplitude, finite, zero or more
 * @param phaseDegrees phase in degrees, finite
 */
public record Reading(double amplitude, double phaseDegrees) implements Serializable {
    /**
     * Checks the values.
     *
     * @param amplitude amplitude, finite, zero or more
     * @param phaseDegrees phase in degrees, finite
     */
    public Reading {
        Require.notNegative("amplitude of a reading", amplitude, "");
        Require.finite("phase of a reading in degrees", phaseDegrees);
    }

    VibrationVector at(Sensor sensor, PhaseSense sense) {
        return VibrationVector.of(amplitude, phaseDegrees, sensor.unit(), sensor.detector(), sense);
    }

    /** Returns amplitude and phase, as in {@code 5.1 at 63°}. */
    @Override
    public String toString() {
        return Digits.compact(amplitude, 6) + " at " + Digits.compact(phaseDegrees, 6) + "°";
    }
}
