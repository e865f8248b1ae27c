package dev.vibra.survey;

import java.io.Serializable;
import java.util.Objects;

/**
 * Something that was asked for, or that a reader would look for, and was not determined.
 *
 * @param part what is missing, for example {@code severity} or {@code gears}
 * @param reason why, and what would be needed
 */
public record Omission(String part, String reason) implements Serializable {
    /**
     * Checks that both are there.
     *
     * @param part see the record
     * @param reason see the record
     */
    public Omission {
        Objects.requireNonNull(part, "part");
        Objects.requireNonNull(reason, "reason");
    }

    /** Returns both, as in {@code gears: not determined, ...}. */
    @Override
    public String toString() {
        return part + ": not determined, " + reason;
    }
}
