package dev.vibra.balance.placement;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.Relationship;

/** Limits of the planes, seen as limits of the masses of all positions, plane after plane. */
final class Polygons {
    private final List<PlaneFitting> planes;
    private final int columns;

    Polygons(List<PlaneFitting> planes) {
        this.planes = planes;
        this.columns = planes.stream().mapToInt(p -> p.positions().free().size()).sum();
    }

    int columns() {
        return columns;
    }

    /** Moves masses to the nearest ones within the limits, in place. */
    void project(double[] grams) {
        int from = 0;
        for (PlaneFitting plane : planes) {
            int to = from + plane.positions().free().size();
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
            int to = from + plane.positions().free().size();
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

    /** Finds the lightest masses with the same unbalance in each plane. */
    double[] lightest(double[] grams) {
        double[] out = new double[columns];
        int from = 0;
        for (PlaneFitting plane : planes) {
            int to = from + plane.positions().free().size();
            double[] lightest = LightestArc.of(plane, Arrays.copyOfRange(grams, from, to));
            System.arraycopy(lightest, 0, out, from, to - from);
            from = to;
        }
        return out;
    }
}
