package dev.vibra.transform;

import java.util.Arrays;

/**
 * Forward transforms along the rows of a matrix, one a column, in place: decimation in frequency by 5, 3, 4 and 2 (and
 * larger primes by the definition), depth first, so that what was just written is still in the cache.
 *
 * <p>Frequency k comes out in row {@code place(k)}; whoever reads the rows takes them in that order, which costs
 * nothing. Rows are best 64 long or more.
 */
final class RowTransform {
    /** Larger primes take longer by their definition than by the chirp algorithm. */
    static final int LARGEST_PRIME = 13;
    private static final int[] RADICES = {13, 11, 7, 5, 3, 4, 2};
    /** Output number of each row of a butterfly of five. */
    private static final int[] OF_FIVE = {0, 1, 2, 4, 3};
    private static final int[] OF_FOUR = {0, 2, 1, 3};

    private final int length;
    private final int[] radices;
    /** Of each stage and each of its butterflies the factors of outputs 1, 2 …, interleaved. */
    private final double[][] factors;
    private final int[] places;
    private final PrimeButterfly prime;

    /** For rows of at most so many columns. */
    RowTransform(int length, int mostLanes) {
        this.length = length;
        radices = radices(length);
        factors = new double[radices.length][];
        int n = length;
        for (int s = 0; s < radices.length; s++) {
            factors[s] = factors(n, radices[s]);
            n /= radices[s];
        }
        places = places(0, length);
        prime = radices.length > 0 && radices[0] > 5 ? new PrimeButterfly(radices[0], mostLanes) : null;
    }

    /** Whether a length has no prime factor above the largest. */
    static boolean handles(int length) {
        int rest = length;
        for (int radix : RADICES) {
            while (rest % radix == 0) {
                rest /= radix;
            }
        }
        return rest == 1;
    }

    private static int[] radices(int length) {
        int[] found = new int[31];
        int count = 0;
        int rest = length;
        for (int radix : RADICES) {
            while (rest % radix == 0) {
                found[count++] = radix;
                rest /= radix;
            }
        }
        return Arrays.copyOf(found, count);
    }

    private static double[] factors(int n, int radix) {
        double[] table = new double[2 * (n / radix) * (radix - 1)];
        for (int j = 0, at = 0; j < n / radix; j++) {
            for (int q = 1; q < radix; q++) {
                double angle = 2 * Math.PI * ((long) j * q % n) / n;
                table[at++] = Math.cos(angle);
                table[at++] = -Math.sin(angle);
            }
        }
        return table;
    }

    private int[] places(int stage, int n) {
        int[] place = new int[n];
        if (n > 1) {
            int radix = radices[stage];
            int[] inner = places(stage + 1, n / radix);
            for (int row = 0; row < radix; row++) {
                int output = radix == 4 ? OF_FOUR[row] : radix == 5 ? OF_FIVE[row] : row;
                for (int k = 0; k < inner.length; k++) {
                    place[output + radix * k] = row * inner.length + inner[k];
                }
            }
        }
        return place;
    }

    int length() {
        return length;
    }

    /** The row of each frequency; not to be changed. */
    int[] places() {
        return places;
    }

    /** Transforms the first columns of as many rows as the length. */
    void run(Rows rows, int lanes) {
        if (length > 1) {
            stage(rows.re(), rows.im(), lanes, 0, 0, length);
        }
    }

    private void stage(double[][] re, double[][] im, int lanes, int stage, int first, int n) {
        int radix = radices[stage];
        int m = n / radix;
        for (int j = 0; j < m; j++) {
            butterfly(re, im, lanes, radix, first + j, m, factors[stage], 2 * (radix - 1) * j);
        }
        if (m > 1) {
            for (int q = 0; q < radix; q++) {
                stage(re, im, lanes, stage + 1, first + q * m, m);
            }
        }
    }

    private void butterfly(double[][] re, double[][] im, int lanes, int radix, int a, int m, double[] w, int at) {
        int b = a + m;
        int c = b + m;
        int d = c + m;
        int e = d + m;
        switch (radix) {
            case 2 -> Butterflies.twoOrThree(re[a], im[a], re[b], im[b], null, null, w, at, lanes);
            case 3 -> Butterflies.twoOrThree(re[a], im[a], re[b], im[b], re[c], im[c], w, at, lanes);
            case 4 -> Butterflies.four(re[a], im[a], re[b], im[b], re[c], im[c], re[d], im[d], w, at, lanes);
            case 5 -> Butterflies.five(re[a], im[a], re[b], im[b], re[c], im[c], re[d], im[d], re[e], im[e], w, at,
                    lanes);
            default -> prime.run(re, im, lanes, radix, a, m, w, at);
        }
    }
}
