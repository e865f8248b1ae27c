package dev.vibra.cyclic;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.transform.ComplexTransform;
import dev.vibra.transform.RealTransform;
import dev.vibra.window.Window;
import java.util.Arrays;

/**
 * Squared spectral coherence of recordings of one length: {@code |Σ X(k+a)·X*(k)|² / (Σ|X(k+a)|²·Σ|X(k)|²)} of the
 * lines X of the whole recording, the sums over the lines k of a carrier band, for every a from 0 Hz by the inverse
 * duration.
 *
 * <p>The sums over k for all a at once are a correlation of the lines, done by short transforms, so that no cyclic
 * frequency is approximated and none is bound to a block length. Averages are had over frequency: a carrier band of
 * width B of a recording of duration T gives about B·T of them, and the resolution in cyclic frequency stays 1/T. A
 * Schwarz inequality keeps each value within 0 to 1.
 *
 * <p>The carrier band holds the lower of the two lines, the other lies higher by the cyclic frequency; the carriers end
 * below half the sample rate by the highest cyclic frequency. The mean is taken out, the line at 0 Hz counts for
 * nothing, and the first and last twentieth of the recording are faded, which keeps a strong line from leaking into
 * carriers far off.
 *
 * <p>Holds workspace: not thread-safe, one per thread; allocates nothing once made.
 *
 * @see "W. A. Gardner, Measurement of spectral correlation, IEEE Transactions on Acoustics, Speech, and Signal
 *     Processing 34 (1986) 1111-1123"
 * @see "J. Antoni, Cyclic spectral analysis in practice, Mechanical Systems and Signal Processing 21 (2007) 597-630, on
 *     the coherence and its bias"
 */
public final class SpectralCoherencePlan {
    /** Share of the recording that is faded, half of it at each end. */
    private static final double FADED = 0.1;
    /** Share of the power of the recording below which a carrier holds rounding errors only. */
    private static final double SILENCE = 1e-20;
    private static final int LEAST_LINES = 8;

    private final int length;
    private final double resolutionHertz;
    private final int width;
    private final int carriers;
    private final int lines;
    private final double averages;
    private final double[] weights;
    private final RealTransform transform;
    private final ComplexTransform correlation;
    private final double[] faded;
    private final double[] spectrum;
    private final double[] powers;
    private final double[] lower;
    private final double[] upper;

    private SpectralCoherencePlan(int length, double sampleRateHertz, double carrierHertz, double highestHertz) {
        this.length = Require.atLeast("number of samples", length, 64);
        resolutionHertz = Require.positive("sampleRateHertz", sampleRateHertz, "Hz") / length;
        Require.within("highestCyclicHertz", highestHertz, resolutionHertz, sampleRateHertz / 4, "Hz");
        lines = (int) Math.floor(highestHertz / resolutionHertz + 1e-9) + 1;
        // The partner of the last line lies below half the sample rate.
        int usable = (length - 1) / 2 - (lines - 1);
        Require.within("carrierHertz", carrierHertz, LEAST_LINES * resolutionHertz, usable * resolutionHertz, "Hz");
        width = (int) Math.min(usable, Math.round(carrierHertz / resolutionHertz));
        carriers = usable / width;
        weights = Window.tukey(FADED).samples(length);
        averages = width / scatter(weights);
        transform = RealTransform.of(length);
        correlation = ComplexTransform.of(fastLength(width + lines - 1));
        faded = new double[length];
        spectrum = new double[2 * transform.lines()];
        powers = new double[transform.lines() + 1];
        lower = new double[2 * correlation.length()];
        upper = new double[2 * correlation.length()];
    }

    /** Fading makes neighbouring lines alike, so that fewer of them are independent. */
    private static double scatter(double[] weights) {
        double squares = 0;
        double fourths = 0;
        for (double w : weights) {
            squares += w * w;
            fourths += w * w * w * w;
        }
        return weights.length * fourths / (squares * squares);
    }

    /** The least of 2ⁿ, 5·2ⁿ and 3·2ⁿ that suffices: lengths that transform fast. */
    private static int fastLength(int least) {
        int power = Integer.highestOneBit(2 * least - 1);
        if (power >= 16 && power / 8 * 5 >= least) {
            return power / 8 * 5;
        }
        return power >= 16 && power / 4 * 3 >= least ? power / 4 * 3 : power;
    }

