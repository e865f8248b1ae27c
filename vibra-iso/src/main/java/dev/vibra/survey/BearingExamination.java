package dev.vibra.survey;

import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.bearing.DiagnosisSettings;
import dev.vibra.bearing.ElementFinding;
import dev.vibra.bearing.ElementVerdict;
import dev.vibra.bearing.KinematicFrequencies;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.machine.BearingData;
import dev.vibra.survey.machine.MachineDescription;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Looks for defects of the bearing at a point in the envelope of its recording. */
final class BearingExamination {
    /** Harmonics shown as expected where none was found; common practice, no source. */
    private static final int HARMONICS_SHOWN = 5;

    private final MachineDescription machine;
    private final Waveform wave;
    private final PointSurvey.Collector results;

    BearingExamination(MachineDescription machine, Waveform wave, PointSurvey.Collector results) {
        this.machine = machine;
        this.wave = wave;
        this.results = results;
    }

    Traces examine(Traces traces) {
        Optional<String> id = results.point().bearing();
        if (id.isEmpty()) {
            return traces; // Not every point lies at a rolling bearing.
        }
        Optional<BearingData> bearing = machine.bearing(id.get());
        Optional<RotationSpeed> speed = results.speed().speed();
        if (bearing.isEmpty()) {
            return without(traces, "the geometry of bearing \"" + id.get() + "\" is given with an error");
        }
        if (speed.isEmpty()) {
            return without(traces, "the speed is not known");
        }
        try {
            return diagnose(bearing.get(), speed.get(), traces);
        } catch (IllegalArgumentException e) {
            return without(traces, e.getMessage());
        }
    }

    private Traces without(Traces traces, String reason) {
        results.omit("bearings", reason);
        return traces;
    }

    private Traces diagnose(BearingData bearing, RotationSpeed speed, Traces traces) {
        KinematicFrequencies rates = bearing.geometry().frequencies(bearing.rotatingRing(), speed);
        BearingDiagnosis diagnosis = BearingDiagnosis.of(wave, rates,
                DiagnosisSettings.withDefaults().withOtherRates(OtherRates.of(machine, speed).hertz()));
        results.bearing(new BearingSurvey(bearing.id(), diagnosis));
        List<EvidenceLine> lines = new ArrayList<>();
        diagnosis.findings().forEach(finding -> lines.addAll(lines(finding)));
        return diagnosis.spectrum().map(spectrum -> traces.withEnvelope(spectrum, lines)).orElse(traces);
    }

    private static List<EvidenceLine> lines(ElementFinding finding) {
        List<EvidenceLine> lines = new ArrayList<>();
        for (int harmonic = 1; harmonic <= HARMONICS_SHOWN; harmonic++) {
            OptionalDouble found = finding.verdict() == ElementVerdict.PRESENT ? found(finding, harmonic)
                    : OptionalDouble.empty();
            lines.add(new EvidenceLine(finding.element().toString(), harmonic + "\u00d7",
                    found.orElse(harmonic * finding.expectedHertz()), found.isPresent()));
        }
        return lines;
    }

    private static OptionalDouble found(ElementFinding finding, int harmonic) {
        return finding.lines().stream().filter(line -> line.harmonic() == harmonic && !line.isSideband())
                .mapToDouble(line -> line.frequencyHertz()).findFirst();
    }
}
