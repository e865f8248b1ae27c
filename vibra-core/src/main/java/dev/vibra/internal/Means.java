package dev.vibra.internal;

/** Means of so many samples each: a lower rate for what lies far below it. */
public final class Means {
    private Means() {}

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
