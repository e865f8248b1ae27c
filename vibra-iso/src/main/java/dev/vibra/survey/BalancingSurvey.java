package dev.vibra.survey;

import dev.vibra.balance.BalancingJob;
import dev.vibra.balance.Corrections;
import dev.vibra.balance.JobRecord;
import dev.vibra.balance.Verification;
import dev.vibra.balance.influence.CoefficientErrors;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.survey.machine.BalancingSheet;
import dev.vibra.survey.machine.MachineDescription;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The balancing job of the description, worked out: influence coefficients, corrections and, where there was a final
 * run, what it proves and what would come next.
 *
 * @see "ISO 21940-11:2016; ISO 21940-13:2012"
 */
public final class BalancingSurvey implements Serializable {
    private static final long serialVersionUID = 1;

    private final BalancingSheet sheet;
    private final BalanceTolerance tolerance;
    private final InfluenceCoefficients influence;
    private final CoefficientErrors influenceErrors; // null if not known
    private final Corrections corrections;
    private final Verification verification;
    private final Corrections trim;
    private final JobRecord record;
    private final List<Omission> omissions;

    /** The job after the final run is the job before it where there was none, or it didn't fit. */
    private BalancingSurvey(BalancingSheet sheet, BalancingJob before, Corrections corrections, BalancingJob after,
            List<Omission> omissions) {
        this.sheet = sheet;
        this.tolerance = before == null ? null : before.tolerance().orElse(null);
        this.influence = before == null ? null : before.coefficients();
        this.influenceErrors = before == null ? null : before.coefficientErrors().orElse(null);
        this.corrections = corrections;
        this.verification = after == before ? null : after.verification();
        this.trim = after == before ? null : after.corrections();
        this.record = after == null ? null : after.toRecord();
        this.omissions = List.copyOf(omissions);
    }

    /** Works out the job; null if the description has none. */
    static BalancingSurvey of(MachineDescription machine) {
        return machine.balancing().map(sheet -> of(sheet, machine)).orElse(null);
    }

    private static BalancingSurvey of(BalancingSheet sheet, MachineDescription machine) {
        BalancingSheetJob steps = new BalancingSheetJob(sheet, machine);
        BalancingJob before;
        Corrections corrections;
        List<Omission> omissions = new ArrayList<>();
        try {
            before = steps.beforeCorrection();
            corrections = before.corrections();
            omissions.addAll(omissions(sheet, machine, before, corrections));
        } catch (IllegalArgumentException | IllegalStateException e) {
            // Readings that fit the form may still not tell the planes apart.
            return new BalancingSurvey(sheet, null, null, null, List.of(new Omission("balancing", e.getMessage())));
        }
        try {
            BalancingJob after = sheet.runs().finalRun().isEmpty() ? before : steps.afterCorrection(before);
            return new BalancingSurvey(sheet, before, corrections, after, omissions);
        } catch (IllegalArgumentException | IllegalStateException e) {
            omissions.add(new Omission("final run", e.getMessage()));
            return new BalancingSurvey(sheet, before, corrections, before, omissions);
        }
    }

    private static List<Omission> omissions(BalancingSheet sheet, MachineDescription machine, BalancingJob job,
            Corrections corrections) {
        List<Omission> omissions = new ArrayList<>(BalancingFit.of(sheet, machine));
        if (job.tolerance().isEmpty()) {
            omissions.add(new Omission("balance grade",
                    "it needs massKilograms and balanceGrade of the rotor and a speed"));
        }
        if (sheet.runs().finalRun().isEmpty()) {
            omissions.add(new Omission("residual unbalance", "there is no final run"));
        } else if (corrections.presentUnbalance().isEmpty()) {
            omissions.add(new Omission("residual unbalance",
                    "it needs radiusMillimetres of each plane, and planes that can be told apart"));
        }
        return omissions;
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
     * Returns how far the coefficients may be off, for the next job that uses them.
     *
     * @return one standard deviation of each; empty if the job was told no scatter
     */
    public Optional<CoefficientErrors> influenceErrors() {
        return Optional.ofNullable(influenceErrors);
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
     * Returns what the final run proves.
     *
     * @return the verification; empty without a final run
     */
    public Optional<Verification> verification() {
        return Optional.ofNullable(verification);
    }

    /**
     * Returns the masses that would come next, on top of those of the final run.
     *
     * @return corrections for the rotor as it is after the final run; empty without one
     */
    public Optional<Corrections> trim() {
        return Optional.ofNullable(trim);
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
     * Returns the job as plain data: runs, coefficients, corrections, proof, and who may rely on what.
     *
     * @return the record; empty if the job could not be worked out
     */
    public Optional<JobRecord> toRecord() {
        return Optional.ofNullable(record);
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
