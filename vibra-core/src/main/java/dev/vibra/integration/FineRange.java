package dev.vibra.integration;

import dev.vibra.window.Window;

/**
 * Largest less smallest value of a signal between its samples, at instants a whole number of times as dense. The signal
 * holds nothing above a known part of the sample rate, so a windowed sinc gives what lies between to 1e-8, and near a
 * peak of half the range M it can't have fallen below {@code M·cos(2πf·t)} about the middle (S. Bernstein's
 * inequality): only around samples as high as that is there anything to look for.
 */
final class FineRange {
    private static final double KAISER = 18;
    private static final int SIDE = 11;

    private final int dense;
    /** Fall of a peak at half a step from it, relative to the half range that the samples have. */
    private final double fall;
    private final double[][] taps;
    private double highest;
    private double lowest;

    /** Highest frequency relative to the sample rate, at most about a sixth where it is to be denser than the samples. */
    FineRange(int dense, double highestRelative) {
        this.dense = dense;
        double cosine = Math.cos(Math.PI * highestRelative);
        fall = (1 - cosine) / cosine;
        taps = new double[dense][];
        double[] window = dense > 1 ? Window.kaiser(KAISER).closedSamples(2 * SIDE * dense + 1) : new double[0];
        for (int phase = 1; phase < dense; phase++) {
            taps[phase] = new double[2 * SIDE];
            for (int i = 0; i < 2 * SIDE; i++) {
                // Tap i belongs to the sample i - SIDE + 1 away from the one before the instant.
                int distance = phase - (i - SIDE + 1) * dense;
                double angle = Math.PI * distance / dense;
                taps[phase][i] = Math.sin(angle) / angle * window[SIDE * dense + distance];
            }
        }
    }

    /** Looks at the dense instants from one on and before another. */
    double of(double[] x, int from, int to) {
        highest = Double.NEGATIVE_INFINITY;
        lowest = Double.POSITIVE_INFINITY;
        int first = (from + dense - 1) / dense;
        int last = (to - 1) / dense;
        for (int i = first; i <= last; i++) {
            highest = Math.max(highest, x[i]);
            lowest = Math.min(lowest, x[i]);
        }
        if (dense > 1) {
            betweenSamples(x, from, to);
        }
        return highest - lowest;
    }

    private void betweenSamples(double[] x, int from, int to) {
        double margin = 0.5 * (highest - lowest) * fall;
        double high = highest - margin;
        double low = lowest + margin;
        int first = (from + dense - 1) / dense;
        int last = (to - 1) / dense;
        for (int i = first; i <= last; i++) {
            // An end that lies on a slope is no peak.
            boolean end = i == first || i == last;
            boolean peak = !end && x[i] >= high && x[i] >= x[i - 1] && x[i] >= x[i + 1];
            boolean trough = !end && x[i] <= low && x[i] <= x[i - 1] && x[i] <= x[i + 1];
            if (end || peak || trough) {
                look(x, Math.max(from, (i - 1) * dense + 1), Math.min(to, (i + 1) * dense));
            }
        }
    }

    private void look(double[] x, int from, int to) {
        for (int n = from; n < to; n++) {
            int phase = n % dense;
            double value = phase == 0 ? x[n / dense] : between(x, n / dense, taps[phase]);
            highest = Math.max(highest, value);
            lowest = Math.min(lowest, value);
        }
    }

    private static double between(double[] x, int before, double[] weights) {
        int from = Math.max(0, SIDE - 1 - before);
        int to = Math.min(weights.length, x.length - before + SIDE - 1);
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += weights[i] * x[before - SIDE + 1 + i];
        }
        return sum;
    }
}
