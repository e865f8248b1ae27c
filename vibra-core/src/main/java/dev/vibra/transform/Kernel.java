package dev.vibra.transform;

/** Complex transform of one length, in place, on interleaved real and imaginary parts. */
abstract class Kernel {
    /**
     * Up to this power of two JTransforms takes no longer (measured). Its threshold for starting a pool of threads
     * counts doubles: 4096 complex values already reach it. For other lengths it allocates at each call.
     */
    private static final int LONGEST_SHORT = 1024;

    /** Unscaled. */
    abstract void forward(double[] data, int offset);

    /** Divided by the length. */
    abstract void inverse(double[] data, int offset);

    static Kernel of(int length) {
        if (!RowTransform.handles(length)) {
            return new ChirpKernel(length);
        }
        if (length <= LONGEST_SHORT && Integer.bitCount(length) == 1) {
            return new ShortKernel(length);
        }
        int columns = largestDivisorUpToRoot(length);
        return new SplitKernel(length / columns, columns);
    }

    /** The number of columns that comes closest to a square. */
    static int largestDivisorUpToRoot(int length) {
        int divisor = (int) Math.sqrt(length);
        while (length % divisor != 0) {
            divisor--;
        }
        return divisor;
    }
}
