package dev.vibra.envelope;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.transform.ComplexTransform;
import dev.vibra.transform.RealTransform;
import java.util.Objects;

/**
 * Envelope spectrum of a band up to a frequency from the lines of a whole recording, which other stages share: what
 * {@link EnvelopeSpectrum#of(dev.vibra.signal.Waveform, Band)} gives, cut off there.
 *
 * <p>The squared envelope of a band W wide holds nothing above W. For its lines up to F it need only be sampled at W +
 * F: what is folded then falls on lines above F. The Hann window is put on lines: {@code X[k]/2 - (X[k-1] + X[k+1])/4}.
 *
 * <p>Holds workspace: not thread-safe, one per thread; allocates nothing once made but in {@link #spectrum}.
 */
public final class EnvelopeSpectrumPlan {
    private final int length;
    private final double sampleRateHertz;
    private final Band band;
    private final AnalyticBand lines;
    private final ComplexTransform back;
    private final RealTransform forward;
    private final double[] analytic;
    private final double[] power;
    private final double[] depths;
    private double mean;
    /** At twice the width of the band, for the kurtosis; null until that is asked for. */
    private ComplexTransform whole;
    private double[] wholeAnalytic;

    private EnvelopeSpectrumPlan(int length, double sampleRateHertz, Band band, double highestHertz) {
        this.length = length;
        this.sampleRateHertz = sampleRateHertz;
        this.band = band;
        lines = new AnalyticBand(length, sampleRateHertz, band);
        Require.within("highestHertz", highestHertz, resolutionHertz(), band.widthHertz(), "Hz");
        int last = (int) Math.min(lines.width(), Math.floor(highestHertz / resolutionHertz() + 1e-9));
        // One line more than asked for on either side, which the window wants.
        int samples = RealTransform.fastLengthFrom(Math.max(8, lines.width() + last + 3));
        back = ComplexTransform.of(samples);
        forward = RealTransform.of(samples);
        analytic = new double[2 * samples];
        power = new double[2 * forward.lines()];
        depths = new double[last + 1];
    }

    /**
     * Makes a plan.
     *
     * @param length number of samples of a recording, 4 to 2²⁶
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param band band up to half the sample rate that holds at least two lines of the whole recording
     * @param highestHertz frequency up to which lines are wanted, in Hz, from the distance of two lines to the width of
     *     the band
     * @return a plan with its workspace
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static EnvelopeSpectrumPlan of(int length, double sampleRateHertz, Band band, double highestHertz) {
        return new EnvelopeSpectrumPlan(length, sampleRateHertz, Objects.requireNonNull(band, "band"), highestHertz);
    }

    /**
     * Takes the lines of a recording and computes the envelope spectrum of the band.
     *
     * @param spectrum {@code length / 2 + 1} interleaved lines as {@link RealTransform#forward} gives them; left alone
     * @throws IllegalArgumentException if the array is too short or a line of the band not finite
     */
    public void take(double[] spectrum) {
        Require.range("spectrum", spectrum, 0, 2 * (length / 2 + 1));
        lines.fill(spectrum, back, analytic);
        for (int i = 0; i < back.length(); i++) {
            power[i] = analytic[2 * i] * analytic[2 * i] + analytic[2 * i + 1] * analytic[2 * i + 1];
        }
        forward.forward(power, 0, power);
        mean = Require.finite("mean square of the envelope", power[0] / back.length());
        // The mean is no pulsation; the window would spread it to its neighbour.
        power[0] = 0;
        double scale = mean > 0 ? 1 / (back.length() * mean) : 0;
        depths[0] = Math.sqrt(2) * scale * Math.abs(power[2]);
        for (int k = 1; k < depths.length; k++) {
            double re = scale * (2 * power[2 * k] - (power[2 * k - 2] + power[2 * k + 2]));
            double im = scale * (2 * power[2 * k + 1] - (power[2 * k - 1] + power[2 * k + 3]));
            depths[k] = Math.sqrt(re * re + im * im);
        }
    }

    /**
     * Returns the number of lines, the one at 0 Hz included.
     *
     * @return number of lines
     */
    public int lines() {
        return depths.length;
    }

    /**
     * Returns the distance of the lines, that of the lines of the recording.
     *
     * @return resolution in Hz
     */
    public double resolutionHertz() {
        return sampleRateHertz / length;
    }

    /**
     * Returns the depth of pulsation at a line of the recording taken last; 0 if its band holds no vibration.
     *
     * @param line number of the line from 0
     * @return depth, 0 to 2
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double depth(int line) {
        return depths[Objects.checkIndex(line, depths.length)];
    }

    /**
     * Copies the depths of the recording taken last.
     *
     * @param out receives {@link #lines()} values
     * @return the output array
     * @throws IllegalArgumentException if the output array is too short
     */
    public double[] depths(double[] out) {
        Require.range("out", out, 0, depths.length);
        System.arraycopy(depths, 0, out, 0, depths.length);
        return out;
    }

    /**
     * Returns the rms value of the recording taken last in the band, from the mean square of the envelope.
     *
     * @return rms in the unit of the samples
     */
    public double rms() {
        return Math.sqrt(0.5 * mean);
    }

    /**
     * Computes the envelope spectrum as a value, with the spectral kurtosis, for which the whole width of the envelope
     * is transformed as well.
     *
     * @param spectrum lines as for {@link #take}
     * @param quantity what the recording measures
     * @return the spectrum, up to the highest frequency asked for
     * @throws IllegalArgumentException if the array is too short or the band holds no vibration
     */
    public EnvelopeSpectrum spectrum(double[] spectrum, Quantity quantity) {
        Objects.requireNonNull(quantity, "quantity");
        take(spectrum);
        if (!(mean > 0)) {
            throw new IllegalArgumentException("band must hold vibration: " + band + " is silent");
        }
        return EnvelopeSpectrum.ofBlock(band, quantity, mean, resolutionHertz(), kurtosis(spectrum), depths.clone());
    }

    private double kurtosis(double[] spectrum) {
        if (whole == null) {
            whole = ComplexTransform.of(RealTransform.fastLengthFrom(2 * (lines.width() + 1)));
            wholeAnalytic = new double[2 * whole.length()];
        }
        lines.fill(spectrum, whole, wholeAnalytic);
        double squares = 0;
        for (int i = 0; i < wholeAnalytic.length; i += 2) {
            double square = wholeAnalytic[i] * wholeAnalytic[i] + wholeAnalytic[i + 1] * wholeAnalytic[i + 1];
            squares += square / mean * (square / mean);
        }
        return squares / whole.length() - 2;
    }

    /** Returns length, band and number of lines. */
    @Override
    public String toString() {
        return "envelope spectrum of " + length + " samples, " + band + ", " + depths.length + " lines";
    }
}
