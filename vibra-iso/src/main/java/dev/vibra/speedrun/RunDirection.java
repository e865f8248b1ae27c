package dev.vibra.speedrun;

/** Which way the speed goes. */
public enum RunDirection {
    /** The speed rises. */
    RUN_UP("run-up"),
    /** The speed falls, with or without a brake. */
    COAST_DOWN("coast-down");

    private final String label;

    RunDirection(String label) {
        this.label = label;
    }

    /** {@return 1 where the speed rises, -1 where it falls} */
    int sign() {
        return this == RUN_UP ? 1 : -1;
    }

    /** Returns the direction in words. */
    @Override
    public String toString() {
        return label;
    }
}
