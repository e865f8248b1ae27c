package dev.vibra.quality;

import dev.vibra.internal.Require;
import dev.vibra.level.Percentiles;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.apache.commons.math3.util.CombinatoricsUtils;

/**
 * Two tests for a trend in a short sequence that need no distribution: reverse arrangements and runs about the median.
 *
 * <p>Both give the two-sided probability that a sequence of independent values departs as far from what is expected, by
 * the exact distribution.
 *
 * @see "J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, sections 4.5.2 and 10.4.3"
 */
public final class TrendTests {
    private static final int LONGEST = 200;
    private static final double[] LOG_FACTORIALS =
            IntStream.rangeClosed(0, LONGEST).mapToDouble(CombinatoricsUtils::factorialLog).toArray();

    private TrendTests() {}

    /**
     * Counts the pairs in which an earlier value is larger than a later one.
     *
     * @param values values, finite
     * @return number of reverse arrangements, 0 to n(n-1)/2
     * @throws IllegalArgumentException if a value is not finite
     */
    public static int reverseArrangements(double... values) {
        Require.allFinite("values", Objects.requireNonNull(values, "values"));
        int count = 0;
        for (int i = 0; i < values.length; i++) {
            for (int j = i + 1; j < values.length; j++) {
                count += values[i] > values[j] ? 1 : 0;
            }
        }
        return count;
    }

    /**
     * Tests for a trend by the number of reverse arrangements.
     *
     * @param values values, 2 to 200, all finite
     * @return two-sided probability of independent values, 0 to 1
     * @throws IllegalArgumentException if there are too few or too many values or one is not finite
     */
    public static double reverseArrangementsProbability(double... values) {
        requireCount(Objects.requireNonNull(values, "values"));
        return reverseArrangementsProbability(inversions(values.length), values);
    }

    /** With the distribution for as many values, which sequences of equal length share. */
    static double reverseArrangementsProbability(double[] cumulative, double... values) {
        int most = values.length * (values.length - 1) / 2;
        int count = reverseArrangements(values);
        double below = cumulative[count];
        double above = cumulative[most - count]; // the distribution is symmetric
        return Math.min(1, 2 * Math.min(below, above));
    }

    /**
     * Returns the largest count of reverse arrangements whose lower tail is at most a probability.
     *
     * @param n number of values, 2 to 200
     * @param tail probability of the lower tail, above 0, below 0.5
     * @return count; empty if even none is too likely
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static OptionalInt reverseArrangementsLimit(int n, double tail) {
        Require.within("n", n, 2, LONGEST, "");
        Require.within("tail", tail, 0, 0.5, "");
        double[] cumulative = inversions(n);
        int within = 0;
        while (within < cumulative.length && cumulative[within] <= tail) {
            within++;
        }
        return within == 0 ? OptionalInt.empty() : OptionalInt.of(within - 1);
    }

    /** Cumulative distribution of the number of inversions of a random permutation. */
    static double[] inversions(int n) {
        double[] probability = {1};
        for (int k = 2; k <= n; k++) {
            double[] next = new double[k * (k - 1) / 2 + 1];
            double window = 0;
            for (int i = 0; i < next.length; i++) {
                window += i < probability.length ? probability[i] : 0;
                window -= i - k >= 0 && i - k < probability.length ? probability[i - k] : 0;
                next[i] = Math.max(0, window) / k;
            }
            probability = next;
        }
        for (int i = 1; i < probability.length; i++) {
            probability[i] += probability[i - 1];
        }
        return probability;
    }

    /**
     * Counts the runs of values above and below the median; values on it are left out.
     *
     * @param values values, finite
     * @return number of runs
     */
    public static int runs(double... values) {
        double median = Percentiles.of(Objects.requireNonNull(values, "values")).at(50);
        int runs = 0;
        double before = 0;
        for (double value : values) {
            double side = Math.signum(value - median);
            if (side != 0 && side != before) {
                runs++;
                before = side;
            }
        }
        return runs;
    }

    /**
     * Tests for a trend or a swing by the number of runs about the median.
     *
     * @param values values, 2 to 200, all finite
     * @return two-sided probability of independent values, 0 to 1
     * @throws IllegalArgumentException if there are too few or too many values or one is not finite
     */
    public static double runsProbability(double... values) {
        requireCount(Objects.requireNonNull(values, "values"));
        double median = Percentiles.of(values).at(50);
        int above = 0;
        int below = 0;
        for (double value : values) {
            above += value > median ? 1 : 0;
            below += value < median ? 1 : 0;
        }
        if (above == 0 || below == 0) {
            return 1;
        }
        int count = runs(values);
        double lower = 0;
        double upper = 0;
        for (int r = 2; r <= above + below; r++) {
            double probability = runsProbability(above, below, r);
            lower += r <= count ? probability : 0;
            upper += r >= count ? probability : 0;
        }
        return Math.min(1, 2 * Math.min(lower, upper));
    }

    private static double runsProbability(int above, int below, int runs) {
        int half = runs / 2;
        double ways = runs % 2 == 0 ? 2 * choose(above - 1, half - 1) * choose(below - 1, half - 1)
                : choose(above - 1, half - 1) * choose(below - 1, half)
                + choose(above - 1, half) * choose(below - 1, half - 1);
        return ways / choose(above + below, above);
    }

    private static double choose(int n, int k) {
        return k < 0 || k > n ? 0 : Math.exp(LOG_FACTORIALS[n] - LOG_FACTORIALS[k] - LOG_FACTORIALS[n - k]);
    }

    private static void requireCount(double[] values) {
        Require.within("number of values", values.length, 2, LONGEST, "");
        Require.allFinite("values", values);
    }
}
