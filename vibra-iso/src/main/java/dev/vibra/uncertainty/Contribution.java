package dev.vibra.uncertainty;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * One named source of uncertainty of a value, relative to the value.
 *
 * @param name what the uncertainty comes from, for example {@code sensor}
 * @param relativeStandard relative standard uncertainty, a plain number (0.025 is 2.5 %), finite, zero or more
 * @param degreesOfFreedom how well the uncertainty itself is known, at least 1; infinite where it is taken as exact
 * @param relativeEffect known mean effect: by which part a reading is too large, finite, above −1; 0 where an error may
 *     go either way
 * @param assumed true for a stated default, in place of what nobody told
 */
public record Contribution(String name, double relativeStandard, double degreesOfFreedom, double relativeEffect,
        boolean assumed) implements Serializable {
    private static final double TINY = 1e-4;
    /** Far beyond sense; squares of it are still numbers. */
    private static final double LARGEST = 1e100;

    /**
     * Checks the name and the values.
     *
     * @param name not blank
     * @param relativeStandard zero or more, at most 1e100
     * @param degreesOfFreedom at least 1
     * @param relativeEffect finite, above −1
     * @param assumed any
     * @throws IllegalArgumentException if the name is blank or a value out of range
     */
    public Contribution {
        if (Objects.requireNonNull(name, "name").isBlank()) {
            throw new IllegalArgumentException("name must not be blank");
        }
        if (!(Require.notNegative("relative uncertainty (" + name + ")", relativeStandard, "") <= LARGEST)) {
            throw Require.failure("relative uncertainty (" + name + ")", "at most " + LARGEST, relativeStandard);
        }
        if (!(degreesOfFreedom >= 1)) {
            throw Require.failure("degrees of freedom (" + name + ")", "at least 1", degreesOfFreedom);
        }
        if (!(relativeEffect > -1 && relativeEffect < Double.POSITIVE_INFINITY)) {
            throw Require.failure("relative effect (" + name + ")", "finite and above -1", relativeEffect);
        }
    }

    /**
     * Takes an uncertainty without a mean effect that was told or measured.
     *
     * @param name what the uncertainty comes from
     * @param relativeStandard relative standard uncertainty, finite, zero or more
     * @param degreesOfFreedom at least 1, may be infinite
     * @throws IllegalArgumentException if the name is blank or a value out of range
     */
    public Contribution(String name, double relativeStandard, double degreesOfFreedom) {
        this(name, relativeStandard, degreesOfFreedom, 0, false);
    }

    /**
     * Takes an uncertainty that is known exactly.
     *
     * @param name what the uncertainty comes from
     * @param relativeStandard relative standard uncertainty, finite, zero or more
     * @throws IllegalArgumentException if the name is blank or the value out of range
     */
    public Contribution(String name, double relativeStandard) {
        this(name, relativeStandard, Double.POSITIVE_INFINITY);
    }

    /**
     * Takes an effect that makes readings too large by a part between 0 and a bound, all alike likely: half the bound
     * is its mean, which an interval is to be corrected by, and {@code u = a/(2·√3)} what is left.
     *
     * @param name what the effect comes from
     * @param bound a, largest part by which a reading is too large, finite, zero or more
     * @return the contribution
     * @throws IllegalArgumentException if the name is blank or the bound out of range
     * @see "JCGM 100:2008, 3.2.4 (correction of known effects), 4.3.7 and 4.3.8 (bounds)"
     */
    public static Contribution oneSided(String name, double bound) {
        Require.notNegative("bound (" + name + ")", bound, "");
        return new Contribution(name, bound / Math.sqrt(12), Double.POSITIVE_INFINITY, bound / 2, false);
    }

    /**
     * Marks the contribution as a stated default.
     *
     * @return the same, assumed
     */
    public Contribution asAssumed() {
        return new Contribution(name, relativeStandard, degreesOfFreedom, relativeEffect, true);
    }

    /** Returns name and standard uncertainty, as in {@code sensor 5 % (assumed)}. */
    @Override
    public String toString() {
        boolean tiny = relativeStandard > 0 && relativeStandard < TINY;
        return name + " " + (tiny ? "< 0.01" : Digits.compact(100 * relativeStandard, 2)) + " %"
                + (assumed ? " (assumed)" : "");
    }
}
