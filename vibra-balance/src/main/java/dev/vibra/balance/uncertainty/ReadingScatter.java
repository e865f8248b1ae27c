package dev.vibra.balance.uncertainty;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * Scatter of one reading: a part that grows with the amplitude, and a floor that does not.
 *
 * <p>The floor is what other machines, the sensor and the resolution of the instrument leave however small the
 * vibration is. Without one, a residual near zero would look as if it were known exactly.
 *
 * @param amplitudeShare standard deviation of the amplitude over the amplitude, from 0 to 1
 * @param phaseDegrees standard deviation of the phase in degrees, from 0 to 180
 * @param floor standard deviation in any direction, in the unit and detector of the reading, finite, zero or more
 */
public record ReadingScatter(double amplitudeShare, double phaseDegrees, double floor) implements Serializable {
    /**
     * Checks the values.
     *
     * @param amplitudeShare standard deviation of the amplitude over the amplitude, from 0 to 1
     * @param phaseDegrees standard deviation of the phase in degrees, from 0 to 180
     * @param floor standard deviation in any direction, in the unit and detector of the reading, finite, zero or more
     */
    public ReadingScatter {
        Require.within("scatter of the amplitude", amplitudeShare, 0, 1, "");
        Require.within("scatter of the phase", phaseDegrees, 0, 180, "°");
        Require.notNegative("floor of the scatter", floor, "");
    }

    /**
     * Makes a scatter without floor.
     *
     * @param amplitudeShare standard deviation of the amplitude over the amplitude, from 0 to 1
     * @param phaseDegrees standard deviation of the phase in degrees, from 0 to 180
     * @return the scatter
     * @throws IllegalArgumentException if a value is out of range
     */
    public static ReadingScatter of(double amplitudeShare, double phaseDegrees) {
        return new ReadingScatter(amplitudeShare, phaseDegrees, 0);
    }

    /**
     * Sets the part that does not shrink with the vibration.
     *
     * @param newFloor standard deviation in any direction, in the unit and detector of the reading, finite, zero or
     *     more
     * @return a changed copy
     * @throws IllegalArgumentException if the value is out of range
     */
    public ReadingScatter withFloor(double newFloor) {
        return new ReadingScatter(amplitudeShare, phaseDegrees, newFloor);
    }

    /**
     * Returns one standard deviation along the reading.
     *
     * @param reading reading
     * @param perUnit what one unit of the floor is in the unit of the reading's phasor, finite, zero or more
     * @return vector along the reading; along the real axis for a reading of zero
     */
    public Phasor along(Phasor reading, double perUnit) {
        Objects.requireNonNull(reading, "reading");
        Require.notNegative("perUnit", perUnit, "");
        return Phasor.polar(Math.hypot(amplitudeShare * reading.magnitude(), floor * perUnit), reading.argument());
    }

    /**
     * Returns one standard deviation across the reading.
     *
     * @param reading reading
     * @param perUnit what one unit of the floor is in the unit of the reading's phasor, finite, zero or more
     * @return vector across the reading; along the imaginary axis for a reading of zero
     */
    public Phasor across(Phasor reading, double perUnit) {
        Objects.requireNonNull(reading, "reading");
        Require.notNegative("perUnit", perUnit, "");
        double share = Math.toRadians(phaseDegrees);
        return Phasor.polar(Math.hypot(share * reading.magnitude(), floor * perUnit),
                reading.argument() + Math.PI / 2);
    }

    /** Returns the standard deviations. */
    @Override
    public String toString() {
        return "scatter " + Digits.compact(amplitudeShare * 100, 3) + " %, " + Digits.compact(phaseDegrees, 3) + "°"
                + (floor > 0 ? ", floor " + Digits.compact(floor, 3) : "") + " (one standard deviation)";
    }
}
