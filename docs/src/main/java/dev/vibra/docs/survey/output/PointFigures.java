package dev.vibra.docs.survey.output;

import dev.vibra.bandmap.BandCriterion;
import dev.vibra.bandmap.BandMap;
import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.bearing.DiagnosisSettings;
import dev.vibra.bearing.ElementFinding;
import dev.vibra.descriptor.NamedLine;
import dev.vibra.docs.survey.chart.BandMapFigure;
import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.chart.Lane;
import dev.vibra.docs.survey.chart.SpectrumFigure;
import dev.vibra.docs.survey.chart.WaveformFigure;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.lines.LineNoise;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.point.BearingSurvey;
import dev.vibra.point.PointSurvey;
import dev.vibra.point.Traces;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Draws the figures of one point. */
final class PointFigures {
    private static final String VELOCITY =
            "Velocity spectrum at %s from %s Hz on. Filled marks: a line at this multiple of the rate stands out of the"
            + " noise; open marks: none does.";
    private static final String ENVELOPE = "Spectrum of the squared envelope of %s at %s. Marks: multiples of the rates"
            + " at which bearing defects would show; filled: a line stands out of the noise there; open: none does."
            + " Dashed: the least depth at which a defect is called present.";
    private static final String BANDS = "How unevenly the lines of the squared envelope of each band at %s are spread:"
            + " the more, the likelier something ticks there. Frame: %s, the band of the envelope spectrum above.";
    private static final double USUAL_BEGIN = 10;
    private static final double USUAL_END = 1000;
    /** A line above this share of the largest one keeps its part of the frequency axis in the figure. */
    private static final double WORTH_SHOWING = 0.1;
    private static final int HARMONICS_SHOWN = 5;
    /** Of a hundred figures with forty marks one has a mark that noise has filled. */
    private static final double LOG10_STANDS = -3.6;
    private static final double FLOOR_ORDERS = 2.5;
    private static final int FIRST_LINE = 3;

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
        traces.velocity().ifPresent(spectrum -> figures.add(velocity(spectrum)));
        for (BearingSurvey bearing : point.bearings()) {
            bearing.diagnosis().spectrum().ifPresent(spectrum -> {
                figures.add(envelope(spectrum, bearing.diagnosis()));
                if (bearing.showsDefect() || bearing.diagnosis().unexplained().isPresent()) {
                    figures.add(bandMap(traces.waveform(), spectrum.band(), bearing.diagnosis()));
                }
            });
        }
        return figures;
    }

    /** The narrowest bands hold four times the highest rate, as the narrowest that are tried do. */
    private Figure bandMap(Waveform wave, Band chosen, BearingDiagnosis diagnosis) {
        double narrowest = Math.min(wave.sampleRateHertz() / 8, 4 * diagnosis.findings().stream()
                .mapToDouble(ElementFinding::expectedHertz).max().orElse(USUAL_END));
        return BandMapFigure.of(BandMap.of(wave, BandCriterion.ENVELOPE_SPECTRUM_NEGENTROPY, narrowest), chosen,
                String.format(Locale.ROOT, BANDS, point.point().id(), chosen));
    }

    private Figure waveform(Waveform wave) {
        Unit unit = wave.quantity().customaryUnit();
        double detail = point.speed().speed().map(speed -> 5 / speed.hertz()).orElse(0.2);
        return WaveformFigure.of(wave.in(unit), wave.sampleRateHertz(), detail, title(wave.quantity(), unit, ""),
                "Waveform at " + point.point().id()
                        + ", the whole recording and the stretch around its largest value.");
    }

    private Figure velocity(Spectrum spectrum) {
        double[] values = inUnit(spectrum, Unit.MM_PER_S);
        // Below the usual band a velocity made of acceleration is mostly noise and would dwarf the rest.
        double lowest = point.lines().stream().filter(NamedLine::stands).mapToDouble(NamedLine::hertz).min()
                .orElse(USUAL_BEGIN);
        double begin = Math.min(Math.min(USUAL_BEGIN, lowest / 2), spectrum.frequencyHertz(spectrum.lines() / 2));
        Arrays.fill(values, 0, Math.min(values.length, (int) Math.ceil(begin / spectrum.resolutionHertz())), 0);
        return SpectrumFigure.of(values, spectrum.resolutionHertz()).between(begin, velocityEnd(values, spectrum))
                .withLanes(lanes()).draw(title(spectrum.quantity(), Unit.MM_PER_S, " rms"),
                String.format(Locale.ROOT, VELOCITY, point.point().id(), PlainNumber.forPeople(begin)));
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

    private List<Lane> lanes() {
        Map<String, List<Lane.Mark>> byRate = new LinkedHashMap<>();
        point.lines().forEach(line -> byRate.computeIfAbsent(line.rate().name(), name -> new ArrayList<>())
                .add(new Lane.Mark(line.hertz(), line.order() + "\u00d7", line.stands())));
        return byRate.entrySet().stream().map(lane -> new Lane(lane.getKey(), lane.getValue())).toList();
    }

    private Figure envelope(EnvelopeSpectrum spectrum, BearingDiagnosis diagnosis) {
        double[] values = spectrum.depths();
        Arrays.fill(values, 0, Math.min(values.length, 2), 0); // What the window leaves of the mean is no pulsation.
        double wanted = 1.05 * HARMONICS_SHOWN * diagnosis.findings().stream()
                .mapToDouble(ElementFinding::expectedHertz).max().orElse(USUAL_END);
        double end = Math.min(rounded(wanted), (values.length - 1) * spectrum.resolutionHertz());
        return SpectrumFigure.of(values, spectrum.resolutionHertz()).between(0, end)
                .withLanes(envelopeLanes(spectrum, diagnosis))
                .withReference(DiagnosisSettings.withDefaults().presentDepth())
                .draw("Pulsation depth (1)", String.format(Locale.ROOT, ENVELOPE, spectrum.band(), point.point().id()));
    }

    static List<Lane> envelopeLanes(EnvelopeSpectrum spectrum, BearingDiagnosis diagnosis) {
        double[] depths = spectrum.depths();
        NoiseFloor floor = NoiseFloor.of(Arrays.stream(depths).map(depth -> depth * depth).toArray(),
                spectrum.resolutionHertz(), LineNoise.of(spectrum.equivalentAverages()), FIRST_LINE,
                (int) Math.max(10, FLOOR_ORDERS * diagnosis.kinematics().shaftHertz() / spectrum.resolutionHertz()));
        return diagnosis.findings().stream().map(finding -> lane(finding, depths, floor, spectrum)).toList();
    }

    /** Multiples of the rate found, or else expected; each is held against the noise around it. */
    private static Lane lane(ElementFinding finding, double[] depths, NoiseFloor floor, EnvelopeSpectrum spectrum) {
        List<Lane.Mark> marks = new ArrayList<>();
        for (int harmonic = 1; harmonic <= HARMONICS_SHOWN; harmonic++) {
            double hertz = harmonic * finding.foundHertz().orElse(finding.expectedHertz());
            int centre = (int) Math.rint(hertz / spectrum.resolutionHertz());
            if (centre < depths.length - 1) {
                int peak = depths[centre - 1] > depths[centre + 1] ? centre - 1 : centre + 1;
                peak = depths[centre] >= depths[peak] ? centre : peak;
                marks.add(new Lane.Mark(hertz, harmonic + "\u00d7", floor.log10Probability(peak
                        * spectrum.resolutionHertz(), depths[peak], 3) < LOG10_STANDS));
            }
        }
        return new Lane(finding.element().toString(), marks);
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

    private static String title(Object quantity, Unit unit, String detector) {
        return HtmlReport.capital(quantity.toString()) + " in " + unit + detector;
    }
}
