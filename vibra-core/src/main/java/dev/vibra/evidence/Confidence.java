package dev.vibra.evidence;

import java.util.Arrays;

/** How far the source of a limit, or of another fact of a standard, can be relied on; no standard was at hand. */
public enum Confidence {
    /** Several independent public sources agree on the values. */
    FIRM("firm"),
    /**
     * One public source or memory, though an arithmetic check holds: look it up in the standard before relying on it.
     */
    SECONDARY("secondary source, verify"),
    /** From memory without any check, or a rule that no source states: not to be relied on before it is looked up. */
    UNVERIFIED("from memory, unverified"),
    /** Given by the user of the library in a table of his or her own. */
    SUPPLIED("supplied by the user");

    private final String label;

    Confidence(String label) {
        this.label = label;
    }

    /**
     * Finds a confidence by the words that {@link #toString()} prints, as tables of limits hold them.
     *
     * @param name words, for example {@code firm}
     * @return the confidence
     * @throws IllegalArgumentException if no confidence has that name
     */
    public static Confidence ofName(String name) {
        return Arrays.stream(values()).filter(confidence -> confidence.label.equals(name)).findFirst()
                .orElseThrow(() -> new IllegalArgumentException("confidence must be one of 'firm', 'secondary source,"
                        + " verify', 'from memory, unverified', 'supplied by the user': " + name));
    }

    /** Returns the words as printed in a verdict, for example {@code secondary source, verify}. */
    @Override
    public String toString() {
        return label;
    }
}
