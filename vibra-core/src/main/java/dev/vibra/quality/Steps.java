package dev.vibra.quality;

/** The step of the converter. */
final class Steps {
    private Steps() {}

    /** Returns the smallest difference between values in rising order that isn't zero; 0 if all are equal. */
    static double smallest(double[] sorted) {
        double smallest = Double.POSITIVE_INFINITY;
        for (int i = 1; i < sorted.length; i++) {
            double difference = sorted[i] - sorted[i - 1];
            smallest = difference > 0 && difference < smallest ? difference : smallest;
        }
        return smallest == Double.POSITIVE_INFINITY ? 0 : smallest;
    }
}
