package dev.vibra.balance;

import dev.vibra.balance.influence.CorrectionSolver;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.remark.Caution;
import dev.vibra.balance.remark.Remark;
import dev.vibra.balance.vector.Convention;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.internal.Digits;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/**
 * Masses to add, one per plane, with what they should leave and how far to trust them.
 */
public final class Corrections implements Serializable {
    private static final long serialVersionUID = 1;

    private final List<Correction> list;
    private final List<VibrationVector> present;
    private final List<VibrationVector> predicted;
    private final List<ResidualUnbalance> unbalance;
    private final double conditionNumber;
    private final Convention convention;
    private final List<Remark> remarks;
    private final String onRotor;

    private Corrections(Setup setup, Phasor[] masses, Phasor[] present, Phasor[] predicted, double conditionNumber,
            List<Remark> remarks, String onRotor) {
        List<Correction> corrections = new ArrayList<>();
        Phasor[] found = new Phasor[masses.length];
        for (int j = 0; j < masses.length; j++) {
            PlacedMass mass = setup.mass(j, masses[j]);
            corrections.add(new Correction(setup.layout().planes().get(j), mass, setup.split(j, mass)));
            found[j] = masses[j].negated();
        }
        this.list = List.copyOf(corrections);
        this.present = setup.vectors(present);
        this.predicted = setup.vectors(predicted);
        this.unbalance = setup.residuals(found);
        this.conditionNumber = conditionNumber;
        this.convention = setup.layout().convention();
        this.remarks = List.copyOf(remarks);
        this.onRotor = onRotor;
    }

    static Corrections of(Setup setup, InfluenceCoefficients alpha, CorrectionSolver solver, Phasor[] present,
            List<Remark> remarks, String onRotor) {
        Phasor[] masses = solver.cancelling(present);
        Phasor[] change = alpha.response(masses);
        Phasor[] predicted = new Phasor[present.length];
        for (int i = 0; i < present.length; i++) {
            predicted[i] = present[i].plus(change[i]);
        }
        return new Corrections(setup, masses, present, predicted, solver.conditionNumber(), remarks, onRotor);
    }

    /**
     * Returns the corrections.
     *
     * @return one correction per plane, in the order of the planes
     */
    public List<Correction> list() {
        return list;
    }

    /**
     * Returns the correction of a plane.
     *
     * @param plane name of the plane
     * @return its correction
     * @throws IllegalArgumentException if there is no such plane
     */
    public Correction in(String plane) {
        return list.stream().filter(c -> c.plane().equals(plane)).findFirst().orElseThrow(
                () -> new IllegalArgumentException("plane must be one of "
                        + String.join(", ", list.stream().map(Correction::plane).toList()) + ": " + plane));
    }

    /**
     * Returns the vibration that is to be cancelled.
     *
     * @return one vector per reading of a run
     */
    public List<VibrationVector> present() {
        return present;
    }

    /**
     * Returns the vibration that the corrections should leave.
     *
     * @return one vector per reading of a run
     */
    public List<VibrationVector> predicted() {
        return predicted;
    }

    /**
     * Returns the unbalance that the rotor has now by its vibration: the opposite of each correction.
     *
     * @return one unbalance per plane; empty if the radius of a plane was left open
     */
    public List<ResidualUnbalance> presentUnbalance() {
        return unbalance;
    }

    /**
     * Returns the condition number of the weighted coefficients.
     *
     * @return largest over smallest singular value
     */
    public double conditionNumber() {
        return conditionNumber;
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
     * Returns doubts, each with its figure.
     *
     * @return remarks; empty if there is nothing to doubt
     */
    public List<Remark> remarks() {
        return remarks;
    }

    /**
     * Returns the cautions that go with masses on a rotor.
     *
     * @return all cautions
     */
    public List<Caution> cautions() {
        return List.of(Caution.values());
    }

    /**
     * Says what the masses are added to: trial masses off, or still on.
     *
     * @return words that complete "add ..."
     */
    public String addedTo() {
        return onRotor;
    }

    /**
     * Writes all of it on a page: masses, convention, prediction, doubts, cautions.
     *
     * @return several lines, each ended by a line feed
     */
    public String page() {
        StringBuilder out = new StringBuilder("Add " + onRotor + ":\n");
        list.forEach(c -> out.append("  ").append(c).append('\n'));
        out.append("Convention: ").append(convention).append(".\n");
        for (int i = 0; i < present.size(); i++) {
            out.append("  from ").append(present.get(i)).append(" to ").append(predicted.get(i))
                    .append(", predicted\n");
        }
        out.append("Condition number ").append(Digits.significant(conditionNumber, 3)).append(".\n");
        remarks.forEach(r -> out.append("Doubt: ").append(r).append('\n'));
        cautions().forEach(c -> out.append("Caution: ").append(c.text()).append('\n'));
        return out.toString();
    }

    /** Returns the masses and the convention in one line. */
    @Override
    public String toString() {
        return "add " + String.join("; ", list.stream().map(Correction::toString).toList()) + " (" + convention + ")";
    }
}
