package dev.vibra.transform;

/** Loops over arrays of interleaved complex numbers. */
final class Complex {
    private Complex() {}

    /** Multiplies element by element: a ← a·b. */
    static void multiply(double[] a, int aOffset, double[] b, int bOffset, int count) {
        for (int i = 0; i < 2 * count; i += 2) {
            double re = a[aOffset + i];
            double im = a[aOffset + i + 1];
            double br = b[bOffset + i];
            double bi = b[bOffset + i + 1];
            a[aOffset + i] = re * br - im * bi;
            a[aOffset + i + 1] = re * bi + im * br;
        }
    }

    /** Changes the sign of the imaginary parts and scales: a ← s·conj(a). */
    static void conjugate(double[] a, int offset, int count, double scale) {
        for (int i = offset; i < offset + 2 * count; i += 2) {
            a[i] *= scale;
            a[i + 1] *= -scale;
        }
    }
}
