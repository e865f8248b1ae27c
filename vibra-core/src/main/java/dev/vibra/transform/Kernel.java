package dev.vibra.transform;

/** Forward complex transform of one length, in place, unscaled, on interleaved real and imaginary parts. */
abstract class Kernel {
    /** Longest power of two given to JTransforms in one piece: from 8192 on it would start its pool of threads. */
    static final int LONGEST_DIRECT = 4096;

    /** Largest prime factor transformed by its definition; above it the chirp algorithm is cheaper. */
    private static final int LARGEST_PRIME = 31;

    abstract void forward(double[] data, int offset);

    static Kernel of(int length) {
        if (Integer.bitCount(length) == 1) {
            return length <= LONGEST_DIRECT ? new ShortKernel(length) : new FourStepKernel(length);
        }
        int prime = smallestOddFactor(length);
        return largestFactor(length) <= LARGEST_PRIME ? new PrimeFactorKernel(prime, length / prime)
                : new ChirpKernel(length);
    }

    /** Fills a table with {@code exp(-2πi·k/n)} for k = 0 … count-1, interleaved. */
    static double[] roots(int count, int n) {
        double[] table = new double[2 * count];
        for (int k = 0; k < count; k++) {
            setRoot(table, k, k, n);
        }
        return table;
    }

    /** Sets element {@code at} of an interleaved table to {@code exp(-2πi·k/n)}. */
    static void setRoot(double[] table, int at, long k, long n) {
        double angle = 2 * Math.PI * (k % n) / n;
        table[2 * at] = Math.cos(angle);
        table[2 * at + 1] = -Math.sin(angle);
    }

    private static int smallestOddFactor(int n) {
        int odd = n >> Integer.numberOfTrailingZeros(n);
        for (int p = 3; (long) p * p <= odd; p += 2) {
            if (odd % p == 0) {
                return p;
            }
        }
        return odd;
    }

    private static int largestFactor(int n) {
        int rest = n >> Integer.numberOfTrailingZeros(n);
        int largest = 1;
        for (int p = 3; (long) p * p <= rest; p += 2) {
            while (rest % p == 0) {
                largest = p;
                rest /= p;
            }
        }
        return Math.max(largest, rest);
    }
}
