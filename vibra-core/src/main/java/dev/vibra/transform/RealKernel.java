package dev.vibra.transform;

/** Transform of real samples of one length to interleaved lines up to half the sample rate, and back. */
abstract class RealKernel {
    /** Up to this power of two JTransforms takes no longer (measured); see {@link Kernel}. */
    private static final int LONGEST_SHORT = 2048;

    /** Unscaled, of the samples less a level. */
    abstract void forward(double[] samples, int offset, double level, double[] spectrum);

    /** Divided by the length. */
    abstract void inverse(double[] spectrum, double[] samples, int offset);

    /** Adds the squared magnitudes of the lines. */
    abstract void addPower(double[] samples, int offset, double[] sums);

    static void addSquares(double[] spectrum, int lines, double[] sums) {
        for (int k = 0; k < lines; k++) {
            sums[k] += spectrum[2 * k] * spectrum[2 * k] + spectrum[2 * k + 1] * spectrum[2 * k + 1];
        }
    }

    static RealKernel of(int length) {
        if (length % 2 != 0) {
            return new OddRealKernel(length);
        }
        if (!RowTransform.handles(length)) {
            return new PairedRealKernel(length);
        }
        if (length <= LONGEST_SHORT && Integer.bitCount(length) == 1) {
            return new ShortRealKernel(length);
        }
        int columns = 2 * Kernel.largestDivisorUpToRoot(length / 2);
        return new SplitRealKernel(length / columns, columns);
    }
}
