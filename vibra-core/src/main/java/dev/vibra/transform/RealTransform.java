package dev.vibra.transform;

import dev.vibra.internal.Require;

/**
 * Discrete Fourier transform of real samples to the lines from 0 to half the sample rate, and back.
 *
 * <p>Normalisation: {@link #forward} computes {@code X[k] = Σ x[n]·exp(-2πi·kn/N)} unscaled, {@link #inverse} divides
 * by N. Output order: {@link #lines()} interleaved complex values for k = 0 … N/2 (integer division); for an even
 * length the last is the line at half the sample rate.
 *
 * <p>An even length costs half of a complex transform. Lengths without prime factors above 13 are fast; see {@link
 * #fastLengthFrom} and {@link ComplexTransform}. An instance holds workspace: it is not thread-safe, one per thread.
 * Nothing is allocated after it was made and no thread is started.
 */
public final class RealTransform {
    private static final int LONGEST = 1 << 29;

    private final int length;
    private final RealKernel kernel;

    private RealTransform(int length) {
        this.length = Require.atLeast("length", length, 1);
        if (length > LONGEST || length % 2 != 0 && length > LONGEST / 2) {
            throw new IllegalArgumentException("length must be at most " + LONGEST + ", half that if odd: " + length);
        }
        kernel = RealKernel.of(length);
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
     * Finds the longest length of a fast transform that isn't above a length: even, with no prime factor but 2, 3 and 5
     * and an odd part of at most 729. It leaves out a sixteenth at most, from 1000 samples on.
     *
     * @param longest highest length, at least 2
     * @return the length, at least 2
     * @throws IllegalArgumentException if the length is below 2
     */
    public static int fastLength(int longest) {
        return (int) FastLengths.upTo(Require.atLeast("longest", longest, 2));
    }

    /**
     * Finds the shortest length of a fast transform that isn't below a length: even, with no prime factor but 2, 3 and
     * 5.
     *
     * @param shortest lowest length, 1 to 2²⁹
     * @return the length, at least 2
     * @throws IllegalArgumentException if the length is out of range
     */
    public static int fastLengthFrom(int shortest) {
        return (int) FastLengths.from(Require.count("shortest", shortest, 1, LONGEST));
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
        return forward(samples, offset, 0, spectrum);
    }

    /**
     * Transforms samples less a level, such as their mean, to spectral lines, unscaled.
     *
     * @param samples {@link #length()} real samples from the offset on; left alone unless it is also the output
     * @param offset index of the first sample
     * @param level what is taken off each sample first
     * @param spectrum receives {@code 2·lines()} interleaved values
     * @return the array of the spectrum
     * @throws IllegalArgumentException if an array is too short
     */
    public double[] forward(double[] samples, int offset, double level, double[] spectrum) {
        Require.range("samples", samples, offset, length);
        Require.range("spectrum", spectrum, 0, 2 * lines());
        kernel.forward(samples, offset, level, spectrum);
        return spectrum;
    }

    /**
     * Transforms samples and adds the squared magnitudes of the lines to sums; less work than to hand out the lines.
     *
     * @param samples {@link #length()} real samples from the offset on; left alone
     * @param offset index of the first sample
     * @param sums {@link #lines()} sums, added to
     * @return the array of the sums
     * @throws IllegalArgumentException if an array is too short
     */
    public double[] addPower(double[] samples, int offset, double[] sums) {
        Require.range("samples", samples, offset, length);
        Require.range("sums", sums, 0, lines());
        kernel.addPower(samples, offset, sums);
        return sums;
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
        kernel.inverse(spectrum, samples, offset);
        return samples;
    }

    /** Returns a short description. */
    @Override
    public String toString() {
        return "real transform of " + length + " samples";
    }
}
