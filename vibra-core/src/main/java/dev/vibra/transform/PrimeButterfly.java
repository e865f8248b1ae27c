package dev.vibra.transform;

import java.util.Arrays;

/** A butterfly of 7, 11 or 13 rows by the definition; outputs in their natural order. Holds workspace. */
final class PrimeButterfly {
    private final double[][] outRe;
    private final double[][] outIm;

    PrimeButterfly(int largest, int mostLanes) {
        outRe = new double[largest][mostLanes];
        outIm = new double[largest][mostLanes];
    }

    void run(double[][] re, double[][] im, int lanes, int radix, int first, int distance, double[] w, int at) {
        for (int q = 0; q < radix; q++) {
            System.arraycopy(re[first], 0, outRe[q], 0, lanes);
            System.arraycopy(im[first], 0, outIm[q], 0, lanes);
            for (int row = 1; row < radix; row++) {
                double angle = -2 * Math.PI * (q * row % radix) / radix;
                addTurned(re[first + row * distance], im[first + row * distance], Math.cos(angle), Math.sin(angle),
                        outRe[q], outIm[q], lanes);
            }
        }
        for (int q = 0; q < radix; q++) {
            double[] toRe = re[first + q * distance];
            double[] toIm = im[first + q * distance];
            double cos = q == 0 ? 1 : w[at + 2 * q - 2];
            double sin = q == 0 ? 0 : w[at + 2 * q - 1];
            Arrays.fill(toRe, 0, lanes, 0);
            Arrays.fill(toIm, 0, lanes, 0);
            addTurned(outRe[q], outIm[q], cos, sin, toRe, toIm, lanes);
        }
    }

    private static void addTurned(double[] re, double[] im, double cos, double sin, double[] toRe, double[] toIm,
            int lanes) {
        for (int i = 0; i < lanes; i++) {
            double x = re[i];
            double y = im[i];
            toRe[i] += x * cos - y * sin;
            toIm[i] += x * sin + y * cos;
        }
    }
}
