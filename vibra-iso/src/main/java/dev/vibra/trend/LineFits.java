package dev.vibra.trend;

import java.util.Arrays;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;

/** The two ways to lay a line, and what its residuals tell. Times are distinct. */
final class LineFits {
    private LineFits() {}

    static Line leastSquares(double[] times, double[] values) {
        int n = times.length;
        double centre = mean(times);
        double height = mean(values);
        double squares = squares(times, centre);
        double products = 0;
        for (int i = 0; i < n; i++) {
            products += (times[i] - centre) * (values[i] - height);
        }
        Line line = new Line(centre, height, products / squares, 0, 0, n - 2);
        double sum = 0;
        for (double residual : residuals(times, values, line)) {
            sum += residual * residual;
        }
        double deviation = Math.sqrt(sum / (n - 2));
        return new Line(centre, height, line.slope(), deviation / Math.sqrt(n), deviation / Math.sqrt(squares), n - 2);
    }

    /**
     * Slope of Theil and Sen, height of Hodges and Lehmann. Both have the standard error that least squares would have
     * for a scatter τ, {@code 1/τ = √12·∫f²}; τ is read from the width of Sen's interval of the slope, so that the
     * distribution f need not be known.
     */
    static Line robust(double[] times, double[] values) {
        int n = times.length;
        double centre = mean(times);
        double[] slopes = slopes(times, values);
        double slope = median(slopes);
        double[] rest = new double[n];
        for (int i = 0; i < n; i++) {
            rest[i] = values[i] - slope * (times[i] - centre);
        }
        double[] ends = slopeInterval(slopes, n, 0.95);
        double slopeError = (ends[1] - ends[0]) / (2 * normalQuantile(0.95));
        double scatter = slopeError * Math.sqrt(squares(times, centre));
        return new Line(centre, median(walshAverages(rest)), slope, scatter / Math.sqrt(n), slopeError, n - 2);
    }

    /**
     * Sen's interval of the slope from the ranks of the sorted slopes, by the normal approximation of Kendall's S.
     *
     * @see "P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379-1389"
     */
    static double[] slopeInterval(double[] sortedSlopes, int n, double confidence) {
        double spread = normalQuantile(confidence) * Math.sqrt(n * (n - 1.0) * (2 * n + 5) / 18);
        int count = sortedSlopes.length;
        int upper = (int) Math.min(Math.rint((count + spread) / 2), count - 1);
        int lower = (int) Math.max(Math.rint((count - spread) / 2) - 1, 0);
        return new double[] {sortedSlopes[lower], sortedSlopes[upper]};
    }

    /** Slopes of all pairs, sorted. */
    static double[] slopes(double[] times, double[] values) {
        int n = times.length;
        double[] slopes = new double[n * (n - 1) / 2];
        int at = 0;
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                slopes[at++] = (values[j] - values[i]) / (times[j] - times[i]);
            }
        }
        Arrays.sort(slopes);
        return slopes;
    }

    /** Means of all pairs, each value with itself included, sorted. */
    private static double[] walshAverages(double[] values) {
        int n = values.length;
        double[] averages = new double[n * (n + 1) / 2];
        int at = 0;
        for (int i = 0; i < n; i++) {
            for (int j = i; j < n; j++) {
                averages[at++] = 0.5 * (values[i] + values[j]);
            }
        }
        Arrays.sort(averages);
        return averages;
    }

    static double[] residuals(double[] times, double[] values, Line line) {
        double[] residuals = new double[times.length];
        for (int i = 0; i < residuals.length; i++) {
            residuals[i] = values[i] - line.at(times[i]);
        }
        return residuals;
    }

    /** Rank correlation (Spearman) of the residuals with the squared distance from the centre of the times. */
    static double bend(double[] times, double[] residuals, double centre) {
        double[] distances = new double[times.length];
        for (int i = 0; i < distances.length; i++) {
            distances[i] = Math.abs(times[i] - centre);
        }
        return new SpearmansCorrelation().correlation(distances, residuals);
    }

    static double median(double[] sorted) {
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : 0.5 * (sorted[half - 1] + sorted[half]);
    }

    private static double normalQuantile(double confidence) {
        return new NormalDistribution(null, 0, 1).inverseCumulativeProbability(0.5 + confidence / 2);
    }

    /** Divides by the largest, so that no square leaves the doubles. */
    static double[] toOne(double[] values) {
        double largest = largest(values);
        return largest == 0 ? values : Arrays.stream(values).map(value -> value / largest).toArray();
    }

    static double largest(double[] values) {
        double largest = 0;
        for (double value : values) {
            largest = Math.max(largest, Math.abs(value));
        }
        return largest;
    }

    static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    static double squares(double[] values, double centre) {
        double sum = 0;
        for (double value : values) {
            sum += (value - centre) * (value - centre);
        }
        return sum;
    }
}
