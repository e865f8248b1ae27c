package dev.vibra.survey;

import dev.vibra.balance.Balancing;
import dev.vibra.balance.BalancingJob;
import dev.vibra.balance.Corrections;
import dev.vibra.balance.Reading;
import dev.vibra.balance.Verification;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.tolerance.Allocation;
import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.vector.Convention;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.survey.machine.BalancingSheet;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.Phasor;
import dev.vibra.survey.machine.TrialRun;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The balancing job of the description, worked out: influence coefficients, corrections and, where there was a final
 * run,
 * what it proves.
 *
 * @see "ISO 21940-11:2016"
 */
public final class BalancingSurvey implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double ROUNDING = 1e-9;

    private final BalancingSheet sheet;
    private final InfluenceCoefficients influence;
    private final Corrections corrections;
    private final Verification verification;
    private final BalanceTolerance tolerance;
    private final List<Omission> omissions;

    private BalancingSurvey(BalancingSheet sheet, BalancingJob job, Verification verification,
            List<Omission> omissions) {
        this.sheet = sheet;
        this.influence = job == null ? null : job.coefficients();
        this.corrections = job == null ? null : job.corrections();
        this.verification = verification;
        this.tolerance = job == null ? null : job.tolerance().orElse(null);
        this.omissions = List.copyOf(omissions);
    }

    /** Works out the job; null if the description has none. */
    static BalancingSurvey of(MachineDescription machine) {
        return machine.balancing().map(sheet -> of(sheet, machine)).orElse(null);
    }

    private static BalancingSurvey of(BalancingSheet sheet, MachineDescription machine) {
        List<Omission> omissions = new ArrayList<>();
        try {
            BalancingJob job = withRuns(withTolerance(setUp(sheet), sheet, machine, omissions), sheet);
            return new BalancingSurvey(sheet, job, verification(job, sheet, omissions), omissions);
        } catch (IllegalArgumentException | IllegalStateException e) {
            // Readings that fit the form may still not tell the planes apart.
            return new BalancingSurvey(sheet, null, null, List.of(new Omission("balancing", e.getMessage())));
        }
    }

    private static BalancingJob setUp(BalancingSheet sheet) {
        BalancingJob job = Balancing.inPlanes(sheet.planes().toArray(String[]::new))
                .measuredAt(sheet.sensors().toArray(String[]::new)).in(sheet.unit(), sheet.detector())
                .with(sheet.phaseIsLag() ? Convention.LAG_AGAINST_ROTATION : Convention.LEAD_WITH_ROTATION);
        for (String plane : sheet.planes()) {
            double radius = radius(sheet, plane);
            job = radius > 0 ? job.radius(plane, radius) : job;
            if (sheet.positions().containsKey(plane)) {
                job = job.positions(plane, sheet.positions().get(plane));
            }
        }
        return job;
    }

    /** Radius of corrections in a plane: as given, else that of its trial mass; NaN if neither is known. */
    private static double radius(BalancingSheet sheet, String plane) {
        return sheet.radiusMillimetres().containsKey(plane) ? sheet.radiusMillimetres().get(plane)
                : sheet.trials().stream().filter(trial -> trial.plane().equals(plane))
                        .mapToDouble(TrialRun::radiusMillimetres).findFirst().orElse(Double.NaN);
    }

    private static BalancingJob withTolerance(BalancingJob job, BalancingSheet sheet, MachineDescription machine,
            List<Omission> omissions) {
        Optional<Double> mass = machine.rotor().flatMap(rotor -> rotor.massKilograms());
        Optional<String> grade = machine.rotor().flatMap(rotor -> rotor.balanceGrade());
        Optional<RotationSpeed> speed = machine.speed().or(() -> sheet.speedRevolutionsPerMinute() > 0
                ? Optional.of(RotationSpeed.ofRevolutionsPerMinute(sheet.speedRevolutionsPerMinute())) : Optional
                        .empty());
        if (mass.isEmpty() || grade.isEmpty() || speed.isEmpty()) {
            omissions.add(new Omission("balance grade",
                    "it needs massKilograms and balanceGrade of the rotor and a speed"));
            return job;
        }
        return job.toTolerance(BalanceTolerance.of(BalanceGrade.parse(grade.get()), mass.get(), speed.get())
                .allocated(Allocation.equalShares(sheet.planes().size())));
    }

    private static BalancingJob withRuns(BalancingJob job, BalancingSheet sheet) {
        BalancingJob read = job.initial(readings(sheet.initial()));
        for (TrialRun trial : sheet.trials()) {
            var mass = Balancing.mass(trial.massGrams(), trial.angleDegrees());
            read = read.trial(trial.plane(), trial.radiusMillimetres() > 0 ? mass.atRadius(trial.radiusMillimetres())
                    : mass, readings(trial.readings()));
        }
        return read;
    }

    private static Verification verification(BalancingJob job, BalancingSheet sheet, List<Omission> omissions) {
        if (sheet.finalRun().isEmpty()) {
            omissions.add(new Omission("residual unbalance", "there is no final run"));
            return null;
        }
        Verification verification = job.finalRun(readings(sheet.finalRun())).verification();
        if (verification.residualUnbalance().isEmpty()) {
            omissions.add(new Omission("residual unbalance", "it needs radiusMillimetres of each plane"));
        }
        return verification;
    }

    private static Reading[] readings(List<Phasor> phasors) {
        return phasors.stream().map(reading -> Balancing.v(reading.amplitude(), reading.phaseDegrees()))
                .toArray(Reading[]::new);
    }

    /**
     * Returns the readings as given.
     *
     * @return the sheet
     */
    public BalancingSheet sheet() {
        return sheet;
    }

    /**
     * Returns how the rotor answers to unbalance.
     *
     * @return coefficients; empty if the job could not be worked out
     */
    public Optional<InfluenceCoefficients> influence() {
        return Optional.ofNullable(influence);
    }

    /**
     * Returns the masses to add.
     *
     * @return corrections; empty if the job could not be worked out
     */
    public Optional<Corrections> corrections() {
        return Optional.ofNullable(corrections);
    }

    /**
     * Returns the amplitude that the corrections should leave at a sensor; what is only rounding of the computation is
     * zero.
     *
     * @param sensor index of the sensor
     * @return amplitude in unit and detector of the sheet
     * @throws IllegalStateException if the job could not be worked out
     */
    public double predictedAmplitude(int sensor) {
        if (corrections == null) {
            throw new IllegalStateException("no prediction: " + omissions);
        }
        double predicted = corrections.predicted().get(sensor).amplitude();
        return predicted > ROUNDING * corrections.present().get(sensor).amplitude() ? predicted : 0;
    }

    /**
     * Returns what the final run proves.
     *
     * @return the verification; empty without a final run
     */
    public Optional<Verification> verification() {
        return Optional.ofNullable(verification);
    }

    /**
     * Returns the permissible residual unbalance.
     *
     * @return the tolerance; empty if rotor mass, grade or speed is missing
     */
    public Optional<BalanceTolerance> tolerance() {
        return Optional.ofNullable(tolerance);
    }

    /**
     * Returns what was not determined.
     *
     * @return parts and reasons
     */
    public List<Omission> omissions() {
        return omissions;
    }

    /** Returns the corrections in one line. */
    @Override
    public String toString() {
        return corrections == null ? "balancing not determined" : corrections.toString();
    }
}
