package dev.vibra.docs.survey.output;

import dev.vibra.descriptor.NamedLine;
import dev.vibra.fault.Fault;
import dev.vibra.fault.FaultTable;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.Rate;
import dev.vibra.point.PointExamination;
import dev.vibra.point.PointSurvey;
import dev.vibra.point.Sidebands;
import dev.vibra.point.Traces;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.simulation.SimulatedMachine;
import dev.vibra.simulation.Truth;
import dev.vibra.symptom.Site;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A simulated machine with one fault, at the point that the fault moves most. */
final class PatternExample {
    private static final Band BAND = Band.of(10, 1000);
    private static final long FIRST = 11;
    private static final int MOST_SEEDS = 60;
    /** So much more power than when it was sound is seen in a figure. */
    private static final double SEEN = 4;
    private static final int MANY = 3;
    /** Pole pass beside 1x that a figure parts well. */
    private static final double LEAST_PARTS = 0.03;

    private final Fault fault;
    private final long seed;
    private final SimulatedMachine machine;
    private final PointSurvey point;

    private PatternExample(Fault fault, long seed, SimulatedMachine machine, PointSurvey point) {
        this.fault = fault;
        this.seed = seed;
        this.machine = machine;
        this.point = point;
    }

    /** The first machine on which the fault is large enough to be seen in a figure. */
    static PatternExample first(String fault) {
        for (long seed = FIRST; seed < FIRST + MOST_SEEDS; seed++) {
            PatternExample example = of(fault, seed);
            if (example.shows()) {
                return example;
            }
        }
        throw new IllegalStateException("no machine shows " + fault);
    }

    private boolean shows() {
        boolean loud = power(wave(), fault) > SEEN * power(machine.references().get(point.point().id()), fault);
        return point.traces().flatMap(Traces::velocity).isPresent() && switch (fault.id()) {
            case "broken-rotor-bars", "eccentric-rotor" -> pairs(Rate.Kind.SHAFT) > 0;
            case "gear-tooth" -> pairs(Rate.Kind.GEAR_MESH) >= MANY;
            case "looseness/pedestal", "rub" -> loud && point.pattern().halves().stream()
                    .filter(NamedLine::stands).count() > 1;
            case "looseness/rotating-part" -> loud && standing() >= 2 * MANY;
            case "misalignment/parallel", "misalignment/angular", "misalignment/bearing" -> loud && standing() >= MANY
                    && level(2) > level(1) / 4;
            case "twice-line-frequency" -> loud && point.pattern().twiceLine().filter(NamedLine::stands).isPresent();
            case "belt" -> loud && point.lines().stream().filter(line -> line.rate().kind() == Rate.Kind.BELT
                    && line.stands()).count() > 2;
            case "rolling-bearing-cage" -> loud && !point.bearings().isEmpty();
            case "rolling-bearing-outer-race", "rolling-bearing-inner-race", "rolling-bearing-rolling-element" ->
                    point.showsBearingDefect();
            default -> loud;
        };
    }

    private long standing() {
        return point.lines().stream().filter(line -> line.rate().kind() == Rate.Kind.SHAFT && line.stands()).count();
    }

    private double level(int order) {
        return point.shaftLine(order).map(line -> line.level().si()).orElse(0.0);
    }

    private int pairs(Rate.Kind carrier) {
        return point.pattern().sidebands().stream().filter(one -> one.carrier().rate().kind() == carrier
                && one.carrier().order() == 1 && one.spacing().hertz() > LEAST_PARTS * one.carrier().hertz())
                .mapToInt(Sidebands::pairs).max().orElse(0);
    }

    static PatternExample of(String fault, long seed) {
        Fault row = FaultTable.standard().fault(fault);
        SimulatedMachine machine = SimulatedMachine.draw(seed, List.of(fault));
        MachineDescription description = machine.description();
        MeasuringPoint most = description.points().stream().filter(one -> isAtIt(machine.faults().get(0), row, one))
                .max(Comparator.comparingDouble(one -> rise(machine, row, one))).orElseThrow();
        return new PatternExample(row, seed, machine, PointExamination.of(description).examine(most,
                machine.recordings().get(most.id()), Optional.empty()));
    }

    private static boolean isAtIt(Truth truth, Fault fault, MeasuringPoint point) {
        return fault.site() != Site.Kind.BEARING || point.bearing().filter(truth.owner()::equals).isPresent();
    }

    /** Faults that knock are heard as acceleration. */
    private static boolean knocks(Fault fault) {
        return fault.site() == Site.Kind.BEARING || fault.id().equals("gear-tooth");
    }

    private static double rise(SimulatedMachine machine, Fault fault, MeasuringPoint point) {
        return power(machine.recordings().get(point.id()), fault) - power(machine.references().get(point.id()), fault);
    }

    private static double power(Waveform wave, Fault fault) {
        double rms = knocks(fault) ? wave.rms().si() : wave.throughSeverityChain(Quantity.VELOCITY, BAND).rms().si();
        return rms * rms;
    }

    Fault fault() {
        return fault;
    }

    long seed() {
        return seed;
    }

    /** What the machine is, as in {@code coupled fan}. */
    String form() {
        return machine.plan().form().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    PointSurvey point() {
        return point;
    }

    /** Turns per second of the shaft that the fault turns with, or the point's. */
    double hertz() {
        return point.speed().speed().orElseThrow().hertz();
    }

    Waveform wave() {
        return machine.recordings().get(point.point().id());
    }
}
