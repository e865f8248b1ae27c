package dev.vibra.evidence;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * A doubt about a recording or a result, with the figure that gave rise to it.
 *
 * @param code short stable name in lower case, for programs, as in {@code clipping}
 * @param text what was found, in words
 * @param value figure that was found, finite
 * @param limit figure that it was held against, finite
 * @param disqualifying true if nothing should rest on what is remarked upon, false if it is worth knowing only
 */
public record Remark(String code, String text, double value, double limit, boolean disqualifying)
        implements Serializable {
    private static final long serialVersionUID = 1;

    /**
     * Checks texts and figures.
     *
     * @param code see the record
     * @param text see the record
     * @param value see the record
     * @param limit see the record
     * @param disqualifying see the record
     * @throws IllegalArgumentException if a figure is not finite
     */
    public Remark {
        Objects.requireNonNull(code, "code");
        Objects.requireNonNull(text, "text");
        Require.finite("value of a remark", value);
        Require.finite("limit of a remark", limit);
    }

    /**
     * Makes a remark that disqualifies.
     *
     * @param code short stable name in lower case
     * @param text what was found, in words
     * @param value figure that was found, finite
     * @param limit figure that it was held against, finite
     * @return the remark
     * @throws IllegalArgumentException if a figure is not finite
     */
    public static Remark doubt(String code, String text, double value, double limit) {
        return new Remark(code, text, value, limit, true);
    }

    /**
     * Makes a remark that is worth knowing.
     *
     * @param code short stable name in lower case
     * @param text what was found, in words
     * @param value figure that was found, finite
     * @param limit figure that it was held against, finite
     * @return the remark
     * @throws IllegalArgumentException if a figure is not finite
     */
    public static Remark note(String code, String text, double value, double limit) {
        return new Remark(code, text, value, limit, false);
    }

    /** Returns code and text. */
    @Override
    public String toString() {
        return code + ": " + text;
    }
}
