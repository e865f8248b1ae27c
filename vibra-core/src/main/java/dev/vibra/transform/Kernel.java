package dev.vibra.transform;

/** Forward complex transform of one length, in place, unscaled, on interleaved real and imaginary parts. */
abstract class Kernel {
    /**
     * Longest power of two given to JTransforms in one piece. Its threshold for starting a pool of threads counts
     * doubles: 4096 complex values already reach it.
     */
    static final int LONGEST_DIRECT = 2048;

    /**
     * Up to this sum of odd prime factors, stages by the definition take less time than the chirp algorithm (measured).
     */
    private static final int LARGEST_FACTOR_SUM = 28;

    abstract void forward(double[] data, int offset);

    static Kernel of(int length) {
        if (Integer.bitCount(length) == 1) {
            return length <= LONGEST_DIRECT ? new ShortKernel(length) : new FourStepKernel(length);
        }
        if (oddFactorSum(length) > LARGEST_FACTOR_SUM) {
            return new ChirpKernel(length);
        }
        int prime = smallestOddFactor(length);
        return new PrimeFactorKernel(prime, length / prime);
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

    private static int oddFactorSum(int n) {
        int rest = n >> Integer.numberOfTrailingZeros(n);
        int sum = 0;
        for (int p = 3; (long) p * p <= rest; p += 2) {
            while (rest % p == 0) {
                sum += p;
                rest /= p;
            }
        }
        return rest > 1 ? sum + rest : sum;
    }
}
