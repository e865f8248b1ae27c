package dev.vibra.transform;

import dev.vibra.internal.Require;

/**
 * Complex discrete Fourier transform of one length, in place on interleaved real and imaginary parts.
 *
 * <p>Normalisation: {@link #forward} computes {@code X[k] = Σ x[n]·exp(-2πi·kn/N)} unscaled, {@link #inverse} divides
 * by N, so that one undoes the other. Output order: k = 0 … N-1, negative frequencies in the upper half.
 *
 * <p>Any length up to 2²⁸, as far as the heap holds it; lengths without prime factors above 13 (12,000, 25,600,
 * 102,400) are fast, others take about six times as long and as much more memory. An instance
 * holds workspace: it is not thread-safe, one per thread. Nothing is allocated after it was made and no thread is
 * started.
 */
public final class ComplexTransform {
    private static final int LONGEST = 1 << 28;

    private final int length;
    private final Kernel kernel;

    private ComplexTransform(int length) {
        this.length = Require.atLeast("length", length, 1);
        if (length > LONGEST) {
            throw new IllegalArgumentException("length must be at most " + LONGEST + ": " + length);
        }
        this.kernel = Kernel.of(length);
    }

    /**
     * Makes the transform of a length.
     *
     * @param length number of complex values, at least 1
     * @return a transform with its workspace
     * @throws IllegalArgumentException if the length is below 1 or above 2²⁸
     */
    public static ComplexTransform of(int length) {
        return new ComplexTransform(length);
    }

    /**
     * Returns the number of complex values.
     *
     * @return the length, at least 1
     */
    public int length() {
        return length;
    }

    /**
     * Transforms to the frequency domain, in place, unscaled.
     *
     * @param data interleaved values, {@code 2·length()} of them from the offset on
     * @param offset index of the first real part
     * @throws IllegalArgumentException if the values leave the array
     */
    public void forward(double[] data, int offset) {
        Require.range("data", data, offset, 2 * length);
        kernel.forward(data, offset);
    }

    /**
     * Transforms back to the time domain, in place, divided by the length.
     *
     * @param data interleaved values, {@code 2·length()} of them from the offset on
     * @param offset index of the first real part
     * @throws IllegalArgumentException if the values leave the array
     */
    public void inverse(double[] data, int offset) {
        Require.range("data", data, offset, 2 * length);
        kernel.inverse(data, offset);
    }

    /** Returns a short description. */
    @Override
    public String toString() {
        return "complex transform of " + length + " values";
    }
}
