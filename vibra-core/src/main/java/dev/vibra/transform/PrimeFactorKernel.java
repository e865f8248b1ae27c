package dev.vibra.transform;

/**
 * A length with a small odd prime factor: transform prime rows by the definition, one long inner loop over the columns,
 * then each row by the kernel of the remaining length (Van Loan, section 2.2).
 */
final class PrimeFactorKernel extends Kernel {
    private final int prime;
    private final int rest;
    private final Kernel ofRest;
    private final double[] primeRoots;
    private final double[] twiddles;
    private final double[] scratch;

    PrimeFactorKernel(int prime, int rest) {
        this.prime = prime;
        this.rest = rest;
        ofRest = Kernel.of(rest);
        primeRoots = roots(prime, prime);
        twiddles = new double[2 * prime * rest];
        for (int k = 0; k < prime; k++) {
            for (int c = 0; c < rest; c++) {
                setRoot(twiddles, k * rest + c, (long) k * c, (long) prime * rest);
            }
        }
        scratch = new double[2 * prime * rest];
    }

    @Override
    void forward(double[] data, int offset) {
        for (int k = 0; k < prime; k++) {
            combineRows(data, offset, k);
        }
        Complex.multiply(scratch, 0, twiddles, 0, prime * rest);
        for (int k = 0; k < prime; k++) {
            ofRest.forward(scratch, 2 * k * rest);
        }
        Transpose.copy(scratch, 0, prime, rest, data, offset);
    }

    private void combineRows(double[] data, int offset, int k) {
        int target = 2 * k * rest;
        System.arraycopy(data, offset, scratch, target, 2 * rest);
        for (int row = 1; row < prime; row++) {
            int root = 2 * (row * k % prime);
            addScaled(data, offset + 2 * row * rest, primeRoots[root], primeRoots[root + 1], target);
        }
    }

    private void addScaled(double[] data, int source, double re, double im, int target) {
        for (int i = 0; i < 2 * rest; i += 2) {
            double x = data[source + i];
            double y = data[source + i + 1];
            scratch[target + i] += x * re - y * im;
            scratch[target + i + 1] += x * im + y * re;
        }
    }
}
