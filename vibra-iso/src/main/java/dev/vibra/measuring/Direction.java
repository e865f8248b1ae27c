package dev.vibra.measuring;

/** Direction in which a point is measured. */
public enum Direction {
    /** Radial and level, on a shaft that lies. */
    HORIZONTAL("H", "horizontal"),
    /** Radial and upright, on a shaft that lies. */
    VERTICAL("V", "vertical"),
    /** Radial; which way is not said, so no plan asks for it. */
    RADIAL("N", "radial"),
    /** Along the shaft. */
    AXIAL("A", "axial"),
    /** Radial on an upright shaft, in line with the outlet or another reference that is marked. */
    RADIAL_IN_LINE("R", "radial, in line with the reference"),
    /** Radial on an upright shaft, at right angles to the reference. */
    RADIAL_ACROSS("S", "radial, across the reference"),
    /** Radial in the line of the belt, between the two shafts. */
    ALONG_BELT("B", "along the belt"),
    /** Probe at the shaft, 45° to one side of the vertical or of the reference. */
    PROBE_X("X", "shaft, 45° to the right of the reference"),
    /** Probe at the shaft, at right angles to the other. */
    PROBE_Y("Y", "shaft, 45° to the left of the reference");

    private final String letter;
    private final String label;

    Direction(String letter, String label) {
        this.letter = letter;
        this.label = label;
    }

    /**
     * Returns the letter used in the name of a point.
     *
     * @return one capital letter
     */
    public String letter() {
        return letter;
    }

    /**
     * Tells whether the direction is at right angles to the shaft.
     *
     * @return false along the shaft
     */
    public boolean isRadial() {
        return this != AXIAL;
    }

    /** Returns the direction in words. */
    @Override
    public String toString() {
        return label;
    }
}
