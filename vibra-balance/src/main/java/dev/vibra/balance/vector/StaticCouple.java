package dev.vibra.balance.vector;

import java.io.Serializable;
import java.util.Objects;

/**
 * Two vectors in two planes seen as a pair that is alike and a pair that is opposite: {@code a = s + c}, {@code b = s −
 * c}.
 *
 * <p>For unbalances these are the static and the couple part, for readings at the two ends the in-phase and the
 * opposite vibration.
 *
 * @param staticPart what both planes have alike
 * @param couplePart what plane a has and plane b has opposite
 * @see "ISO 21940-2, static unbalance, couple unbalance, dynamic unbalance"
 */
public record StaticCouple(Phasor staticPart, Phasor couplePart) implements Serializable {
    /**
     * Checks the parts.
     *
     * @param staticPart what both planes have alike
     * @param couplePart what plane a has and plane b has opposite
     */
    public StaticCouple {
        Objects.requireNonNull(staticPart, "staticPart");
        Objects.requireNonNull(couplePart, "couplePart");
        Objects.requireNonNull(staticPart, "static part");
        Objects.requireNonNull(couplePart, "couple part");
    }

    /**
     * Decomposes two vectors.
     *
     * @param a vector in the first plane
     * @param b vector in the second plane
     * @return {@code s = (a + b)/2} and {@code c = (a − b)/2}
     */
    public static StaticCouple of(Phasor a, Phasor b) {
        Objects.requireNonNull(a, "a");
        return new StaticCouple(a.plus(b).times(0.5), a.minus(b).times(0.5));
    }

    /**
     * Returns the vector in the first plane.
     *
     * @return static plus couple part
     */
    public Phasor first() {
        return staticPart.plus(couplePart);
    }

    /**
     * Returns the vector in the second plane.
     *
     * @return static minus couple part
     */
    public Phasor second() {
        return staticPart.minus(couplePart);
    }

    /** Returns both parts. */
    @Override
    public String toString() {
        return "static " + staticPart + ", couple " + couplePart;
    }
}
