package dev.vibra.diagnosis;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * A fault that can't be told apart from that of a finding with what was measured.
 *
 * @param code stable name, as in {@code bent-shaft}
 * @param fault the fault in words
 * @param confidence how far the evidence supports it, 0 to 1
 */
public record LookAlike(String code, String fault, double confidence) implements Serializable {
    /**
     * Checks names and confidence.
     *
     * @param code see the record
     * @param fault see the record
     * @param confidence see the record
     */
    public LookAlike {
        code = Require.notBlank("code", code);
        fault = Require.notBlank("fault", fault);
        Require.within("confidence", confidence, 0, 1, "");
    }

    /** Returns fault and confidence, as in {@code bent shaft (0.16)}. */
    @Override
    public String toString() {
        return fault + " (" + Digits.significant(confidence, 2) + ")";
    }
}
