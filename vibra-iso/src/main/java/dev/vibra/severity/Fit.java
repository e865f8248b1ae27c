package dev.vibra.severity;

/** Whether a machine meets a condition, where a fact that is not known leaves the answer open. */
enum Fit {
    MET, OPEN, NOT_MET;

    /** Both conditions together: the worse of the two. */
    Fit and(Fit other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
