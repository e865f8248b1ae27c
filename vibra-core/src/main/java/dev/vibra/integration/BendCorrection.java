package dev.vibra.integration;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;

/**
 * Symmetric non-recursive filter that turns the response of a sampled chain into the wanted one: weighted least squares
 * on the relative error from 0 to 0.4 times the sample rate, above which recordings hold nothing but the roll-off of
 * their anti-aliasing filter.
 */
final class BendCorrection {
    static final double HIGHEST_RELATIVE_FREQUENCY = 0.4;
    private static final int SIDE_TAPS = 16;
    private static final int GRID = 1024;
    private static final double PASS_BAND_WEIGHT = 10;

    private BendCorrection() {}

    /**
     * Designs the filter.
     *
     * @param wanted factor that the filter should have at a relative frequency (0 to 0.4); positive
     * @param passBandEnd relative frequency up to which the error weighs more
     * @return {@code 2·16 + 1} taps, symmetric
     */
    static double[] design(DoubleUnaryOperator wanted, double passBandEnd) {
        double[][] rows = new double[GRID][SIDE_TAPS + 1];
        double[] ones = new double[GRID];
        for (int i = 0; i < GRID; i++) {
            double frequency = HIGHEST_RELATIVE_FREQUENCY * i / (GRID - 1);
            double weight = frequency <= passBandEnd ? PASS_BAND_WEIGHT : 1;
            double factor = wanted.applyAsDouble(frequency);
            ones[i] = weight;
            for (int k = 0; k <= SIDE_TAPS; k++) {
                rows[i][k] = weight / factor * Math.cos(2 * Math.PI * frequency * k);
            }
        }
        double[] cosines = new QRDecomposition(new Array2DRowRealMatrix(rows, false)).getSolver()
                .solve(new ArrayRealVector(ones, false)).toArray();
        return symmetric(cosines);
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
