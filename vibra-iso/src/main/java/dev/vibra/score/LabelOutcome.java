package dev.vibra.score;

/** What a survey made of one label. */
public enum LabelOutcome {
    /**
     * It says what the label says: the fault is named; or, for a healthy point, there is no finding, and every element
     * of a bearing examined there is absent.
     */
    RIGHT("right"),
    /** The fault isn't named, but a finding is one that can't be told apart from it, and no other fault is named. */
    FOUND_NOT_NAMED("found, not named"),
    /** The fault isn't named, and one that no label of the point has is. */
    WRONG_CODE("wrong code"),
    /** The element of the label is said to be absent. */
    ABSENT("absent"),
    /** Nothing is said against the label or for it; also for a healthy point where something is left open. */
    NOT_DETERMINED("not determined"),
    /** The recording is missing or not good for it. */
    REFUSED("refused"),
    /** There is a finding at a healthy point. */
    FALSE_ALARM("false alarm");

    private final String label;

    LabelOutcome(String label) {
        this.label = label;
    }

    /** {@return true if something is said that the label contradicts} */
    public boolean isWrong() {
        return this == WRONG_CODE || this == ABSENT || this == FALSE_ALARM;
    }

    /** Returns the outcome as written in files and tables, as in {@code found, not named}. */
    @Override
    public String toString() {
        return label;
    }
}
