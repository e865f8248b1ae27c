package dev.vibra.benchmarks.comparison;

/** How far figures of one side lie from those of another. */
final class Agreement {
    /** Farther apart than this, relative, two figures don't agree. */
    static final double LIMIT = 1e-6;
    /** A figure below this part of the largest one is held to that part: samples pass through zero. */
    private static final double FLOOR = 1e-9;

    private Agreement() {}

    /** Largest relative distance; infinite where the number of figures differs or one isn't finite. */
    static double distance(double[] expected, double[] found) {
        if (expected.length != found.length) {
            return Double.POSITIVE_INFINITY;
        }
        double largest = 0;
        for (double value : expected) {
            largest = Math.max(largest, Math.abs(value));
        }
        double worst = 0;
        for (int i = 0; i < expected.length; i++) {
            double apart = Math.abs(found[i] - expected[i]);
            double relative = apart == 0 ? 0 : apart / Math.max(Math.abs(expected[i]), FLOOR * largest);
            worst = Double.isFinite(relative) ? Math.max(worst, relative) : Double.POSITIVE_INFINITY;
        }
        return worst;
    }
}
