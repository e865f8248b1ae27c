package dev.vibra.machine;

import dev.vibra.internal.Require;
import dev.vibra.severity.Coupling;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/**
 * A coupling between two parts of a machine.
 *
 * @param first id of one part
 * @param second id of the other part
 * @param kind whether it gives way
 */
public record CoupledParts(String first, String second, Coupling kind) implements Serializable {
    /**
     * Checks that two parts are coupled.
     *
     * @param first see the record
     * @param second see the record
     * @param kind see the record
     */
    public CoupledParts {
        first = Require.notBlank("first", first);
        second = Require.notBlank("second", second);
        Objects.requireNonNull(kind, "kind");
        if (first.equals(second)) {
            throw new IllegalArgumentException("coupling must be between two parts: " + first + " and " + second);
        }
    }

    /**
     * Finds the part at the other side of a coupling.
     *
     * @param part id of a part
     * @return id of the part that it couples to this one; empty if it doesn't couple this part
     */
    public Optional<String> coupledTo(String part) {
        Objects.requireNonNull(part, "part");
        return first.equals(part) ? Optional.of(second) : second.equals(part) ? Optional.of(first) : Optional.empty();
    }

    /** Returns parts and kind, as in {@code motor to pump, flexible}. */
    @Override
    public String toString() {
        return first + " to " + second + ", " + kind;
    }
}
