package dev.vibra.balance.placement;

import dev.vibra.balance.vector.Phasor;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;

/** Limits of the planes, seen as limits of the masses of all positions, plane after plane. */
final class Polygons {
    private final List<PlaneFitting> planes;
    private final int columns;

    Polygons(List<PlaneFitting> planes) {
        this.planes = planes;
        this.columns = planes.stream().mapToInt(p -> p.positions().count()).sum();
    }

    int columns() {
        return columns;
    }

    /** Moves masses to the nearest ones within the limits, in place. */
    void project(double[] grams) {
        int from = 0;
        for (PlaneFitting plane : planes) {
            int to = from + plane.positions().count();
            projectPlane(grams, from, to, plane.eachGrams(), plane.allGrams());
            from = to;
        }
    }

    private static void projectPlane(double[] grams, int from, int to, double each, double all) {
        double[] given = Arrays.copyOfRange(grams, from, to);
        if (clipped(grams, given, from, 0, each) <= all) {
            return;
        }
        // The nearest point with a bounded sum is the clipped one after taking the same off every mass.
        double low = 0;
        double high = Arrays.stream(given).max().orElse(0);
        for (int i = 0; i < 200 && high - low > 1e-16 * high; i++) {
            double middle = (low + high) / 2;
            if (clipped(grams, given, from, middle, each) > all) {
                low = middle;
            } else {
                high = middle;
            }
        }
        clipped(grams, given, from, high, each);
    }

    private static double clipped(double[] out, double[] given, int from, double less, double each) {
        double sum = 0;
        for (int i = 0; i < given.length; i++) {
            out[from + i] = Math.min(each, Math.max(0, given[i] - less));
            sum += out[from + i];
        }
        return sum;
    }

    /** Limits as constraints of a linear program with more variables behind the masses. */
    List<LinearConstraint> constraints(int variables, double scale) {
        List<LinearConstraint> out = new ArrayList<>();
        int from = 0;
        for (PlaneFitting plane : planes) {
            int to = from + plane.positions().count();
            for (int i = from; i < to && plane.eachGrams() < Double.POSITIVE_INFINITY; i++) {
                double[] one = new double[variables];
                one[i] = 1;
                out.add(new LinearConstraint(one, Relationship.LEQ, plane.eachGrams() / scale));
            }
            if (plane.allGrams() < Double.POSITIVE_INFINITY) {
                double[] sum = new double[variables];
                Arrays.fill(sum, from, to, 1);
                out.add(new LinearConstraint(sum, Relationship.LEQ, plane.allGrams() / scale));
            }
            from = to;
        }
        return out;
    }

    /**
     * Finds the lightest masses with the same unbalance in each plane: at most two of them are neither none nor at a
     * limit.
     */
    double[] lightest(double[] grams) {
        double[] out = new double[columns];
        int from = 0;
        for (PlaneFitting plane : planes) {
            int to = from + plane.positions().count();
            System.arraycopy(lightestOf(plane, Arrays.copyOfRange(grams, from, to)), 0, out, from, to - from);
            from = to;
        }
        return out;
    }

    private static double[] lightestOf(PlaneFitting plane, double[] grams) {
        int n = grams.length;
        Phasor sum = Phasor.ZERO;
        double scale = Arrays.stream(grams).max().orElse(0);
        if (scale == 0) {
            return grams;
        }
        double[] re = new double[n];
        double[] im = new double[n];
        for (int i = 0; i < n; i++) {
            Phasor direction = plane.positions().direction(i + 1);
            re[i] = direction.re();
            im[i] = direction.im();
            sum = sum.plus(direction.times(grams[i] / scale));
        }
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        List<LinearConstraint> constraints = new ArrayList<>(new Polygons(List.of(plane)).constraints(n, scale));
        constraints.add(new LinearConstraint(re, Relationship.EQ, sum.re()));
        constraints.add(new LinearConstraint(im, Relationship.EQ, sum.im()));
        double[] found = new SimplexSolver(1e-12).optimize(new LinearObjectiveFunction(ones, 0),
                new LinearConstraintSet(constraints), GoalType.MINIMIZE, new NonNegativeConstraint(true)).getPoint();
        for (int i = 0; i < n; i++) {
            // Rounding of the simplex method is no mass.
            found[i] = found[i] < 1e-9 ? 0 : found[i] * scale;
        }
        return found;
    }
}
