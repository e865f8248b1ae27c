package dev.vibra.quantity;

import java.util.Objects;

/** Physical quantity that a signal or a level describes. */
public enum Quantity {
    /** Vibratory acceleration, m/s². */
    ACCELERATION("acceleration", 2),
    /** Vibratory velocity, m/s. */
    VELOCITY("velocity", 1),
    /** Vibratory displacement, m. */
    DISPLACEMENT("displacement", 0),
    /** Electrical voltage of a sensor or a tachometer, V; it can't be integrated into a motion. */
    VOLTAGE("voltage", -1);

    private final String label;
    private final int timeDerivative;

    Quantity(String label, int timeDerivative) {
        this.label = label;
        this.timeDerivative = timeDerivative;
    }

    /**
     * Tells whether this is a motion: displacement, velocity or acceleration.
     *
     * @return true for a motion
     */
    public boolean isMotion() {
        return timeDerivative >= 0;
    }

    /**
     * Counts the integrations over time that lead from this quantity to another one: 1 from acceleration to velocity,
     * -1 the other way.
     *
     * @param target motion to arrive at
     * @return number of integrations, negative for differentiations
     * @throws IllegalArgumentException if either of the two is not a motion
     */
    public int integrationsTo(Quantity target) {
        Objects.requireNonNull(target, "target");
        if (!isMotion() || !target.isMotion()) {
            throw new IllegalArgumentException("quantity must be a motion to be integrated or differentiated: " + label
                    + " to " + target.label);
        }
        return timeDerivative - target.timeDerivative;
    }

    /**
     * Returns the unit in which this quantity is usually printed: m/s², mm/s, µm, V.
     *
     * @return the customary unit
     */
    public Unit customaryUnit() {
        return switch (this) {
            case ACCELERATION -> Unit.M_PER_S2;
            case VELOCITY -> Unit.MM_PER_S;
            case DISPLACEMENT -> Unit.UM;
            case VOLTAGE -> Unit.V;
        };
    }

    /** Returns the name in lower case, as in {@code velocity}. */
    @Override
    public String toString() {
        return label;
    }
}
