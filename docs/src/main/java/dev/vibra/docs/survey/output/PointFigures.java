package dev.vibra.docs.survey.output;

import dev.vibra.bandmap.BandCriterion;
import dev.vibra.bandmap.BandMap;
import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.bearing.DiagnosisSettings;
import dev.vibra.bearing.ElementFinding;
import dev.vibra.bearing.ElementVerdict;
import dev.vibra.descriptor.DominantLine;
import dev.vibra.descriptor.NamedLine;
import dev.vibra.docs.survey.chart.AxisTitle;
import dev.vibra.docs.survey.chart.BandMapFigure;
import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.chart.Lane;
import dev.vibra.docs.survey.chart.PlotData;
import dev.vibra.docs.survey.chart.SnapLine;
import dev.vibra.docs.survey.chart.SpectrumFigure;
import dev.vibra.docs.survey.chart.WaveformFigure;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.lines.LineNoise;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.machine.Rate;
import dev.vibra.point.BearingSurvey;
import dev.vibra.point.PointSurvey;
import dev.vibra.point.Traces;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Draws the figures of one point, and gives the values behind them. */
final class PointFigures {
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
    private final Phrases phrases;
    private final ShownUnits units;

    private PointFigures(PointSurvey point, Phrases phrases, ShownUnits units) {
        this.point = point;
        this.phrases = phrases;
        this.units = units;
    }

    static List<Explorable> of(PointSurvey point, Phrases phrases, ShownUnits units) {
        return point.traces().map(new PointFigures(point, phrases, units)::draw).orElse(List.of());
    }

