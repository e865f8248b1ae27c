package dev.vibra.survey.machine;

import dev.vibra.internal.Digits;
import java.io.Serializable;

/**
 * Known influence coefficient, per gram.
 *
 * @param amplitude magnitude in the unit and detector of the readings per g, zero or more
 * @param phaseDegrees phase in degrees in the convention of the job
 * @param scatter one standard deviation in any direction, in the unit of the amplitude; NaN if not told
 */
public record SheetCoefficient(double amplitude, double phaseDegrees, double scatter) implements Serializable {
    /** Returns magnitude, phase and scatter, as in {@code 0.36 ± 0.02 at 195°}. */
    @Override
    public String toString() {
        return Digits.compact(amplitude, 4) + (Double.isNaN(scatter) ? "" : " ± " + Digits.compact(scatter, 2)) + " at "
                + Digits.compact(phaseDegrees, 4) + "°";
    }
}
