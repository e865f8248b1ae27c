package dev.vibra.bearing.proportion;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * Pulsation that has another explanation than a bearing.
 *
 * @param family pulsation
 * @param cause what else makes it, as in {@code 3 times the speed}
 */
public record RateElsewhere(SeenPulsation family, String cause) implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * Checks the values.
     *
     * @param family see the record
     * @param cause see the record
     */
    public RateElsewhere {
        Objects.requireNonNull(family, "family");
        Require.notBlank("cause", cause);
    }

    /** Returns pulsation and cause. */
    @Override
    public String toString() {
        return family + ": " + cause;
    }
}
