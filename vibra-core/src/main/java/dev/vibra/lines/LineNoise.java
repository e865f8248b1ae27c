package dev.vibra.lines;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import org.apache.commons.math3.special.Gamma;
import org.apache.commons.math3.util.ContinuedFraction;

/**
 * How far the mean square of a line of noise strays from its mean, averaged over n independent blocks: a gamma law of
 * shape n, which is chi-square with 2n degrees of freedom.
 *
 * @see "J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section 8.5.4 (chi-square of spectral estimates)"
 */
public final class LineNoise implements Serializable {
    private static final long serialVersionUID = 1;
    /** Beyond anything that a recording can hold; keeps what follows finite. */
    static final double HIGHEST_RATIO = 1e100;

    private final double averages;
    private final double medianOverMean;

    private LineNoise(double averages) {
        this.averages = averages;
        medianOverMean = ratioAt(Math.log(0.5));
    }

    private Object readResolve() {
        return of(averages);
    }

    /**
     * Makes the law.
     *
     * @param averages number of independent blocks averaged, or of those that would scatter as little; 0.1 to 1e9
     * @return the law
     * @throws IllegalArgumentException if the number is out of range
     */
    public static LineNoise of(double averages) {
        return new LineNoise(Require.within("averages", averages, 0.1, 1e9, ""));
    }

    /**
     * Returns the number of independent blocks.
     *
     * @return equivalent number of averages
     */
    public double averages() {
        return averages;
    }

    /**
     * Returns the median of a line over its mean, which turns a robust median into a floor.
     *
     * @return ratio, above 0, below 1
     */
    public double medianOverMean() {
        return medianOverMean;
    }

    /**
     * Returns the probability that a line of noise reads at least a multiple of its mean, as logarithm, so that nothing
     * underflows.
     *
     * @param ratio mean square over its mean, finite, zero or more; above 1e100 it counts as that
     * @return natural logarithm of the upper tail, 0 or less
     * @throws IllegalArgumentException if the ratio is out of range
     */
    public double logExceedance(double ratio) {
        double x = averages * Math.min(HIGHEST_RATIO, Require.notNegative("ratio", ratio, ""));
        if (x <= averages + 1) {
            return Math.log(Gamma.regularizedGammaQ(averages, x));
        }
        double fraction = new ContinuedFraction() {
            @Override
            protected double getA(int n, double at) {
                return 2.0 * n + 1 - averages + at;
            }

            @Override
            protected double getB(int n, double at) {
                return n * (averages - n);
            }
        }.evaluate(x, 1e-12, 10_000);
        return -x + averages * Math.log(x) - Gamma.logGamma(averages) - Math.log(fraction);
    }

    /**
     * Returns the multiple of its mean that a line of noise reaches with a probability, by bisection.
     *
     * @param logProbability natural logarithm of the probability, from -1e100 to below 0
     * @return mean square over its mean, above zero
     * @throws IllegalArgumentException if the logarithm is out of range
     */
    public double ratioAt(double logProbability) {
        if (!(logProbability >= -HIGHEST_RATIO && logProbability < 0)) {
            throw Require.failure("logProbability", "at least -1e100 and below 0", logProbability);
        }
        double low = 0;
        double high = 2;
        while (logExceedance(high) > logProbability) {
            high *= 2;
        }
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (low + high);
            if (logExceedance(middle) > logProbability) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** Returns the number of averages. */
    @Override
    public String toString() {
        return "noise of " + Digits.compact(averages, 4) + " averages";
    }
}
