package dev.vibra.survey;

import dev.vibra.quantity.Level;
import dev.vibra.severity.Verdict;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.MeasuringPoint;
import dev.vibra.survey.machine.Tachometer;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Works out one point: from the recording to descriptors, severity and bearings. */
final class PointAnalysis {
    private final MachineDescription machine;
    private final SeverityCheck severity;
    private final Waveform wave;
    private final Waveform tachometer;
    private final boolean insisting;
    private final PointSurvey.Collector results;
    private final ChangeCheck changes;
    private TachometerSignal pulses;

    PointAnalysis(MachineDescription machine, SeverityCheck severity, MeasuringPoint point, Waveform wave,
            Waveform tachometer, boolean insisting) {
        this.machine = machine;
        this.severity = severity;
        this.wave = wave;
        this.tachometer = tachometer;
        this.insisting = insisting;
        this.results = new PointSurvey.Collector(point);
        this.changes = new ChangeCheck(machine.baseline().getOrDefault(point.id(), Map.of()), results);
    }

    PointSurvey run() {
        findSpeed();
        QualityGate gate = QualityGate.of(wave, results.point(), severity, results.speed().speed(),
                machine.lineFrequencyHertz());
        results.recording(gate.summary());
        Traces traces = Traces.of(wave);
        if (gate.sound() || insisting && gate.holdsSignal()) {
            results.insisted(!gate.sound());
            judge(new Levels(gate.steady(), results).describe(severity));
            traces = new VelocityLines(gate.steady(), results).examine(traces, machine);
            describeVector();
        } else {
            results.omit(gate.suitsBearings() ? "levels and severity" : "levels, severity and bearings", gate.reason());
        }
        changes.omitAll("there is no verdict to compare with");
        return results.finish(gate.suitsBearings() || results.insisted()
                ? new BearingExamination(machine, wave, results).examine(traces) : traces);
    }

    private void findSpeed() {
        results.point().tachometer().ifPresent(this::readTachometer);
        if (pulses != null) {
            results.speed(pulses.speed());
            return;
        }
        Optional<Double> mains = machine.lineFrequencyHertz();
        results.speed(machine.speed().map(given -> SpeedSearch.around(given, wave, mains))
                .orElseGet(() -> SpeedSearch.withoutNominal(wave, mains)));
        if (results.speed().speed().isEmpty()) {
            results.omit("speed", machine.faultyFields().contains("speedRevolutionsPerMinute")
                    ? "speedRevolutionsPerMinute is given with an error" : "speedRevolutionsPerMinute is not given, and"
                    + " the recording doesn't tell: " + results.speed().remark());
        }
    }

    private void readTachometer(Tachometer described) {
        if (tachometer == null) {
            results.omit("tachometer", described.recording() + " was not read");
            return;
        }
        try {
            pulses = TachometerSignal.of(tachometer, described.pulsesPerRevolution());
        } catch (IllegalArgumentException e) {
            results.omit("tachometer", e.getMessage());
        }
    }

    private void describeVector() {
        if (pulses == null) {
            return;
        }
        try {
            pulses.describe(wave, results);
        } catch (IllegalArgumentException e) {
            results.omit(DescriptorNames.VELOCITY_VECTOR_AMPLITUDE, e.getMessage());
        }
    }

    private void judge(List<Level> levels) {
        Optional<String> obstacle = severity.obstacle();
        if (obstacle.isPresent()) {
            results.omit("severity", obstacle.get());
            return;
        }
        Optional<Verdict> verdict = severity.judge(results.point(), levels);
        verdict.ifPresent(changes::compare);
        verdict.ifPresentOrElse(results::severity,
                () -> results.omit("severity", "none of the levels that the criterion limits could be measured"));
    }
}
