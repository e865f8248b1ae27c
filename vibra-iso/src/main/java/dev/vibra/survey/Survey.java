package dev.vibra.survey;

import dev.vibra.symptom.Evidence;
import dev.vibra.diagnosis.Diagnosis;
import dev.vibra.diagnosis.Finding;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachineDescription.Fact;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.point.Omission;
import dev.vibra.point.PartCriterion;
import dev.vibra.point.PointExamination;
import dev.vibra.point.PointSurvey;
import dev.vibra.severity.Zone;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Survey of one machine, point by point: {@code Survey.of(machine, recordings)} for all at once, or {@code begin}, then
 * {@link #point} for each recording as it comes in, then {@link #conclude}. Touches no file and keeps nothing of a
 * recording but what it returns. Immutable.
 *
 * @see "ISO 13374-1:2003, data processing blocks (summary by public secondary sources)"
 */
public final class Survey {
    private static final int LINES_NAMED = 5;

    private final MachineDescription machine;
    private final PointExamination examination;

    private Survey(MachineDescription machine, PointExamination examination) {
        this.machine = machine;
        this.examination = examination;
    }

    /**
     * Surveys a machine whose recordings are all there.
     *
     * @param machine what is known of the machine
     * @param recordings recording by point id; a point without one is reported as not determined
     * @return the result, with the signals behind the numbers
     */
    public static MachineSurvey of(MachineDescription machine, Map<String, Waveform> recordings) {
        return of(machine, recordings, Map.of());
    }

    /**
     * Surveys a machine whose recordings and tachometer recordings are all there.
     *
     * @param machine what is known of the machine
     * @param recordings recording by point id; a point without one is reported as not determined
     * @param tachometers recording of the tachometer by point id, on the time scale of the point's recording
     * @return the result, with the signals behind the numbers
     */
    public static MachineSurvey of(MachineDescription machine, Map<String, Waveform> recordings,
            Map<String, Waveform> tachometers) {
        return of(machine, recordings, tachometers, Map.of());
    }

    /**
     * Surveys a machine whose recordings are all there, with references: recordings of the same points from a time when
     * the machine was known to be sound, in the same state.
     *
     * @param machine what is known of the machine
     * @param recordings recording by point id; a point without one is reported as not determined
     * @param tachometers recording of the tachometer by point id, on the time scale of the point's recording
     * @param references reference recording by point id
     * @return the result, with the signals behind the numbers
     */
    public static MachineSurvey of(MachineDescription machine, Map<String, Waveform> recordings,
            Map<String, Waveform> tachometers, Map<String, Waveform> references) {
        Objects.requireNonNull(recordings, "recordings");
        Objects.requireNonNull(tachometers, "tachometers");
        Objects.requireNonNull(references, "references");
        Survey survey = begin(machine);
        List<PointSurvey> points = new ArrayList<>();
        for (MeasuringPoint point : machine.points()) {
            Waveform recording = recordings.get(point.id());
            points.add(recording == null ? PointSurvey.withoutRecording(point, "there is no recording of this point")
                    : survey.point(point, recording, Optional.ofNullable(tachometers.get(point.id()))));
        }
        return survey.conclude(points, machine.points().stream().filter(point -> references.containsKey(point.id()))
                .map(point -> survey.reference(point, references.get(point.id()))).toList());
    }

    /**
     * Begins a survey: chooses the severity criteria.
     *
     * @param machine what is known of the machine
     * @return the survey
     */
    public static Survey begin(MachineDescription machine) {
        return new Survey(Objects.requireNonNull(machine, "machine"), PointExamination.of(machine));
    }

    /**
     * Returns this survey for a caller who wants numbers of unsound recordings too; each result says so. A recording
     * without any signal still gives none.
     *
     * @return a survey that insists
     * @see PointSurvey#insisted()
     */
    public Survey insisting() {
        return new Survey(machine, examination.insisting());
    }

    /** {@return the criterion of each part and why it was chosen} */
    public List<PartCriterion> criteria() {
        return examination.criteria();
    }

    /**
     * Works out one point.
     *
     * @param point the point
     * @param recording its recording, a motion
     * @return results with the signals behind them
     * @throws IllegalArgumentException if the recording isn't a motion
     */
    public PointSurvey point(MeasuringPoint point, Waveform recording) {
        return examination.examine(point, recording, Optional.empty());
    }

    /**
     * Works out one point with the tachometer recorded along with it.
     *
     * @param point the point
     * @param recording its recording, a motion
     * @param tachometer signal of its tachometer on the same time scale, in any unit, if there is one
     * @return results with the signals behind them
     * @throws IllegalArgumentException if the recording isn't a motion
     */
    public PointSurvey point(MeasuringPoint point, Waveform recording, Optional<Waveform> tachometer) {
        return examination.examine(point, recording, tachometer);
    }

    /**
     * Works out the reference of a point: numbers, lines and pattern, no verdict.
     *
     * @param point the point
     * @param recording recording of it from a time when the machine was known to be sound, in the same state
     * @return results without verdict, with the signals behind them
     * @throws IllegalArgumentException if the recording isn't a motion
     */
    public PointSurvey reference(MeasuringPoint point, Waveform recording) {
        return examination.reference(point, recording, Optional.empty());
    }

    /**
     * Concludes from all points: findings, condition, advice, the balancing job.
     *
     * @param points results of the points
     * @return the result of the survey
     */
    public MachineSurvey conclude(List<PointSurvey> points) {
        return conclude(points, List.of());
    }

    /**
     * Concludes from all points and their references.
     *
     * @param points results of the points
     * @param references results of {@link #reference} of some or all of the points
     * @return the result of the survey
     */
    public MachineSurvey conclude(List<PointSurvey> points, List<PointSurvey> references) {
        Evidence evidence = new Evidence(machine, points, references);
        Diagnosis diagnosis = Diagnosis.of(evidence);
        List<Finding> findings = diagnosis.findings();
        Optional<BalancingSurvey> balancing = machine.balancing()
                .map(job -> BalancingSurvey.of(job, machine.rotor(), machine.speed()));
        Condition condition = ConditionWeighing.of(evidence, criteria(), findings);
        return new MachineSurvey(machine, criteria(), points, references, new MachineSurvey.Conclusions(findings,
                diagnosis.lookedFor(), diagnosis.notLookedFor(), unexplained(points, findings), condition,
                Advice.of(condition, points, findings, balancing)), balancing.orElse(null),
                omissions(evidence, diagnosis, balancing));
    }

    private static List<UnexplainedLevel> unexplained(List<PointSurvey> points, List<Finding> findings) {
        return points.stream().filter(point -> point.zone().filter(zone -> zone.isWorseThan(Zone.B)).isPresent())
                .filter(point -> findings.stream().noneMatch(finding -> finding.explainsLevel()
                        && finding.points().contains(point.point().id())))
                .map(point -> new UnexplainedLevel(point.point().id(),
                        point.severity().orElseThrow().deciding().level(),
                        point.dominantLines().stream().limit(LINES_NAMED).toList())).toList();
    }

    private List<Omission> omissions(Evidence evidence, Diagnosis diagnosis, Optional<BalancingSurvey> balancing) {
        List<Omission> omissions = new ArrayList<>();
        for (PartCriterion criterion : criteria()) {
            String part = criterion.part().map(id -> "severity of " + id).orElse("severity");
            criterion.obstacle().ifPresent(reason ->
                    omissions.add(new Omission(Omission.Subject.SEVERITY, part, reason)));
            criterion.choice().outOfScope().ifPresent(scope -> omissions.add(new Omission(Omission.Subject.SEVERITY,
                    "scope of the criterion asked for", scope.reason())));
        }
        evidence.changes().stream().filter(change -> !change.obstacle().isEmpty()).forEach(change -> omissions.add(
                new Omission(Omission.Subject.CHANGE, "change of " + change.point() + " against its reference",
                        change.obstacle())));
        omissions.add(Omission.of(Omission.Subject.FAULTS, diagnosis.inWords()));
        List<String> lines = diagnosis.linesWithoutVerdict();
        if (!lines.isEmpty()) {
            omissions.add(Omission.of(Omission.Subject.FAULTS, "lines seen, no verdict on them without a reference: "
                    + String.join(", ", lines)));
        }
        if (balancing.isEmpty()) {
            omissions.add(Omission.of(Omission.Subject.BALANCING, machine.faulty().contains(Fact.BALANCING)
                    ? "the balancing job has an error" : "no balancing job is given"));
        }
        balancing.ifPresent(job -> omissions.addAll(job.omissions()));
        return omissions;
    }

    /** Returns the machine and its criteria. */
    @Override
    public String toString() {
        return "survey of " + machine;
    }
}
