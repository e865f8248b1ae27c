package dev.vibra.internal;

/** Means of so many samples each: a lower rate for what lies far below it. */
public final class Means {
    private Means() {}

    /**
     * Averages a stretch of samples. The plain mean is corrected once by the mean of what it leaves, which takes the
     * rounding of long sums out.
     *
     * @param x samples; left alone
     * @param offset index of the first sample
     * @param length number of samples, at least 1
     * @return the mean
     */
    public static double of(double[] x, int offset, int length) {
        double first = sumOfDistances(x, offset, length, 0) / length;
        return first + sumOfDistances(x, offset, length, first) / length;
    }

    /**
     * Adds up distances from a value, in four sums, which the processor adds beside each other.
     *
     * @param x samples; left alone
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @param less what is taken off each sample; 0 for the plain sum
     * @return the sum
     */
    public static double sumOfDistances(double[] x, int offset, int length, double less) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int i = offset;
        for (; i + 3 < offset + length; i += 4) {
            a += x[i] - less;
            b += x[i + 1] - less;
            c += x[i + 2] - less;
            d += x[i + 3] - less;
        }
        for (; i < offset + length; i++) {
            a += x[i] - less;
        }
        return a + b + (c + d);
    }

    /**
     * Averages samples side by side. Of what would fold back to the low end of the spectrum nothing is left: there the
     * mean has its zeros.
     *
     * @param samples samples; left alone
     * @param together number of samples that make a mean, at least 1
     * @return the means; samples at the end that make no whole one are left out
     */
    public static double[] of(double[] samples, int together) {
        double[] means = new double[samples.length / together];
        for (int i = 0; i < means.length; i++) {
            for (int k = i * together; k < (i + 1) * together; k++) {
                means[i] += samples[k] / together;
            }
        }
        return means;
    }
}
