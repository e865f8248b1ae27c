package dev.vibra.rotation;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Weights of a choice among alternatives, one of which may be right, by maximum likelihood: the probability of an
 * alternative is as {@code exp(offset + weights·values)}, that of "none" as {@code exp(constant)}.
 *
 * @see "D. McFadden, Conditional logit analysis of qualitative choice behavior, in: P. Zarembka (ed.), Frontiers in
 *     Econometrics, 1974"
 */
final class ConditionalLogit {
    private static final double RIDGE = 1e-3;
    private static final int STEPS = 12;

    /** One choice: values and offset of each alternative, and which is right; -1 for none. */
    record Choice(double[][] values, double[] offsets, int right) {
        /** Probabilities of none and of the alternatives; none's constant is the first of the weights. */
        double[] probabilities(RealVector weights) {
            double[] p = new double[values.length + 1];
            p[0] = weights.getEntry(0);
            for (int i = 0; i < values.length; i++) {
                p[i + 1] = offsets[i];
                for (int k = 0; k < values[i].length; k++) {
                    p[i + 1] += weights.getEntry(k + 1) * values[i][k];
                }
            }
            double highest = Arrays.stream(p).max().orElseThrow();
            double sum = 0;
            for (int i = 0; i < p.length; i++) {
                p[i] = Math.exp(p[i] - highest);
                sum += p[i];
            }
            for (int i = 0; i < p.length; i++) {
                p[i] /= sum;
            }
            return p;
        }

        /** Values of an alternative as a row beside the constant of none, which is alternative 0. */
        RealVector row(int alternative, int count) {
            RealVector row = new ArrayRealVector(count);
            if (alternative == 0) {
                row.setEntry(0, 1);
            } else {
                row.setSubVector(1, new ArrayRealVector(values[alternative - 1]));
            }
            return row;
        }
    }

    private ConditionalLogit() {}

    /** Newton's method; the first of the result is the constant of none. */
    static double[] fit(List<Choice> choices, int values) {
        int count = values + 1;
        RealVector weights = new ArrayRealVector(count);
        for (int step = 0; step < STEPS; step++) {
            RealVector slope = weights.mapMultiply(-RIDGE);
            RealMatrix curvature = new Array2DRowRealMatrix(count, count);
            for (int k = 0; k < count; k++) {
                curvature.setEntry(k, k, RIDGE);
            }
            for (Choice choice : choices) {
                double[] p = choice.probabilities(weights);
                RealVector mean = new ArrayRealVector(count);
                for (int i = 0; i < p.length; i++) {
                    RealVector row = choice.row(i, count);
                    mean = mean.add(row.mapMultiply(p[i]));
                    curvature = curvature.add(row.outerProduct(row).scalarMultiply(p[i]));
                }
                curvature = curvature.subtract(mean.outerProduct(mean));
                slope = slope.add(choice.row(choice.right() + 1, count)).subtract(mean);
            }
            weights = weights.add(new LUDecomposition(curvature).getSolver().solve(slope));
        }
        return weights.toArray();
    }
}
