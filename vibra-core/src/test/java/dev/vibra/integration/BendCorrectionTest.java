package dev.vibra.integration;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BendCorrectionTest {
    /** The plain definition: least squares over cosines of multiples by the QR decomposition of Commons Math. */
    @ParameterizedTest
    @CsvSource({"0, 0.4", "1, 0.4", "2, 0.4", "0, 0.04", "1, 0.04", "2, 0.04", "1, 0.001", "2, 0.001"})
    void tapsAreThoseOfTheLeastSquares(int integrations, double corner) {
        double[][] rows = new double[1024][17];
        double[] weights = new double[1024];
        for (int i = 0; i < 1024; i++) {
            double frequency = 0.4 * i / 1023;
            weights[i] = frequency <= 1.3 * corner ? 10 : 1;
            for (int k = 0; k <= 16; k++) {
                rows[i][k] = weights[i] / wanted(integrations, frequency, corner)
                        * Math.cos(2 * Math.PI * frequency * k);
            }
        }
        double[] cosines = new QRDecomposition(new Array2DRowRealMatrix(rows, false)).getSolver()
                .solve(new ArrayRealVector(weights, false)).toArray();
        double[] taps = BendCorrection.design(integrations, corner);
        assertEquals(33, taps.length);
        for (int k = 0; k <= 16; k++) {
            // The condition number of the definition is 1e6, so its own taps are good to ten digits.
            double expected = k == 0 ? cosines[0] : cosines[k] / 2;
            assertEquals(expected, taps[16 - k], 1e-9 * taps[16], "tap " + k);
            assertEquals(taps[16 - k], taps[16 + k]);
        }
    }

    private static double wanted(int integrations, double frequency, double corner) {
        if (frequency == 0) {
            return 1;
        }
        double x = Math.PI * frequency;
        double bent = 1 + Math.pow(Math.tan(x) / Math.tan(Math.PI * corner), 6);
        double straight = 1 + Math.pow(x / (Math.PI * corner), 6);
        return Math.pow(Math.tan(x) / x, integrations) * Math.sqrt(bent / straight);
    }
}
