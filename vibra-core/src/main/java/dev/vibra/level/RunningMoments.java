package dev.vibra.level;

import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;

/**
 * Moments of a stream, equal to those of {@link Moments} over all samples pushed since the last reset.
 *
 * <p>Holds state: not thread-safe, one per signal; allocates nothing.
 *
 * @see "P. Pébay, Formulas for robust, one-pass parallel computation of covariances and arbitrary-order statistical
 *     moments, Sandia report SAND2008-6212, 2008"
 */
public final class RunningMoments implements Resumable<RunningMoments> {
    private static final StateFormat FORMAT = new StateFormat("moments", 1);

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
     * @param samples samples, all finite and within ±1e70
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if the range leaves the array or a sample is out of range; nothing is taken in
     */
    public void push(double[] samples, int offset, int length) {
        Require.samples(samples, offset, length);
        for (int i = offset; i < offset + length; i++) {
            add(samples[i]);
        }
    }

    private void add(double x) {
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

    @Override
    public Recipe<RunningMoments> recipe() {
        return new Made();
    }

    /** What makes such a counter: nothing to be set. */
    private record Made() implements Recipe<RunningMoments> {
        @Override
        public RunningMoments make() {
            return new RunningMoments();
        }

        @Override
        public String toString() {
            return "moments";
        }
    }

    @Override
    public int stateLength() {
        return StateFormat.HEADER + 7;
    }

    @Override
    public int snapshotTo(double[] out, int offset) {
        int at = FORMAT.write(out, offset, stateLength(), 0);
        out[at++] = count;
        out[at++] = mean;
        out[at++] = m2;
        out[at++] = m3;
        out[at++] = m4;
        out[at++] = count == 0 ? 0 : lowest;
        out[at++] = count == 0 ? 0 : highest;
        return at;
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        reset();
        int at = FORMAT.check(in, offset, stateLength(), 0);
        long samples = StateFormat.count(in, at++, StateFormat.LARGEST_COUNT);
        if (!(in[at + 1] >= 0 && in[at + 3] >= 0 && in[at + 4] <= in[at + 5])) {
            throw new IllegalArgumentException("state must hold even moments that aren't negative, and the lowest sample"
                    + " before the highest: " + in[at + 1] + ", " + in[at + 3] + ", " + in[at + 4] + ", " + in[at + 5]);
        }
        if (samples > 0) {
            count = samples;
            mean = in[at];
            m2 = in[at + 1];
            m3 = in[at + 2];
            m4 = in[at + 3];
            lowest = in[at + 4];
            highest = in[at + 5];
        }
        return at + 6;
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
        if (!(m2 * m2 >= Double.MIN_NORMAL)) {
            throw new IllegalStateException("the shape of a signal needs samples whose fourth powers are within the"
                    + " range of numbers: rms " + rms());
        }
    }

    /** Returns the number of samples. */
    @Override
    public String toString() {
        return "moments of " + count + " samples so far";
    }
}
