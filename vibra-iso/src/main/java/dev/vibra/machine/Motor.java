package dev.vibra.machine;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.OptionalInt;

/** What is known of an alternating-current motor beside power and speed. Immutable. */
public final class Motor implements Serializable {
    private static final long serialVersionUID = 1;

    private final Integer poles;
    private final Integer rotorBars;
    private final boolean converter;

    private Motor(Integer poles, Integer rotorBars, boolean converter) {
        if (poles != null && Require.atLeast("poles", poles, 2) % 2 != 0) {
            throw new IllegalArgumentException("poles must be an even number: " + poles);
        }
        Facts.countOrNull("rotorBars", rotorBars);
        this.poles = poles;
        this.rotorBars = rotorBars;
        this.converter = converter;
    }

    private Object readResolve() {
        return new Motor(poles, rotorBars, converter);
    }

    /** {@return a motor of which nothing is known; it is taken as fed straight from the line} */
    public static Motor unknown() {
        return new Motor(null, null, false);
    }

    /**
     * States the number of poles.
     *
     * @param number poles, an even number of at least 2
     * @return the motor with it
     */
    public Motor withPoles(int number) {
        return new Motor(number, rotorBars, converter);
    }

    /**
     * States the number of bars of the rotor.
     *
     * @param number bars, at least 1
     * @return the motor with it
     */
    public Motor withRotorBars(int number) {
        return new Motor(poles, number, converter);
    }

    /** {@return the motor fed by a frequency converter, so that the line frequency doesn't tell its speed} */
    public Motor onConverter() {
        return new Motor(poles, rotorBars, true);
    }

    /** {@return number of poles, if stated} */
    public OptionalInt poles() {
        return poles == null ? OptionalInt.empty() : OptionalInt.of(poles);
    }

    /** {@return number of bars of the rotor, if stated} */
    public OptionalInt rotorBars() {
        return rotorBars == null ? OptionalInt.empty() : OptionalInt.of(rotorBars);
    }

    /** {@return true if a frequency converter is said to feed the motor} */
    public boolean isOnConverter() {
        return converter;
    }

    /** Returns what is known, as in {@code motor, 4 poles}. */
    @Override
    public String toString() {
        return "motor" + (poles == null ? "" : ", " + poles + " poles")
                + (rotorBars == null ? "" : ", " + rotorBars + " rotor bars") + (converter ? ", on a converter" : "");
    }
}
