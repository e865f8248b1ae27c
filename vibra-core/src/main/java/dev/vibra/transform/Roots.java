package dev.vibra.transform;

/**
 * Roots of unity {@code exp(-2πi·k/n)} of one n: each is the product of two from tables of √n entries, so that making
 * many takes no sine each. A product is off by two units in the last place at most.
 */
final class Roots {
    private final long length;
    private final int bits;
    private final double[] coarse;
    private final double[] fine;

    Roots(long length) {
        this.length = length;
        bits = (65 - Long.numberOfLeadingZeros(length)) / 2;
        fine = table(1 << bits, 1);
        coarse = table((int) (length >> bits) + 1, 1L << bits);
    }

    private double[] table(int count, long step) {
        double[] table = new double[2 * count];
        for (int i = 0; i < count; i++) {
            double angle = 2 * Math.PI * (i * step) / length;
            table[2 * i] = Math.cos(angle);
            table[2 * i + 1] = -Math.sin(angle);
        }
        return table;
    }

    /** Writes {@code scale·exp(-2πi·(first + i·step)/n)}, i = 0 …, first and step from 0 to n-1. */
    void fill(long first, long step, double scale, double[] re, double[] im) {
        long k = first;
        for (int i = 0; i < re.length; i++) {
            put(k, scale, re, im, i);
            k += step;
            k -= k >= length ? length : 0;
        }
    }

    /** Writes {@code exp(-2πi·k²/n)}, k = 0 …. */
    void fillChirp(double[] re, double[] im) {
        long square = 0;
        for (int i = 0; i < re.length; i++) {
            put(square, 1, re, im, i);
            square = (square + 2L * i + 1) % length;
        }
    }

    private void put(long k, double scale, double[] re, double[] im, int at) {
        int c = 2 * (int) (k >> bits);
        int f = 2 * (int) (k & (1L << bits) - 1);
        double x = scale * fine[f];
        double y = scale * fine[f + 1];
        re[at] = coarse[c] * x - coarse[c + 1] * y;
        im[at] = coarse[c] * y + coarse[c + 1] * x;
    }
}
