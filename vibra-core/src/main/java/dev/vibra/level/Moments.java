package dev.vibra.level;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Means;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * Statistical moments and extremes of an array of samples. All but {@link #mean()} are taken about the mean: vibration
 * is what swings about it.
 *
 * <p>The moments are those of the record itself (divided by n, not n - 1); skewness and kurtosis are {@code m3/m2^1.5}
 * and {@code m4/m2²}, so a sine has kurtosis 1.5 and normal noise 3.
 *
 * @see "J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section 3.1"
 */
public final class Moments implements Serializable {
    private static final long serialVersionUID = 1;
    private static final String RANGE = "highest less lowest sample";
    /** Fourth moments outside these lose digits or overflow soon: the samples are scaled then. */
    private static final double LOWEST_MOMENT = 1e-250;
    private static final double HIGHEST_MOMENT = 1e250;
    private static final double SMALLEST_SCALE = 0x1p-1022;

    private final int count;
    private final double mean;
    private final double lowest;
    private final double highest;
    /** What the distances from the mean are divided by in all that follows, so that fourth powers are numbers. */
    private final double scale;
    private final double m2;
    private final double m3;
    private final double m4;
    private final double meanAbsolute;
    private final double meanRoot;

    private Moments(double[] x, int offset, int length, double scale) {
        count = length;
        this.scale = scale;
        mean = mean(x, offset, length);
        MomentSums sums = new MomentSums(x, offset, length, mean, 1 / scale);
        lowest = sums.lowest();
        highest = sums.highest();
        // Rounding of the mean leaves a trace of variance in constant samples; they have none.
        boolean constant = lowest == highest;
        m2 = constant ? 0 : sums.second() / length;
        m3 = constant ? 0 : sums.third() / length;
        m4 = constant ? 0 : sums.fourth() / length;
        meanAbsolute = sums.absolute() / length;
        meanRoot = sums.root() / length;
    }

    /** A copy, checked: what comes from a stream. */
    private Moments(Moments read) {
        count = Require.atLeast("count", read.count, 1);
        lowest = Require.finite("lowest", read.lowest);
        highest = Require.within("highest", read.highest, lowest, Double.MAX_VALUE, "");
        Require.finite(RANGE, highest - lowest);
        mean = Require.finite("mean", read.mean);
        scale = Require.within("scale", read.scale, SMALLEST_SCALE, 1 / SMALLEST_SCALE, "");
        m2 = Require.within("m2", read.m2, 0, HIGHEST_MOMENT, "");
        m3 = Require.within("m3", read.m3, -HIGHEST_MOMENT, HIGHEST_MOMENT, "");
        m4 = Require.within("m4", read.m4, m2 > 0 ? LOWEST_MOMENT : 0, HIGHEST_MOMENT, "");
        meanAbsolute = Require.within("meanAbsolute", read.meanAbsolute, 0, HIGHEST_MOMENT, "");
        meanRoot = Require.within("meanRoot", read.meanRoot, 0, HIGHEST_MOMENT, "");
    }

    private Object readResolve() {
        return new Moments(this);
    }

    /**
     * Computes the moments of an array.
     *
     * @param samples samples, at least one, all finite; not kept
     * @return the moments
     * @throws IllegalArgumentException if there is no sample, one is not finite, or the largest less the smallest is not
     */
    public static Moments of(double... samples) {
        return of(Objects.requireNonNull(samples, "samples"), 0, samples.length);
    }

    /**
     * Computes the moments of a part of an array.
     *
     * @param samples samples; not kept
     * @param offset index of the first sample
     * @param length number of samples, at least one
     * @return the moments
     * @throws IllegalArgumentException if the part is empty, leaves the array or holds a value that is not finite, or
     *     the largest less the smallest is not
     */
    public static Moments of(double[] samples, int offset, int length) {
        Require.atLeast("length", length, 1);
        Require.range("samples", samples, offset, length);
        Moments moments = new Moments(samples, offset, length, 1);
        if (!(Math.abs(moments.mean) < Double.POSITIVE_INFINITY)) {
            Require.allFinite("samples", samples);
        }
        Require.finite("mean of the samples", moments.mean);
        Require.finite(RANGE, moments.peakToPeak());
        if (moments.lowest == moments.highest || moments.m4 >= LOWEST_MOMENT && moments.m4 <= HIGHEST_MOMENT) {
            return moments;
        }
        return new Moments(samples, offset, length,
                Math.max(SMALLEST_SCALE, Math.scalb(1.0, Math.getExponent(moments.peak()))));
    }

    /** The plain mean is corrected once by the mean of what it leaves, which takes the rounding of long sums out. */
    private static double mean(double[] x, int offset, int length) {
        double sum = Means.sumOfDistances(x, offset, length, 0);
        double first = Math.abs(sum) < Double.POSITIVE_INFINITY ? sum / length : meanOfLarge(x, offset, length);
        return first + Means.sumOfDistances(x, offset, length, first) / length;
    }

    /** Samples whose sum is beyond all numbers may have a mean all the same. */
    private static double meanOfLarge(double[] x, int offset, int length) {
        double mean = 0;
        for (int i = offset; i < offset + length; i++) {
            mean += x[i] / length;
        }
        return mean;
    }

    /**
     * Returns the number of samples.
     *
     * @return count, at least 1
     */
    public int count() {
        return count;
    }

    /**
     * Returns the mean.
     *
     * @return mean in the unit of the samples
     */
    public double mean() {
        return mean;
    }

    /**
     * Returns the smallest sample.
     *
     * @return smallest sample
     */
    public double lowest() {
        return lowest;
    }

    /**
     * Returns the largest sample.
     *
     * @return largest sample
     */
    public double highest() {
        return highest;
    }

    /**
     * Returns the root mean square about the mean, which is the standard deviation of the record.
     *
     * @return rms, zero or more
     */
    public double rms() {
        return scale * Math.sqrt(m2);
    }

    /**
     * Returns the largest distance from the mean.
     *
     * @return zero-to-peak value, zero or more
     */
    public double peak() {
        return Math.max(highest - mean, mean - lowest);
    }

    /**
     * Returns the distance from the smallest to the largest sample: the true peak-to-peak value, not one derived from
     * rms.
     *
     * @return peak-to-peak value, zero or more
     */
    public double peakToPeak() {
        return highest - lowest;
    }

    /**
     * Returns the crest factor, peak over rms.
     *
     * @return crest factor, at least 1
     * @throws IllegalStateException if the samples are constant
     */
    public double crestFactor() {
        requireVariation("crest factor");
        return peak() / scale / Math.sqrt(m2);
    }

    /**
     * Returns the skewness, the third moment over the power 1.5 of the second: 0 for symmetric signals.
     *
     * @return skewness
     * @throws IllegalStateException if the samples are constant
     */
    public double skewness() {
        requireVariation("skewness");
        return m3 / (m2 * Math.sqrt(m2));
    }

    /**
     * Returns the kurtosis, the fourth moment over the square of the second: 1.5 for a sine, 3 for normal noise.
     *
     * @return kurtosis, at least 1
     * @throws IllegalStateException if the samples are constant
     */
    public double kurtosis() {
        requireVariation("kurtosis");
        return m4 / (m2 * m2);
    }

    /**
     * Returns the shape factor, rms over the mean of the magnitudes: 1.1107 for a sine.
     *
     * @return shape factor, at least 1
     * @throws IllegalStateException if the samples are constant
     */
    public double shapeFactor() {
        requireVariation("shape factor");
        return Math.sqrt(m2) / meanAbsolute;
    }

    /**
     * Returns the impulse factor, peak over the mean of the magnitudes: 1.5708 for a sine.
     *
     * @return impulse factor, at least 1
     * @throws IllegalStateException if the samples are constant
     */
    public double impulseFactor() {
        requireVariation("impulse factor");
        return peak() / scale / meanAbsolute;
    }

    /**
     * Returns the clearance factor, peak over the squared mean of the roots of the magnitudes.
     *
     * @return clearance factor, at least 1
     * @throws IllegalStateException if the samples are constant
     */
    public double clearanceFactor() {
        requireVariation("clearance factor");
        return peak() / scale / (meanRoot * meanRoot);
    }

    private void requireVariation(String name) {
        if (!(m2 > 0)) {
            throw new IllegalStateException(name + " needs samples that vary: all are " + lowest);
        }
    }

    /** Returns mean, rms and peak. */
    @Override
    public String toString() {
        return "mean " + Digits.significant(mean, 3) + ", rms " + Digits.significant(rms(), 3) + ", peak "
                + Digits.significant(peak(), 3) + " (" + count + " samples)";
    }
}
