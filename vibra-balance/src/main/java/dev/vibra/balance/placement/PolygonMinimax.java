package dev.vibra.balance.placement;

import dev.vibra.balance.vector.Phasor;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NoFeasibleSolutionException;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.linear.UnboundedSolutionException;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;

/**
 * Least largest residual over masses within limits: {@code min t} with {@code Re(r·exp(−iφ)) ≤ t} for enough angles φ;
 * the angles of the residuals found are added until nothing changes.
 *
 * @see "J. E. Kelley, The Cutting-Plane Method for Solving Convex Programs, J. SIAM 8 (1960)"
 */
final class PolygonMinimax {
    private static final int FIRST_CUTS = 8;
    private static final int MOST_ROUNDS = 40;
    /** Finer ones make the simplex method stumble over its own rounding: none of 1500 random problems at these. */
    private static final double[] TOLERANCES = {1e-8, 1e-6};

    private final Phasor[][] effects;
    private final Phasor[] vibration;
    private final Polygons polygons;
    private final double size;
    private final double scale;

    PolygonMinimax(Phasor[][] effects, Phasor[] vibration, List<PlaneFitting> planes) {
        this.effects = effects;
        this.vibration = vibration;
        polygons = new Polygons(planes);
        double largest = 0;
        double strongest = 0;
        for (int i = 0; i < vibration.length; i++) {
            largest = Math.max(largest, vibration[i].magnitude());
            for (Phasor effect : effects[i]) {
                strongest = Math.max(strongest, effect.magnitude());
            }
        }
        size = largest > 0 ? largest : 1;
        scale = strongest > 0 ? size / strongest : 1;
    }

    double[] solve() {
        int n = polygons.columns();
        double[] objective = new double[n + 1];
        objective[n] = 1;
        List<LinearConstraint> cuts = new ArrayList<>(polygons.constraints(n + 1, scale));
        for (int i = 0; i < vibration.length; i++) {
            for (int k = 0; k < FIRST_CUTS; k++) {
                cuts.add(cut(i, 2 * Math.PI * k / FIRST_CUTS));
            }
        }
        double[] x = new double[n + 1];
        for (int round = 0; round < MOST_ROUNDS; round++) {
            x = minimum(new LinearObjectiveFunction(objective, 0), new LinearConstraintSet(cuts));
            boolean done = true;
            for (int i = 0; i < vibration.length; i++) {
                Phasor residual = residual(i, x);
                if (residual.magnitude() > x[n] + TOLERANCES[0]) {
                    cuts.add(cut(i, residual.argument()));
                    done = false;
                }
            }
            if (done) {
                break;
            }
        }
        double[] grams = new double[n];
        for (int j = 0; j < n; j++) {
            grams[j] = x[j] * scale;
        }
        polygons.project(grams);
        return polygons.lightest(grams);
    }

    private static double[] minimum(LinearObjectiveFunction objective, LinearConstraintSet constraints) {
        RuntimeException stumbled = null;
        for (double tolerance : TOLERANCES) {
            try {
                return new SimplexSolver(tolerance).optimize(objective, constraints, GoalType.MINIMIZE,
                        new NonNegativeConstraint(true)).getPoint();
            } catch (UnboundedSolutionException | NoFeasibleSolutionException e) {
                stumbled = e; // Nothing fitted is feasible and the residual is bounded below by 0: rounding, not truth.
            }
        }
        throw new IllegalStateException("the linear program of the largest residual could not be solved", stumbled);
    }

    private Phasor residual(int row, double[] x) {
        Phasor sum = vibration[row].times(1 / size);
        for (int j = 0; j < polygons.columns(); j++) {
            sum = sum.plus(effects[row][j].times(x[j] * scale / size));
        }
        return sum;
    }

    private LinearConstraint cut(int row, double angle) {
        int n = polygons.columns();
        Phasor turn = Phasor.polar(1, -angle);
        double[] left = new double[n + 1];
        for (int j = 0; j < n; j++) {
            left[j] = effects[row][j].times(turn).re() * scale / size;
        }
        left[n] = -1;
        return new LinearConstraint(left, Relationship.LEQ, -vibration[row].times(turn).re() / size);
    }
}
