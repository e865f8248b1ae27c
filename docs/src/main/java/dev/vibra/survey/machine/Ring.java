package dev.vibra.survey.machine;

/** Ring of a rolling bearing. */
public enum Ring {
    /** Inner ring. */
    INNER("inner"),
    /** Outer ring. */
    OUTER("outer");

    private final String label;

    Ring(String label) {
        this.label = label;
    }

    /** Returns the label as it stands in a machine description, {@code inner} or {@code outer}. */
    @Override
    public String toString() {
        return label;
    }
}
