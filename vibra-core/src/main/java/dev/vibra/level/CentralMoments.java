package dev.vibra.level;

import dev.vibra.internal.StateFormat;

/**
 * Count, mean and sums of the second to fourth powers of the distances from it, to which those of more samples are
 * joined.
 *
 * @see "P. Pébay, Formulas for robust, one-pass parallel computation of covariances and arbitrary-order statistical
 *     moments, Sandia report SAND2008-6212, 2008"
 */
final class CentralMoments {
    /** Numbers of the state; the count isn't among them. */
    static final int STATE = 4;

    private double count;
    private double mean;
    private double second;
    private double third;
    private double fourth;

    double mean() {
        return mean;
    }

    double second() {
        return second;
    }

    double third() {
        return third;
    }

    double fourth() {
        return fourth;
    }

    void clear() {
        count = 0;
        mean = 0;
        second = 0;
        third = 0;
        fourth = 0;
    }

    void set(CentralMoments other) {
        count = other.count;
        mean = other.mean;
        second = other.second;
        third = other.third;
        fourth = other.fourth;
    }

    /** Joins samples of which the sums of the first to fourth powers of their distances from a shift are known. */
    void add(int samples, double shift, double[] sums, double[] more) {
        double s1 = sums[0] + more[0];
        double s2 = sums[1] + more[1];
        double s3 = sums[2] + more[2];
        double s4 = sums[3] + more[3];
        double d = s1 / samples;
        double squares = Math.max(0, s2 - d * s1);
        double cubes = s3 - d * (3 * s2 - 2 * d * s1);
        double fourths = Math.max(0, s4 - d * (4 * s3 - d * (6 * s2 - 3 * d * s1)));
        join(samples, shift + d, squares, cubes, fourths);
    }

    private void join(double n, double itsMean, double squares, double cubes, double fourths) {
        double total = count + n;
        double delta = itsMean - mean;
        double part = delta / total;
        double cross = delta * part * count * n;
        fourth += fourths + cross * part * part * (count * count - count * n + n * n)
                + 6 * part * part * (count * count * squares + n * n * second)
                + 4 * part * (count * cubes - n * third);
        third += cubes + cross * part * (count - n) + 3 * part * (count * squares - n * second);
        second += squares + cross;
        mean += n * part;
        count = total;
    }

    int put(double[] out, int at) {
        out[at] = mean;
        out[at + 1] = second;
        out[at + 2] = third;
        out[at + 3] = fourth;
        return at + STATE;
    }

    static void check(double[] in, int at) {
        StateFormat.notNegative(in, at + 1, 1);
        StateFormat.notNegative(in, at + 3, 1);
    }

    void take(long samples, double[] in, int at) {
        count = samples;
        mean = in[at];
        second = in[at + 1];
        third = in[at + 2];
        fourth = in[at + 3];
    }
}
