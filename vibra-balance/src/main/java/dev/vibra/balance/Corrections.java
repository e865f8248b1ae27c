package dev.vibra.balance;

import dev.vibra.balance.influence.CorrectionSolver;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.tolerance.GradeReached;
import dev.vibra.balance.vector.Convention;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.StaticCouple;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.evidence.Remark;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Masses to add, one per plane, with what they should leave and how far to trust them.
 */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
public final class Corrections implements Serializable {
    private static final long serialVersionUID = 1;
    /** A prediction below this part of the vibration is the rounding of doubles, not a residual. */
    private static final double ROUNDING = 1e-9;

    private final List<Correction> list;
    private final List<String> places;
    private final List<VibrationVector> present;
    private final List<VibrationVector> predicted;
    private final List<ResidualUnbalance> unbalance;
    private final GradeReached presentGrade; // null without tolerance or unbalance
    private final double conditionNumber;
    private final Convention convention;
    private final List<Remark> remarks;
    private final String onRotor;
    private final CorrectionUncertainty uncertainty; // null without a scatter

    /** What masses come to. */
    record Effect(Phasor[] present, Phasor[] predicted, Optional<Phasor[]> unbalance, double conditionNumber,
            Optional<CorrectionUncertainty> uncertainty) {}

    private Corrections(List<Correction> list, List<String> places, List<VibrationVector> present,
            List<VibrationVector> predicted, List<ResidualUnbalance> unbalance, GradeReached presentGrade,
            double conditionNumber, Convention convention, List<Remark> remarks, String onRotor,
            CorrectionUncertainty uncertainty) {
        this.list = Require.copy("list", list);
        this.places = Require.copy("places", places);
        this.present = Require.copy("present", present);
        this.predicted = Require.copy("predicted", predicted);
        this.unbalance = Require.copy("unbalance", unbalance);
        this.presentGrade = presentGrade;
        this.conditionNumber = Require.within("condition number", conditionNumber, 0, Double.POSITIVE_INFINITY, "");
        this.convention = Objects.requireNonNull(convention, "convention");
        this.remarks = Require.copy("remarks", remarks);
        this.onRotor = Objects.requireNonNull(onRotor, "place of the masses");
        this.uncertainty = uncertainty;
        Vectors.requireAlike(this.places, this.present, this.predicted);
    }

    private Object readResolve() {
        return new Corrections(list, places, present, predicted, unbalance, presentGrade, conditionNumber, convention,
                remarks, onRotor, uncertainty);
    }

    static Corrections of(Setup setup, List<Correction> list, Effect effect, List<Remark> remarks, String onRotor) {
        List<ResidualUnbalance> unbalance = effect.unbalance().map(setup::residuals).orElse(List.of());
        return new Corrections(list,
                IntStream.range(0, effect.present().length).mapToObj(setup.layout()::rowName).toList(),
                setup.vectors(effect.present()), setup.vectors(effect.predicted()), unbalance,
                unbalance.isEmpty() ? null : effect.unbalance().flatMap(setup::gradeOf).orElse(null),
                effect.conditionNumber(), setup.layout().convention(), remarks, onRotor,
                effect.uncertainty().orElse(null));
    }

    /** Vibration with these masses added; what is only the rounding of doubles is zero. */
    static Phasor[] vibrationWith(InfluenceCoefficients alpha, Phasor[] present, Phasor[] masses) {
        double rounding = ROUNDING * Arrays.stream(present).mapToDouble(Phasor::magnitude).max().orElse(0);
        return Arrays.stream(Vectors.sum(present, alpha.response(masses)))
                .map(left -> left.magnitude() > rounding ? left : Phasor.ZERO).toArray(Phasor[]::new);
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
     * Names the readings of a run.
     *
     * @return name of the sensor for each reading, with the speed where there are several
     */
    public List<String> places() {
        return places;
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
     * Returns the unbalance that the rotor has now by its vibration: the opposite of the masses that would cancel it by
     * least squares.
     *
     * @return one unbalance per plane; empty if the radius of a plane was left open, or the planes act so alike that
     *     there is no one answer
     */
    public List<ResidualUnbalance> presentUnbalance() {
        return unbalance;
    }

    /**
     * Returns the grade of the rotor as it is now, before these corrections, for a judgement whether they are needed.
     *
     * @return grade by that unbalance; empty without a tolerance or where that unbalance is empty
     */
    public Optional<GradeReached> presentGrade() {
        return Optional.ofNullable(presentGrade);
    }

    /**
     * Returns the unbalance that the rotor has now as static and couple part, where there are two planes.
     *
     * @return the parts in kg·m; empty unless there are two planes of known radius
     */
    public Optional<StaticCouple> staticCouple() {
        return unbalance.size() != 2 ? Optional.empty() : Optional.of(StaticCouple.of(
                unbalance.get(0).kilogramMetres(), unbalance.get(1).kilogramMetres()));
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
     * Returns how far the corrections may be off.
     *
     * @return ellipses and the probability that the grade will be reached; empty if the job was told no scatter, or the
     *     planes act so alike that there is no one answer
     */
    public Optional<CorrectionUncertainty> uncertainty() {
        return Optional.ofNullable(uncertainty);
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
            out.append("  ").append(places.get(i)).append(" from ").append(present.get(i)).append(" to ")
                    .append(predicted.get(i))
                    .append(", predicted\n");
        }
        unbalance.forEach(u -> out.append("  unbalance now: ").append(u).append(
                u.permissibleGramMillimetres().isPresent() ? " permissible" : "").append('\n'));
        presentGrade().ifPresent(grade -> out.append("Before: ").append(grade).append(".\n"));
        out.append("Condition number ").append(CorrectionSolver.inWords(conditionNumber)).append(".\n");
        uncertainty().ifPresent(u -> out.append("Uncertainty: ").append(u).append(".\n"));
        remarks.forEach(r -> out.append("Doubt: ").append(r).append('\n'));
        cautions().forEach(c -> out.append("Caution: ").append(c.text()).append('\n'));
        return out.toString();
    }

    /** Returns the masses, the convention and the names of the doubts in one line. */
    @Override
    public String toString() {
        String text = "add " + String.join("; ", list.stream().map(Correction::toString).toList()) + " (" + convention
                + ")";
        return remarks.isEmpty() ? text : text + "; doubts: "
                + String.join(", ", remarks.stream().map(Remark::code).distinct().toList());
    }
}
