package dev.vibra.window;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * Window function of a block of samples.
 *
 * <p>Periodic, as spectra need it: {@code w[n] = w(n/N), n = 0 … N-1}, the sample that would close the period is left
 * off. Not normalised: a spectrum divides by the {@linkplain #coherentGain() coherent gain} for lines and by the
 * {@linkplain #noiseBandwidth() noise bandwidth} for bands and densities.
 *
 * @see "F. J. Harris, On the use of windows for harmonic analysis with the discrete Fourier transform, Proc. IEEE 66
 *     (1978) 51-83, doi:10.1109/PROC.1978.10837"
 */
public final class Window implements Serializable {
    private static final long serialVersionUID = 1;

    private static final Window RECTANGULAR = cosines("rectangular", 1);
    private static final Window HANN = cosines("Hann", 0.5, 0.5);
    private static final Window HAMMING = cosines("Hamming", 0.54, 0.46);
    private static final Window BLACKMAN = cosines("Blackman", 0.42, 0.5, 0.08);
    private static final Window BLACKMAN_HARRIS = cosines("Blackman-Harris", 0.35875, 0.48829, 0.14128, 0.01168);
    private static final Window NUTTALL = cosines("Nuttall", 0.3635819, 0.4891775, 0.1365995, 0.0106411);
    private static final Window FLAT_TOP = cosines("flat top", 1, 1.933, 1.286, 0.388, 0.0322);
    private static final Window TRIANGULAR = new Window("triangular", new Shapes.Triangle());

    private final String name;
    private final WindowShape shape;

    private Window(String name, WindowShape shape) {
        this.name = Objects.requireNonNull(name, "name");
        this.shape = Objects.requireNonNull(shape, "shape");
    }

    private Object readResolve() {
        return new Window(name, shape);
    }

    private static Window cosines(String name, double... coefficients) {
        return new Window(name, CosineSum.of(coefficients));
    }

    /**
     * Returns the rectangular window: no weighting, for transients that begin and end within the block and for signals
     * with a whole number of periods in it.
     *
     * @return the window
     */
    public static Window rectangular() {
        return RECTANGULAR;
    }

    /**
     * Returns the Hann window, coefficients 0.5 and 0.5: the usual choice for spectra of running machines.
     *
     * @return the window
     * @see "ISO 18431-2:2004, Hanning window"
     */
    public static Window hann() {
        return HANN;
    }

    /**
     * Returns the Hamming window, coefficients 0.54 and 0.46: lower first side lobe than Hann, slower decay.
     *
     * @return the window
     * @see "F. J. Harris 1978, Table 1"
     */
    public static Window hamming() {
        return HAMMING;
    }

    /**
     * Returns the triangular window, 0 at the first sample and 1 in the middle (Bartlett).
     *
     * @return the window
     * @see "F. J. Harris 1978, Table 1, triangle"
     */
    public static Window triangular() {
        return TRIANGULAR;
    }

    /**
     * Returns the Blackman window, coefficients 0.42, 0.5 and 0.08.
     *
     * @return the window
     * @see "F. J. Harris 1978, equation 32"
     */
    public static Window blackman() {
        return BLACKMAN;
    }

    /**
     * Returns the four-term Nuttall window of lowest side lobes among those of continuous first derivative, -98 dB.
     *
     * @return the window
     * @see "A. H. Nuttall, Some windows with very good sidelobe behavior, IEEE Trans. ASSP 29 (1981) 84-91"
     */
    public static Window nuttall() {
        return NUTTALL;
    }

    /**
     * Returns a Kaiser window: the nearly best concentration of energy in a main lobe whose width is chosen.
     *
     * @param beta shape, 0 to 50; Harris's α is β/π
     * @return the window
     * @throws IllegalArgumentException if the shape is out of range
     * @see "F. J. Harris 1978, equation 46 (Kaiser-Bessel)"
     */
    public static Window kaiser(double beta) {
        return new Window("Kaiser " + Digits.compact(beta, 4), new Shapes.Kaiser(beta));
    }

    /**
     * Returns a Tukey window: flat with half-cosine ends.
     *
     * @param fraction part of the length that the two ends take together, above 0, at most 1 (then it is Hann's)
     * @return the window
     * @throws IllegalArgumentException if the fraction is out of range
     * @see "F. J. Harris 1978, equation 38"
     */
    public static Window tukey(double fraction) {
        return new Window("Tukey " + Digits.compact(fraction, 4), new Shapes.Tukey(fraction));
    }

    /**
     * Returns an exponential window for the ringing after an impact. It adds damping: with a block of T seconds, {@code
     * -ln(endValue)/(2πf·T)} to the damping ratio of a line at f, to be taken off again.
     *
     * @param endValue weight that the end of the block would have, above 0, at most 1
     * @return the window
     * @throws IllegalArgumentException if the weight is out of range
     * @see "ISO 7626-5:2019, exponential window (principle)"
     */
    public static Window exponential(double endValue) {
        return new Window("exponential " + Digits.compact(endValue, 4), new Shapes.Exponential(endValue));
    }

    /**
     * Returns a force window for the pulse of a hammer: 1 over the first part of the block, then a half-cosine down to
     * 0 over a quarter of that part.
     *
     * @param fraction part of the block that passes in full, above 0, at most 1
     * @return the window
     * @throws IllegalArgumentException if the fraction is out of range
     * @see "ISO 7626-5:2019, force window (principle)"
     */
    public static Window force(double fraction) {
        return new Window("force " + Digits.compact(fraction, 4), new Shapes.Force(fraction));
    }

    /**
     * Returns the four-term Blackman-Harris window, side lobes at -92 dB: for small lines beside large ones.
     *
     * @return the window
     * @see "F. J. Harris 1978, Table 1, minimum 4-sample Blackman-Harris"
     */
    public static Window blackmanHarris() {
        return BLACKMAN_HARRIS;
    }

    /**
     * Returns the flat top window: amplitude of a line within 0.01 dB wherever it lies between two lines, at the price
     * of a wide main lobe.
     *
     * @return the window
     * @see "ISO 18431-2:2004, flat-top window: 1, 1.933, 1.286, 0.388, 0.0322"
     */
    public static Window flatTop() {
        return FLAT_TOP;
    }

    /**
     * Samples the window over one block.
     *
     * @param length number of samples, 1 to 2²⁶
     * @return a new array of that length
     * @throws IllegalArgumentException if the length is out of range
     */
    public double[] samples(int length) {
        Require.count("length", length, 1, Require.MOST_SAMPLES);
        return shape.samples(length);
    }

    /**
     * Samples the window from end to end, as the design of filters needs it: {@code w[n] = w(n/(N-1))}.
     *
     * @param length number of samples, 1 to 2²⁶
     * @return a new array of that length, symmetric if the window is
     * @throws IllegalArgumentException if the length is out of range
     */
    public double[] closedSamples(int length) {
        Require.count("length", length, 1, Require.MOST_SAMPLES);
        double[] w = new double[length];
        for (int n = 0; n < length; n++) {
            w[n] = shape.at(length == 1 ? 0.5 : (double) n / (length - 1));
        }
        return w;
    }

    /**
     * Returns the coherent gain, the mean of the window: what a line on the bin is multiplied with.
     *
     * @return mean of the window over a long block
     */
    public double coherentGain() {
        return shape.mean();
    }

    /**
     * Returns the equivalent noise bandwidth in bins: {@code N·Σw²/(Σw)²}, for a long block.
     *
     * @return noise bandwidth in bins, at least 1
     */
    public double noiseBandwidth() {
        return shape.meanSquare() / (shape.mean() * shape.mean());
    }

    /**
     * Returns the scallop loss: how much a line half-way between two bins reads low.
     *
     * @return loss in dB, zero or more but for windows whose main lobe has a dip
     */
    public double scallopLoss() {
        return -20 * Math.log10(response(0.5));
    }

    /**
     * Returns what a line reads when it lies a given distance from a bin, relative to a line on the bin: the magnitude
     * of the window's transform, for a long block.
     *
     * @param bins distance between line and bin, in bins, -1e9 to 1e9
     * @return relative magnitude, 1 at distance 0
     * @throws IllegalArgumentException if the distance is out of range
     */
    public double response(double bins) {
        return shape.response(Require.within("bins", bins, -1e9, 1e9, ""));
    }

    /**
     * Returns the distance from the middle of the main lobe to its first zero. Two lines closer than that are not told
     * apart, and a line closer than that to 0 Hz or to half the sample rate meets its own image.
     *
     * @return half width of the main lobe in bins, at least 1
     */
    public double mainLobeHalfWidth() {
        return shape.mainLobeHalfWidth();
    }

    /**
     * Returns the correlation of two blocks that overlap, for white noise: what they share of their information.
     *
     * @param overlap fraction of a block that the next one shares, 0 to 1
     * @return correlation, 1 for the same block
     * @throws IllegalArgumentException if the overlap is out of range
     * @see "F. J. Harris 1978, equation 17"
     */
    public double overlapCorrelation(double overlap) {
        Require.within("overlap", overlap, 0, 1, "");
        double sum = 0;
        double reach = Math.min(overlap, shape.end());
        int points = WindowShape.POINTS;
        for (int i = 0; i < points; i++) {
            double place = reach * (i + 0.5) / points;
            sum += shape.at(place) * shape.at(place + (1 - overlap));
        }
        return reach * sum / points / shape.meanSquare();
    }

    /** Two windows are equal if their shapes are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Window window && shape.equals(window.shape);
    }

    /** Hashes the shape. */
    @Override
    public int hashCode() {
        return Objects.hash(shape);
    }

    /** Returns the name, as in {@code Hann}. */
    @Override
    public String toString() {
        return name;
    }
}
