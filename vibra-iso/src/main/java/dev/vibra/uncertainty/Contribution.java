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
 * @param degreesOfFreedom how well the uncertainty itself is known, above zero; infinite where it is taken as exact
 */
public record Contribution(String name, double relativeStandard, double degreesOfFreedom) implements Serializable {
    /**
     * Checks the name and the values.
     *
     * @param name what the uncertainty comes from
     * @param relativeStandard relative standard uncertainty, finite, zero or more
     * @param degreesOfFreedom degrees of freedom, above zero, may be infinite
     * @throws IllegalArgumentException if the name is blank or a value out of range
     */
    public Contribution {
        if (Objects.requireNonNull(name, "name").isBlank()) {
            throw new IllegalArgumentException("name must not be blank");
        }
        Require.notNegative("relative uncertainty (" + name + ")", relativeStandard, "");
        if (!(degreesOfFreedom > 0)) {
            throw Require.failure("degrees of freedom (" + name + ")", "> 0", degreesOfFreedom);
        }
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

    /** Returns name and standard uncertainty, as in {@code sensor 2.5 %}. */
    @Override
    public String toString() {
        return name + " " + Digits.compact(100 * relativeStandard, 2) + " %";
    }
}
