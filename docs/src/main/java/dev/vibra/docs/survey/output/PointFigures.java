package dev.vibra.docs.survey.output;

import dev.vibra.bearing.DiagnosisSettings;
import dev.vibra.bearing.EnvelopeSpectrum;
import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.chart.Lane;
import dev.vibra.docs.survey.chart.SpectrumFigure;
import dev.vibra.docs.survey.chart.WaveformFigure;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.survey.EvidenceLine;
import dev.vibra.survey.PointSurvey;
import dev.vibra.survey.Traces;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Draws the figures of one point. */
final class PointFigures {
    private static final String VELOCITY =
            "Velocity spectrum at %s from %s Hz on. Filled marks: a line at this multiple"
            + " of the shaft speed was found; open marks: none was.";
    private static final String ENVELOPE = "Spectrum of the squared envelope of %s at %s. Marks: rates at which bearing"
            + " defects would show; filled: found there; open: not found.";
    private static final double USUAL_BEGIN = 10;
    private static final double USUAL_END = 1000;
    /** A line above this share of the largest one keeps its part of the frequency axis in the figure. */
    private static final double WORTH_SHOWING = 0.1;

    private final PointSurvey point;

    private PointFigures(PointSurvey point) {
        this.point = point;
    }

    static List<Figure> of(PointSurvey point) {
        return point.traces().map(new PointFigures(point)::draw).orElse(List.of());
    }

    private List<Figure> draw(Traces traces) {
        List<Figure> figures = new ArrayList<>();
        if (traces.waveform().length() > 1) {
            figures.add(waveform(traces.waveform()));
        }
        traces.velocity().ifPresent(spectrum -> figures.add(velocity(spectrum, traces.velocityLines())));
        traces.envelope().ifPresent(spectrum -> figures.add(envelope(spectrum, traces.envelopeLines())));
        return figures;
    }

    private Figure waveform(Waveform wave) {
        Unit unit = wave.quantity().customaryUnit();
        double detail = point.speed().speed().map(speed -> 5 / speed.hertz()).orElse(0.2);
        return WaveformFigure.of(wave.in(unit), wave.sampleRateHertz(), detail, title(wave.quantity(), unit, ""),
                "Waveform at " + point.point().id()
                        + ", the whole recording and the stretch around its largest value.");
    }

    private Figure velocity(Spectrum spectrum, List<EvidenceLine> lines) {
        double[] values = inUnit(spectrum, Unit.MM_PER_S);
        // Below the usual band a velocity made of acceleration is mostly noise and would dwarf the rest.
        double begin = Math.min(point.speed().speed().map(speed -> speed.hertz() / 2).orElse(USUAL_BEGIN), USUAL_BEGIN);
        begin = Math.min(begin, spectrum.frequencyHertz(spectrum.lines() / 2));
        Arrays.fill(values, 0, Math.min(values.length, (int) Math.ceil(begin / spectrum.resolutionHertz())), 0);
        return SpectrumFigure.of(values, spectrum.resolutionHertz()).between(begin, velocityEnd(values, spectrum))
                .withLanes(lanes(lines)).draw(title(spectrum.quantity(), Unit.MM_PER_S, " rms"),
                String.format(Locale.ROOT, VELOCITY, point.point().id(), PlainNumber.of(begin)));
    }

    private double velocityEnd(double[] values, Spectrum spectrum) {
        double largest = Arrays.stream(values).max().orElse(0);
        double wanted = Math.max(5 * USUAL_BEGIN, point.speed().speed().map(RotationSpeed::hertz).orElse(50.0) * 12);
        for (int i = values.length - 1; i >= 0; i--) {
            if (values[i] > WORTH_SHOWING * largest) {
                wanted = Math.max(wanted, spectrum.frequencyHertz(i) * 1.1);
                break;
            }
        }
        return Math.min(USUAL_END, rounded(wanted));
    }

    private Figure envelope(EnvelopeSpectrum spectrum, List<EvidenceLine> lines) {
        double[] values = spectrum.depths();
        Arrays.fill(values, 0, Math.min(values.length, 2), 0); // What the window leaves of the mean is no pulsation.
        double end = Math.min(rounded(1.05 * lines.stream().mapToDouble(EvidenceLine::hertz).max().orElse(USUAL_END)),
                (values.length - 1) * spectrum.resolutionHertz());
        return SpectrumFigure.of(values, spectrum.resolutionHertz()).between(0, end).withLanes(lanes(lines))
                .withReference(DiagnosisSettings.withDefaults().presentDepth(),
                        "least depth of a defect called present")
                .draw("Pulsation depth (1)", String.format(Locale.ROOT, ENVELOPE, spectrum.band(), point.point().id()));
    }

    private static double[] inUnit(Spectrum spectrum, Unit unit) {
        double[] values = spectrum.amplitudes(Detector.RMS);
        for (int i = 0; i < values.length; i++) {
            values[i] /= unit.toSi();
        }
        return values;
    }

    /** Rounds up to one, two, three, five or ten times a power of ten. */
    private static double rounded(double value) {
        double power = Math.pow(10, Math.floor(Math.log10(value)));
        double lead = value / power;
        return power * (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 3 ? 3 : lead <= 5 ? 5 : 10);
    }

    private static List<Lane> lanes(List<EvidenceLine> lines) {
        Map<String, List<Lane.Mark>> byGroup = new LinkedHashMap<>();
        lines.forEach(line -> byGroup.computeIfAbsent(line.group(), group -> new ArrayList<>())
                .add(new Lane.Mark(line.hertz(), line.label(), line.found())));
        return byGroup.entrySet().stream().map(lane -> new Lane(lane.getKey(), lane.getValue())).toList();
    }

    private static String title(Object quantity, Unit unit, String detector) {
        String name = quantity.toString();
        return Character.toUpperCase(name.charAt(0)) + name.substring(1) + " in " + unit + detector;
    }
}
