package dev.vibra.docs.survey.output;

import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.descriptor.DominantLine;
import dev.vibra.descriptor.NamedLine;
import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.chart.Lane;
import dev.vibra.docs.survey.chart.SpectrumFigure;
import dev.vibra.docs.survey.chart.WaveformFigure;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.machine.Rate;
import dev.vibra.point.PointSurvey;
import dev.vibra.point.Sidebands;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Draws an example of a fault: the spectrum with the lines that matter named, and the wave where it tells more. */
final class PatternFigures {
    private static final double FIRST_HERTZ = 4;
    private static final Set<String> ROWS = Set.of("misalignment/parallel", "looseness/pedestal",
            "looseness/rotating-part", "rub", "soft-foot");
    private static final Set<String> WAVES = Set.of("looseness/pedestal", "looseness/rotating-part", "rub", "gear-tooth",
            "rolling-bearing-outer-race", "rolling-bearing-inner-race", "rolling-bearing-rolling-element",
            "rolling-bearing-cage");
    private static final int PAIRS = 5;
    private static final double DECIBELS = 60;

    private final PatternExample example;
    private final PointSurvey point;
    private final Spectrum velocity;
    private final double shaft;

    private PatternFigures(PatternExample example) {
        this.example = example;
        this.point = example.point();
        this.velocity = point.traces().orElseThrow().velocity().orElseThrow();
        this.shaft = example.hertz();
    }

    /** The spectrum, and the wave if there is one. */
    static List<Figure> of(PatternExample example) {
        return new PatternFigures(example).figures();
    }

    private List<Figure> figures() {
        List<Figure> figures = new ArrayList<>(List.of(spectrum()));
        if (WAVES.contains(example.fault().id())) {
            figures.add(wave());
        }
        return figures;
    }

    private Figure spectrum() {
        return switch (example.fault().id()) {
            case "gear-mesh" -> multiples(Rate.Kind.GEAR_MESH, 3.4);
            case "gear-tooth" -> beside(Rate.Kind.GEAR_MESH);
            case "broken-rotor-bars", "eccentric-rotor" -> beside(Rate.Kind.SHAFT);
            case "twice-line-frequency" -> upTo(260);
            case "vane-passing" -> multiples(Rate.Kind.BLADE_PASSING, 2.4);
            case "belt" -> upTo(3.2 * shaft);
            case "rolling-bearing-outer-race", "rolling-bearing-inner-race", "rolling-bearing-rolling-element",
                    "rolling-bearing-cage" -> envelope();
            default -> upTo((ROWS.contains(example.fault().id()) ? 10.6 : 5.6) * shaft);
        };
    }

    private Figure multiples(Rate.Kind kind, double reach) {
        return upTo(reach * carrier(kind).hertz());
    }

    /** The largest line of a kind. */
    private NamedLine carrier(Rate.Kind kind) {
        return point.lines().stream().filter(line -> line.rate().kind() == kind && line.order() == 1)
                .max((a, b) -> Double.compare(a.level().si(), b.level().si())).orElseThrow();
    }

    private double[] millimetres() {
        double[] values = velocity.amplitudes(Detector.RMS);
        for (int i = 0; i < values.length; i++) {
            values[i] = velocity.frequencyHertz(i) < FIRST_HERTZ ? 0 : values[i] / Unit.MM_PER_S.toSi();
        }
        return values;
    }

    private Figure upTo(double hertz) {
        return SpectrumFigure.of(millimetres(), velocity.resolutionHertz()).between(0, hertz).withLanes(lanes(hertz))
                .draw("Velocity in mm/s rms", what("Velocity spectrum"));
    }

    private String what(String kind) {
        return kind + " at " + point.point().id() + " of a simulated machine: " + example.fault().words();
    }

    /** Rates of which a line stands within reach, the shaft first; at most five rows. */
    private List<Lane> lanes(double reach) {
        Map<String, List<Lane.Mark>> byRate = new LinkedHashMap<>();
        int most = reach > 12 * shaft ? 1 : 12;
        point.lines().stream().filter(line -> line.rate().kind() != Rate.Kind.TWICE_LINE)
                .filter(line -> line.rate().kind() != Rate.Kind.SHAFT || line.order() <= most)
                .forEach(line -> add(byRate, label(line.rate()), line));
        if (ROWS.contains(example.fault().id())) {
            point.pattern().halves().forEach(line -> byRate.computeIfAbsent("halves", key -> new ArrayList<>())
                    .add(new Lane.Mark(line.hertz(), line.order() / 2 + ".5\u00d7", line.stands())));
        }
        point.pattern().twiceLine().ifPresent(line -> add(byRate, "twice the line", line));
        List<Lane.Mark> strangers = point.dominantLines().stream().filter(line -> line.name().isEmpty())
                .filter(line -> example.fault().id().equals("foreign-line"))
                .map(line -> new Lane.Mark(line.hertz(), "", true)).toList();
        if (!strangers.isEmpty()) {
            byRate.put("of no rate", strangers);
        }
        return byRate.entrySet().stream().map(lane -> new Lane(lane.getKey(), lane.getValue()))
                .filter(lane -> lane.marks().stream().anyMatch(mark -> mark.found() && mark.hertz() < reach))
                .limit(5).toList();
    }

