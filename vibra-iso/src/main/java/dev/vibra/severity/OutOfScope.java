package dev.vibra.severity;

import java.io.Serializable;
import java.util.Objects;

/**
 * That a criterion asked for by name does not cover the machine, although levels are judged by it as asked.
 *
 * @param reason what the standard covers instead, as in {@code ISO 20816-3:2022 does not cover a machine of kind pump}
 * @param fitting the choice that would be made without the request; it may have no criterion, too
 */
public record OutOfScope(String reason, Choice fitting) implements Serializable {
    /**
     * Checks that nothing is missing.
     *
     * @param reason what the standard covers instead
     * @param fitting the choice that would be made without the request
     */
    public OutOfScope {
        Objects.requireNonNull(reason, "reason");
        Objects.requireNonNull(fitting, "fitting");
    }

    /** Returns the reason and what fits. */
    @Override
    public String toString() {
        return reason + "; without the request: " + fitting.reason();
    }
}
