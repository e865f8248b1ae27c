package dev.vibra.trend;

import dev.vibra.internal.Require;
import java.io.Serializable;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * A fitted line {@code a + b·(t − c)} about the centre c of the times, where the errors of a and b are independent.
 *
 * @param centre c
 * @param height a, the line at the centre
 * @param slope b
 * @param heightError standard error of a
 * @param slopeError standard error of b
 * @param freedom degrees of freedom of the errors
 */
record Line(double centre, double height, double slope, double heightError, double slopeError, int freedom)
        implements Serializable {
    Line {
        Require.finite("centre of the trend", centre);
        Require.finite("height of the trend", height);
        Require.finite("slope of the trend", slope);
        Require.notNegative("error of the height", heightError, "");
        Require.notNegative("error of the slope", slopeError, "");
        Require.atLeast("degrees of freedom", freedom, 1);
    }

    double at(double time) {
        return height + slope * (time - centre);
    }

    double errorAt(double time) {
        return Math.hypot(heightError, slopeError * (time - centre));
    }

    /**
     * The same line of readings of which neighbours correlate by r: errors larger by √((1 + r)/(1 − r)), and no more
     * degrees of freedom than n·(1 − r)/(1 + r) readings that don't hang together would leave, one of them for r.
     *
     * @see "G. E. P. Box, G. M. Jenkins, G. C. Reinsel, Time Series Analysis, variance of the mean of an AR(1) process"
     */
    Line correlated(double r, int count) {
        if (r == 0) {
            return this;
        }
        double factor = Math.sqrt((1 + r) / (1 - r));
        int left = (int) Math.floor(count / (factor * factor)) - 1;
        return new Line(centre, height, slope, heightError * factor, slopeError * factor,
                Math.max(Math.min(2, freedom), Math.min(freedom, left)));
    }

    double quantile(double confidence) {
        return new TDistribution(null, freedom).inverseCumulativeProbability(0.5 + confidence / 2);
    }

    /** Whether the slope is above zero with the confidence. */
    boolean rises(double confidence) {
        return slope > quantile(confidence) * slopeError;
    }

    /**
     * Fieller's interval for the time at which a rising line reaches a level: all times at which the level lies within
     * the confidence band of the line. Bounded, since the line rises with that confidence.
     */
    Interval crossing(double level, double confidence) {
        // Everything over the slope, in days, so that the size of the unit doesn't matter.
        double distance = (level - height) / slope;
        double ofSlope = quantile(confidence) * slopeError / slope;
        double ofHeight = quantile(confidence) * heightError / slope;
        double a = Math.max(1e-12, 1 - ofSlope * ofSlope);
        double half = Math.sqrt(ofSlope * ofSlope * distance * distance + a * ofHeight * ofHeight) / a;
        return new Interval(centre + distance / a - half, centre + distance, centre + distance / a + half);
    }
}
