package dev.vibra.lines;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import org.apache.commons.math3.special.Gamma;

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
    private static final int MOST_TERMS = 1_000_000;
    private static final int MOST_STEPS = 200;
    private static final double ACCURACY = 1e-14;

    private final double averages;
    private final transient double logGamma;
    private final double medianOverMean;

    private LineNoise(double averages) {
        this.averages = averages;
        logGamma = Gamma.logGamma(averages);
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
        if (averages == 1) {
            return -x;
        }
        if (x <= averages + 1) {
            return Math.log(Gamma.regularizedGammaQ(averages, x));
        }
        return -x + averages * Math.log(x) - logGamma - Math.log(fraction(x));
    }

    /**
     * Continued fraction of the upper tail, by Lentz's method as modified by Thompson and Barnett: its terms are {@code
     * n·(a - n)} over {@code 2n + 1 - a + x}.
     *
     * @see "NIST Digital Library of Mathematical Functions, 8.9.2 and 3.10(iii)"
     */
    private double fraction(double x) {
        double value = 1 - averages + x;
        double c = value;
        double d = 0;
        double change = 0;
        for (int n = 1; Math.abs(change - 1) > 1e-13 && n < MOST_TERMS; n++) {
            double numerator = n * (averages - n);
            double denominator = 2.0 * n + 1 - averages + x;
            d = 1 / (denominator + numerator * d);
            c = denominator + numerator / c;
            change = c * d;
            value *= change;
        }
        return value;
    }

    /**
     * Returns the multiple of its mean that a line of noise reaches with a probability, by Newton's method within an
     * interval that shrinks.
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
        double ratio = high;
        for (int i = 0; i < MOST_STEPS; i++) {
            double log = logExceedance(ratio);
            low = log > logProbability ? ratio : low;
            high = log > logProbability ? high : ratio;
            double next = ratio - (log - logProbability) / slope(ratio, log);
            next = next > low && next < high ? next : 0.5 * (low + high);
            if (Math.abs(next - ratio) <= ACCURACY * ratio) {
                return next;
            }
            ratio = next;
        }
        return ratio;
    }

    /** Derivative of the logarithm of the upper tail: less the density over the tail. */
    private double slope(double ratio, double logExceedance) {
        double x = averages * ratio;
        return -averages * Math.exp((averages - 1) * Math.log(x) - x - logGamma - logExceedance);
    }

    /** Returns the number of averages. */
    @Override
    public String toString() {
        return "noise of " + Digits.compact(averages, 4) + " averages";
    }
}
