package dev.vibra.bearing;

import org.apache.commons.math3.special.Gamma;
import org.apache.commons.math3.util.ContinuedFraction;

/**
 * How far a line of an averaged spectrum of noise strays from its mean: {@code ν·ratio} follows a chi-square law with ν
 * degrees of freedom, two for a single block, more for averaged ones.
 *
 * @see "P. D. Welch, IEEE Trans. Audio Electroacoust. 15 (1967) 70-73: variance of averaged overlapping blocks"
 */
final class LineNoise {
    /** Squared correlation of the spectra of Hann-weighted blocks that overlap by half: (1/6)². */
    private static final double NEIGHBOURS = 1 / 36.0;

    private final double half;
    private final double median;

    LineNoise(int blocks) {
        this(blocks / (1 + 2 * NEIGHBOURS * (blocks - 1) / blocks));
    }

    private LineNoise(double half) {
        this.half = half;
        median = ratioAt(Math.log(0.5));
    }

    static LineNoise ofDegrees(double degrees) {
        return new LineNoise(0.5 * degrees);
    }

    double degreesOfFreedom() {
        return 2 * half;
    }

    /** Median of a line over its mean, which turns a robust median into a floor. */
    double median() {
        return median;
    }

    /** Natural logarithm of the probability that noise passes the given ratio of line to mean; never underflows. */
    double logExceedance(double ratio) {
        double x = half * ratio;
        if (x <= half + 1) {
            return Math.log(Gamma.regularizedGammaQ(half, x));
        }
        double fraction = new ContinuedFraction() {
            @Override
            protected double getA(int n, double at) {
                return 2.0 * n + 1 - half + at;
            }

            @Override
            protected double getB(int n, double at) {
                return n * (half - n);
            }
        }.evaluate(x, 1e-12, 10_000);
        return -x + half * Math.log(x) - Gamma.logGamma(half) - Math.log(fraction);
    }

    /** Ratio that noise passes with the given probability, by bisection. */
    double ratioAt(double logProbability) {
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
}
