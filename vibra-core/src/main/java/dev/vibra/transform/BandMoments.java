package dev.vibra.transform;

import java.util.Arrays;

/** Sums of squares and fourth powers of two levels of bands, column by column. */
final class BandMoments {
    private final int half;
    private final int parts;
    private final double[] squares;
    private final double[] fourths;
    private final double[] zeros;
    /** Columns of the odd bands, so that those of both are met at one index. */
    private final double[][] oddRe;
    private final double[][] oddIm;
    private final double[][] re = new double[4][];
    private final double[][] im = new double[4][];
    private final double[] squaresAbove;
    private final double[] fourthsAbove;

    /** Columns 0 to half-1 are even bands, the next odd ones, then the odd values of the bands above, parts each. */
    BandMoments(int half, int parts) {
        this.half = half;
        this.parts = parts;
        squares = new double[3 * half];
        fourths = new double[3 * half];
        zeros = new double[3 * half];
        oddRe = new double[4][half];
        oddIm = new double[4][half];
        squaresAbove = new double[half];
        fourthsAbove = new double[half];
    }

    void clear() {
        Arrays.fill(squares, 0);
        Arrays.fill(fourths, 0);
        Arrays.fill(squaresAbove, 0);
        Arrays.fill(fourthsAbove, 0);
    }

    /** Takes in four rows, counted from one on; beyond the last they are zero. */
    void add(Rows rows, int row) {
        for (int r = 0; r < 4; r++) {
            boolean beyond = row + r >= rows.re().length;
            re[r] = beyond ? zeros : rows.re()[row + r];
            im[r] = beyond ? zeros : rows.im()[row + r];
            System.arraycopy(re[r], half, oddRe[r], 0, half);
            System.arraycopy(im[r], half, oddIm[r], 0, half);
        }
        addPowers(re[0], im[0], re[1], im[1], re[2], im[2], re[3], im[3], squares, fourths, 3 * half);
        addPowersOfSums(re[0], im[0], oddRe[0], oddIm[0], re[1], im[1], oddRe[1], oddIm[1], re[2], im[2], oddRe[2],
                oddIm[2], re[3], im[3], oddRe[3], oddIm[3], squaresAbove, fourthsAbove, half);
    }

    /** One loop a row, see {@link Butterflies}. */
    private static void addPowers(double[] ar, double[] ai, double[] br, double[] bi, double[] cr, double[] ci,
            double[] dr, double[] di, double[] second, double[] fourth, int lanes) {
        for (int i = 0; i < lanes; i++) {
            double power = ar[i] * ar[i] + ai[i] * ai[i];
            second[i] += power;
            fourth[i] += power * power;
        }
        for (int i = 0; i < lanes; i++) {
            double power = br[i] * br[i] + bi[i] * bi[i];
            second[i] += power;
            fourth[i] += power * power;
        }
        for (int i = 0; i < lanes; i++) {
            double power = cr[i] * cr[i] + ci[i] * ci[i];
            second[i] += power;
            fourth[i] += power * power;
        }
        for (int i = 0; i < lanes; i++) {
            double power = dr[i] * dr[i] + di[i] * di[i];
            second[i] += power;
            fourth[i] += power * power;
        }
    }

    /** Even values of the bands above. */
    private static void addPowersOfSums(double[] ar, double[] ai, double[] ax, double[] ay, double[] br, double[] bi,
            double[] bx, double[] by, double[] cr, double[] ci, double[] cx, double[] cy, double[] dr, double[] di,
            double[] dx, double[] dy, double[] second, double[] fourth, int lanes) {
        for (int i = 0; i < lanes; i++) {
            double x = ar[i] + ax[i];
            double y = ai[i] + ay[i];
            double power = x * x + y * y;
            second[i] += power;
            fourth[i] += power * power;
        }
        for (int i = 0; i < lanes; i++) {
            double x = br[i] + bx[i];
            double y = bi[i] + by[i];
            double power = x * x + y * y;
            second[i] += power;
            fourth[i] += power * power;
        }
        for (int i = 0; i < lanes; i++) {
            double x = cr[i] + cx[i];
            double y = ci[i] + cy[i];
            double power = x * x + y * y;
            second[i] += power;
            fourth[i] += power * power;
        }
        for (int i = 0; i < lanes; i++) {
            double x = dr[i] + dx[i];
            double y = di[i] + dy[i];
            double power = x * x + y * y;
            second[i] += power;
            fourth[i] += power * power;
        }
    }

    void write(double[] ofBands, double[] fourthsOfBands, double[] ofAbove, double[] fourthsOfAbove) {
        for (int band = 0; band < half / parts; band++) {
            ofBands[2 * band] = sum(squares, band * parts);
            ofBands[2 * band + 1] = sum(squares, half + band * parts);
            fourthsOfBands[2 * band] = sum(fourths, band * parts);
            fourthsOfBands[2 * band + 1] = sum(fourths, half + band * parts);
            if (ofAbove != null) {
                ofAbove[band] = sum(squaresAbove, band * parts) + sum(squares, 2 * half + band * parts);
                fourthsOfAbove[band] = sum(fourthsAbove, band * parts) + sum(fourths, 2 * half + band * parts);
            }
        }
    }

    private double sum(double[] values, int from) {
        double sum = 0;
        for (int i = from; i < from + parts; i++) {
            sum += values[i];
        }
        return sum;
    }
}
