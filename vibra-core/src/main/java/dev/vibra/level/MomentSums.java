package dev.vibra.level;

import dev.vibra.internal.Means;
import java.util.Arrays;

/**
 * Sums of powers of the distances from a mean. They are kept in lanes, each for every 128th sample, so that the additions
 * don't wait for each other and the compiler makes vector instructions of the loops.
 */
final class MomentSums {
    private static final int LANES = 128;

    private final double[] x;
    private final double[] lowest;
    private final double[] highest;
    private final double[] second;
    private final double[] third;
    private final double[] fourth;
    private final double[] absolute;
    private final double[] root;

    /** Distances are multiplied by the factor before their powers are taken. */
    MomentSums(double[] samples, int offset, int length, double mean, double factor) {
        int lanes = Math.min(LANES, length);
        x = new double[lanes];
        lowest = new double[lanes];
        highest = new double[lanes];
        second = new double[lanes];
        third = new double[lanes];
        fourth = new double[lanes];
        absolute = new double[lanes];
        root = new double[lanes];
        Arrays.fill(lowest, Double.POSITIVE_INFINITY);
        Arrays.fill(highest, Double.NEGATIVE_INFINITY);
        for (int i = 0; i < length; i += lanes) {
            int count = Math.min(lanes, length - i);
            System.arraycopy(samples, offset + i, x, 0, count);
            addExtremes(x, lowest, highest, count);
            addPowers(x, mean, factor, second, third, fourth, count);
            addMagnitudes(x, absolute, root, count);
        }
    }

    private static void addExtremes(double[] x, double[] lowest, double[] highest, int count) {
        for (int j = 0; j < count; j++) {
            lowest[j] = Math.min(lowest[j], x[j]);
            highest[j] = Math.max(highest[j], x[j]);
        }
    }

    /** Leaves the distances in the place of the samples. */
    private static void addPowers(double[] x, double mean, double factor, double[] second, double[] third,
            double[] fourth, int count) {
        for (int j = 0; j < count; j++) {
            x[j] = (x[j] - mean) * factor;
        }
        for (int j = 0; j < count; j++) {
            double square = x[j] * x[j];
            second[j] += square;
            third[j] += square * x[j];
            fourth[j] += square * square;
        }
    }

    private static void addMagnitudes(double[] x, double[] absolute, double[] root, int count) {
        for (int j = 0; j < count; j++) {
            double magnitude = Math.abs(x[j]);
            absolute[j] += magnitude;
            root[j] += Math.sqrt(magnitude);
        }
    }

    double lowest() {
        double least = lowest[0];
        for (double value : lowest) {
            least = Math.min(least, value);
        }
        return least;
    }

    double highest() {
        double most = highest[0];
        for (double value : highest) {
            most = Math.max(most, value);
        }
        return most;
    }

    private static double sum(double[] lanes) {
        return Means.sumOfDistances(lanes, 0, lanes.length, 0);
    }

    double second() {
        return sum(second);
    }

    double third() {
        return sum(third);
    }

    double fourth() {
        return sum(fourth);
    }

    double absolute() {
        return sum(absolute);
    }

    double root() {
        return sum(root);
    }
}
