package dev.vibra.survey.machine;

/**
 * How a sensor is held to the machine.
 *
 * @see "ISO 5348:2021, mechanical mounting of accelerometers"
 */
public enum Mounting {
    /** Screwed on with a stud. */
    STUD("stud"),
    /** Glued on. */
    ADHESIVE("adhesive"),
    /** Thin layer of bees wax. */
    WAX("wax"),
    /** Double-sided adhesive tape. */
    TAPE("tape"),
    /** Magnet. */
    MAGNET("magnet"),
    /** Probe held by hand. */
    HAND_HELD("hand-held");

    private final String label;

    Mounting(String label) {
        this.label = label;
    }

    /** Returns the label as it stands in a machine description, for example {@code magnet}. */
    @Override
    public String toString() {
        return label;
    }
}
