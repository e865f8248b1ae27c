package dev.vibra.quality;

import java.io.Serializable;
import java.util.Objects;

/**
 * One finding about a recording, with its figure.
 *
 * @param code stable name, as in {@code clipping}
 * @param text what was found, in words
 * @param value figure that was measured
 * @param limit figure up to (or from) which the recording would have been sound
 * @param disqualifying true if no verdict should rest on the recording, false if it is worth knowing only
 */
public record Remark(String code, String text, double value, double limit, boolean disqualifying)
        implements Serializable {
    /**
     * Checks that code and text are there.
     *
     * @param code see the record
     * @param text see the record
     * @param value see the record
     * @param limit see the record
     * @param disqualifying see the record
     */
    public Remark {
        Objects.requireNonNull(code, "code");
        Objects.requireNonNull(text, "text");
    }

    static Remark doubt(String code, String text, double value, double limit) {
        return new Remark(code, text, value, limit, true);
    }

    static Remark note(String code, String text, double value, double limit) {
        return new Remark(code, text, value, limit, false);
    }

    /** Returns code and text. */
    @Override
    public String toString() {
        return code + ": " + text;
    }
}
