package dev.vibra.point;

import dev.vibra.descriptor.DominantLine;
import dev.vibra.descriptor.LineReader;
import dev.vibra.descriptor.NamedLine;
import dev.vibra.descriptor.Signals;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.Rate;
import dev.vibra.octave.OctaveBand;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Works out the {@link LinePattern} of one recording from its signals and lines. */
final class PatternReading {
    private static final int VECTORS = 3;
    private static final String HALF = "half the shaft speed";
    /** Half orders: 0.5×, 1.5×, 2.5×, 3.5×. */
    private static final int[] ODD = {1, 3, 5, 7};
    private static final double LOWEST_OCTAVE = 8;
    private static final double HIGHEST_SHARE = 0.45;
    private static final int FEWEST_LINES = 4;

    private final Waveform whole;
    private final Signals signals;
    private final List<NamedLine> lines;
    private final ShaftRates shafts;

    private PatternReading(Waveform whole, Signals signals, List<NamedLine> lines, ShaftRates shafts) {
        this.whole = whole;
        this.signals = signals;
        this.lines = lines;
        this.shafts = shafts;
    }

    /** The signals are those of the steady part; lines are those of the machine's rates, of the point's shaft first. */
    static LinePattern of(MachineDescription machine, MeasuringPoint point, Waveform whole, Signals signals,
            List<NamedLine> lines, List<DominantLine> dominant) {
        if (!signals.hasSpectrum()) {
            return LinePattern.none("the recording is too short for a spectrum");
        }
        List<Double> steady = new LineSteadiness(signals).steady(dominant);
        if (lines.isEmpty()) {
            return LinePattern.of(new LinePattern.Parts(List.of(), List.of(), List.of(), null,
                    signals.speed().isEmpty() ? "the speed is not known"
                            : "the shaft turns too slowly for the recording",
                    List.of(), null, null, List.of(), noise(signals), steady));
        }
        return new PatternReading(whole, signals, lines, ShaftRates.of(machine, point, signals, lines)).read(steady);
    }

    private LinePattern read(List<Double> steady) {
        MotorLines motor = MotorLines.of(signals.fineReader(), shafts);
        Optional<TurnVectors> vectors = TurnVectors.of(signals, lines);
        Optional<TurnShape> shape = vectors.map(known -> new TurnShape(known, signals, lines, motor.mixedOrders()));
        List<Sidebands> sidebands = new ArrayList<>(new SidebandReading(signals, shafts, lines).all());
        sidebands.addAll(motor.sidebands());
        List<LinePhasor> phasors = vectors.map(known -> phasors(known.ofWhole(whole))).orElse(List.of());
        return LinePattern.of(new LinePattern.Parts(phasors, halves(), sidebands,
                motor.twiceLine().orElse(null), motor.obstacle(), motor.mixedOrders(),
                shape.flatMap(TurnShape::wander).orElse(null), shape.flatMap(TurnShape::flattening).orElse(null),
                new KnockReading(signals.wave(), shafts).all(), noise(signals), steady));
    }

    static boolean isOwnShaft(NamedLine line) {
        return line.rate().kind() == Rate.Kind.SHAFT && line.rate().owner().equals(Rate.Kind.SHAFT.toString());
    }

    private List<LinePhasor> phasors(TurnVectors vectors) {
        return lines.stream().filter(PatternReading::isOwnShaft).filter(line -> line.order() <= VECTORS)
                .filter(NamedLine::stands).map(line -> vectors.phasor(line.order())).toList();
    }

    /** Between two multiples of the speed lies a half; it must be parted from both. */
    private List<NamedLine> halves() {
        Rate half = new Rate(Rate.Kind.SHAFT, HALF, shafts.ownHertz() / 2);
        Optional<LineReader> reader = parting(signals, half.hertz());
        if (reader.isEmpty()) {
            return List.of();
        }
        List<NamedLine> halves = new ArrayList<>();
        for (int order : ODD) {
            double hertz = order * half.hertz();
            double reach = reader.get().resolutionHertz();
            if (reader.get().covers(hertz, reach)) {
                halves.add(reader.get().line(half, order, hertz, reach));
            }
        }
        return halves;
    }

    /** The averaged spectrum, which speed that wanders smears least; the fine one where only that parts the lines. */
    static Optional<LineReader> parting(Signals signals, double apartHertz) {
        if (apartHertz >= signals.reader().partedHertz()) {
            return Optional.of(signals.reader());
        }
        return Optional.of(signals.fineReader()).filter(fine -> apartHertz >= fine.partedHertz());
    }

    /** The floor counts as noise, read as acceleration line by line. */
    static List<LinePattern.BandNoise> noise(Signals signals) {
        Spectrum spectrum = signals.spectrum();
        double highest = HIGHEST_SHARE * signals.wave().sampleRateHertz();
        List<LinePattern.BandNoise> noise = new ArrayList<>();
        if (highest <= LOWEST_OCTAVE) {
            return noise;
        }
        for (OctaveBand octave : OctaveBand.within(1, Band.of(LOWEST_OCTAVE, highest))) {
            int first = (int) Math.ceil(octave.edges().lowestHertz() / spectrum.resolutionHertz());
            int last = (int) Math.floor(octave.edges().highestHertz() / spectrum.resolutionHertz());
            if (last - first + 1 >= FEWEST_LINES && octave.edges().highestHertz() <= highest) {
                noise.add(new LinePattern.BandNoise(octave.edges(), Math.sqrt(sum(signals, first, last))));
            }
        }
        return noise;
    }

    private static double sum(Signals signals, int first, int last) {
        Spectrum spectrum = signals.spectrum();
        int integrations = signals.wave().quantity().integrationsTo(Quantity.ACCELERATION);
        double sum = 0;
        for (int k = first; k <= last; k++) {
            double turning = 2 * Math.PI * spectrum.frequencyHertz(k);
            sum += signals.floor().meanSquare(k) * Math.pow(turning, -2.0 * integrations);
        }
        return sum * spectrum.resolutionHertz() / spectrum.noiseBandwidthHertz();
    }
}
