package dev.vibra.transform;

import dev.vibra.internal.Require;

/**
 * Discrete Fourier transform of real samples to the lines from 0 to half the sample rate, and back.
 *
 * <p>Normalisation: {@link #forward} computes {@code X[k] = Σ x[n]·exp(-2πi·kn/N)} unscaled, {@link #inverse} divides
 * by N. Output order: {@link #lines()} interleaved complex values for k = 0 … N/2 (integer division); for an even
 * length the last is the line at half the sample rate.
 *
 * <p>An even length costs one complex transform of half the length. An instance holds workspace: it is not thread-safe,
 * one per thread. Nothing is allocated after it was made and no thread is started.
 */
public final class RealTransform {
    private final int length;
    private final boolean even;
    private final ComplexTransform transform;
    private final double[] work;
    private static final int[] FAST_ODD_PARTS = {1, 3, 5, 9, 15, 25, 27, 45, 75, 81, 125, 135, 225, 243, 375,
        405, 625, 675, 729};

    private final double[] roots;

    private RealTransform(int length) {
        this.length = Require.atLeast("length", length, 1);
        even = length % 2 == 0;
        int complexLength = even ? length / 2 : length;
        transform = ComplexTransform.of(complexLength);
        work = new double[2 * complexLength];
        roots = even ? Kernel.roots(length / 4 + 1, length) : new double[0];
    }

    /**
     * Makes the transform of a length.
     *
     * @param length number of samples, at least 1; as far as the heap holds it, see {@link ComplexTransform}
     * @return a transform with its workspace
     * @throws IllegalArgumentException if the length is below 1, or above 2²⁹ or, if odd, 2²⁸
     */
    public static RealTransform of(int length) {
        return new RealTransform(length);
    }

    /**
     * Finds the longest length of a fast transform that isn't above a length: even, with few and small odd factors. It
     * leaves out a sixteenth at most, from 1000 samples on.
     *
     * @param longest highest length, at least 2
     * @return the length, at least 2
     * @throws IllegalArgumentException if the length is below 2
     */
    public static int fastLength(int longest) {
        Require.atLeast("longest", longest, 2);
        int best = 2;
        for (int odd : FAST_ODD_PARTS) {
            if (odd <= longest / 2) {
                best = Math.max(best, odd * Integer.highestOneBit(longest / odd));
            }
        }
        return best;
    }

    /**
     * Returns the number of samples.
     *
     * @return the length, at least 1
     */
    public int length() {
        return length;
    }

    /**
     * Returns the number of spectral lines, {@code length / 2 + 1}.
     *
     * @return number of complex values of a spectrum
     */
    public int lines() {
        return length / 2 + 1;
    }

    /**
     * Transforms samples to spectral lines, unscaled.
     *
     * @param samples {@link #length()} real samples from the offset on; left alone unless it is also the output
     * @param offset index of the first sample
     * @param spectrum receives {@code 2·lines()} interleaved values
     * @return the array of the spectrum
     * @throws IllegalArgumentException if an array is too short
     */
    public double[] forward(double[] samples, int offset, double[] spectrum) {
        Require.range("samples", samples, offset, length);
        Require.range("spectrum", spectrum, 0, 2 * lines());
        if (even) {
            System.arraycopy(samples, offset, work, 0, length);
            transform.forward(work, 0);
            separate(spectrum);
        } else {
            for (int i = 0; i < length; i++) {
                work[2 * i] = samples[offset + i];
                work[2 * i + 1] = 0;
            }
            transform.forward(work, 0);
            System.arraycopy(work, 0, spectrum, 0, 2 * lines());
        }
        return spectrum;
    }

    /**
     * Transforms spectral lines back to samples, divided by the length. The imaginary parts of the first line and, for
     * an even length, of the last line are taken as zero, as they are for every real signal.
     *
     * @param spectrum {@code 2·lines()} interleaved values; left alone unless it is also the output
     * @param samples receives {@link #length()} real samples from the offset on
     * @param offset index of the first sample
     * @return the array of the samples
     * @throws IllegalArgumentException if an array is too short
     */
    public double[] inverse(double[] spectrum, double[] samples, int offset) {
        Require.range("spectrum", spectrum, 0, 2 * lines());
        Require.range("samples", samples, offset, length);
        if (even) {
            merge(spectrum);
            transform.inverse(work, 0);
            System.arraycopy(work, 0, samples, offset, length);
        } else {
            mirror(spectrum);
            transform.inverse(work, 0);
            for (int i = 0; i < length; i++) {
                samples[offset + i] = work[2 * i];
            }
        }
        return samples;
    }

    /**
     * Even and odd samples were transformed as real and imaginary parts: tells the two spectra apart and joins them.
     */
    private void separate(double[] spectrum) {
        int half = length / 2;
        double re0 = work[0];
        double im0 = work[1];
        spectrum[0] = re0 + im0;
        spectrum[1] = 0;
        spectrum[2 * half] = re0 - im0;
        spectrum[2 * half + 1] = 0;
        for (int k = 1; k <= half / 2; k++) {
            int m = half - k;
            double evenRe = 0.5 * (work[2 * k] + work[2 * m]);
            double evenIm = 0.5 * (work[2 * k + 1] - work[2 * m + 1]);
            double oddRe = 0.5 * (work[2 * k + 1] + work[2 * m + 1]);
            double oddIm = -0.5 * (work[2 * k] - work[2 * m]);
            double turnedRe = oddRe * roots[2 * k] - oddIm * roots[2 * k + 1];
            double turnedIm = oddRe * roots[2 * k + 1] + oddIm * roots[2 * k];
            spectrum[2 * k] = evenRe + turnedRe;
            spectrum[2 * k + 1] = evenIm + turnedIm;
            spectrum[2 * m] = evenRe - turnedRe;
            spectrum[2 * m + 1] = turnedIm - evenIm;
        }
    }

    /** Undoes {@link #separate}. */
    private void merge(double[] spectrum) {
        int half = length / 2;
        work[0] = 0.5 * (spectrum[0] + spectrum[2 * half]);
        work[1] = 0.5 * (spectrum[0] - spectrum[2 * half]);
        for (int k = 1; k <= half / 2; k++) {
            int m = half - k;
            double evenRe = 0.5 * (spectrum[2 * k] + spectrum[2 * m]);
            double evenIm = 0.5 * (spectrum[2 * k + 1] - spectrum[2 * m + 1]);
            double turnedRe = 0.5 * (spectrum[2 * k] - spectrum[2 * m]);
            double turnedIm = 0.5 * (spectrum[2 * k + 1] + spectrum[2 * m + 1]);
            double oddRe = turnedRe * roots[2 * k] + turnedIm * roots[2 * k + 1];
            double oddIm = turnedIm * roots[2 * k] - turnedRe * roots[2 * k + 1];
            work[2 * k] = evenRe - oddIm;
            work[2 * k + 1] = evenIm + oddRe;
            work[2 * m] = evenRe + oddIm;
            work[2 * m + 1] = oddRe - evenIm;
        }
    }

    private void mirror(double[] spectrum) {
        work[0] = spectrum[0];
        work[1] = 0;
        for (int k = 1; k < lines(); k++) {
            int m = length - k;
            work[2 * k] = work[2 * m] = spectrum[2 * k];
            work[2 * k + 1] = spectrum[2 * k + 1];
            work[2 * m + 1] = -spectrum[2 * k + 1];
        }
    }

    /** Returns a short description. */
    @Override
    public String toString() {
        return "real transform of " + length + " samples";
    }
}
