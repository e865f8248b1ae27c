package dev.vibra.balance.tolerance;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.Objects;

/**
 * Balance quality grade: the permissible residual specific unbalance times the angular speed, in mm/s.
 *
 * @param millimetresPerSecond product of eccentricity and angular speed in mm/s, finite, above zero
 * @see "ISO 21940-11:2016, Table 1"
 */
public record BalanceGrade(double millimetresPerSecond) implements Comparable<BalanceGrade>, Serializable {
    /** A value that many parts above a limit is on it: where it came from, its last digits are rounding. */
    static final double ROUNDING = 1e-9;

    /**
     * Checks the value.
     *
     * @param millimetresPerSecond product of eccentricity and angular speed in mm/s, finite, above zero
     */
    public BalanceGrade {
        Require.positive("balance grade", millimetresPerSecond, "mm/s");
    }

    /**
     * Makes a grade; values between those of the table are allowed, as they are in the standard.
     *
     * @param millimetresPerSecond the number behind the G, mm/s, finite, above zero
     * @return the grade
     * @throws IllegalArgumentException if the value is out of range
     */
    public static BalanceGrade of(double millimetresPerSecond) {
        return new BalanceGrade(millimetresPerSecond);
    }

    /**
     * Reads a grade as one writes it.
     *
     * @param text for example {@code G6.3} or {@code G 6.3}
     * @return the grade
     * @throws IllegalArgumentException if the text is no grade
     */
    public static BalanceGrade parse(String text) {
        Objects.requireNonNull(text, "text");
        if (!text.matches("G ?[0-9]+(\\.[0-9]+)?")) {
            throw new IllegalArgumentException("balance grade must be G and a number of mm/s, as in G6.3: " + text);
        }
        return new BalanceGrade(Double.parseDouble(text.substring(1).trim()));
    }

    /**
     * Returns the permissible residual specific unbalance {@code e_per = G/Ω}.
     *
     * @param speed greatest service speed
     * @return eccentricity in m
     * @see "ISO 21940-11:2016, permissible residual unbalance"
     */
    public double permissibleEccentricity(RotationSpeed speed) {
        Objects.requireNonNull(speed, "speed");
        return Require.finite("permissible eccentricity", millimetresPerSecond / 1000 / speed.radiansPerSecond());
    }

    /** Finer grades come first. */
    @Override
    public int compareTo(BalanceGrade other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(millimetresPerSecond, other.millimetresPerSecond);
    }

    /** Returns the grade as one writes it, as in {@code G6.3}. */
    @Override
    public String toString() {
        return "G" + Digits.compact(millimetresPerSecond, 3);
    }
}
