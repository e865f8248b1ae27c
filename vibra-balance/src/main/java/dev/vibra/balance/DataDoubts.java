package dev.vibra.balance;

import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.InfluenceFit;
import dev.vibra.balance.influence.Layout;
import dev.vibra.balance.influence.Run;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.evidence.Remark;
import dev.vibra.quantity.RotationSpeed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Looks at the runs of a job for what speaks against working with them. */
final class DataDoubts {
    private final Setup setup;
    private final RunLog log;

    DataDoubts(Setup setup, RunLog log) {
        this.setup = setup;
        this.log = log;
    }

    /** Trials that the coefficients rest on; none where stored ones are used. */
    private List<RunLog.Entry> trials() {
        return setup.stored().isPresent() ? List.of() : log.trials();
    }

    /** Says why the runs tell nothing of the effect of a mass: one is missing, or changed nothing. */
    Optional<String> obstacle() {
        return setup.unweighted().or(() -> log.obstacle(trials()))
                .or(() -> trials().stream().flatMap(trial -> withoutEffect(trial).stream()).findFirst())
                .or(() -> setup.stored().isPresent() ? Optional.empty()
                        : InfluenceFit.obstacle(setup.layout(), log.runsForCoefficients()));
    }

    private Optional<String> withoutEffect(RunLog.Entry trial) {
        Phasor[] before = log.vibrationBefore(trial);
        Phasor[] after = log.vibrationOf(trial);
        return JobRemarks.withoutEffect(trial.run().name(), norm(Vectors.difference(after, before)),
                Math.max(norm(after), norm(before)));
    }

    List<Remark> ofRuns(InfluenceCoefficients alpha) {
        List<Remark> out = new ArrayList<>();
        for (RunLog.Entry trial : trials()) {
            JobRemarks.weakTrial(trial.run().name(), log.vibrationBefore(trial), log.vibrationOf(trial), setup)
                    .ifPresent(out::add);
            JobRemarks.lightTrial(trial.run().name(), grams(trial)).ifPresent(out::add);
        }
        if (!log.endsWithFinalRun()) { // then the trials are long over
            log.trials().forEach(trial -> strongTrial(trial).ifPresent(out::add));
        }
        if (setup.stored().isPresent()) {
            log.trials().forEach(trial -> contradicted(trial, alpha).ifPresent(out::add));
        } else {
            JobRemarks.contradictory(misfit()).ifPresent(out::add);
        }
        return out;
    }

    /** Corrections far beyond the trial that they are scaled up from. */
    List<Remark> ofCorrections(Phasor[] masses) {
        List<Remark> out = new ArrayList<>();
        for (int j = 0; j < masses.length; j++) {
            double tried = 0;
            for (RunLog.Entry trial : trials()) {
                tried = Math.max(tried, trial.fitted()[j].magnitude());
            }
            if (tried > 0) {
                JobRemarks.farBeyondTrial(setup.layout().planes().get(j), masses[j].magnitude() / tried)
                        .ifPresent(out::add);
            }
        }
        return out;
    }

    /** The largest mass of a trial. */
    private double grams(RunLog.Entry trial) {
        Phasor[] added = trial.fitted();
        return IntStream.range(0, added.length)
                .mapToDouble(j -> added[j].magnitude() / setup.layout().lever(j) * 1000).max().orElse(0);
    }

    /** A force is known only where the rotor's mass, a radius and a speed are. */
    private Optional<Remark> strongTrial(RunLog.Entry trial) {
        Layout layout = setup.layout();
        Phasor[] added = trial.fitted();
        double unbalance = 0;
        for (int j = 0; j < added.length; j++) {
            unbalance = Math.max(unbalance, layout.radiusKnown(j) ? added[j].magnitude() : 0);
        }
        double largest = unbalance;
        RotationSpeed fastest = layout.speeds().stream().max(Comparator.comparingDouble(RotationSpeed::hertz))
                .orElse(null);
        Optional<RotationSpeed> speed = Optional.ofNullable(fastest).or(() -> setup.tolerance()
                .map(BalanceTolerance::speed));
        return setup.rotorKilograms().flatMap(mass -> speed.flatMap(
                s -> JobRemarks.strongTrial(trial.run().name(), largest, mass, s)));
    }

    /** Whether a trial run agrees with stored coefficients. */
    private Optional<Remark> contradicted(RunLog.Entry trial, InfluenceCoefficients alpha) {
        Phasor[] expected = alpha.response(trial.fitted());
        Phasor[] seen = Vectors.difference(log.vibrationOf(trial), log.vibrationBefore(trial));
        double size = norm(expected);
        double miss = norm(Vectors.difference(seen, expected));
        return size == 0 || miss <= setup.allowance(log.vibrationOf(trial), log.vibrationBefore(trial))
                ? Optional.empty() : JobRemarks.storedContradicted(trial.run().name(), miss / size);
    }

    /** Largest distance of a run from what all runs together say of it, as a share of the strongest run. */
    private double misfit() {
        List<Run> runs = log.runsForCoefficients();
        InfluenceFit fit = InfluenceFit.of(setup.layout(), runs);
        Phasor[] initial = fit.initial().toArray(Phasor[]::new);
        double size = 0;
        double largest = 0;
        for (Run run : runs) {
            Phasor[] change = fit.coefficients().response(run.added().toArray(Phasor[]::new));
            Phasor[] seen = run.readings().toArray(Phasor[]::new);
            size = Math.max(size, norm(seen));
            largest = Math.max(largest, norm(Vectors.difference(Vectors.difference(seen, initial), change)));
        }
        return size > 0 ? largest / size : 0;
    }

    private double norm(Phasor[] vibration) {
        double[] weights = setup.rowWeights();
        double square = 0;
        for (int i = 0; i < vibration.length; i++) {
            square += Math.pow(weights[i] * vibration[i].magnitude(), 2);
        }
        return Math.sqrt(square);
    }
}
