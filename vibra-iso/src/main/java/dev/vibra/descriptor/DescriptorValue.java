package dev.vibra.descriptor;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * One number that describes a recording, under a stable name.
 *
 * @param name stable name, for example {@code velocity-rms-10-1000Hz}
 * @param value value in the unit, finite
 * @param unit unit in plain letters, for example {@code mm/s}; {@code 1} for a plain number
 */
public record DescriptorValue(String name, double value, String unit) implements Serializable {
    /**
     * Checks that the value is a number.
     *
     * @param name see the record
     * @param value see the record
     * @param unit see the record
     */
    public DescriptorValue {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(unit, "unit");
        Require.finite(name, value);
    }

    /** Returns the number with its name, as in {@code velocity-rms-10-1000Hz 4.1 mm/s}. */
    @Override
    public String toString() {
        return name + " " + Digits.significant(value, 3) + (unit.equals("1") ? "" : " " + unit);
    }
}
