package dev.vibra.transfer;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.QRDecomposition;

/** The lines of a response within a band, as mobility. */
final class Mobility {
    private final FrequencyResponse response;
    private final int integrations;
    private final int firstLine;
    private final int lastLine;

    Mobility(FrequencyResponse response, int integrations, Band band) {
        this.response = response;
        this.integrations = Require.count("integrations", integrations, -1, 1);
        double line = response.frequencyHertz(1);
        firstLine = Math.max(1, (int) Math.ceil(band.lowestHertz() / line - 1e-9));
        lastLine = Math.min(response.lines() - 1, (int) Math.floor(band.highestHertz() / line + 1e-9));
        if (lastLine - firstLine < 2) {
            throw new IllegalArgumentException("band must hold at least three lines, " + Digits.compact(line, 4)
                    + " Hz apart: " + band);
        }
    }

    double hertz(int line) {
        return response.frequencyHertz(line);
    }

    Complex at(int line) {
        Complex factor = new Complex(0, 2 * Math.PI * hertz(line));
        Complex value = response.h1(line);
        for (int i = 0; i < Math.abs(integrations); i++) {
            value = integrations > 0 ? value.divide(factor) : value.multiply(factor);
        }
        return value;
    }

    double magnitude(int line) {
        return at(line).abs();
    }

    int highest() {
        int best = firstLine;
        for (int k = firstLine; k <= lastLine; k++) {
            best = magnitude(k) > magnitude(best) ? k : best;
        }
        return best;
    }

    /** Returns the farthest line on one side up to which the magnitude stays above the half-power level. */
    int within(int top, int direction) {
        double level = magnitude(top) / Math.sqrt(2);
        int k = top;
        while (k + direction >= firstLine && k + direction <= lastLine && magnitude(k + direction) >= level) {
            k += direction;
        }
        return k;
    }

    double crossing(int top, int direction, double level) {
        int inside = within(top, direction);
        int outside = inside + direction;
        if (outside < firstLine || outside > lastLine) {
            throw new IllegalArgumentException("band must hold a peak that falls by 3 dB on both sides: largest at "
                    + Digits.compact(hertz(top), 5) + " Hz");
        }
        double fraction = (magnitude(inside) - level) / (magnitude(inside) - magnitude(outside));
        return hertz(inside) + fraction * (hertz(outside) - hertz(inside));
    }

    /** Least-squares circle (I. Kåsa, IEEE Trans. Instrum. Meas. 25 (1976) 8-14): x² + y² = 2ax + 2by + c. */
    Complex centre(int first, int last) {
        double[][] rows = new double[last - first + 1][];
        double[] right = new double[rows.length];
        for (int k = first; k <= last; k++) {
            Complex point = at(k);
            rows[k - first] = new double[] {2 * point.getReal(), 2 * point.getImaginary(), 1};
            right[k - first] = point.getReal() * point.getReal() + point.getImaginary() * point.getImaginary();
        }
        double[] solution = leastSquares(rows, right);
        return new Complex(solution[0], solution[1]);
    }

    static double[] leastSquares(double[][] rows, double[] right) {
        DecompositionSolver solver = new QRDecomposition(new Array2DRowRealMatrix(rows, false)).getSolver();
        if (!solver.isNonSingular()) {
            throw new IllegalArgumentException("lines between the half-power points must lie on a circle, not on a"
                    + " straight line or a point: " + rows.length + " lines");
        }
        return solver.solve(new ArrayRealVector(right, false)).toArray();
    }
}
