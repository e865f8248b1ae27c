package dev.vibra.balance;

import dev.vibra.balance.influence.CorrectionSolver;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.tolerance.GradeReached;
import dev.vibra.balance.vector.Convention;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.evidence.Remark;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the final run proves: vibration before and after, whether the rotor answered as predicted, the residual
 * unbalance and the grade it reaches.
 */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
public final class Verification implements Serializable {
    private static final long serialVersionUID = 1;

    private final List<VibrationVector> before;
    private final List<VibrationVector> predicted;
    private final List<VibrationVector> after;
    private final Double remainingShare; // null without vibration before
    private final List<ResidualUnbalance> residualUnbalance;
    private final List<ResidualUnbalance> bearingUnbalance;
    private final GradeReached gradeReached; // null without tolerance or radius
    private final Convention convention;
    private final List<Remark> remarks;
    private final GradeProbability gradeProbability; // null without scatter, tolerance or radius

    /** What the last run tells: its vibration, the unbalance by it, the errors of that, and doubts. */
    record Proof(Phasor[] after, Optional<Phasor[]> residual, Optional<ErrorPropagation> errors,
            List<Remark> remarks) {}

    private Verification(List<VibrationVector> before, List<VibrationVector> predicted, List<VibrationVector> after,
            Double remainingShare, List<ResidualUnbalance> residualUnbalance, List<ResidualUnbalance> bearingUnbalance,
            GradeReached gradeReached, Convention convention, List<Remark> remarks,
            GradeProbability gradeProbability) {
        this.before = Require.copy("before", before);
        this.predicted = Require.copy("predicted", predicted);
        this.after = Require.copy("after", after);
        Vectors.requireAlike(this.before, this.predicted, this.after);
        this.remainingShare = remainingShare == null ? null
                : Double.valueOf(Require.notNegative("share that remains", remainingShare, ""));
        this.residualUnbalance = Require.copy("residualUnbalance", residualUnbalance);
        this.bearingUnbalance = Require.copy("bearingUnbalance", bearingUnbalance);
        this.gradeReached = gradeReached;
        this.convention = Objects.requireNonNull(convention, "convention");
        this.remarks = Require.copy("remarks", remarks);
        this.gradeProbability = gradeProbability;
    }

    private Object readResolve() {
        return new Verification(before, predicted, after, remainingShare, residualUnbalance, bearingUnbalance,
                gradeReached, convention, remarks, gradeProbability);
    }

    static Verification of(Setup setup, InfluenceCoefficients alpha, CorrectionSolver solver, Phasor[] before,
            Phasor[] added, Proof proof) {
        double found = solver.norm(before);
        Double share = found == 0 ? null : Double.valueOf(solver.norm(proof.after()) / found);
        FittingCheck check = new FittingCheck(alpha, solver, before, proof.after(),
                setup.allowance(before, proof.after()));
        List<Remark> remarks = new ArrayList<>(check.remarks(added));
        remarks.addAll(proof.remarks());
        List<ResidualUnbalance> residual = proof.residual().map(setup::residuals).orElse(List.of());
        GradeReached grade = residual.isEmpty() ? null : proof.residual().flatMap(setup::gradeOf).orElse(null);
        GradeProbability probability = grade == null ? null
                : proof.errors().map(e -> GradeProbability.of(setup, e, proof.residual().get())).orElse(null);
        return new Verification(setup.vectors(before), setup.vectors(check.predicted(added)),
                setup.vectors(proof.after()), share, residual,
                proof.residual().map(setup::bearingResiduals).orElse(List.of()), grade, setup.layout().convention(),
                remarks, probability);
    }

    /**
     * Returns the vibration before the corrections.
     *
     * @return one vector per reading of a run
     */
    public List<VibrationVector> before() {
        return before;
    }

    /**
     * Returns the vibration that was predicted for the masses that went on.
     *
     * @return one vector per reading of a run
     */
    public List<VibrationVector> predicted() {
        return predicted;
    }

    /**
     * Returns the vibration of the final run.
     *
     * @return one vector per reading of a run
     */
    public List<VibrationVector> after() {
        return after;
    }

    /**
     * Returns the weighted root of the sum of squares after the corrections over that before.
     *
     * @return share that remains: 0 is perfect, above 1 is worse than before; empty if there was no vibration before
     */
    public OptionalDouble remainingShare() {
        return remainingShare == null ? OptionalDouble.empty() : OptionalDouble.of(remainingShare);
    }

    /**
     * Returns the unbalance that remains by the vibration of the final run and the influence coefficients.
     *
     * @return one unbalance per plane, never damped; empty if the radius of a plane was left open, or the planes act so
     *     alike that there is no one answer
     */
    public List<ResidualUnbalance> residualUnbalance() {
        return residualUnbalance;
    }

    /**
     * Returns the same unbalance as seen in the two bearing planes, which tolerances are for.
     *
     * @return one unbalance per bearing; empty unless the job was told where they are and every radius is known
     */
    public List<ResidualUnbalance> bearingUnbalance() {
        return bearingUnbalance;
    }

    /**
     * Returns the grade reached.
     *
     * @return grade with its evidence; empty if no tolerance was set or the radius of a plane was left open
     */
    public Optional<GradeReached> gradeReached() {
        return Optional.ofNullable(gradeReached);
    }

    /**
     * Returns the probability that the residual unbalance is within the tolerance.
     *
     * @return the probability; empty if the job was told no scatter or tolerance, or a radius was left open
     */
    public Optional<GradeProbability> gradeProbability() {
        return Optional.ofNullable(gradeProbability);
    }

    /**
     * Returns how phases and angles are counted.
     *
     * @return the convention
     */
    public Convention convention() {
        return convention;
    }

    /**
     * Returns doubts, among them a correction that seems to have been fitted in the wrong sense.
     *
     * @return remarks; empty if there is nothing to doubt
     */
    public List<Remark> remarks() {
        return remarks;
    }

    /** Returns what remains, the grade and the doubts in one line. */
    @Override
    public String toString() {
        String text = remainingShare == null ? "no vibration before"
                : Digits.significant(100 * remainingShare, 3) + " % of the vibration remains";
        if (gradeReached != null) {
            text += "; " + gradeReached;
        }
        if (gradeProbability != null) {
            text += "; " + gradeProbability;
        }
        return remarks.isEmpty() ? text : text + "; " + String.join("; ", remarks.stream().map(Remark::code).toList());
    }
}
