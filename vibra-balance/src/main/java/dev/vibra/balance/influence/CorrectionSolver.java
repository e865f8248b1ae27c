package dev.vibra.balance.influence;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.util.Objects;
import java.util.Optional;

/**
 * Finds the unbalances that cancel a vibration best: {@code min Σ w²·|V + α·U|²} over complex {@code U}.
 *
 * @see "T. P. Goodman, A Least-Squares Method for Computing Balance Corrections, J. Eng. Ind. 86 (1964) 273-277"
 */
public final class CorrectionSolver {
    private final InfluenceCoefficients coefficients;
    private final double[] weights;
    private final ComplexLeastSquares system;

    CorrectionSolver(InfluenceCoefficients coefficients, double[] weights) {
        this.coefficients = coefficients;
        this.weights = weights.clone();
        int rows = coefficients.layout().rows();
        int planes = coefficients.layout().planes().size();
        tooFewReadings(coefficients.layout(), this.weights).ifPresent(text -> {
            throw new IllegalArgumentException(text);
        });
        Phasor[][] weighted = new Phasor[rows][planes];
        for (int i = 0; i < rows; i++) {
            for (int j = 0; j < planes; j++) {
                weighted[i][j] = coefficients.at(i, j).times(this.weights[i]);
            }
        }
        system = new ComplexLeastSquares(weighted);
    }

    static Optional<String> tooFewReadings(Layout layout, double... weights) {
        if (weights.length != layout.rows()) {
            throw new IllegalArgumentException("weights must be one per reading, " + layout.rows() + ": "
                    + weights.length);
        }
        int counting = 0;
        for (int i = 0; i < weights.length; i++) {
            if (Require.notNegative("weight of " + layout.rowName(i), weights[i], "") > 0) {
                counting++;
            }
        }
        return counting >= layout.planes().size() ? Optional.empty()
                : Optional.of("readings that count must be at least as many as planes, " + layout.planes().size()
                        + ": " + counting + "; add a sensor or a speed, or balance fewer planes");
    }

    /**
     * Returns the condition number of the weighted coefficients: the largest factor by which relative errors of the
     * readings can grow in the unbalances.
     *
     * @return largest over smallest singular value, 1 or more; infinite if planes can't be told apart
     */
    public double conditionNumber() {
        return system.conditionNumber();
    }

    /**
     * Returns the condition number with the columns brought to equal length, which tells how alike planes act, whatever
     * their radius and sensitivity.
     *
     * @return 1 for planes that act independently, infinite for planes that act alike
     */
    public double planeConflict() {
        return system.columnConflict();
    }

    /**
     * Writes a condition number for a sentence.
     *
     * @param conditionNumber condition number, 1 or more, infinite too
     * @return three digits, as in {@code 12.4}; {@code above 1e16} where doubles can tell no more of it
     * @throws IllegalArgumentException if below zero or not a number
     */
    public static String inWords(double conditionNumber) {
        Require.within("conditionNumber", conditionNumber, 0, Double.POSITIVE_INFINITY, "");
        return conditionNumber <= 1e16 ? Digits.significant(conditionNumber, 3) : "above 1e16";
    }

    /**
     * Returns the unbalances to add so that the vibration is cancelled in the sense of weighted least squares.
     *
     * @param vibration one element per row, zero-to-peak SI
     * @return one element per plane, in kg·m, or kg where the radius was left open
     * @throws IllegalArgumentException if the count is wrong or an unbalance too large for a double
     * @throws IllegalStateException if the planes act so alike that there is no one answer
     */
    public Phasor[] cancelling(Phasor... vibration) {
        if (!(planeConflict() < 1e12)) {
            throw new IllegalStateException("planes must act differently at the sensors to be balanced together: the"
                    + " condition number is " + inWords(planeConflict()) + "; balance fewer planes or add sensors");
        }
        return solve(vibration, 0);
    }

    /**
     * Returns unbalances that cancel the vibration less far and stay small where planes act alike (Tikhonov).
     *
     * @param ridge damping as a share of the largest singular value, above 0 up to 1
     * @param vibration one element per row, zero-to-peak SI
     * @return one element per plane, in kg·m, or kg where the radius was left open
     * @throws IllegalArgumentException if the damping is out of range, the count wrong or an unbalance too large for a
     *     double
     * @throws IllegalStateException if no plane acts at any sensor that counts
     */
    public Phasor[] cancellingWithRidge(double ridge, Phasor... vibration) {
        if (!(ridge > 0 && ridge <= 1)) {
            throw Require.failure("ridge", "above 0 and at most 1", ridge);
        }
        obstacleWithRidge().ifPresent(text -> {
            throw new IllegalStateException(text);
        });
        return solve(vibration, ridge);
    }

    /** {@return why {@link #cancellingWithRidge} can't be asked, as a sentence; empty if it can} */
    public Optional<String> obstacleWithRidge() {
        return system.acts() ? Optional.empty()
                : Optional.of("planes must act at the sensors to be balanced: all coefficients are zero at every sensor"
                        + " that counts");
    }

    private void requireCount(Phasor[] vibration) {
        if (Objects.requireNonNull(vibration, "vibration").length != weights.length) {
            throw new IllegalArgumentException("vibration must be one per reading, " + weights.length + ": "
                    + vibration.length);
        }
        for (Phasor reading : vibration) {
            Objects.requireNonNull(reading, "vibration");
        }
    }

    private Phasor[] solve(Phasor[] vibration, double ridge) {
        requireCount(vibration);
        Phasor[] target = new Phasor[vibration.length];
        for (int i = 0; i < target.length; i++) {
            target[i] = vibration[i].times(-weights[i]);
        }
        return system.solve(target, ridge);
    }

    /**
     * Returns the weighted root of the sum of squares of a vibration, the quantity that is made small.
     *
     * @param vibration one element per row, zero-to-peak SI
     * @return {@code sqrt(Σ w²·|V|²)}
     * @throws IllegalArgumentException if the count is wrong or the norm too large for a double
     */
    public double norm(Phasor... vibration) {
        requireCount(vibration);
        double norm = 0;
        for (int i = 0; i < vibration.length; i++) {
            norm = Math.hypot(norm, weights[i] * vibration[i].magnitude());
        }
        return Require.finite("norm of the vibration", norm);
    }

    /** Returns what is solved, in one line. */
    @Override
    public String toString() {
        return "least squares for " + coefficients;
    }
}
