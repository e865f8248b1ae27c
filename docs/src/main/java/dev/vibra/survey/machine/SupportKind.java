package dev.vibra.survey.machine;

/**
 * How stiff machine and support are together in the measuring direction.
 *
 * @see "ISO 20816-3:2022, classification of the support (clause from memory, unverified)"
 */
public enum SupportKind {
    /** Lowest natural frequency at least 25 % above the main excitation. */
    RIGID("rigid"),
    /** Anything softer. */
    FLEXIBLE("flexible");

    private final String label;

    SupportKind(String label) {
        this.label = label;
    }

    /** Returns the label as it stands in a machine description, {@code rigid} or {@code flexible}. */
    @Override
    public String toString() {
        return label;
    }
}
