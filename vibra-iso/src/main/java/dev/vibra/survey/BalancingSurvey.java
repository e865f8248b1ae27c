package dev.vibra.survey;

import dev.vibra.balance.BalancingJob;
import dev.vibra.balance.Corrections;
import dev.vibra.balance.JobRecord;
import dev.vibra.balance.Verification;
import dev.vibra.balance.influence.CoefficientErrors;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.internal.Require;
import dev.vibra.machine.RotorData;
import dev.vibra.point.Omission;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A balancing job worked out: influence coefficients, corrections and, where it ends with a final run, what that proves
 * and what would come next.
 *
 * @see "ISO 21940-11:2016; ISO 21940-13:2012"
 */
@SuppressWarnings("serial") // the list is an unmodifiable copy, which is serializable
public final class BalancingSurvey implements Serializable {
    private static final long serialVersionUID = 2;

    private final BalancingJob job;
    private final InfluenceCoefficients influence; // null, as all below, if the job can't be worked out
    private final CoefficientErrors influenceErrors; // null without scatter too
    private final Corrections corrections;
    private final JobRecord record; // of the job with its final run, where it ends with one
    private final List<Omission> omissions; // never null

    private BalancingSurvey(BalancingJob job, InfluenceCoefficients influence, CoefficientErrors influenceErrors,
            Corrections corrections, JobRecord record, List<Omission> omissions) {
        this.job = Objects.requireNonNull(job, "job");
        this.influence = influence;
        this.influenceErrors = influenceErrors;
        this.corrections = corrections;
        this.record = record;
        this.omissions = Require.copy("omissions", omissions);
    }

    private Object readResolve() {
        return new BalancingSurvey(job, influence, influenceErrors, corrections, record, omissions);
    }

    /**
     * Works out a job as far as its runs tell.
     *
     * @param job job with its runs
     * @param rotor what is known of the rotor beside the job
     * @param service speed at which the machine runs, if known
     * @return the results; what can't be told is an omission
     */
    public static BalancingSurvey of(BalancingJob job, RotorData rotor, Optional<RotationSpeed> service) {
        Objects.requireNonNull(service, "service");
        BalancingJob before = Objects.requireNonNull(job, "job").beforeFinalRun();
        Optional<String> obstacle = before.obstacle();
        if (obstacle.isPresent()) {
            return new BalancingSurvey(job, null, null, null, null,
                    List.of(new Omission(Omission.Subject.BALANCING, "balancing", obstacle.get())));
        }
        JobRecord record = job.toRecord();
        Corrections corrections = job.endsWithFinalRun() ? before.corrections() : record.corrections().orElseThrow();
        return new BalancingSurvey(job, before.coefficients(), before.coefficientErrors().orElse(null), corrections,
                record, BalancingFit.of(job, corrections, rotor, service));
    }

    /** {@return the job as given} */
    public BalancingJob job() {
        return job;
    }

    /** {@return how the rotor answers to unbalance; empty if the job can't be worked out} */
    public Optional<InfluenceCoefficients> influence() {
        return Optional.ofNullable(influence);
    }

    /** {@return how far each coefficient may be off, for the next job that uses them; empty if no scatter was told} */
    public Optional<CoefficientErrors> influenceErrors() {
        return Optional.ofNullable(influenceErrors);
    }

    /** {@return the masses to add before the final run; empty if the job can't be worked out} */
    public Optional<Corrections> corrections() {
        return Optional.ofNullable(corrections);
    }

    /** {@return what the final run proves; empty without one} */
    public Optional<Verification> verification() {
        return toRecord().flatMap(JobRecord::verification);
    }

    /** {@return the masses that would come next, on top of those of the final run; empty without one} */
    public Optional<Corrections> trim() {
        return verification().flatMap(proof -> record.corrections());
    }

    /** {@return the permissible residual unbalance; empty if none was set or the job can't be worked out} */
    public Optional<BalanceTolerance> tolerance() {
        return corrections().flatMap(known -> job.tolerance());
    }

    /** {@return runs, coefficients, corrections, proof and reliance as plain data; empty if it can't be worked out} */
    public Optional<JobRecord> toRecord() {
        return Optional.ofNullable(record);
    }

    /** {@return what was not determined, and why} */
    public List<Omission> omissions() {
        return omissions;
    }

    /** Returns the corrections in one line. */
    @Override
    public String toString() {
        return corrections == null ? "balancing not determined" : corrections.toString();
    }
}
