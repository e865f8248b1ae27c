package dev.vibra.bearing;

/** What an envelope diagnosis says of a defect of one element. */
public enum ElementVerdict {
    /** The recording shows a defect of this element. */
    PRESENT("present"),
    /** The recording would have shown a defect of the stated strength and doesn't. */
    ABSENT("absent"),
    /** The recording allows neither; the reason says why. */
    NOT_DETERMINED("not determined");

    private final String label;

    ElementVerdict(String label) {
        this.label = label;
    }

    /** Returns the verdict as written in files and reports, for example {@code not determined}. */
    @Override
    public String toString() {
        return label;
    }
}
