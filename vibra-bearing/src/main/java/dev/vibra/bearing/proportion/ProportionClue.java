package dev.vibra.bearing.proportion;

/**
 * What speaks for or against a candidate. The weights order candidates and are no probabilities: a second race
 * outweighs the rate of a cage, and that a sideband, which an unbalanced load makes too; common practice, no source.
 *
 * @see "P. D. McFadden, J. D. Smith, Model for the vibration produced by a single point defect in a rolling element
 *     bearing, Journal of Sound and Vibration 96 (1984) 69-82: modulation by the load zone"
 */
public enum ProportionClue {
    /** Another race with the same number and ratio lies where the second pulsation is. */
    SECOND_RACE("the other race of such a bearing lies where the second pulsation is", 8),
    /** A rolling element of such a bearing may lie where the second pulsation is, at some contact angle. */
    SECOND_RATE("another element of such a bearing may lie where the second pulsation is", 1),
    /** The rate of the cage that was seen belongs to this number and ratio. */
    CAGE_AGREES("the rate of the cage that was seen is that of such a bearing", 3),
    /** The rate of the cage that was seen leaves room for a contact angle at which the element strikes so. */
    CAGE_ALLOWS("the rate of the cage that was seen leaves room for it", 1),
    /** Sidebands at the speed: the race turns through the load zone. */
    SWINGS_WITH_SPEED("sidebands at the speed, as of a race that turns through the load", 2),
    /** Sidebands at a rate of a cage: the element travels through the load zone. */
    SWINGS_WITH_CAGE("sidebands at the rate of a cage, as of a rolling element that passes the load", 3),
    /** No sidebands: the race stands in the load zone. */
    STEADY("no sidebands, as of a race that stands", 1),
    /** As many elements as displaced rings let in. */
    DEEP_GROOVE("as many elements as a deep-groove bearing of that ratio takes", 3),
    /** Few elements for the ratio: only at a steep contact angle would they fill the circle. */
    SPARSE("so few elements of that ratio fill the circle at a steep contact angle only", -3),
    /** Sidebands at the speed about a race that stands, or a rolling element. */
    STANDS_THOUGH_SWINGING("sidebands at the speed, which only a load that turns would give it", -1),
    /** No sidebands about a race that turns. */
    TURNS_THOUGH_STEADY("no sidebands at the speed, which a race that turns through a load zone has", -2),
    /** No sidebands at a rate of a cage about a rolling element. */
    ROLLS_THOUGH_STEADY("no sidebands at the rate of a cage, which a rolling element has", -2),
    /** Sidebands at the rate of a cage about a race. */
    RACE_THOUGH_CAGE("sidebands at the rate of a cage, which a race has only if its elements are unlike", -1),
    /** The rate of the cage that was seen belongs to another number or ratio. */
    CAGE_DISAGREES("the rate of the cage that was seen is not that of such a bearing", -3),
    /** A second pulsation has no place in such a bearing. */
    SECOND_RATE_LEFT("such a bearing leaves the second pulsation unexplained", -2);

    private final String label;
    private final int weight;

    ProportionClue(String label, int weight) {
        this.label = label;
        this.weight = weight;
    }

    /**
     * Says on which side the clue is.
     *
     * @return true if it speaks for the candidate
     */
    public boolean supports() {
        return weight >= 0;
    }

    int weight() {
        return weight;
    }

    /** Returns the clue in words. */
    @Override
    public String toString() {
        return label;
    }
}
