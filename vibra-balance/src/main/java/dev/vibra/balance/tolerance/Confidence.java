package dev.vibra.balance.tolerance;

/** How well a fact of a standard was checked; the standards themselves were not at hand. */
public enum Confidence {
    /** Several independent public sources agree. */
    SEVERAL_SOURCES("several public sources agree; verify in the standard"),
    /** One public source. */
    ONE_SOURCE("one public source; verify in the standard"),
    /** Recalled only. */
    FROM_MEMORY("from memory, unverified");

    private final String text;

    Confidence(String text) {
        this.text = text;
    }

    /** Returns the words that are printed beside the fact. */
    @Override
    public String toString() {
        return text;
    }
}
