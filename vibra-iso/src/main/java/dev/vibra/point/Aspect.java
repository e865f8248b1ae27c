package dev.vibra.point;

/** What a recording can be good for; a doubt may concern one and leave the others. */
public enum Aspect {
    /** The samples as they are: peak, crest factor, kurtosis. */
    STATISTICS("statistics of the samples"),
    /** What is integrated: velocity, displacement, severity. */
    MOTION("velocity, displacement and severity"),
    /** What rings at high frequencies: bearings. */
    ENVELOPE("bearings");

    private final String label;

    Aspect(String label) {
        this.label = label;
    }

    /** Returns the aspect in words. */
    @Override
    public String toString() {
        return label;
    }
}
