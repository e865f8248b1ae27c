package dev.vibra.bearing.kinematics;

/** Element of a rolling bearing that can carry a defect with a frequency of its own. */
public enum BearingElement {
    /** Raceway of the outer ring; struck by each rolling element as it passes. */
    OUTER_RACE("outer race"),
    /** Raceway of the inner ring; struck by each rolling element as it passes. */
    INNER_RACE("inner race"),
    /** Ball or roller; a spot on it strikes both raceways, so twice in a turn about its own axis. */
    ROLLING_ELEMENT("rolling element"),
    /** Cage, which carries the rolling elements round. */
    CAGE("cage");

    private final String label;

    BearingElement(String label) {
        this.label = label;
    }

    /** Returns the name as written in files and reports, for example {@code outer race}. */
    @Override
    public String toString() {
        return label;
    }
}
