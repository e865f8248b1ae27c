package dev.vibra.survey;

import dev.vibra.quality.RecordingCheck;
import dev.vibra.quality.RecordingQuality;
import dev.vibra.quality.Remark;
import dev.vibra.quantity.Level;
import dev.vibra.severity.Verdict;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.MeasuringPoint;
import dev.vibra.survey.machine.Tachometer;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Works out one point: from the recording to descriptors, severity and bearings. */
final class PointAnalysis {
    private final MachineDescription machine;
    private final SeverityCheck severity;
    private final Waveform wave;
    private final Waveform tachometer;
    private final PointSurvey.Collector results;
    private TachometerSignal pulses;

    PointAnalysis(MachineDescription machine, SeverityCheck severity, MeasuringPoint point, Waveform wave,
            Waveform tachometer) {
        this.machine = machine;
        this.severity = severity;
        this.wave = wave;
        this.tachometer = tachometer;
        this.results = new PointSurvey.Collector(point);
    }

    PointSurvey run() {
        findSpeed();
        RecordingQuality quality = check().check(wave);
        results.recording(new RecordingSummary(wave.sampleRateHertz(), wave.length(), quality));
        if (!quality.sound()) {
            results.omit("levels, severity and bearings", "the recording is not sound (" + quality.remarks().stream()
                    .filter(Remark::disqualifying).map(Remark::code).distinct().collect(Collectors.joining(", ")) + ")");
            return results.finish(Traces.of(wave));
        }
        judge(new Levels(wave, results).describe(severity));
        Traces traces = new VelocityLines(wave, results).examine(Traces.of(wave));
        describeVector();
        return results.finish(new BearingExamination(machine, wave, results).examine(traces));
    }

    private RecordingCheck check() {
        RecordingCheck check = RecordingCheck.withDefaults();
        check = results.speed().speed().map(check::withSpeed).orElse(check);
        return machine.lineFrequencyHertz().map(check::withMains).orElse(check);
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
        verdict.ifPresentOrElse(results::severity,
                () -> results.omit("severity", "none of the levels that the criterion limits could be measured"));
    }
}
