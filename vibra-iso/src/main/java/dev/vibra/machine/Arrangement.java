package dev.vibra.machine;

/**
 * Where the mass of a rotor lies with respect to its bearings.
 *
 * @see "ISO 21940-11:2016, rotor configurations (from memory, unverified)"
 */
public enum Arrangement {
    /** Centre of mass between the bearings. */
    BETWEEN_BEARINGS("between bearings"),
    /** Centre of mass beyond a bearing. */
    OVERHUNG("overhung");

    private final String label;

    Arrangement(String label) {
        this.label = label;
    }

    /** Returns the label as it stands in a machine description, for example {@code between bearings}. */
    @Override
    public String toString() {
        return label;
    }
}
