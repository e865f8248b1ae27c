package dev.vibra.balance.tolerance;

import dev.vibra.internal.Require;
import java.util.Locale;
import java.util.Objects;

/**
 * How much of the key was on a shaft or hub when it was balanced, with the letter that is stamped on it.
 *
 * @see "ISO 21940-32:2012, shaft and fitment key convention (letters from memory, unverified)"
 */
public enum KeyConvention {
    /** Half key: the rule for all new rotors. */
    HALF_KEY("H", 0.5),
    /** Full key. */
    FULL_KEY("F", 1),
    /** No key. */
    NO_KEY("N", 0);

    private final String mark;
    private final double share;

    KeyConvention(String mark, double share) {
        this.mark = mark;
        this.share = share;
    }

    /**
     * Returns the letter stamped on the part.
     *
     * @return H, F or N
     */
    public String mark() {
        return mark;
    }

    /**
     * Returns the unbalance that an assembly has because its parts were balanced with different shares of the key:
     * {@code (1 − share of shaft − share of hub)·m·r}.
     *
     * @param shaft convention of the shaft
     * @param hub convention of the hub
     * @param keyGrams mass of the whole key in g, finite, zero or more
     * @param radiusMillimetres radius of its centre of mass in mm, finite, zero or more
     * @return unbalance in g·mm in the direction of the key; negative is opposite to it
     * @throws IllegalArgumentException if a value is out of range
     */
    public static double assemblyGramMillimetres(KeyConvention shaft, KeyConvention hub, double keyGrams,
            double radiusMillimetres) {
        Require.notNegative("mass of key", keyGrams, "g");
        Require.notNegative("radius of key", radiusMillimetres, "mm");
        return Require.finite("unbalance of the key", (1 - Objects.requireNonNull(shaft, "shaft").share
                - Objects.requireNonNull(hub, "hub").share) * keyGrams * radiusMillimetres);
    }

    /** Returns the letter and the words, as in {@code H (half key)}. */
    @Override
    public String toString() {
        return mark + " (" + name().toLowerCase(Locale.ROOT).replace('_', ' ') + ")";
    }
}
