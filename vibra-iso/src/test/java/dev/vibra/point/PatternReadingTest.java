package dev.vibra.point;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.descriptor.NamedLine;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.Motor;
import dev.vibra.machine.Rate;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.Machine;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Patterns put in by closed forms come out. */
class PatternReadingTest {
    private static final int RATE = 6400;

    private static MachineDescription machine(double shaftHertz, DriveTrain train) {
        return MachineDescription.of("machine").withTrain(train)
                .withMachine(Machine.unknown().withSpeed(RotationSpeed.ofHertz(shaftHertz)));
    }

    private static LinePattern pattern(MachineDescription machine, Waveform wave) {
        return pattern(machine, MeasuringPoint.of("P"), wave, Optional.empty());
    }

    private static LinePattern pattern(MachineDescription machine, MeasuringPoint point, Waveform wave,
            Optional<Waveform> tachometer) {
        return PointExamination.of(machine.withPoint(point)).examine(point, wave, tachometer).pattern();
    }

    private static Synthesis noise(double seconds) {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, (int) (seconds * RATE)).noise(0.02, 11);
    }

    /** Adds the acceleration of {@code √2·v·cos(2πft + φ)}, v in mm/s: a quarter turn ahead and ω times as large. */
    private static Synthesis line(Synthesis signal, double hertz, double millimetresPerSecond, double degrees) {
        double omega = 2 * Math.PI * hertz;
        return add(signal, t -> -Math.sqrt(2) * 1e-3 * millimetresPerSecond * omega
                * Math.sin(omega * t + Math.toRadians(degrees)));
    }

    private static Synthesis add(Synthesis signal, DoubleUnaryOperator acceleration) {
        double[] more = IntStream.range(0, signal.waveform().length()).mapToDouble(i -> i / (double) RATE)
                .map(acceleration).toArray();
        return signal.plus(Waveform.ofSi(Quantity.ACCELERATION, RATE, more));
    }

    private static double degrees(LinePhasor phasor) {
        return Math.toDegrees(Math.atan2(phasor.imaginary(), phasor.real()));
    }

    /** Degrees that an angle is off another one. */
    private static double off(double degrees, double other) {
        return Math.abs(Math.IEEEremainder(degrees - other, 360));
    }

    @Test
    void aVectorHasItsPhaseAtTheMiddle() {
        double hertz = 24.713;
        Waveform one = line(line(noise(6), hertz, 2, 30), 2 * hertz, 1, -75).waveform();
        Waveform other = line(noise(6), hertz, 1, 117).waveform().startingAt(0);
        LinePattern pattern = pattern(machine(25, DriveTrain.plain()), one);
        LinePhasor once = pattern.phasor(1).orElseThrow();
        double middle = 0.5 * (one.length() - 1) / RATE;
        assertEquals(LinePhasor.Tie.INSTANT, once.tie());
        assertEquals(middle, once.instant(), 1e-9);
        assertEquals(2e-3, once.size(), 0.01e-3);
        assertTrue(off(degrees(once), 30 + 360 * hertz * middle) < 1, once.toString());
        LinePhasor twice = pattern.phasor(2).orElseThrow();
        assertEquals(1e-3, twice.size(), 0.01e-3);
        assertTrue(off(degrees(twice), -75 + 720 * hertz * middle) < 1, twice.toString());
        assertTrue(pattern.phasor(3).isEmpty());
        LinePhasor second = pattern(machine(25, DriveTrain.plain()), other).phasor(1).orElseThrow();
        assertEquals(87, second.degreesAheadOf(once).orElseThrow(), 1);
    }

    /** The level of one point is steady in a part only; the instant is the same, and the phase between the two. */
    @Test
    void recordingsTakenTogetherHaveOneInstant() {
        double hertz = 24.713;
        Waveform steady = line(noise(8), hertz, 2, 30).waveform();
        double[] rising = line(noise(8), hertz, 1, 120).waveform().samples();
        for (int i = (int) (0.7 * rising.length); i < rising.length; i++) {
            rising[i] *= 1 + 3.0 * (i - 0.7 * rising.length) / rising.length;
        }
        MachineDescription machine = machine(25, DriveTrain.plain());
        MeasuringPoint point = MeasuringPoint.of("Q");
        PointSurvey other = PointExamination.of(machine.withPoint(point)).examine(point,
                Waveform.ofSi(Quantity.ACCELERATION, RATE, rising), Optional.empty());
        assertTrue(other.partlySteady(), other.toString());
        assertEquals(90, other.pattern().phasor(1).orElseThrow()
                .degreesAheadOf(pattern(machine, steady).phasor(1).orElseThrow()).orElseThrow(), 2);
    }

    @Test
    void withATachometerAPhaseIsThatAtTheMark() {
        double hertz = 24.713;
        double mark = 0.0123;
        Waveform pulses = Waveform.of(Unit.V, RATE, IntStream.range(0, 6 * RATE)
                .mapToDouble(i -> { double turn = hertz * (i / (double) RATE - mark);
                    return Math.exp(-0.5 * Math.pow((turn - Math.rint(turn)) / 0.02, 2)); }).toArray());
        Waveform wave = line(noise(6), hertz, 2, 30).waveform();
        LinePhasor once = pattern(machine(25, DriveTrain.plain()), MeasuringPoint.of("P").withTachometer(1), wave,
                Optional.of(pulses)).phasor(1).orElseThrow();
        assertEquals(LinePhasor.Tie.TACHOMETER, once.tie());
        assertEquals(2e-3, once.size(), 0.02e-3);
        // The pulse is found on its rising slope, some hundredths of a turn before its middle.
        double edge = 360 * Math.sqrt(2 * Math.log(2)) * 0.02;
        assertTrue(off(degrees(once), 30 + 360 * hertz * mark - edge) < 4, once + " " + edge);
    }

    /** {@code 2·f1 - poles·fr} at 50 Hz: 2970 r/min, 2 poles 1.00 Hz; 1480, 4 poles 1.33 Hz; 985, 6 poles 1.50 Hz. */
    @Test
    void polePassSidebandsStandWhereTheSlipPutsThem() {
        double[][] motors = {{2970, 2, 1.00}, {1480, 4, 4 / 3.0}, {985, 6, 1.50}};
        for (double[] motor : motors) {
            double shaft = motor[0] / 60;
            double apart = motor[2];
            Synthesis signal = line(line(line(noise(8), shaft, 2, 0), shaft - apart, 0.2, 50), shaft + apart, 0.1, 90);
            DriveTrain train = DriveTrain.plain().withLineHertz(50)
                    .withMotor(Motor.unknown().withPoles((int) motor[1]));
            LinePattern pattern = pattern(machine(shaft, train), signal.waveform());
            Sidebands sidebands = sidebands(pattern, Rate.Kind.POLE_PASS, 1).orElseThrow();
            assertEquals(apart, sidebands.spacing().hertz(), 0.02);
            assertEquals(1, sidebands.pairs(), sidebands.toString());
            assertEquals(0.2e-3, sidebands.lower(), 0.01e-3);
            assertEquals(0.1e-3, sidebands.upper(), 0.01e-3);
            assertEquals(0, sidebands(pattern(machine(shaft, train), line(noise(8), shaft, 2, 0).waveform()),
                    Rate.Kind.POLE_PASS, 1).orElseThrow().pairs());
            assertTrue(sidebands(pattern(machine(shaft, train), line(noise(2), shaft, 2, 0).waveform()),
                    Rate.Kind.POLE_PASS, 1).isEmpty(), "two seconds don't part them");
            assertTrue(sidebands(pattern(machine(shaft, train.withMotor(Motor.unknown().withPoles((int) motor[1])
                    .onConverter())), signal.waveform()), Rate.Kind.POLE_PASS, 1).isEmpty());
        }
    }

    private static Optional<Sidebands> sidebands(LinePattern pattern, Rate.Kind spacing, int carrierOrder) {
        return pattern.sidebands().stream().filter(one -> one.spacing().kind() == spacing
                && one.carrier().order() == carrierOrder).findFirst();
    }

    @Test
    void twiceTheLineFrequencyIsPartedFromTheSecondMultiple() {
        double shaft = 2970 / 60.0;
        DriveTrain train = DriveTrain.plain().withLineHertz(50).withMotor(Motor.unknown().withPoles(2));
        Waveform both = line(line(line(noise(6), shaft, 2, 0), 2 * shaft, 0.5, 20), 100.08, 1.5, 70).waveform();
        PointSurvey point = PointExamination.of(machine(shaft, train).withPoint(MeasuringPoint.of("P")))
                .examine(MeasuringPoint.of("P"), both, Optional.empty());
        NamedLine mains = point.pattern().twiceLine().orElseThrow(() -> new AssertionError(point.pattern()
                .twiceLineObstacle()));
        assertEquals(100.08, mains.hertz(), 0.02);
        assertEquals(1.5, mains.level().in(Unit.MM_PER_S), 0.03);
        assertEquals("", point.pattern().twiceLineObstacle());
        assertEquals(List.of(), point.pattern().mixedOrders());
        assertEquals(0.5, point.shaftLine(2).orElseThrow().level().in(Unit.MM_PER_S), 0.03, "its own, refined");
        assertEquals(0.5e-3, point.pattern().phasor(2).orElseThrow().size(), 0.02e-3);
        NamedLine among = point.lines().stream().filter(line -> line.rate().kind() == Rate.Kind.TWICE_LINE).findFirst()
                .orElseThrow();
        assertEquals(1.5, among.level().in(Unit.MM_PER_S), 0.03);
    }

    /** 2× lies 0.72 Hz below 100 Hz, and 5 s part 0.8 Hz: where the peak is tells which of the two it holds. */
    @Test
    void thePeakTellsWhichOfTwoLinesIsTheLarger() {
        double shaft = 49.64;
        DriveTrain train = DriveTrain.plain().withLineHertz(50).withMotor(Motor.unknown().withPoles(2));
        Synthesis once = line(noise(5), shaft, 2, 0);
        LinePattern mains = pattern(machine(shaft, train), line(line(once, 2 * shaft, 0.3, 20), 100, 8, 70).waveform());
        assertEquals(8, mains.twiceLine().orElseThrow().level().in(Unit.MM_PER_S), 0.4);
        assertEquals(List.of(2), mains.mixedOrders());
        LinePattern twice = pattern(machine(shaft, train), line(line(once, 2 * shaft, 8, 20), 100, 0.3, 70).waveform());
        assertTrue(twice.twiceLine().isEmpty(), () -> "" + twice.twiceLine());
        assertTrue(twice.twiceLineObstacle().startsWith("2\u00d7 and twice the line frequency lie 0.72 Hz apart"),
                twice.twiceLineObstacle());
    }

    @Test
    void whatIsNotPartedIsSaid() {
        double shaft = 2994 / 60.0;
        DriveTrain train = DriveTrain.plain().withLineHertz(50).withMotor(Motor.unknown().withPoles(2));
        Waveform both = line(line(line(noise(6), shaft, 2, 0), 2 * shaft, 0.5, 20), 100, 1.5, 70).waveform();
        LinePattern pattern = pattern(machine(shaft, train), both);
        assertTrue(pattern.twiceLine().isEmpty());
        assertEquals("2\u00d7 and twice the line frequency lie 0.20 Hz apart: a recording of at least 21 s parts them",
                pattern.twiceLineObstacle());
        assertEquals(List.of(2), pattern.mixedOrders());
        LinePattern unknown = pattern(machine(shaft, DriveTrain.plain()), both);
        assertEquals("no line frequency is given", unknown.twiceLineObstacle());
        assertTrue(pattern(machine(shaft, train.withMotor(Motor.unknown().onConverter())), both).twiceLineObstacle()
                .contains("converter"));
    }

    /**
     * A mesh that is modulated in phase by {@code β·sin} has lines of {@code J0, J1, J2}: for β = 1 0.7652, 0.4401,
     * 0.1149 (M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, table 9.1).
     */
    @Test
    void sidebandsOfAMeshAreThoseOfBessel() {
        double input = 24.7;
        double output = input * 23 / 71;
        double mesh = 2 * Math.PI * 23 * input;
        DriveTrain train = DriveTrain.plain().withGear(GearStage.of("stage 1", List.of(23, 71)));
        Synthesis signal = add(line(noise(6), input, 1, 0), t -> Math.sqrt(2) * 1e-3 * mesh
                * Math.cos(mesh * t + Math.sin(2 * Math.PI * output * t)));
        LinePattern pattern = pattern(machine(input, train), signal.waveform());
        List<Sidebands> all = pattern.sidebands().stream().filter(one -> one.carrier().order() == 1).toList();
        assertEquals(List.of("shaft speed", "shaft speed, output of stage 1"), all.stream()
                .map(one -> one.spacing().name()).toList());
        Sidebands slow = all.get(1);
        assertEquals(0.7652, slow.carrier().level().in(Unit.MM_PER_S), 0.01);
        double first = 0.4401e-3 * mesh;
        assertEquals(first / (mesh - 2 * Math.PI * output), slow.lower(), 0.01e-3);
        assertEquals(first / (mesh + 2 * Math.PI * output), slow.upper(), 0.01e-3);
        assertTrue(slow.pairs() >= 3, slow.toString());
        assertEquals(0, all.get(0).pairs(), "none at the other shaft");
        assertEquals(0, pattern.sidebands().stream().filter(one -> one.carrier().order() == 2).findFirst().orElseThrow()
                .pairs());
    }

    /** {@code (1 + m·cos Ωt)·cos ωt} has lines of m/2 beside it. */
    @Test
    void sidebandsOfBladesAreThoseOfAmplitudeModulation() {
        double shaft = 24.7;
        double passing = 2 * Math.PI * 7 * shaft;
        Synthesis signal = add(line(noise(6), shaft, 1, 0), t -> Math.sqrt(2) * 1e-3 * passing
                * (1 + 0.5 * Math.cos(2 * Math.PI * shaft * t)) * Math.cos(passing * t));
        Sidebands blades = pattern(machine(shaft, DriveTrain.plain().withBlades(7)), signal.waveform()).sidebands()
                .get(0);
        assertEquals(1, blades.pairs());
        assertEquals(0.25e-3 * 7 / 6, blades.lower(), 0.005e-3);
        assertEquals(0.25e-3 * 7 / 8, blades.upper(), 0.005e-3);
    }

    @Test
    void halvesStandWhereTheyAre() {
        double shaft = 24.7;
        LinePattern pattern = pattern(machine(shaft, DriveTrain.plain()),
                line(line(line(noise(6), shaft, 2, 0), shaft / 2, 0.3, 40), 2.5 * shaft, 0.2, 10).waveform());
        assertEquals(List.of(true, false, true, false), pattern.halves().stream().map(NamedLine::stands).toList());
        assertEquals(0.3, pattern.halves().get(0).level().in(Unit.MM_PER_S), 0.01);
    }

    /** {@code 1 + a·cos} has the standard deviation a/√2 over its mean; blocks of 12 turns take 1 % off 0.3 Hz. */
    @Test
    void anAmplitudeThatWandersIsMeasured() {
        double shaft = 24.7;
        double omega = 2 * Math.PI * shaft;
        for (double depth : new double[] {0, 0.3}) {
            LinePattern pattern = pattern(machine(shaft, DriveTrain.plain()), add(noise(10), t -> 3e-3 * omega
                    * (1 + depth * Math.cos(2 * Math.PI * 0.3 * t)) * Math.cos(omega * t)).waveform());
            assertEquals(depth / Math.sqrt(2), pattern.wander().orElseThrow(), 0.015);
        }
        assertTrue(pattern(machine(shaft, DriveTrain.plain()), line(noise(1.5), shaft, 3, 0).waveform()).wander()
                .isEmpty());
    }

    /** At speed that drifts the phase turns, and the size stays: nothing that the machine did beside turning. */
    @Test
    void aSpeedThatDriftsIsNoWander() {
        double shaft = 24.7;
        LinePattern pattern = pattern(machine(shaft, DriveTrain.plain()), add(noise(10), t -> {
            double speed = 2 * Math.PI * shaft;
            return 3e-3 * speed * Math.cos(speed * (t + 1e-3 * Math.cos(2 * Math.PI * 0.2 * t)));
        }).waveform());
        assertTrue(pattern.wander().orElseThrow() < 0.02, pattern.wander().toString());
    }

    /** A cosine and its second multiple of half the size, in phase: 0.75·0.5 over 0.625^1.5 = 0.759. */
    @Test
    void aFlattenedWaveIsSkew() {
        double shaft = 24.713;
        assertEquals(0.759, flattening(90), 0.01, "velocity of 2× in phase");
        assertEquals(0, flattening(0), 0.01, "a quarter turn apart: both sides alike");
        assertTrue(pattern(machine(shaft, DriveTrain.plain()), line(noise(0.7), shaft, 3, 0).waveform()).flattening()
                .isEmpty());
    }

    private static double flattening(double degrees) {
        double shaft = 24.713;
        return pattern(machine(shaft, DriveTrain.plain()),
                line(line(noise(6), shaft, 2, 90), 2 * shaft, 1, 90 + degrees).waveform()).flattening().orElseThrow();
    }

    @Test
    void knocksOnceInATurnBelongToTheirShaft() {
        DriveTrain train = DriveTrain.plain().withGear(GearStage.of("stage 1", List.of(23, 71)));
        double output = 25 * 23 / 71.0;
        Synthesis base = Synthesis.silence(Quantity.ACCELERATION, 12_800, 76_800).noise(0.5, 5);
        Waveform tooth = base.impacts(ImpactTrain.of(output, 30, 3000, 0.05), 5).tone(1, 25, 0).waveform();
        List<LinePattern.TurnKnocks> knocks = pattern(machine(25, train), tooth).knocks();
        LinePattern.TurnKnocks slow = knocks.stream().filter(one -> one.shaft().owner().equals("output of stage 1"))
                .findFirst().orElseThrow();
        LinePattern.TurnKnocks fast = knocks.stream().filter(one -> one.shaft().owner().equals("shaft speed"))
                .findFirst().orElseThrow();
        assertTrue(slow.share() > 0.5 && slow.multiples() >= 10, slow.toString());
        assertTrue(fast.share() < 0.05 && fast.multiples() == 0, fast.toString());
        pattern(machine(25, train), base.tone(1, 25, 0).waveform()).knocks().forEach(one -> assertTrue(
                one.share() < 0.02 && one.multiples() == 0, one.toString()));
    }

    /** White noise of standard deviation σ has {@code σ·√(2·width/fs)} in a band. */
    @Test
    void noiseOfOctavesIsThatOfWhiteNoise() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, RATE, 8 * RATE).noise(2, 3).tone(30, 250, 0)
                .waveform();
        List<LinePattern.BandNoise> noise = pattern(machine(24.7, DriveTrain.plain()), wave).noise();
        assertTrue(noise.size() >= 7, noise.toString());
        for (LinePattern.BandNoise one : noise) {
            if (one.band().lowestHertz() > 80) {
                assertEquals(2 * Math.sqrt(2 * one.band().widthHertz() / RATE), one.rms(), 0.08 * one.rms());
            }
        }
        assertFalse(noise.stream().anyMatch(one -> one.band().highestHertz() > RATE / 2.0));
    }
}
