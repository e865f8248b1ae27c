package dev.vibra.docs.survey.chart;

import dev.vibra.internal.Require;
import java.util.Objects;

/**
 * A line of a spectrum as the analysis found it, between the lines of the transform: where a table names it, a figure
 * shows it at the same place and height.
 *
 * @param hertz interpolated frequency in Hz, zero or more
 * @param level interpolated level in the unit of the figure, zero or more
 * @param name name as in the table, for example {@code 2 × shaft speed}; may be empty
 */
public record SnapLine(double hertz, double level, String name) {
    /**
     * Checks what it is given.
     *
     * @param hertz see the record
     * @param level see the record
     * @param name see the record
     * @throws IllegalArgumentException if a number is out of range
     */
    public SnapLine {
        Require.notNegative("hertz", hertz, "Hz");
        Require.notNegative("level", level, "");
        Objects.requireNonNull(name, "name");
    }
}