    /**
     * Makes a plan.
     *
     * @param length number of samples of a recording, at least 64
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param carrierHertz width of a carrier band in Hz, at least eight lines of the whole recording; the wider, the
     *     more averages and the less detail
     * @param highestCyclicHertz highest cyclic frequency in Hz, from the inverse duration to a quarter of the sample
     *     rate
     * @return a plan with its workspace
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static SpectralCoherencePlan of(int length, double sampleRateHertz, double carrierHertz,
            double highestCyclicHertz) {
        return new SpectralCoherencePlan(length, sampleRateHertz, carrierHertz, highestCyclicHertz);
    }

    /**
     * Returns the number of carrier bands.
     *
     * @return number of bands, at least 1
     */
    public int carriers() {
        return carriers;
    }

    /**
     * Returns the number of cyclic frequencies, the one at 0 Hz included.
     *
     * @return number of lines, at least 2
     */
    public int lines() {
        return lines;
    }

    /**
     * Returns the distance of the cyclic frequencies.
     *
     * @return inverse duration of the recording in Hz
     */
    public double resolutionHertz() {
        return resolutionHertz;
    }

    /**
     * Returns the number of independent products that a coherence is averaged over; stationary noise reads its inverse
     * in the mean.
     *
     * @return equivalent number of averages
     */
    public double averages() {
        return averages;
    }

    /**
     * Returns a carrier band.
     *
     * @param carrier number of the carrier from 0
     * @return the band, whose upper end belongs to the next carrier
     */
    public Band carrier(int carrier) {
        double hertz = width * resolutionHertz;
        return Band.of(carrier * hertz, (carrier + 1) * hertz);
    }

    /**
     * Computes the squared coherences of a recording.
     *
     * @param in samples; left alone
     * @param offset index of the first sample
     * @param out receives {@code carriers()·lines()} values, 0 to 1, all lines of a carrier in a row; 0 where a carrier
     *     is silent, 1 in each first line
     * @return the output array
     * @throws IllegalArgumentException if a range leaves its array
     */
    public double[] process(double[] in, int offset, double[] out) {
        Require.range("out", out, 0, carriers * lines);
        load(in, offset);
        for (int c = 0; c < carriers; c++) {
            correlate(c * width);
            normalise(c * width, out, c * lines);
        }
        return out;
    }

    private void load(double[] in, int offset) {
        Require.range("in", in, offset, length);
        double mean = 0;
        for (int i = 0; i < length; i++) {
            mean += in[offset + i];
        }
        mean /= length;
        for (int i = 0; i < length; i++) {
            faded[i] = (in[offset + i] - mean) * weights[i];
        }
        transform.forward(faded, 0, spectrum);
        // Fading lets a little of the mean come back.
        spectrum[0] = 0;
        for (int k = 0; k < transform.lines(); k++) {
            double power = spectrum[2 * k] * spectrum[2 * k] + spectrum[2 * k + 1] * spectrum[2 * k + 1];
            powers[k + 1] = powers[k] + power;
        }
    }

    /** Leaves {@code Σ X(first+j+a)·X*(first+j)} over the width at each a of {@link #upper}. */
    private void correlate(int first) {
        int reach = width + lines - 1;
        Arrays.fill(lower, 2 * width, lower.length, 0);
        Arrays.fill(upper, 2 * reach, upper.length, 0);
        System.arraycopy(spectrum, 2 * first, lower, 0, 2 * width);
        System.arraycopy(spectrum, 2 * first, upper, 0, 2 * reach);
        correlation.forward(lower, 0);
        correlation.forward(upper, 0);
        for (int i = 0; i < upper.length; i += 2) {
            double re = upper[i] * lower[i] + upper[i + 1] * lower[i + 1];
            double im = upper[i + 1] * lower[i] - upper[i] * lower[i + 1];
            upper[i] = re;
            upper[i + 1] = im;
        }
        correlation.inverse(upper, 0);
    }

    private void normalise(int first, double[] out, int to) {
        double least = SILENCE * powers[powers.length - 1];
        double below = powers[first + width] - powers[first];
        for (int a = 0; a < lines; a++) {
            double above = powers[first + a + width] - powers[first + a];
            double cross = upper[2 * a] * upper[2 * a] + upper[2 * a + 1] * upper[2 * a + 1];
            // Rounding may take it above 1.
            out[to + a] = below > least && above > least ? Math.min(1, cross / below / above) : 0;
        }
    }

    /** Returns extent, as in {@code coherence of 120000 samples, 118 carriers, 4688 cyclic frequencies}. */
    @Override
    public String toString() {
        return "coherence of " + length + " samples, " + carriers + " carriers, " + lines + " cyclic frequencies";
    }
}
