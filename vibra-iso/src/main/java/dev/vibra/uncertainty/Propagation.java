package dev.vibra.uncertainty;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.util.Objects;
import java.util.function.ToDoubleFunction;

/**
 * The law of propagation of uncertainty for any result computed from inputs that may be correlated.
 *
 * <p>{@code u_c² = Σ Σ cᵢ·cⱼ·u(xᵢ)·u(xⱼ)·r(xᵢ,xⱼ)} with the sensitivities {@code cᵢ = ∂f/∂xᵢ}, taken as half the
 * difference of f at {@code xᵢ ± u(xᵢ)}, over {@code u(xᵢ)}. First order: a strongly bent f needs another way.
 * Immutable apart from the function given, which must not keep state.
 *
 * @see "JCGM 100:2008, 5.1.2, 5.1.3 note 2 (numerical sensitivities) and 5.2.2 (correlated inputs)"
 */
public final class Propagation {
    private final double[] estimates;
    private final double[] standard;
    private final double[][] correlation;

    private Propagation(double[] estimates, double[] standard, double[][] correlation) {
        this.estimates = estimates;
        this.standard = standard;
        this.correlation = correlation;
    }

    /**
     * Takes the inputs, as yet without correlation.
     *
     * @param estimates values of the inputs, finite, at least one
     * @param standardUncertainties standard uncertainty of each input, finite, zero or more
     * @return the propagation
     * @throws IllegalArgumentException if the arrays differ in length or a number is out of range
     */
    public static Propagation of(double[] estimates, double[] standardUncertainties) {
        Objects.requireNonNull(estimates, "estimates");
        Objects.requireNonNull(standardUncertainties, "standardUncertainties");
        double[] values = estimates.clone();
        double[] uncertainties = standardUncertainties.clone();
        Require.atLeast("number of estimates", values.length, 1);
        if (values.length != uncertainties.length) {
            throw new IllegalArgumentException("estimates and standardUncertainties must be of one length: "
                    + values.length + ", " + uncertainties.length);
        }
        Require.allFinite("estimates", values);
        for (double uncertainty : uncertainties) {
            Require.notNegative("standard uncertainty", uncertainty, "");
        }
        double[][] none = new double[values.length][values.length];
        for (int i = 0; i < none.length; i++) {
            none[i][i] = 1;
        }
        return new Propagation(values, uncertainties, none);
    }

    /**
     * States how two inputs are correlated.
     *
     * @param first place of one input, from 0
     * @param second place of the other input
     * @param coefficient correlation coefficient, from −1 to 1
     * @return the propagation with that correlation
     * @throws IllegalArgumentException if the places are equal or a number is out of range
     * @throws IndexOutOfBoundsException if there is no such input
     */
    public Propagation withCorrelation(int first, int second, double coefficient) {
        Objects.checkIndex(first, estimates.length);
        Objects.checkIndex(second, estimates.length);
        if (first == second) {
            throw new IllegalArgumentException("first and second must be different inputs: " + first);
        }
        double[][] matrix = new double[correlation.length][];
        for (int i = 0; i < matrix.length; i++) {
            matrix[i] = correlation[i].clone();
        }
        matrix[first][second] = Require.within("coefficient", coefficient, -1, 1, "");
        matrix[second][first] = coefficient;
        return new Propagation(estimates, standard, matrix);
    }

    /**
     * Computes the result for the estimates.
     *
     * @param function result of the inputs, given in the order of the estimates
     * @return the result
     */
    public double valueOf(ToDoubleFunction<double[]> function) {
        Objects.requireNonNull(function, "function");
        return Require.finite("result", function.applyAsDouble(estimates.clone()));
    }

    /**
     * Computes the combined standard uncertainty of a result.
     *
     * @param function result of the inputs, given in the order of the estimates
     * @return combined standard uncertainty, zero or more
     * @throws IllegalArgumentException if the result is not finite near the estimates or the correlations contradict
     *     each other
     */
    public double standardUncertaintyOf(ToDoubleFunction<double[]> function) {
        Objects.requireNonNull(function, "function");
        double[] shifts = shifts(function);
        double square = 0;
        double scale = 0;
        for (int i = 0; i < shifts.length; i++) {
            scale += shifts[i] * shifts[i];
            for (int j = 0; j < shifts.length; j++) {
                square += shifts[i] * shifts[j] * correlation[i][j];
            }
        }
        Require.finite("variance of the result", square);
        if (square < -1e-9 * scale) {
            throw new IllegalArgumentException("correlations must not contradict each other: variance " + square);
        }
        return Math.sqrt(Math.max(0, square));
    }

    /** cᵢ·u(xᵢ) of each input. */
    private double[] shifts(ToDoubleFunction<double[]> function) {
        double[] shifts = new double[estimates.length];
        for (int i = 0; i < shifts.length; i++) {
            double[] above = estimates.clone();
            double[] below = estimates.clone();
            above[i] += standard[i];
            below[i] -= standard[i];
            shifts[i] = 0.5 * Require.finite("result", function.applyAsDouble(above) - function.applyAsDouble(below));
        }
        return shifts;
    }

    /** Returns the count of inputs, as in {@code 3 inputs, the first 4.999 ± 0.0032}. */
    @Override
    public String toString() {
        return estimates.length + " inputs, the first " + Digits.significant(estimates[0], 4) + " ± "
                + Digits.significant(standard[0], 2);
    }
}
