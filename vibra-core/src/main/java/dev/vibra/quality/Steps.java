package dev.vibra.quality;

import java.util.Arrays;

/** The step of the converter. */
final class Steps {
    private Steps() {}

    /** Returns the smallest difference between values that isn't zero; 0 if all samples are equal. */
    static double smallest(double[] x) {
        double[] sorted = x.clone();
        Arrays.sort(sorted);
        double smallest = Double.POSITIVE_INFINITY;
        for (int i = 1; i < sorted.length; i++) {
            double difference = sorted[i] - sorted[i - 1];
            if (difference > 0 && difference < smallest) {
                smallest = difference;
            }
        }
        return smallest == Double.POSITIVE_INFINITY ? 0 : smallest;
    }
}
