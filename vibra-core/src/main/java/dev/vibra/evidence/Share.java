package dev.vibra.evidence;

import java.io.Serializable;
import java.util.Locale;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.BetaDistribution;

/**
 * A count of cases out of some, with its exact 95 % bounds: whatever the true share, the bounds miss it in at most one
 * set of cases in twenty, on each side at most one in forty.
 *
 * @param count cases that had it, 0 to {@code of}
 * @param of cases there were, at least 0
 * @see "C. J. Clopper, E. S. Pearson, The use of confidence or fiducial limits illustrated in the case of the binomial,
 *     Biometrika 26 (1934) 404-413"
 */
public record Share(int count, int of) implements Serializable {
    private static final double TAIL = 0.025;

    /**
     * Checks the counts.
     *
     * @param count see the record
     * @param of see the record
     */
    public Share {
        if (!(count >= 0 && count <= of)) {
            throw new IllegalArgumentException("count must be from 0 to of = " + of + ": " + count);
        }
    }

    /** {@return the share seen, 0 to 1; empty without any case} */
    public OptionalDouble value() {
        return of == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) count / of);
    }

    /** {@return lower bound of the true share at 95 %, 0 to 1} */
    public double lower() {
        return count == 0 ? 0 : new BetaDistribution(null, count, of - count + 1.0).inverseCumulativeProbability(TAIL);
    }

    /** {@return upper bound of the true share at 95 %, 0 to 1} */
    public double upper() {
        return count == of ? 1
                : new BetaDistribution(null, count + 1.0, of - count).inverseCumulativeProbability(1 - TAIL);
    }

    /** Returns counts and bounds, as in {@code 3 of 14 (4.7 to 50.8 %)}. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%d of %d (%.1f to %.1f %%)", count, of, 100 * lower(), 100 * upper());
    }
}
