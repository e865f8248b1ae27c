package dev.vibra.survey.machine;

/**
 * Direction in which a point is measured.
 *
 * @see "ISO 13373-1:2002, measuring positions and directions (from memory, unverified)"
 */
public enum Direction {
    /** Radial, horizontal. */
    HORIZONTAL("horizontal"),
    /** Radial, vertical. */
    VERTICAL("vertical"),
    /** Radial at any other angle. */
    RADIAL("radial"),
    /** Along the shaft. */
    AXIAL("axial");

    private final String label;

    Direction(String label) {
        this.label = label;
    }

    /**
     * Tells whether the direction is across the shaft.
     *
     * @return true for all but axial
     */
    public boolean isRadial() {
        return this != AXIAL;
    }

    /** Returns the label as it stands in a machine description, for example {@code horizontal}. */
    @Override
    public String toString() {
        return label;
    }
}