    private static void add(Map<String, List<Lane.Mark>> byRate, String name, NamedLine line) {
        byRate.computeIfAbsent(name, key -> new ArrayList<>())
                .add(new Lane.Mark(line.hertz(), line.order() + "\u00d7", line.stands()));
    }

    /** Short enough for the room beside a lane. */
    private static String label(Rate rate) {
        if (rate.owner().equals(rate.kind().toString())) {
            return rate.owner();
        }
        return rate.kind() == Rate.Kind.GEAR_MESH ? "mesh, " + rate.owner() : rate.owner();
    }

    /** The neighbourhood of a line, in dB, since what stands beside it is small. */
    private Figure beside(Rate.Kind kind) {
        List<Sidebands> all = point.pattern().sidebands().stream()
                .filter(one -> one.carrier().rate().kind() == kind && one.carrier().order() == 1).toList();
        Sidebands most = all.stream().max((a, b) -> a.pairs() != b.pairs() ? Integer.compare(a.pairs(), b.pairs())
                : Double.compare(a.largest(), b.largest())).orElseThrow();
        double centre = most.carrier().hertz();
        double spacing = most.spacing().hertz();
        double reach = (PAIRS + 1) * spacing;
        List<Lane> lanes = new ArrayList<>(List.of(new Lane(label(most.carrier().rate()),
                List.of(new Lane.Mark(centre, "1\u00d7", most.carrier().stands())))));
        lanes.add(new Lane("\u00b1 " + label(most.spacing()), IntStream.rangeClosed(-PAIRS, PAIRS).filter(k -> k != 0)
                .mapToObj(k -> new Lane.Mark(centre + k * spacing, (k < 0 ? "\u2212" : "+") + Math.abs(k),
                        Math.abs(k) <= most.pairs())).toList()));
        return SpectrumFigure.of(decibels(centre - reach, centre + reach), velocity.resolutionHertz())
                .zoomedTo(Math.max(0, centre - reach), centre + reach).withLanes(lanes)
                .draw("dB, 60 at the top", what("Velocity around the line, in dB"));
    }

    private double[] decibels(double from, double to) {
        double[] values = millimetres();
        double largest = IntStream.range(0, values.length).filter(i -> velocity.frequencyHertz(i) >= from
                && velocity.frequencyHertz(i) <= to).mapToDouble(i -> values[i]).max().orElse(1);
        return Arrays.stream(values).map(one -> Math.max(0, DECIBELS + 20 * Math.log10(Math.max(1e-12, one / largest))))
                .toArray();
    }

    private Figure envelope() {
        BearingDiagnosis diagnosis = point.bearings().get(0).diagnosis();
        EnvelopeSpectrum spectrum = diagnosis.spectrum().orElseThrow();
        double[] depths = spectrum.depths();
        Arrays.fill(depths, 0, 2, 0);
        double end = Math.min(5.3 * diagnosis.findings().stream().filter(one -> example.fault().code()
                .endsWith(one.element().toString().replace(' ', '-'))).mapToDouble(one -> one.expectedHertz()).max()
                .orElse(200), (depths.length - 1) * spectrum.resolutionHertz());
        return SpectrumFigure.of(depths, spectrum.resolutionHertz()).between(0, end)
                .withLanes(PointFigures.envelopeLanes(spectrum, diagnosis))
                .draw("Pulsation depth (1)", what("Spectrum of the squared envelope of " + spectrum.band()));
    }

    private Figure wave() {
        boolean knocks = !ROWS.contains(example.fault().id());
        Waveform wave = knocks ? example.wave() : example.wave().velocity(Band.of(Math.max(2, shaft / 4), 12 * shaft));
        Unit unit = wave.quantity().customaryUnit();
        double[] values = wave.in(unit);
        int length = (int) Math.min(values.length, (example.fault().id().startsWith("rolling") ? 4 : 6) / shaft * wave.sampleRateHertz());
        int begin = (values.length - length) / 3;
        return WaveformFigure.stretch(Arrays.copyOfRange(values, begin, begin + length), wave.sampleRateHertz(), 0, length,
                Words.capital(wave.quantity().toString()) + " in " + unit, what("Waveform"));
    }
}
