package dev.vibra.symptom;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.descriptor.DominantLine;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.Rate;
import dev.vibra.point.PointSurvey;
import dev.vibra.quantity.RotationSpeed;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Which frequencies belong to a machine: multiples of its rates, halves of its speeds, lines beside them, multiples of
 * the line frequency and of the rates of its bearings. Widths are common practice, no source.
 */
final class Belonging {
    /** A multiple of a rate that a speed tells. */
    private static final double OF_SPEED = 1e-3;
    /** The line frequency strays, and what a belt drives slips. */
    private static final double OF_MAINS = 2e-3;
    private static final double OF_OTHERS = 3e-3;
    /** Bearings slip. */
    private static final double OF_BEARINGS = 0.02;
    private static final int MULTIPLES = 12;
    private static final int OF_BEARING = 5;
    private static final int SIDEBANDS = 2;
    /** Where no line frequency is told it is one of these. */
    private static final List<Double> MAINS = List.of(50.0, 60.0);

    private final PointSurvey point;
    private final DriveTrain train;
    private final List<Double> shafts;
    private final List<Double> others;
    private final List<Double> mains;
    private final List<Double> bearings;
    private final double polePass;
    private final boolean hasMotor;

    private Belonging(MachineDescription machine, PointSurvey point, List<Double> speeds, double mainHertz) {
        this.point = point;
        this.train = machine.train();
        List<Rate> rates = train.ratesAt(mainHertz);
        this.shafts = new ArrayList<>(speeds);
        rates.stream().filter(rate -> rate.kind() == Rate.Kind.SHAFT).map(Rate::hertz).forEach(shafts::add);
        this.others = rates.stream().filter(rate -> rate.kind().isMechanical() && rate.kind() != Rate.Kind.SHAFT)
                .map(Rate::hertz).toList();
        this.mains = train.lineHertz().isPresent() ? List.of(train.lineHertz().getAsDouble()) : MAINS;
        this.bearings = machine.bearings().stream().flatMap(bearing ->
                rates(bearing, mainHertz * ratioOf(machine, bearing)).boxed()).toList();
        this.polePass = polePass(mainHertz * machine.motorRatio());
        this.hasMotor = Sites.hasMotor(machine);
    }

    /** Of a point whose speed is known. */
    static Belonging of(Evidence evidence, PointSurvey point) {
        List<Double> speeds = evidence.points().stream().flatMap(one -> one.speed().speed().stream())
                .map(RotationSpeed::hertz).toList();
        return new Belonging(evidence.machine(), point, speeds, point.speed().speed().orElseThrow().hertz()
                / evidence.machine().ratioAt(point.point()));
    }

    private static double ratioOf(MachineDescription machine, BearingData bearing) {
        return machine.points().stream().filter(one -> one.bearing().filter(bearing.id()::equals).isPresent())
                .mapToDouble(machine::ratioAt).findFirst().orElse(1);
    }

    private static DoubleStream rates(BearingData bearing, double hertz) {
        KinematicFrequencies rates =
                bearing.geometry().frequencies(bearing.rotatingRing(), RotationSpeed.ofHertz(hertz));
        return DoubleStream.of(rates.of(BearingElement.OUTER_RACE), rates.of(BearingElement.INNER_RACE),
                rates.of(BearingElement.ROLLING_ELEMENT), rates.of(BearingElement.CAGE));
    }

    /** The slip of a motor times its poles, by its speed: the poles are the even number that leaves the least slip. */
    private double polePass(double motorHertz) {
        return mains.stream().mapToDouble(line -> {
            double pairs = train.motor().poles().isPresent() ? train.motor().poles().getAsInt() / 2.0
                    : Math.max(1, Math.floor(line / motorHertz * (1 + OF_MAINS)));
            return Math.abs(2 * (line - pairs * motorHertz));
        }).max().orElseThrow();
    }

    /** The largest lines of the point that nothing explains, the largest first. */
    List<DominantLine> strangers() {
        return point.dominantLines().stream().filter(this::isStranger).toList();
    }

    boolean isStranger(DominantLine line) {
        return line.name().isEmpty() && !explains(line.hertz());
    }

    private boolean explains(double hertz) {
        boolean named = point.lines().stream().anyMatch(line -> near(hertz, line.hertz(), OF_OTHERS));
        boolean turns = shafts.stream().anyMatch(shaft -> isMultiple(hertz, shaft, Integer.MAX_VALUE, OF_SPEED)
                || isMultiple(hertz, shaft / 2, 2 * MULTIPLES, OF_SPEED));
        boolean made = others.stream().anyMatch(rate -> isMultiple(hertz, rate, MULTIPLES, OF_OTHERS));
        boolean rolls = bearings.stream().anyMatch(rate -> isMultiple(hertz, rate, OF_BEARING, OF_BEARINGS));
        return named || turns || made || rolls || isOfMains(hertz);
    }

    private boolean isOfMains(double hertz) {
        return mains.stream().anyMatch(line -> isMultiple(hertz, line, Integer.MAX_VALUE, OF_MAINS)
                || hasMotor && shafts.stream().anyMatch(shaft -> isOfMotor(hertz, 2 * line, shaft)));
    }

    /** Twice the line frequency beside a multiple of the speed, as of rotor bars; a pole-pass line beside 1× or 2×. */
    private boolean isOfMotor(double hertz, double twiceLine, double shaft) {
        return isMultiple(Math.abs(hertz - twiceLine), shaft, Integer.MAX_VALUE, OF_SPEED)
                || isMultiple(hertz + twiceLine, shaft, Integer.MAX_VALUE, OF_SPEED)
                || IntStream.rangeClosed(1, 2).anyMatch(order -> IntStream.rangeClosed(1, SIDEBANDS).anyMatch(pair ->
                        near(Math.abs(hertz - order * shaft), pair * polePass, 0)));
    }

    private boolean isMultiple(double hertz, double rate, int most, double width) {
        double order = Math.rint(hertz / rate);
        return order >= 1 && order <= most && near(hertz, order * rate, width);
    }

    private boolean near(double hertz, double other, double width) {
        return Math.abs(hertz - other) <= Math.max(ShaftLines.resolution(point), width * other);
    }
}
