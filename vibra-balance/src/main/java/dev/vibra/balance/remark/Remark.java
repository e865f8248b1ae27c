package dev.vibra.balance.remark;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * Doubt about a result, with the figure that gave rise to it.
 *
 * @param code short stable name in lower case, for programs
 * @param text sentence for people
 * @param value figure that was found, finite
 * @param limit figure that it was held against, finite
 */
public record Remark(String code, String text, double value, double limit) implements Serializable {
    /**
     * Checks the texts.
     *
     * @param code short stable name in lower case, for programs
     * @param text sentence for people
     * @param value figure that was found
     * @param limit figure that it was held against
     */
    public Remark {
        Objects.requireNonNull(code, "code");
        Objects.requireNonNull(text, "text");
        Require.finite("value of a remark", value);
        Require.finite("limit of a remark", limit);
    }

    /** Returns the code and the sentence. */
    @Override
    public String toString() {
        return code + ": " + text;
    }
}
