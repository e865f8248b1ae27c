package dev.vibra.integration;

import java.util.Arrays;

/**
 * Symmetric non-recursive filter that straightens what the bilinear transform bends: tan(x)/x an integration, x being
 * π times the relative frequency, and the roll-off of a Butterworth low-pass of order 3. Weighted least squares on the
 * relative error from 0 to 0.4 times the sample rate, above which recordings hold nothing but the roll-off of their
 * anti-aliasing filter.
 *
 * <p>The response of symmetric taps is a polynomial of the cosine of the frequency. It is sought as a sum of
 * polynomials that are orthogonal on the weighted grid, so that there is no system of equations to be solved.
 *
 * @see "G. E. Forsythe, Generation and use of orthogonal polynomials for data-fitting with a digital computer, J. SIAM
 *     5 (1957) 74-88"
 */
final class BendCorrection {
    static final double HIGHEST_RELATIVE_FREQUENCY = 0.4;
    private static final int SIDE_TAPS = 16;
    private static final int GRID = 1024;
    private static final double PASS_BAND_WEIGHT = 10;
    private static final double PASS_BAND_END = 1.3;

    /** The cosine at each frequency of the grid. */
    private final double[] cosine = new double[GRID];
    /** Squared weights of the response, and their products with what the response should be. */
    private final double[] weights = new double[GRID];
    private final double[] targets = new double[GRID];

    private BendCorrection(int integrations, double corner) {
        double step = Math.PI * HIGHEST_RELATIVE_FREQUENCY / (GRID - 1);
        double stepCos = Math.cos(step);
        double stepSin = Math.sin(step);
        double tanCorner = Math.tan(Math.PI * corner);
        double passBand = PASS_BAND_END * corner / HIGHEST_RELATIVE_FREQUENCY * (GRID - 1);
        double cos = 1;
        double sin = 0;
        for (int i = 0; i < GRID; i++) {
            double x = i * step;
            double tan = sin / cos;
            double inverse = Math.sqrt((1 + sixth(x / (Math.PI * corner))) / (1 + sixth(tan / tanCorner)));
            double bend = i == 0 ? 1 : x / tan;
            for (int k = 0; k < integrations; k++) {
                inverse *= bend;
            }
            double weight = i <= passBand ? PASS_BAND_WEIGHT : 1;
            cosine[i] = cos * cos - sin * sin;
            targets[i] = weight * weight * inverse;
            weights[i] = targets[i] * inverse;
            double turned = cos * stepCos - sin * stepSin;
            sin = sin * stepCos + cos * stepSin;
            cos = turned;
        }
    }

    private static double sixth(double x) {
        return x * x * x * (x * x * x);
    }

    /**
     * Designs the filter.
     *
     * @param integrations number of trapezoidal integrators, 0 to 2
     * @param corner corner of the low-pass over the sample rate; up to 1.3 times of it the error weighs more
     * @return {@code 2·16 + 1} taps, symmetric
     */
    static double[] design(int integrations, double corner) {
        return symmetric(new BendCorrection(integrations, corner).cosines());
    }

    /**
     * The wanted response as a sum of cosines of multiples of the frequency. The polynomials p follow from
     * {@code p[k+1] = (cosine - α)·p[k] - β·p[k-1]}, on the grid and as sums of cosines.
     */
    private double[] cosines() {
        double[] result = new double[SIDE_TAPS + 2];
        double[] before = new double[GRID];
        double[] now = new double[GRID];
        Arrays.fill(now, 1);
        double[] sumBefore = new double[SIDE_TAPS + 2];
        double[] sum = new double[SIDE_TAPS + 2];
        sum[0] = 1;
        double normBefore = Double.POSITIVE_INFINITY;
        for (int k = 0; k <= SIDE_TAPS; k++) {
            double[] products = products(now);
            double alpha = products[1] / products[0];
            double beta = products[0] / normBefore;
            for (int m = 0; m <= k; m++) {
                result[m] += products[2] / products[0] * sum[m];
            }
            for (int i = 0; i < GRID; i++) {
                before[i] = (cosine[i] - alpha) * now[i] - beta * before[i];
            }
            double[] next = before;
            before = now;
            now = next;
            double[] nextSum = next(sum, sumBefore, alpha, beta);
            sumBefore = sum;
            sum = nextSum;
            normBefore = products[0];
        }
        return result;
    }

    /** Weighted products over the grid: of a polynomial with itself, with itself and the cosine, with the target. */
    private double[] products(double[] polynomial) {
        double norm = 0;
        double moment = 0;
        double target = 0;
        for (int i = 0; i < GRID; i++) {
            double square = weights[i] * polynomial[i] * polynomial[i];
            norm += square;
            moment += square * cosine[i];
            target += targets[i] * polynomial[i];
        }
        return new double[] {norm, moment, target};
    }

    /** The next polynomial: {@code cos φ·cos mφ = (cos (m+1)φ + cos (m-1)φ)/2}. */
    private static double[] next(double[] sum, double[] before, double alpha, double beta) {
        double[] next = new double[sum.length];
        for (int m = 0; m < sum.length; m++) {
            next[m] = -alpha * sum[m] - beta * before[m];
        }
        next[1] += sum[0];
        for (int m = 1; m < sum.length - 1; m++) {
            next[m + 1] += 0.5 * sum[m];
            next[m - 1] += 0.5 * sum[m];
        }
        return next;
    }

    private static double[] symmetric(double[] cosines) {
        double[] taps = new double[2 * SIDE_TAPS + 1];
        taps[SIDE_TAPS] = cosines[0];
        for (int k = 1; k <= SIDE_TAPS; k++) {
            taps[SIDE_TAPS - k] = taps[SIDE_TAPS + k] = cosines[k] / 2;
        }
        return taps;
    }

    /** Returns the gain of symmetric taps at a relative frequency. */
    static double gain(double[] taps, double frequency) {
        double sum = taps[SIDE_TAPS];
        for (int k = 1; k <= SIDE_TAPS; k++) {
            sum += 2 * taps[SIDE_TAPS + k] * Math.cos(2 * Math.PI * frequency * k);
        }
        return Math.abs(sum);
    }
}
