package dev.vibra.transform;

import java.util.Arrays;

/**
 * A matrix of complex numbers, real and imaginary parts apart and each row an array of its own: loops over one index of
 * several rows are what the compiler turns into vector instructions. Rows change their places by their references.
 */
record Rows(double[][] re, double[][] im) {
    static Rows of(int rows, int columns) {
        return new Rows(new double[rows][columns], new double[rows][columns]);
    }

    /** The same rows in another order: row k is what stood at {@code places[k]}. */
    Rows ordered(int[] places) {
        double[][] newRe = new double[places.length][];
        double[][] newIm = new double[places.length][];
        for (int k = 0; k < places.length; k++) {
            newRe[k] = re[places[k]];
            newIm[k] = im[places[k]];
        }
        return new Rows(newRe, newIm);
    }

    /** The same rows from one place up to another. */
    Rows part(int from, int to) {
        return new Rows(Arrays.copyOfRange(re, from, to), Arrays.copyOfRange(im, from, to));
    }

    /** The same rows with real and imaginary parts exchanged: transformed forward they give the inverse. */
    Rows swapped() {
        return new Rows(im, re);
    }

    /** Writes the transpose into the first columns of other rows. */
    void transposeInto(Rows to) {
        transpose(re, to.re);
        transpose(im, to.im);
    }

    /** Eight rows at a time: the eight values written side by side share a line of the cache. */
    static void transpose(double[][] from, double[][] to) {
        int row = 0;
        for (; row + 8 <= from.length; row += 8) {
            eight(from, row, to);
        }
        for (; row < from.length; row++) {
            double[] source = from[row];
            for (int c = 0; c < to.length; c++) {
                to[c][row] = source[c];
            }
        }
    }

    private static void eight(double[][] from, int row, double[][] to) {
        double[] s0 = from[row];
        double[] s1 = from[row + 1];
        double[] s2 = from[row + 2];
        double[] s3 = from[row + 3];
        double[] s4 = from[row + 4];
        double[] s5 = from[row + 5];
        double[] s6 = from[row + 6];
        double[] s7 = from[row + 7];
        for (int c = 0; c < to.length; c++) {
            double[] target = to[c];
            target[row] = s0[c];
            target[row + 1] = s1[c];
            target[row + 2] = s2[c];
            target[row + 3] = s3[c];
            target[row + 4] = s4[c];
            target[row + 5] = s5[c];
            target[row + 6] = s6[c];
            target[row + 7] = s7[c];
        }
    }
}
