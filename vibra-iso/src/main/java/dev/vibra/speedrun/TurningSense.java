package dev.vibra.speedrun;

/** Which way a shaft turns, seen from the end from which the angles of its probes are counted. */
public enum TurningSense {
    /** Against the hands of a clock. */
    COUNTER_CLOCKWISE("counter-clockwise"),
    /** With the hands of a clock. */
    CLOCKWISE("clockwise");

    private final String label;

    TurningSense(String label) {
        this.label = label;
    }

    /** Returns the sense in words. */
    @Override
    public String toString() {
        return label;
    }
}