    private List<Explorable> draw(Traces traces) {
        List<Explorable> figures = new ArrayList<>();
        if (traces.waveform().length() > 1) {
            figures.add(waveform(traces.waveform()));
        }
        traces.velocity().ifPresent(spectrum -> {
            figures.add(velocity(spectrum));
            if (traces.waveform().quantity() == Quantity.ACCELERATION) {
                figures.add(acceleration(spectrum.acceleration()));
            }
        });
        for (BearingSurvey bearing : point.bearings()) {
            bearing.diagnosis().spectrum().ifPresent(spectrum -> {
                figures.add(envelope(spectrum, bearing.diagnosis()));
                if (bearing.showsDefect() || bearing.diagnosis().unexplained().isPresent()) {
                    figures.add(Explorable.still(bandMap(traces.waveform(), spectrum.band(), bearing.diagnosis())));
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
                new BandMapFigure.Titles(frequencies().toString(), phrases.say("figure.width"),
                phrases.say("figure.chosen")), phrases.say("figure.bands", point.point().id(), chosen));
    }

    private Explorable waveform(Waveform wave) {
        Unit unit = units.of(wave.quantity().customaryUnit());
        double detail = point.speed().speed().map(speed -> 5 / speed.hertz()).orElse(0.2);
        AxisTitle title = title(wave.quantity(), unit.toString());
        double[] values = wave.in(unit);
        return new Explorable(WaveformFigure.of(values, wave.sampleRateHertz(), detail,
                new WaveformFigure.Titles(title.toString(), phrases.say("figure.time-whole"),
                phrases.say("figure.time-detail")), phrases.say("figure.waveform", point.point().id())),
                PlotData.waveform(values, wave.sampleRateHertz(), new AxisTitle(phrases.say("figure.time"), "s"),
                title));
    }

    private Explorable velocity(Spectrum spectrum) {
        Unit unit = units.of(Unit.MM_PER_S);
        double[] values = inUnit(spectrum, unit);
        // Below the usual band a velocity made of acceleration is mostly noise and would dwarf the rest.
        double lowest = point.lines().stream().filter(NamedLine::stands).mapToDouble(NamedLine::hertz).min()
                .orElse(USUAL_BEGIN);
        double begin = Math.min(Math.min(USUAL_BEGIN, lowest / 2), spectrum.frequencyHertz(spectrum.lines() / 2));
        Arrays.fill(values, 0, Math.min(values.length, (int) Math.ceil(begin / spectrum.resolutionHertz())), 0);
        double end = velocityEnd(values, spectrum);
        AxisTitle title = title(spectrum.quantity(), unit + " rms");
        List<SnapLine> lines = lines(Quantity.VELOCITY, spectrum.resolutionHertz()).stream()
                .filter(line -> line.hertz() >= begin).toList();
        return new Explorable(still(values, spectrum.resolutionHertz()).between(begin, end)
                .withLanes(lanes()).withLines(lines).draw(title.toString(), phrases.say("figure.velocity",
                point.point().id(), PlainNumber.forPeople(begin))),
                explored(values, spectrum.resolutionHertz(), title).from(begin).shown(begin, end).withLines(lines)
                        .withLanes(lanes()));
    }

    private Explorable acceleration(Spectrum spectrum) {
        Unit unit = units.of(Unit.M_PER_S2);
        double[] values = inUnit(spectrum, unit);
        AxisTitle title = title(spectrum.quantity(), unit + " rms");
        List<SnapLine> lines = lines(Quantity.ACCELERATION, spectrum.resolutionHertz());
        double end = spectrum.frequencyHertz(spectrum.lines() - 1);
        return new Explorable(still(values, spectrum.resolutionHertz()).withLines(lines)
                .draw(title.toString(), phrases.say("figure.acceleration", point.point().id())),
                explored(values, spectrum.resolutionHertz(), title).shown(0, end).withLines(lines).withLanes(lanes()));
    }

    private SpectrumFigure still(double[] values, double spacing) {
        return SpectrumFigure.of(values, spacing).withFrequencyTitle(frequencies().toString());
    }

    private AxisTitle frequencies() {
        return new AxisTitle(phrases.say("figure.frequency"), "Hz");
    }

    private PlotData explored(double[] values, double spacing, AxisTitle title) {
        PlotData data = PlotData.spectrum(values, spacing, frequencies(), title);
        return shaftHertz().map(data::withSpeed).orElse(data);
    }

    /** The speed as the orders of the table are made with, which is that of the lines where they were found. */
    private Optional<Double> shaftHertz() {
        return point.dominantLines().stream().filter(line -> line.order().isPresent())
                .map(line -> line.hertz() / line.order().getAsDouble()).findFirst()
                .or(() -> point.speed().speed().map(RotationSpeed::hertz));
    }

    /** The lines as the tables tell them, which lie between those of the spectrum and are higher than these. */
    private List<SnapLine> lines(Quantity quantity, double spacing) {
        List<SnapLine> lines = new ArrayList<>();
        for (DominantLine line : point.dominantLines()) {
            lines.add(line(line.hertz(), line.level(), line.name().orElse(""), quantity));
        }
        for (NamedLine line : point.lines()) {
            if (line.stands() && lines.stream().noneMatch(known ->
                    Math.abs(known.hertz() - line.hertz()) < spacing)) {
                lines.add(line(line.hertz(), line.level(), line.name(), quantity));
            }
        }
        return lines;
    }

    private SnapLine line(double hertz, Level velocity, String name, Quantity quantity) {
        double level = quantity == Quantity.VELOCITY ? velocity.si() : velocity.si() * 2 * Math.PI * hertz;
        return new SnapLine(hertz, level / units.of(quantity.customaryUnit()).toSi(), name);
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

    /** Two shafts of one name are told apart by their frequency. */
    private List<Lane> lanes() {
        Map<Rate, List<Lane.Mark>> byRate = new LinkedHashMap<>();
        point.lines().forEach(line -> byRate.computeIfAbsent(line.rate(), rate -> new ArrayList<>())
                .add(new Lane.Mark(line.hertz(), line.order() + "\u00d7", line.stands())));
        return byRate.entrySet().stream().map(lane -> new Lane(byRate.keySet().stream()
                .filter(other -> other.name().equals(lane.getKey().name())).count() > 1 ? phrases.say("figure.lane",
                lane.getKey().name(), PlainNumber.forPeople(lane.getKey().hertz())) : lane.getKey().name(),
                lane.getValue())).toList();
    }

    private Explorable envelope(EnvelopeSpectrum spectrum, BearingDiagnosis diagnosis) {
        double[] values = spectrum.depths();
        Arrays.fill(values, 0, Math.min(values.length, 2), 0); // What the window leaves of the mean is no pulsation.
        double wanted = 1.05 * HARMONICS_SHOWN * diagnosis.findings().stream()
                .mapToDouble(ElementFinding::expectedHertz).max().orElse(USUAL_END);
        double end = Math.min(rounded(wanted), (values.length - 1) * spectrum.resolutionHertz());
        List<Lane> lanes = envelopeLanes(spectrum, diagnosis);
        List<SnapLine> lines = diagnosis.findings().stream().flatMap(one -> one.lines().stream().map(line ->
                new SnapLine(line.frequencyHertz(), line.depth(), one.element() + ", " + line.label()))).toList();
        double least = DiagnosisSettings.withDefaults().presentDepth();
        AxisTitle title = new AxisTitle(phrases.say("figure.depth"), "1");
        return new Explorable(still(values, spectrum.resolutionHertz()).between(0, end).withLanes(lanes)
                .withLines(lines).withReference(least, phrases.say("figure.reference-depth"))
                .draw(title.toString(), phrases.say("figure.envelope", spectrum.band(), point.point().id())),
                explored(values, spectrum.resolutionHertz(), title).shown(0, end).withLines(lines).withLanes(lanes)
                        .withReference(least, phrases.say("figure.reference-depth")));
    }

    static List<Lane> envelopeLanes(EnvelopeSpectrum spectrum, BearingDiagnosis diagnosis) {
        double[] depths = spectrum.depths();
        NoiseFloor floor = NoiseFloor.of(Arrays.stream(depths).map(depth -> depth * depth).toArray(),
                spectrum.resolutionHertz(), LineNoise.of(spectrum.equivalentAverages()), FIRST_LINE,
                (int) Math.max(10, FLOOR_ORDERS * diagnosis.kinematics().shaftHertz() / spectrum.resolutionHertz()));
        List<ElementFinding> present = diagnosis.findings().stream()
                .filter(finding -> finding.verdict() == ElementVerdict.PRESENT).toList();
        return diagnosis.findings().stream().map(finding -> lane(finding, depths, floor, spectrum,
                present.contains(finding) ? List.of() : present)).toList();
    }

    /**
     * Multiples of the rate found, or else expected; each is held against the noise around it. One that coincides with a
     * multiple of an element that is present says nothing and is left out.
     */
    private static Lane lane(ElementFinding finding, double[] depths, NoiseFloor floor, EnvelopeSpectrum spectrum,
            List<ElementFinding> present) {
        List<Lane.Mark> marks = new ArrayList<>();
        for (int harmonic = 1; harmonic <= HARMONICS_SHOWN; harmonic++) {
            double hertz = harmonic * finding.foundHertz().orElse(finding.expectedHertz());
            int centre = (int) Math.rint(hertz / spectrum.resolutionHertz());
            if (centre < depths.length - 1 && present.stream().noneMatch(other -> coincides(hertz, other, spectrum))) {
                int peak = depths[centre - 1] > depths[centre + 1] ? centre - 1 : centre + 1;
                peak = depths[centre] >= depths[peak] ? centre : peak;
                marks.add(new Lane.Mark(hertz, harmonic + "\u00d7", floor.log10Probability(peak
                        * spectrum.resolutionHertz(), depths[peak], 3) < LOG10_STANDS));
            }
        }
        return new Lane(finding.element().toString(), marks);
    }

    private static boolean coincides(double hertz, ElementFinding other, EnvelopeSpectrum spectrum) {
        double rate = other.foundHertz().orElse(other.expectedHertz());
        return Math.abs(hertz - rate * Math.max(1, Math.rint(hertz / rate))) < 2 * spectrum.resolutionHertz();
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

    private static AxisTitle title(Quantity quantity, String unit) {
        return new AxisTitle(Words.capital(quantity.toString()), unit);
    }
}
