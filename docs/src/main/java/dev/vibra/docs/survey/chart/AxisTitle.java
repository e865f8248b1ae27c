package dev.vibra.docs.survey.chart;

import dev.vibra.internal.Require;

/**
 * What is drawn along an axis.
 *
 * @param quantity name of the quantity, for example {@code Velocity}
 * @param unit unit with the detector, for example {@code mm/s rms}; {@code 1} for a ratio
 */
public record AxisTitle(String quantity, String unit) {
    /**
     * Checks what it is given.
     *
     * @param quantity see the record
     * @param unit see the record
     * @throws IllegalArgumentException if one is blank
     */
    public AxisTitle {
        Require.notBlank("quantity", quantity);
        Require.notBlank("unit", unit);
    }

    /** Returns quantity and unit as they stand at an axis, as in {@code Velocity in mm/s rms}. */
    @Override
    public String toString() {
        return unit.equals("1") ? quantity + " (1)" : quantity + " in " + unit;
    }
}
