package dev.vibra.measuring;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * One point with its direction and what it is good for.
 *
 * @param bearing number of the bearing, counted from the free end of the driver, from 1
 * @param part part of the machine that the bearing belongs to
 * @param direction direction of measurement
 * @param need how much it is wanted
 * @param purpose what it is good for, in words
 */
public record PlannedPoint(int bearing, String part, Direction direction, Need need, String purpose)
        implements Serializable {
    /** How much a point is wanted. */
    public enum Need {
        /** In every survey. */
        ALWAYS("always"),
        /** When a cause is looked for. */
        FOR_DIAGNOSIS("for diagnosis"),
        /** Where probes are fitted or can be. */
        WHERE_FITTED("where fitted");

        private final String label;

        Need(String label) {
            this.label = label;
        }

        /** Returns the need in words. */
        @Override
        public String toString() {
            return label;
        }
    }

    /**
     * Checks that nothing is missing.
     *
     * @param bearing number of the bearing
     * @param part part of the machine
     * @param direction direction of measurement
     * @param need how much it is wanted
     * @param purpose what it is good for
     */
    public PlannedPoint {
        Require.atLeast("bearing", bearing, 1);
        Objects.requireNonNull(part, "part");
        Objects.requireNonNull(direction, "direction");
        Objects.requireNonNull(need, "need");
        Objects.requireNonNull(purpose, "purpose");
    }

    /**
     * Returns the name of the point: number of the bearing and letter of the direction.
     *
     * @return as in {@code 2H}
     */
    public String id() {
        return bearing + direction.letter();
    }

    /** Returns the point in one line, as in {@code 2H motor, horizontal (always): unbalance, …}. */
    @Override
    public String toString() {
        return id() + " " + part + ", " + direction + " (" + need + "): " + purpose;
    }
}
