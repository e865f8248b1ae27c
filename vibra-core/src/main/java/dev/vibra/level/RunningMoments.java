package dev.vibra.level;

import dev.vibra.internal.Require;

/**
 * Moments of a stream, equal to those of {@link Moments} over all samples pushed since the last reset.
 *
 * <p>Holds state: not thread-safe, one per signal; allocates nothing.
 *
 * @see "P. Pébay, Formulas for robust, one-pass parallel computation of covariances and arbitrary-order statistical
 *     moments, Sandia report SAND2008-6212, 2008"
 */
public final class RunningMoments {
    private long count;
    private double mean;
    private double m2;
    private double m3;
    private double m4;
    private double lowest = Double.POSITIVE_INFINITY;
    private double highest = Double.NEGATIVE_INFINITY;

    /** Makes a counter that has seen nothing. */
    public RunningMoments() {}

    /**
     * Takes in a block.
     *
     * @param samples samples, all finite
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if the range leaves the array or a sample is not finite; samples before it count
     */
    public void push(double[] samples, int offset, int length) {
        Require.range("samples", offset, length, samples.length);
        for (int i = offset; i < offset + length; i++) {
            add(samples[i]);
        }
    }

    private void add(double x) {
        if (!(Math.abs(x) < Double.POSITIVE_INFINITY)) {
            throw Require.failure("sample", "finite", x);
        }
        count++;
        double delta = x - mean;
        double part = delta / count;
        double part2 = part * part;
        double square = delta * part * (count - 1);
        mean += part;
        m4 += square * part2 * ((double) count * count - 3.0 * count + 3) + 6 * part2 * m2 - 4 * part * m3;
        m3 += square * part * (count - 2) - 3 * part * m2;
        m2 += square;
        lowest = Math.min(lowest, x);
        highest = Math.max(highest, x);
    }

    /**
     * Returns the number of samples.
     *
     * @return count, zero or more
     */
    public long count() {
        return count;
    }

    /**
     * Returns the mean.
     *
     * @return mean
     * @throws IllegalStateException if nothing was pushed
     */
    public double mean() {
        requireSamples();
        return mean;
    }

    /**
     * Returns the root mean square about the mean.
     *
     * @return rms, zero or more
     * @throws IllegalStateException if nothing was pushed
     */
    public double rms() {
        requireSamples();
        return Math.sqrt(m2 / count);
    }

    /**
     * Returns the largest distance from the mean.
     *
     * @return zero-to-peak value
     * @throws IllegalStateException if nothing was pushed
     */
    public double peak() {
        requireSamples();
        return Math.max(highest - mean, mean - lowest);
    }

    /**
     * Returns the distance from the smallest to the largest sample.
     *
     * @return true peak-to-peak value
     * @throws IllegalStateException if nothing was pushed
     */
    public double peakToPeak() {
        requireSamples();
        return highest - lowest;
    }

    /**
     * Returns the crest factor.
     *
     * @return crest factor, at least 1
     * @throws IllegalStateException if the samples don't vary
     */
    public double crestFactor() {
        requireVariation();
        return peak() / rms();
    }

    /**
     * Returns the skewness.
     *
     * @return skewness
     * @throws IllegalStateException if the samples don't vary
     */
    public double skewness() {
        requireVariation();
        return Math.sqrt(count) * m3 / Math.pow(m2, 1.5);
    }

    /**
     * Returns the kurtosis: 3 for normal noise.
     *
     * @return kurtosis, at least 1
     * @throws IllegalStateException if the samples don't vary
     */
    public double kurtosis() {
        requireVariation();
        return count * m4 / (m2 * m2);
    }

    /** Forgets everything. */
    public void reset() {
        count = 0;
        mean = 0;
        m2 = 0;
        m3 = 0;
        m4 = 0;
        lowest = Double.POSITIVE_INFINITY;
        highest = Double.NEGATIVE_INFINITY;
    }

    private void requireSamples() {
        if (count == 0) {
            throw new IllegalStateException("no sample was pushed yet");
        }
    }

    private void requireVariation() {
        requireSamples();
        if (!(highest > lowest)) {
            throw new IllegalStateException("the shape of a signal needs samples that vary: all are " + lowest);
        }
    }

    /** Returns the number of samples. */
    @Override
    public String toString() {
        return "moments of " + count + " samples so far";
    }
}
