package dev.vibra.diagnosis;

import java.util.Objects;

/** How urgent a finding is, or how a machine stands: worse ones come later. */
public enum Rank {
    /** Looked at, and nothing speaks against it. */
    NO_OBJECTION("nothing speaks against it"),
    /** Something is to be watched or cleared up. */
    WATCH("watch"),
    /** A remedy is to be planned. */
    PLAN_REMEDY("plan a remedy"),
    /** Somebody qualified has to decide now. */
    DECIDE_NOW("decide now");

    private final String label;

    Rank(String label) {
        this.label = label;
    }

    /**
     * Takes the more urgent of two.
     *
     * @param other another rank
     * @return the worse one
     */
    public Rank orWorse(Rank other) {
        return compareTo(Objects.requireNonNull(other, "other")) >= 0 ? this : other;
    }

    /** Returns the rank in words. */
    @Override
    public String toString() {
        return label;
    }
}
