package dev.vibra.survey;

import dev.vibra.severity.Choice;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.MeasuringPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Survey of one machine, point by point: {@code Survey.of(machine, recordings)} for all at once, or {@code begin}, then
 * {@link #point} for each recording as it comes in, then {@link #conclude}. Touches no file and keeps nothing of a
 * recording
 * but what it returns.
 *
 * @see "ISO 13374-1:2003, data processing blocks (summary by public secondary sources)"
 */
public final class Survey {
    private final MachineDescription machine;
    private final SeverityCheck severity;
    private final boolean insisting;

    private Survey(MachineDescription machine, boolean insisting) {
        this.machine = Objects.requireNonNull(machine, "machine");
        this.severity = SeverityCheck.of(machine);
        this.insisting = insisting;
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
        Survey survey = begin(machine);
        List<PointSurvey> points = new ArrayList<>();
        for (MeasuringPoint point : machine.points()) {
            Waveform recording = recordings.get(point.id());
            points.add(recording == null ? survey.withoutRecording(point, "there is no recording of this point")
                    : survey.point(point, recording, tachometers.get(point.id())));
        }
        return survey.conclude(points);
    }

    /**
     * Begins a survey: chooses the severity criterion.
     *
     * @param machine what is known of the machine
     * @return the survey
     */
    public static Survey begin(MachineDescription machine) {
        return new Survey(machine, false);
    }

    /**
     * Returns this survey for a caller who wants numbers of unsound recordings too; each result says so. A recording
     * without
     * any signal still gives none.
     *
     * @return a survey that insists
     * @see PointSurvey#insisted()
     */
    public Survey insisting() {
        return new Survey(machine, true);
    }

    /**
     * Returns the severity criterion and why it was chosen.
     *
     * @return the choice
     */
    public Choice criterion() {
        return severity.choice();
    }

    /**
     * Works out one point.
     *
     * @param point the point
     * @param recording its recording, scaled to the quantity of the point's unit
     * @return results with the signals behind them
     * @throws IllegalArgumentException if the recording measures another quantity than the point
     */
    public PointSurvey point(MeasuringPoint point, Waveform recording) {
        return point(point, recording, null);
    }

    /**
     * Works out one point with the tachometer recorded along with it.
     *
     * @param point the point
     * @param recording its recording, scaled to the quantity of the point's unit
     * @param tachometer signal of its tachometer on the same time scale, in any unit; null if there is none
     * @return results with the signals behind them
     * @throws IllegalArgumentException if the recording measures another quantity than the point
     */
    public PointSurvey point(MeasuringPoint point, Waveform recording, Waveform tachometer) {
        if (recording.quantity() != point.unit().quantity()) {
            throw new IllegalArgumentException("recording of " + point.id() + " must measure "
                    + point.unit().quantity() + ": " + recording.quantity());
        }
        return new PointAnalysis(machine, severity, point, recording, tachometer, insisting).run();
    }

    /**
     * Notes a point whose recording is missing or can't be read.
     *
     * @param point the point
     * @param reason why there is no recording
     * @return results that say so
     */
    public PointSurvey withoutRecording(MeasuringPoint point, String reason) {
        PointSurvey.Collector results = new PointSurvey.Collector(point);
        results.omit("recording", reason);
        return results.finish(null);
    }

    /**
     * Concludes from all points: findings, advice, the balancing job.
     *
     * @param points results of the points
     * @return the result of the survey
     */
    public MachineSurvey conclude(List<PointSurvey> points) {
        List<Finding> findings = Findings.of(points);
        BalancingSurvey balancing = BalancingSurvey.of(machine);
        return new MachineSurvey(machine, criterion(), points, findings, Advice.of(points, findings, balancing),
                balancing, Unexamined.of(machine, severity, balancing));
    }

    /** Returns the machine and the criterion. */
    @Override
    public String toString() {
        return "survey of " + machine + "; " + criterion();
    }
}
