package dev.vibra.state;

/**
 * What came of a stream's order so far.
 *
 * @param nextSample number of the sample that should come next, counted as the pusher counts
 * @param gaps number of gaps, zero or more
 * @param missingSamples samples that never came, zero or more
 * @param repeats blocks that overlapped or came late, zero or more
 * @param repeatedSamples samples that were thrown away since they had come already or came late, zero or more
 */
public record Continuity(long nextSample, long gaps, long missingSamples, long repeats, long repeatedSamples) {
    /**
     * Checks the counts.
     *
     * @param nextSample see the record
     * @param gaps see the record
     * @param missingSamples see the record
     * @param repeats see the record
     * @param repeatedSamples see the record
     */
    public Continuity {
        if (!(gaps >= 0 && missingSamples >= gaps && repeats >= 0 && repeatedSamples >= 0)) {
            throw new IllegalArgumentException("counts must not be negative, missingSamples not below gaps: " + gaps
                    + ", " + missingSamples + ", " + repeats + ", " + repeatedSamples);
        }
    }

    /**
     * Tells whether all came, once and in order.
     *
     * @return true if nothing was missing or thrown away
     */
    public boolean isUnbroken() {
        return gaps == 0 && repeats == 0;
    }

    /** Returns the losses in one line. */
    @Override
    public String toString() {
        if (isUnbroken()) {
            return "unbroken up to sample " + nextSample;
        }
        return gaps + " gap(s), " + missingSamples + " samples missing; " + repeats + " repeat(s), " + repeatedSamples
                + " samples thrown away; up to sample " + nextSample;
    }
}
