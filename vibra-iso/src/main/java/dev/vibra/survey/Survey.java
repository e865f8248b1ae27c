package dev.vibra.survey;

import dev.vibra.diagnosis.Evidence;
import dev.vibra.diagnosis.Finding;
import dev.vibra.diagnosis.Hypotheses;
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
        Objects.requireNonNull(recordings, "recordings");
        Objects.requireNonNull(tachometers, "tachometers");
        Survey survey = begin(machine);
        List<PointSurvey> points = new ArrayList<>();
        for (MeasuringPoint point : machine.points()) {
            Waveform recording = recordings.get(point.id());
            points.add(recording == null ? PointSurvey.withoutRecording(point, "there is no recording of this point")
                    : survey.point(point, recording, Optional.ofNullable(tachometers.get(point.id()))));
        }
        return survey.conclude(points);
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
     * Concludes from all points: findings, condition, advice, the balancing job.
     *
     * @param points results of the points
     * @return the result of the survey
     */
    public MachineSurvey conclude(List<PointSurvey> points) {
        Evidence evidence = new Evidence(machine, points);
        List<Finding> findings = Hypotheses.weigh(evidence);
        Optional<BalancingSurvey> balancing = machine.balancing()
                .map(job -> BalancingSurvey.of(job, machine.rotor(), machine.speed()));
        Condition condition = ConditionWeighing.of(evidence, criteria(), findings);
        return new MachineSurvey(machine, criteria(), points, new MachineSurvey.Conclusions(findings,
                unexplained(points, findings), condition, Advice.of(condition, points, findings, balancing)),
                balancing.orElse(null), omissions(evidence, balancing));
    }

    private static List<UnexplainedLevel> unexplained(List<PointSurvey> points, List<Finding> findings) {
        return points.stream().filter(point -> point.zone().filter(zone -> zone.isWorseThan(Zone.B)).isPresent())
                .filter(point -> findings.stream().noneMatch(finding -> finding.explainsLevel()
                        && finding.points().contains(point.point().id())))
                .map(point -> new UnexplainedLevel(point.point().id(),
                        point.severity().orElseThrow().deciding().level(),
                        point.dominantLines().stream().limit(LINES_NAMED).toList())).toList();
    }

    private List<Omission> omissions(Evidence evidence, Optional<BalancingSurvey> balancing) {
        List<Omission> omissions = new ArrayList<>();
        for (PartCriterion criterion : criteria()) {
            String part = criterion.part().map(id -> "severity of " + id).orElse("severity");
            criterion.obstacle().ifPresent(reason ->
                    omissions.add(new Omission(Omission.Subject.SEVERITY, part, reason)));
            criterion.choice().outOfScope().ifPresent(scope -> omissions.add(new Omission(Omission.Subject.SEVERITY,
                    "scope of the criterion asked for", scope.reason())));
        }
        omissions.add(Omission.of(Omission.Subject.FAULTS, Hypotheses.inWords(evidence)));
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
