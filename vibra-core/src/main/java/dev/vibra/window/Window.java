package dev.vibra.window;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Arrays;

/**
 * Window function made of a sum of cosines: {@code w[n] = a0 - a1·cos(x) + a2·cos(2x) - …, x = 2πn/N, n = 0 … N-1}.
 *
 * <p>Periodic, as spectra need it: the sample that would close the last period is left off. Not normalised: a spectrum
 * divides by the {@linkplain #coherentGain() coherent gain} for lines and by the {@linkplain #noiseBandwidth() noise
 * bandwidth} for bands and densities.
 *
 * @see "F. J. Harris, On the use of windows for harmonic analysis with the discrete Fourier transform, Proc. IEEE 66
 *     (1978) 51-83, doi:10.1109/PROC.1978.10837"
 */
public final class Window implements Serializable {
    private static final long serialVersionUID = 1;

    private static final Window RECTANGULAR = new Window("rectangular", 1);
    private static final Window HANN = new Window("Hann", 0.5, 0.5);
    private static final Window HAMMING = new Window("Hamming", 0.54, 0.46);
    private static final Window BLACKMAN_HARRIS = new Window("Blackman-Harris", 0.35875, 0.48829, 0.14128, 0.01168);
    private static final Window FLAT_TOP = new Window("flat top", 1, 1.933, 1.286, 0.388, 0.0322);

    private final String name;
    private final double[] coefficients;

    private Window(String name, double... coefficients) {
        this.name = name;
        this.coefficients = coefficients;
    }

    /**
     * Returns the rectangular window: no weighting, for transients that begin and end within the block and for signals with
     * a whole number of periods in it.
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
     * Returns the four-term Blackman-Harris window, side lobes at -92 dB: for small lines beside large ones.
     *
     * @return the window
     * @see "F. J. Harris 1978, Table 1, minimum 4-sample Blackman-Harris"
     */
    public static Window blackmanHarris() {
        return BLACKMAN_HARRIS;
    }

    /**
     * Returns the flat top window: amplitude of a line within 0.01 dB wherever it lies between two lines, at the price of a
     * wide main lobe.
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
     * @param length number of samples, at least 1
     * @return a new array of that length
     * @throws IllegalArgumentException if the length is below 1
     */
    public double[] samples(int length) {
        Require.atLeast("length", length, 1);
        double[] w = new double[length];
        for (int n = 0; n < length; n++) {
            for (int k = 0; k < coefficients.length; k++) {
                // The argument is reduced to one period first: cosines of large arguments lose digits.
                double angle = 2 * Math.PI * ((long) k * n % length) / length;
                w[n] += (k % 2 == 0 ? 1 : -1) * coefficients[k] * Math.cos(angle);
            }
        }
        return w;
    }

    /**
     * Returns the coherent gain, the mean of the window: what a line on the bin is multiplied with.
     *
     * @return mean of the window over a long block
     */
    public double coherentGain() {
        return coefficients[0];
    }

    /**
     * Returns the equivalent noise bandwidth in bins: {@code N·Σw²/(Σw)²}, for a long block.
     *
     * @return noise bandwidth in bins, at least 1
     */
    public double noiseBandwidth() {
        double power = coefficients[0] * coefficients[0];
        for (int k = 1; k < coefficients.length; k++) {
            power += 0.5 * coefficients[k] * coefficients[k];
        }
        return power / (coefficients[0] * coefficients[0]);
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
     * Returns what a line reads when it lies a given distance from a bin, relative to a line on the bin: the magnitude of
     * the window's transform, for a long block.
     *
     * @param bins distance between line and bin, in bins
     * @return relative magnitude, 1 at distance 0
     */
    public double response(double bins) {
        double sum = 0;
        for (int k = 0; k < coefficients.length; k++) {
            sum += 0.5 * coefficients[k] * (rectangle(bins - k) + rectangle(bins + k));
        }
        return Math.abs(sum) / coefficients[0];
    }

    /**
     * Transform of the rectangle without its phase factor exp(-iπx). Shifted by a whole k, the factor leaves a sign (-1)^k,
     * which meets the same sign in the definition of the window: all terms add up.
     */
    private static double rectangle(double bins) {
        return Math.abs(bins) < 1e-9 ? 1 : Math.sin(Math.PI * bins) / (Math.PI * bins);
    }

    /** Two windows are equal if their coefficients are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Window window && Arrays.equals(coefficients, window.coefficients);
    }

    /** Hashes the coefficients. */
    @Override
    public int hashCode() {
        return Arrays.hashCode(coefficients);
    }

    /** Returns the name, as in {@code Hann}. */
    @Override
    public String toString() {
        return name;
    }
}
