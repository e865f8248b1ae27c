package dev.vibra.quality;

import java.io.Serializable;
import java.util.Objects;

/**
 * One finding about a recording, with its figure.
 *
 * @param code stable name, as in {@code clipping}
 * @param text what was found, in words
 * @param value figure that was measured
 * @param limit figure that would still have been sound
 */
public record Remark(String code, String text, double value, double limit) implements Serializable {
    /**
     * Checks that code and text are there.
     *
     * @param code see the record
     * @param text see the record
     * @param value see the record
     * @param limit see the record
     */
    public Remark {
        Objects.requireNonNull(code, "code");
        Objects.requireNonNull(text, "text");
    }

    /** Returns code and text. */
    @Override
    public String toString() {
        return code + ": " + text;
    }
}
