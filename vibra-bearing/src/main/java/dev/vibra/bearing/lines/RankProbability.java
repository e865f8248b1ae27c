package dev.vibra.bearing.lines;

import dev.vibra.internal.Require;
import java.util.Objects;
import org.apache.commons.math3.special.Beta;
import org.apache.commons.math3.util.CombinatoricsUtils;

/**
 * Probability that several lines of noise are together as high as those seen.
 *
 * <p>Of n lines with exceedance probabilities p, the k-th smallest is at most x by chance with the binomial tail {@code
 * I_x(k, n − k + 1)}. The smallest of these for k = 2 … n, times n − 1 for having tried them all, is the probability of
 * the family. One line alone, however high, proves nothing: k begins at 2.
 *
 * @see "Order statistics of the uniform distribution: NIST/SEMATECH e-Handbook of Statistical Methods, beta
 *     distribution"
 */
public final class RankProbability {
    /** Below this logarithm the binomial tail equals its first term to 1e-6. */
    private static final double FIRST_TERM = -15;

    /** Of so few lines the tail is summed term by term. */
    private static final int FEW = 32;
    private static final double[] LOG_CHOOSE = logChoose();

    private RankProbability() {}

    /**
     * Returns the natural logarithm of the probability.
     *
     * @param sorted natural logarithms of the exceedance probabilities, ascending, the first {@code count} of them used
     * @param count number of lines, 0 to that of the logarithms
     * @return natural logarithm, 0 or less
     * @throws IllegalArgumentException if the count is out of range
     */
    public static double log(double[] sorted, int count) {
        Require.count("count", count, 0, Objects.requireNonNull(sorted, "sorted").length);
        double best = 0;
        double tried = Math.log(count - 1.0);
        for (int k = 2; k <= count && sorted[k - 1] < 0; k++) {
            if (logFirstTermAtLeast(sorted[k - 1], k, count) + tried < best) {
                best = Math.min(best, logTail(sorted[k - 1], k, count) + tried);
            }
        }
        return best;
    }

    /** The first term of the tail is a lower bound of it, and cheap: most places of a search go no further. */
    private static double logFirstTermAtLeast(double logX, int k, int n) {
        double x = Math.exp(logX);
        return logChoose(n, k) + k * logX - (k == n ? 0 : (n - k) * x / (1 - x));
    }

    private static double logTail(double logX, int k, int n) {
        if (logX < FIRST_TERM) {
            return logChoose(n, k) + k * logX;
        }
        double x = Math.exp(logX);
        if (n <= FEW) {
            return x <= 0.5 ? logSumFromFirst(logX, x, k, n) : logSumFromLast(logX, x, k, n);
        }
        double tail = Beta.regularizedBeta(x, k, n - k + 1.0);
        return tail > 0 ? Math.log(tail) : logChoose(n, k) + k * logX + (n - k) * Math.log1p(-x);
    }

    private static double logSumFromFirst(double logX, double x, int k, int n) {
        double term = 1;
        double sum = 1;
        for (int j = k; j < n; j++) {
            term *= (n - j) / (j + 1.0) * (x / (1 - x));
            sum += term;
        }
        return logChoose(n, k) + k * logX + (n - k) * Math.log(1 - x) + Math.log(sum);
    }

    private static double logSumFromLast(double logX, double x, int k, int n) {
        double term = 1;
        double sum = 1;
        for (int j = n; j > k; j--) {
            term *= j / (n - j + 1.0) * ((1 - x) / x);
            sum += term;
        }
        return Math.min(0, n * logX + Math.log(sum));
    }

    private static double logChoose(int n, int k) {
        return n <= FEW ? LOG_CHOOSE[n * (FEW + 1) + k] : CombinatoricsUtils.binomialCoefficientLog(n, k);
    }

    private static double[] logChoose() {
        double[] logs = new double[(FEW + 1) * (FEW + 1)];
        for (int n = 0; n <= FEW; n++) {
            for (int k = 0; k <= n; k++) {
                logs[n * (FEW + 1) + k] = CombinatoricsUtils.binomialCoefficientLog(n, k);
            }
        }
        return logs;
    }

    /**
     * Returns the exceedance probability that two of n lines must reach for a family to have a probability.
     *
     * @param logFamily natural logarithm of the probability of the family, finite, 0 or less
     * @param n number of lines, 2 to 1,000,000
     * @return natural logarithm of the exceedance probability of a line
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static double logLineOfTwo(double logFamily, int n) {
        Require.within("logFamily", logFamily, -Double.MAX_VALUE, 0, "");
        Require.count("n", n, 2, 1_000_000);
        return 0.5 * (logFamily - Math.log(n - 1.0) - CombinatoricsUtils.binomialCoefficientLog(n, 2));
    }
}
