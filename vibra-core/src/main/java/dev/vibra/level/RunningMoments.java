package dev.vibra.level;

import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;
import java.util.Arrays;

/**
 * Moments of a stream, equal to those of {@link Moments} over all samples pushed since the last reset. Blocks of any
 * size give the same numbers.
 *
 * <p>Holds state: not thread-safe, one per signal; allocates nothing.
 *
 * @see "P. Pébay, Formulas for robust, one-pass parallel computation of covariances and arbitrary-order statistical
 *     moments, Sandia report SAND2008-6212, 2008"
 */
public final class RunningMoments implements Resumable<RunningMoments> {
    private static final StateFormat FORMAT = new StateFormat("moments", 2);
    /**
     * Samples whose powers are added as they are, before they are joined to the moments. The first groups are of 1, 1, 2,
     * 4 … samples: powers are taken about the mean of the groups before, which one sample far off displaces, less the
     * more others there are.
     */
    private static final int GROUP = 1024;

    private long count;
    private double lowest = Double.POSITIVE_INFINITY;
    private double highest = Double.NEGATIVE_INFINITY;
    /** Moments of all whole groups. */
    private final CentralMoments whole = new CentralMoments();
    /** Sums of the powers of the distances from the shift in the present group, in turns. */
    private double shift;
    private final double[] even = new double[4];
    private final double[] odd = new double[4];
    /** Moments of all samples, as of that count. */
    private final CentralMoments all = new CentralMoments();
    private long countOfAll;

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
        for (int done = 0; done < length;) {
            int group = group(count);
            int inGroup = (int) (count - start(count));
            if (inGroup == 0) {
                shift = count == 0 ? samples[offset] : whole.mean();
            }
            int piece = Math.min(group - inGroup, length - done);
            add(samples, offset + done, piece, inGroup);
            count += piece;
            done += piece;
            if (inGroup + piece == group) {
                whole.add(group, shift, even, odd);
                Arrays.fill(even, 0);
                Arrays.fill(odd, 0);
            }
        }
    }

    /** The number of samples before the group that a number of samples has come to. */
    private static long start(long count) {
        return count < GROUP ? Long.highestOneBit(count) : count / GROUP * GROUP;
    }

    private static int group(long count) {
        return count >= GROUP ? GROUP : (int) Math.max(1, Long.highestOneBit(count));
    }

    /** Samples of even and odd place in the group have their own sums, so that additions wait less for each other. */
    private void add(double[] x, int offset, int length, int inGroup) {
        int end = offset + length;
        int i = offset;
        if (inGroup % 2 == 1) {
            add(x[i++], odd);
        }
        addPairs(x, i, end);
        if ((end - i) % 2 == 1) {
            add(x[end - 1], even);
        }
    }

    private void add(double x, double[] sums) {
        double d = x - shift;
        double square = d * d;
        sums[0] += d;
        sums[1] += square;
        sums[2] += square * d;
        sums[3] += square * square;
        lowest = x < lowest ? x : lowest;
        highest = x > highest ? x : highest;
    }

    private void addPairs(double[] x, int from, int end) {
        double from1 = even[0];
        double from2 = even[1];
        double from3 = even[2];
        double from4 = even[3];
        double other1 = odd[0];
        double other2 = odd[1];
        double other3 = odd[2];
        double other4 = odd[3];
        double low = lowest;
        double high = highest;
        for (int i = from; i < end - 1; i += 2) {
            double a = x[i];
            double b = x[i + 1];
            double d = a - shift;
            double e = b - shift;
            double d2 = d * d;
            double e2 = e * e;
            from1 += d;
            from2 += d2;
            from3 += d2 * d;
            from4 += d2 * d2;
            other1 += e;
            other2 += e2;
            other3 += e2 * e;
            other4 += e2 * e2;
            low = a < low ? a : low;
            high = a > high ? a : high;
            low = b < low ? b : low;
            high = b > high ? b : high;
        }
        lowest = low;
        highest = high;
        even[0] = from1;
        even[1] = from2;
        even[2] = from3;
        even[3] = from4;
        odd[0] = other1;
        odd[1] = other2;
        odd[2] = other3;
        odd[3] = other4;
    }

    /** Moments of whole groups and of the present one. */
    private CentralMoments all() {
        if (countOfAll != count) {
            all.set(whole);
            int inGroup = (int) (count - start(count));
            if (inGroup > 0) {
                all.add(inGroup, shift, even, odd);
            }
            countOfAll = count;
        }
        return all;
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
        return all().mean();
    }

    /**
     * Returns the root mean square about the mean.
     *
     * @return rms, zero or more
     * @throws IllegalStateException if nothing was pushed
     */
    public double rms() {
        requireSamples();
        return Math.sqrt(all().second() / count);
    }

    /**
     * Returns the largest distance from the mean.
     *
     * @return zero-to-peak value
     * @throws IllegalStateException if nothing was pushed
     */
    public double peak() {
        requireSamples();
        return Math.max(highest - mean(), mean() - lowest);
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
        return Math.sqrt(count) * all().third() / Math.pow(all().second(), 1.5);
    }

    /**
     * Returns the kurtosis: 3 for normal noise.
     *
     * @return kurtosis, at least 1
     * @throws IllegalStateException if the samples don't vary
     */
    public double kurtosis() {
        requireVariation();
        return count * all().fourth() / (all().second() * all().second());
    }

    /** Forgets everything. */
    public void reset() {
        count = 0;
        countOfAll = 0;
        whole.clear();
        all.clear();
        Arrays.fill(even, 0);
        Arrays.fill(odd, 0);
        shift = 0;
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
        return StateFormat.HEADER + 4 + CentralMoments.STATE + even.length + odd.length;
    }

    @Override
    public int snapshotTo(double[] out, int offset) {
        int at = FORMAT.write(out, offset, stateLength(), 0);
        out[at++] = count;
        out[at++] = count == 0 ? 0 : lowest;
        out[at++] = count == 0 ? 0 : highest;
        out[at++] = shift;
        at = whole.put(out, at);
        return StateFormat.put(odd, out, StateFormat.put(even, out, at));
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        reset();
        int at = FORMAT.check(in, offset, stateLength(), 0);
        long samples = StateFormat.count(in, at, StateFormat.LARGEST_COUNT);
        int sums = at + 4 + CentralMoments.STATE;
        CentralMoments.check(in, at + 4);
        if (!(in[sums + 1] >= 0 && in[sums + 3] >= 0 && in[sums + 5] >= 0 && in[sums + 7] >= 0
                && in[at + 1] <= in[at + 2])) {
            throw new IllegalArgumentException("state must hold even sums that aren't negative, and the lowest sample"
                    + " before the highest: " + in[at + 1] + ", " + in[at + 2]);
        }
        if (samples > 0) {
            count = samples;
            lowest = in[at + 1];
            highest = in[at + 2];
            shift = in[at + 3];
            whole.take(start(samples), in, at + 4);
            StateFormat.take(in, StateFormat.take(in, sums, even), odd);
        }
        return offset + stateLength();
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
        if (!(all().second() * all().second() >= Double.MIN_NORMAL)) {
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
