package dev.vibra.point;

import dev.vibra.alarm.AlarmSetting;
import dev.vibra.alarm.Baseline;
import dev.vibra.alarm.Change;
import dev.vibra.descriptor.Descriptors;
import dev.vibra.descriptor.Signals;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Judgement;
import dev.vibra.severity.Measurement;
import dev.vibra.severity.Severity;
import dev.vibra.severity.Verdict;
import dev.vibra.uncertainty.LevelUncertainty;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Measures what the criterion of a point limits, judges it, and holds it against the baseline. */
final class PointJudge {
    private static final String STATE = "baseline of the machine description";

    private final MachineDescription machine;
    private final MeasuringPoint point;
    private final Optional<PartCriterion> criterion;
    private final List<Omission> omissions;

    /** What can't be judged is added to the omissions. */
    PointJudge(MachineDescription machine, MeasuringPoint point, Optional<PartCriterion> criterion,
            List<Omission> omissions) {
        this.machine = machine;
        this.point = point;
        this.criterion = criterion;
        this.omissions = omissions;
    }

    /** No verdict, and so no change against the baseline. */
    PointSurvey.Judged without() {
        omitChanges(baseline().keySet(), "there is no verdict to compare with");
        return PointSurvey.Judged.NONE;
    }

    PointSurvey.Judged judge(Signals signals) {
        Optional<String> obstacle = criterion.isEmpty()
                ? Optional.of("the point lies on no part of the machine") : criterion.get().obstacle();
        if (obstacle.isPresent()) {
            omissions.add(Omission.of(Omission.Subject.SEVERITY, obstacle.get()));
            return without();
        }
        Severity severity = criterion.get().severity();
        List<Measurement> measurements = measure(severity, signals);
        if (measurements.isEmpty()) {
            omissions.add(Omission.of(Omission.Subject.SEVERITY,
                    "none of the levels that the criterion limits could be measured"));
            return without();
        }
        Verdict verdict = severity.judge(measurements.toArray(Measurement[]::new));
        return new PointSurvey.Judged(measurements, verdict, changes(verdict));
    }

    /** Measures each quantity, detector and band that a criterion limits, once. */
    private List<Measurement> measure(Severity severity, Signals signals) {
        Map<String, Measurement> measurements = new LinkedHashMap<>();
        Set<String> missing = new LinkedHashSet<>();
        for (Criterion limit : severity.criteria()) {
            String what = limit.quantity() + " " + limit.detector() + " (" + limit.band() + ")";
            if (measurements.containsKey(what) || missing.contains(what)) {
                continue;
            }
            Optional<String> obstacle = obstacle(limit, signals);
            if (obstacle.isPresent()) {
                missing.add(what);
                omissions.add(new Omission(Omission.Subject.LIMIT, what, obstacle.get()
                        + "; not judged: " + limit.standard() + " " + limit.clause()));
            } else {
                measurements.put(what, measurement(limit, signals));
            }
        }
        return List.copyOf(measurements.values());
    }

    private static Optional<String> obstacle(Criterion limit, Signals signals) {
        if (limit.detector() == Detector.RMS) {
            return signals.chainObstacle(limit.quantity(), limit.band());
        }
        // Limits of peak-to-peak displacement are those of the shaft in its bearing, which no housing shows.
        return signals.wave().quantity() == Quantity.DISPLACEMENT
                ? signals.integrationObstacle(limit.band())
                : Optional.of("limits of the shaft's motion in its bearing ask for displacement probes");
    }

    private Measurement measurement(Criterion limit, Signals signals) {
        if (limit.detector() != Detector.RMS) {
            return Measurement.of(signals.wave().displacement(limit.band()).peakToPeak());
        }
        return Measurement.of(signals.throughChain(limit.quantity(), limit.band()), uncertainty());
    }

    private LevelUncertainty uncertainty() {
        LevelUncertainty uncertainty = LevelUncertainty.withDefaults();
        if (point.expandedUncertainty().isPresent()) {
            uncertainty = uncertainty.withSensor(100 * point.expandedUncertainty().getAsDouble());
        }
        return point.mounting().isPresent() ? uncertainty.withMounting(point.mounting().get()) : uncertainty;
    }

    private Map<String, Double> baseline() {
        return machine.baseline(point.id());
    }

    private List<ChangeSurvey> changes(Verdict verdict) {
        Map<String, ChangeSurvey> changes = new LinkedHashMap<>();
        for (Judgement judgement : verdict.judgements()) {
            Criterion limit = judgement.criterion();
            String name = Descriptors.rms(limit.quantity(), limit.band()).name();
            boolean comparable = limit.detector() == Detector.RMS && limit.operatingLimits()
                    .filter(operating -> operating.significantChange().isPresent()).isPresent();
            if (comparable && baseline().containsKey(name) && !changes.containsKey(name)) {
                changes.put(name, change(name, judgement));
            }
        }
        Set<String> left = new LinkedHashSet<>(baseline().keySet());
        left.removeAll(changes.keySet());
        omitChanges(left, "no criterion in force says which change of it matters");
        return new ArrayList<>(changes.values());
    }

    /** @see "ISO 20816-1:2016, criterion II (change of magnitude)" */
    private ChangeSurvey change(String name, Judgement judgement) {
        Criterion limit = judgement.criterion();
        Level reference = Level.of(baseline().get(name), limit.quantity().customaryUnit(), limit.detector())
                .within(limit.band());
        Baseline known = Baseline.of(STATE, List.of(reference));
        Optional<String> obstacle = AlarmSetting.objectionTo(limit, known);
        obstacle.ifPresent(reason -> omissions.add(new Omission(Omission.Subject.CHANGE, "alarm by " + name, reason)));
        return ChangeSurvey.of(name, judgement.value(), reference.in(limit.unit()),
                Change.of(limit, reference, judgement.level()),
                obstacle.isPresent() ? null : AlarmSetting.of(limit, known));
    }

    private void omitChanges(Collection<String> names, String reason) {
        if (!names.isEmpty()) {
            omissions.add(new Omission(Omission.Subject.CHANGE, "change of " + String.join(", ",
                    new TreeSet<>(names)), reason));
        }
    }
}
