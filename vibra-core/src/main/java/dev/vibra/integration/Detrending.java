package dev.vibra.integration;

import dev.vibra.internal.Require;

/** What is taken out of samples before they are integrated or looked at: their mean, or their least-squares line. */
public final class Detrending {
    private Detrending() {}

    /**
     * Takes the mean out.
     *
     * @param samples samples, at least one; left alone
     * @return a new array with mean 0
     * @throws IllegalArgumentException if there is no sample, or one is not finite or too large to add up
     */
    public static double[] withoutMean(double... samples) {
        double[] out = Require.finiteCopy("samples", samples);
        Require.atLeast("number of samples", out.length, 1);
        double sum = 0;
        for (double x : out) {
            sum += x;
        }
        double mean = sum / out.length;
        for (int i = 0; i < out.length; i++) {
            out[i] -= mean;
        }
        Require.allFinite("samples less their mean", out);
        return out;
    }

    /**
     * Takes the least-squares straight line out.
     *
     * @param samples samples, at least two; left alone
     * @return a new array with mean 0 and slope 0
     * @throws IllegalArgumentException if there are fewer than two samples, or one is not finite or too large to add up
     */
    public static double[] withoutLine(double... samples) {
        double[] out = Require.finiteCopy("samples", samples);
        Require.atLeast("number of samples", out.length, 2);
        removeLine(out, out.length);
        Require.allFinite("samples less their line", out);
        return out;
    }

    /** Takes the line out of the first samples of an array, in place. */
    static void removeLine(double[] samples, int length) {
        removeLine(samples, 0, samples, length);
    }

    /** Writes samples without their line to the start of an array, which may be where they stand. */
    static void removeLine(double[] samples, int offset, double[] out, int length) {
        double middle = 0.5 * (length - 1);
        // Two sums each that don't wait for each other.
        double sum0 = 0;
        double sum1 = 0;
        double moment0 = 0;
        double moment1 = 0;
        int pairs = length & ~1;
        for (int i = 0; i < pairs; i += 2) {
            double first = samples[offset + i];
            double second = samples[offset + i + 1];
            sum0 += first;
            sum1 += second;
            moment0 += (i - middle) * first;
            moment1 += (i + 1 - middle) * second;
        }
        if (pairs < length) {
            sum0 += samples[offset + pairs];
            moment0 += middle * samples[offset + pairs];
        }
        double mean = (sum0 + sum1) / length;
        double slope = (moment0 + moment1) / (length / 12.0 * ((double) length * length - 1));
        double start = mean - slope * middle;
        for (int i = 0; i < length; i++) {
            out[i] = samples[offset + i] - (start + slope * i);
        }
    }
}
