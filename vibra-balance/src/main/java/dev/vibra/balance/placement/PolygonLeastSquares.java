package dev.vibra.balance.placement;

import dev.vibra.balance.vector.Phasor;
import java.util.List;

/**
 * Least squares over masses within limits, by accelerated projected gradients with restart.
 *
 * @see "A. Beck, M. Teboulle, A Fast Iterative Shrinkage-Thresholding Algorithm, SIAM J. Imaging Sci. 2 (2009)"
 */
final class PolygonLeastSquares {
    private static final int MOST_STEPS = 200_000;
    /** A step that moves masses by less than this part of the largest is the last. */
    private static final double SETTLED = 1e-13;
    /** What still moves by less than this leaves at most some ten-thousandths of the vibration too much. */
    private static final double USABLE = 1e-10;

    private final double[][] rows; // real rows, scaled so that the largest column has length 1
    private final double[] target;
    private final double scale; // grams per variable
    private final Polygons polygons;

    PolygonLeastSquares(Phasor[][] effects, Phasor[] vibration, List<PlaneFitting> planes) {
        polygons = new Polygons(planes);
        double size = 0;
        for (Phasor v : vibration) {
            size = Math.max(size, v.magnitude());
        }
        double longest = 0;
        for (int j = 0; j < polygons.columns(); j++) {
            double square = 0;
            for (Phasor[] row : effects) {
                square += Math.pow(row[j].magnitude(), 2);
            }
            longest = Math.max(longest, Math.sqrt(square));
        }
        double vibrationScale = size > 0 ? size : 1;
        scale = longest > 0 ? vibrationScale / longest : 1;
        rows = new double[2 * effects.length][polygons.columns()];
        target = new double[2 * effects.length];
        for (int i = 0; i < effects.length; i++) {
            target[2 * i] = vibration[i].re() / vibrationScale;
            target[2 * i + 1] = vibration[i].im() / vibrationScale;
            for (int j = 0; j < polygons.columns(); j++) {
                rows[2 * i][j] = effects[i][j].re() * scale / vibrationScale;
                rows[2 * i + 1][j] = effects[i][j].im() * scale / vibrationScale;
            }
        }
    }

    double[] solve() {
        int n = polygons.columns();
        double step = 1 / squaredNorm();
        double[] x = new double[n];
        double[] ahead = new double[n];
        double momentum = 1;
        double moved = Double.POSITIVE_INFINITY;
        for (int k = 0; k < MOST_STEPS && moved >= SETTLED; k++) {
            double[] next = projected(ahead, step);
            moved = 0;
            double against = 0;
            for (int j = 0; j < n; j++) {
                moved = Math.max(moved, Math.abs(next[j] - ahead[j]));
                against += (ahead[j] - next[j]) * (next[j] - x[j]);
            }
            // Restart when the momentum points uphill (O'Donoghue and Candès 2015).
            double following = against > 0 ? 1 : (1 + Math.sqrt(1 + 4 * momentum * momentum)) / 2;
            double carry = against > 0 ? 0 : (momentum - 1) / following;
            for (int j = 0; j < n; j++) {
                ahead[j] = next[j] + carry * (next[j] - x[j]);
            }
            x = next;
            momentum = following;
        }
        if (!(moved < USABLE)) {
            throw new IllegalStateException("planes must act differently enough for the fitted masses to settle: a step"
                    + " still moves them by " + moved + " of their size after " + MOST_STEPS + "; balance fewer planes"
                    + " or add sensors");
        }
        for (int j = 0; j < n; j++) {
            x[j] *= scale;
        }
        polygons.project(x);
        return polygons.lightest(x);
    }

    /** One step downhill, back within the limits. */
    private double[] projected(double[] at, double step) {
        double[] out = at.clone();
        for (int i = 0; i < rows.length; i++) {
            double residual = target[i];
            for (int j = 0; j < at.length; j++) {
                residual += rows[i][j] * at[j];
            }
            for (int j = 0; j < at.length; j++) {
                out[j] -= step * residual * rows[i][j];
            }
        }
        for (int j = 0; j < out.length; j++) {
            out[j] *= scale;
        }
        polygons.project(out);
        for (int j = 0; j < out.length; j++) {
            out[j] /= scale;
        }
        return out;
    }

    /** A bound of the largest eigenvalue of AᵀA, never below it: the sum of the squares of all elements. */
    private double squaredNorm() {
        double sum = 0;
        for (double[] row : rows) {
            for (double element : row) {
                sum += element * element;
            }
        }
        return sum > 0 ? sum : 1;
    }
}
