package dev.vibra.severity;

/** How far the limits of a criterion can be relied on. */
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

    static Confidence ofName(String name) {
        for (Confidence confidence : values()) {
            if (confidence.label.equals(name)) {
                return confidence;
            }
        }
        throw new IllegalArgumentException("confidence must be one of 'firm', 'secondary source, verify', 'from"
                + " memory, unverified', 'supplied by the user': " + name);
    }

    /** Returns the words as printed in a verdict, for example {@code secondary source, verify}. */
    @Override
    public String toString() {
        return label;
    }
}
