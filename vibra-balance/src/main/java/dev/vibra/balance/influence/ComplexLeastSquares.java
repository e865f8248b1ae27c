package dev.vibra.balance.influence;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Require;
import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * Least squares with complex coefficients by singular values of the equivalent real system {@code [Re −Im; Im Re]},
 * whose singular values are those of the complex matrix, each twice.
 *
 * <p>Columns are brought to equal length first, so that planes of different sensitivity or radius cost no accuracy.
 */
final class ComplexLeastSquares {
    private final int rows;
    private final int columns;
    private final double[] columnLength;
    private final RealMatrix u;
    private final RealMatrix v;
    private final double[] scaledSingularValues;
    private final double conditionNumber;

    ComplexLeastSquares(Phasor[][] matrix) {
        rows = matrix.length;
        columns = matrix[0].length;
        columnLength = new double[columns];
        for (int j = 0; j < columns; j++) {
            double length = 0;
            for (Phasor[] row : matrix) {
                length = Math.hypot(length, row[j].magnitude());
            }
            columnLength[j] = length > 0 ? Require.finite("length of a column", length) : 1;
        }
        double[] longest = new double[columns];
        Arrays.fill(longest, Arrays.stream(columnLength).max().orElse(1));
        double[] raw = new SingularValueDecomposition(real(matrix, longest)).getSingularValues();
        conditionNumber = ratio(raw);
        SingularValueDecomposition scaled = new SingularValueDecomposition(real(matrix, columnLength));
        u = scaled.getU();
        v = scaled.getV();
        scaledSingularValues = scaled.getSingularValues();
    }

    private static double ratio(double[] singularValues) {
        double smallest = singularValues[singularValues.length - 1];
        return smallest > 0 ? singularValues[0] / smallest : Double.POSITIVE_INFINITY;
    }

    private RealMatrix real(Phasor[][] matrix, double[] divisors) {
        double[][] out = new double[2 * rows][2 * columns];
        for (int i = 0; i < rows; i++) {
            for (int j = 0; j < columns; j++) {
                Phasor p = new Phasor(matrix[i][j].re() / divisors[j], matrix[i][j].im() / divisors[j]);
                out[i][j] = p.re();
                out[i][columns + j] = -p.im();
                out[rows + i][j] = p.im();
                out[rows + i][columns + j] = p.re();
            }
        }
        return new Array2DRowRealMatrix(out, false);
    }

    /** Tells whether any element differs from zero. */
    boolean acts() {
        return scaledSingularValues[0] > 0;
    }

    /** Largest over smallest singular value of the matrix as given; infinite if the smallest is zero. */
    double conditionNumber() {
        return conditionNumber;
    }

    /** The same with all columns brought to equal length: how hard the columns are to tell apart. */
    double columnConflict() {
        return ratio(scaledSingularValues);
    }

    /**
     * Solves {@code min ‖A·x − b‖² + (ridge·σ₁)²·‖D·x‖²}, D the lengths of the columns and σ₁ the largest singular
     * value of A with equal columns; ridge 0 is plain least squares.
     */
    Phasor[] solve(Phasor[] b, double ridge) {
        double[] real = new double[2 * rows];
        for (int i = 0; i < rows; i++) {
            real[i] = b[i].re();
            real[rows + i] = b[i].im();
        }
        double[] inU = u.transpose().operate(real);
        double damping = ridge * scaledSingularValues[0];
        double[] inV = new double[inU.length];
        for (int k = 0; k < inU.length; k++) {
            double s = scaledSingularValues[k];
            double length = s * s + damping * damping;
            inV[k] = length > 0 ? inU[k] * s / length : 0; // nothing acts along this one
        }
        double[] x = v.operate(inV);
        Phasor[] out = new Phasor[columns];
        for (int j = 0; j < columns; j++) {
            out[j] = new Phasor(x[j] / columnLength[j], x[columns + j] / columnLength[j]);
        }
        return out;
    }
}
