package dev.vibra.balance;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.OptionalInt;
import java.util.function.IntToDoubleFunction;

/**
 * Probability that the residual unbalance of every plane is within its tolerance, given the scatter of the readings.
 *
 * <p>At 95 % or more the grade counts as proved, at 5 % or less as missed, in between it is not settled. Errors of
 * stored coefficients are in it only where their scatter was told.
 *
 * @see "JCGM 106:2012, evaluation of measurement data: the role of measurement uncertainty in conformity assessment"
 */
public final class GradeProbability implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double PROVED = 0.95;
    private static final int MOST_READINGS = 100;

    private final double probability;
    private final Integer moreReadings; // null: not even the most readings would settle it

    GradeProbability(double probability, OptionalInt moreReadings) {
        this.probability = Require.within("probability", probability, 0, 1, "");
        this.moreReadings = moreReadings.isPresent() ? Require.atLeast("moreReadings", moreReadings.getAsInt(), 0)
                : null;
    }

    private Object readResolve() {
        return new GradeProbability(probability, moreReadings());
    }

    static GradeProbability of(Setup setup, ErrorPropagation errors, Phasor[] found) {
        Phasor[] judged = setup.inTolerancePlanes(found);
        double[] limits = setup.tolerances();
        IntToDoubleFunction withMore = more -> errors.withMoreReadings(more).mapped(judged.length,
                setup::inTolerancePlanes).probabilityWithin(judged, limits);
        double now = withMore.applyAsDouble(0);
        return new GradeProbability(now, readingsToSettle(withMore, now));
    }

    private static OptionalInt readingsToSettle(IntToDoubleFunction withMore, double now) {
        if (settled(now)) {
            return OptionalInt.of(0);
        }
        if (!settled(withMore.applyAsDouble(MOST_READINGS))) {
            return OptionalInt.empty();
        }
        int tooFew = 0;
        int enough = MOST_READINGS;
        while (enough - tooFew > 1) {
            int middle = (tooFew + enough) / 2;
            if (settled(withMore.applyAsDouble(middle))) {
                enough = middle;
            } else {
                tooFew = middle;
            }
        }
        return OptionalInt.of(enough);
    }

    private static boolean settled(double probability) {
        return probability >= PROVED || probability <= 1 - PROVED;
    }

    /**
     * Returns the probability.
     *
     * @return probability from 0 to 1
     */
    public double probability() {
        return probability;
    }

    /**
     * Returns how many more readings of the present state would settle it, if they agree with the mean so far.
     *
     * @return number of readings, 0 if it is settled; empty if not even 100 would
     */
    public OptionalInt moreReadings() {
        return moreReadings == null ? OptionalInt.empty() : OptionalInt.of(moreReadings);
    }

    /**
     * Tells whether the grade is proved.
     *
     * @return true at 95 % or more
     */
    public boolean proved() {
        return probability >= PROVED;
    }

    /** The points of the sequence tell no more than two decimals near the ends. */
    private String inWords() {
        if (probability > 0.99) {
            return "above 0.99";
        }
        return probability < 0.01 ? "below 0.01" : Digits.significant(probability, 3);
    }

    /** Returns the probability and what would settle it. */
    @Override
    public String toString() {
        String text = "within tolerance with probability " + inWords();
        if (moreReadings == null) {
            return text + ", not settled by more readings of this state alone";
        }
        return moreReadings == 0 ? text : text + ", " + moreReadings
                + " more reading(s) of this state would settle it";
    }
}
