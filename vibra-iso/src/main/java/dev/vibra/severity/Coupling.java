package dev.vibra.severity;

/**
 * How a motor is coupled to what it drives.
 *
 * @see "ISO 20816-3:2022, scope: electric motors if the coupling is flexible"
 */
public enum Coupling {
    /** By a coupling with elastic parts, a belt or the like. */
    FLEXIBLE,
    /** Flange to flange, or with the impeller on the shaft of the motor. */
    RIGID;

    /** Returns the plain name, {@code flexible} or {@code rigid}. */
    @Override
    public String toString() {
        return this == RIGID ? "rigid" : "flexible";
    }
}
