package dev.vibra.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.Belt;
import dev.vibra.machine.CoupledParts;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachinePart;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.Motor;
import dev.vibra.severity.Coupling;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.synthesis.ImpactTrain;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * Machines put together line by line, beside the forward models: each fault as handbooks describe it is in the leading
 * group, and lines that sound machines have too are no fault.
 */
class DiagnosisTest {
    private static final String[] RADIAL = {"DE-H", "DE-V", "NDE-H", "NDE-V"};

    private static void leads(String code, MachineSurvey survey) {
        assertTrue(Bench.group(survey).contains(code), () -> survey.findings() + " of " + Bench.group(survey));
    }

    private static void nothing(MachineSurvey survey) {
        assertEquals(List.of(), survey.findings());
    }

    private static Bench fan() {
        return Bench.of(MachineKind.FAN, 24.7).with(one -> one.withTrain(DriveTrain.plain().withBlades(9)))
                .housing("DE").housing("NDE").order(1, 0.5, 10, "DE-H", "NDE-H").order(1, 0.4, 100, "DE-V", "NDE-V")
                .order(2, 0.08, 0, RADIAL);
    }

    @Test
    void soundFan() {
        nothing(fan().survey());
        nothing(fan().order(9, 0.5, 40, RADIAL).survey());
    }

    @Test
    void unbalance() {
        MachineSurvey survey = fan().order(1, 4, 10, "DE-H", "NDE-H").order(1, 3.4, 100, "DE-V", "NDE-V").survey();
        leads("unbalance", survey);
        assertEquals(Rank.PLAN_REMEDY.orWorse(survey.findings().get(0).urgency()), survey.findings().get(0).urgency());
        assertTrue(survey.findings().get(0).explainsLevel());
        assertTrue(survey.unexplained().isEmpty(), () -> "" + survey.unexplained());
    }

    @Test
    void vanePassing() {
        MachineSurvey survey = fan().order(9, 4.2, 40, "DE-H", "DE-V", "DE-A").survey();
        assertEquals("vane-passing", survey.findings().get(0).code());
        assertTrue(survey.findings().get(0).confidence() > 0.5, () -> "" + survey.findings());
    }

    private static Bench motor(int poles, double hertz) {
        return Bench.of(MachineKind.ELECTRIC_MOTOR, hertz).with(one -> one.withTrain(DriveTrain.plain()
                .withMotor(Motor.unknown().withPoles(poles)).withLineHertz(50)))
                .housing("DE").housing("NDE").order(1, 0.5, 10, "DE-H", "NDE-H").order(1, 0.4, 100, "DE-V", "NDE-V")
                .order(2, 0.1, 0, RADIAL).line(100, 0.2, 50, RADIAL);
    }

    @Test
    void twiceLineFrequency() {
        nothing(motor(4, 24.7).survey());
        nothing(motor(4, 24.7).line(100, 0.4, 50, RADIAL).survey());
        leads("twice-line-frequency", motor(4, 24.7).line(100, 3.8, 50, RADIAL).survey());
        // A 2-pole motor at 2964 r/min: 2× lies 1.2 Hz below 100 Hz, and 8 s part them.
        leads("twice-line-frequency", motor(2, 49.4).line(100, 3.8, 50, RADIAL).survey());
        assertFalse(Bench.group(motor(2, 49.4).order(2, 3.8, 50, RADIAL).survey()).contains("twice-line-frequency"));
    }

    /** The motor pulls, and what stands on one base with it resonates: its own points are quiet. */
    @Test
    void twiceLineFrequencyAtTheDrivenPart() {
        UnaryOperator<MachineDescription> mains = one -> one.withTrain(one.train().withLineHertz(50)
                .withMotor(Motor.unknown().withPoles(4)));
        Bench pump = pumpSet().with(mains).line(100, 0.3, 0, "M-DE-H", "M-NDE-H");
        nothing(pump.survey());
        leads("twice-line-frequency", pump.line(100, 9, 30, "P-DE-H").survey());
    }

    @Test
    void brokenBars() {
        // 2·50 Hz − 4·24.7 Hz: the pole-pass rate is 1.2 Hz.
        Bench motor = motor(4, 24.7);
        for (int pair = 1; pair <= 2; pair++) {
            motor.line(24.7 + 1.2 * pair, 0.2 / pair, 20, RADIAL).line(24.7 - 1.2 * pair, 0.2 / pair, 70, RADIAL);
        }
        leads("broken-rotor-bars", motor.survey());
    }

    private static Bench gear() {
        return Bench.of(MachineKind.GEARBOX, 24.7)
                .with(one -> one.withTrain(DriveTrain.plain().withGear(GearStage.of("stage 1", List.of(23, 71)))))
                .housing("DE").housing("NDE").order(1, 0.5, 10, "DE-H", "NDE-H").order(1, 0.4, 100, "DE-V", "NDE-V")
                .order(23, 0.4, 30, RADIAL).order(46, 0.15, 70, RADIAL);
    }

    @Test
    void gears() {
        nothing(gear().survey());
        Bench worn = gear().order(23, 2.5, 30, RADIAL).order(46, 3.5, 70, RADIAL);
        leads("gear-mesh", worn.survey());
        Bench tooth = gear();
        for (int pair = 1; pair <= 6; pair++) {
            tooth.order(23 + pair, 0.2, 20 * pair, RADIAL).order(23 - pair, 0.2, 50 * pair, RADIAL);
        }
        for (String point : RADIAL) {
            tooth.signal(point, one -> one.impacts(ImpactTrain.of(24.7, 10, 2100, 0.05), 5));
        }
        leads("gear-tooth", tooth.survey(gear().recordings()));
    }

    @Test
    void belt() {
        // π·0.2 m/2.4 m times 24.7 Hz: the belt goes round 6.466 times a second.
        Bench fan = Bench.of(MachineKind.FAN, 24.7).with(one -> one.withTrain(DriveTrain.plain()
                .withBelt(Belt.of("belt", 2.4, 0.2, 0.3)))).housing("DE").housing("NDE")
                .order(1, 0.5, 10, "DE-H", "NDE-H").order(1, 0.4, 100, "DE-V", "NDE-V");
        nothing(fan.survey());
        double belt = Math.PI * 0.2 / 2.4 * 24.7;
        leads("belt", fan.line(2 * belt, 3.5, 0, RADIAL).line(3 * belt, 1, 0, RADIAL).line(4 * belt, 0.8, 0, RADIAL)
                .survey());
    }

    private static Bench pumpSet() {
        Machine motor = Machine.of(MachineKind.ELECTRIC_MOTOR).withRatedPowerKilowatts(37).withSupport(Support.RIGID);
        Machine pump = Machine.of(MachineKind.PUMP).withRatedPowerKilowatts(37).withSupport(Support.RIGID);
        UnaryOperator<MeasuringPoint> towards = one -> axes(one, "towards the coupling");
        UnaryOperator<MeasuringPoint> away = one -> axes(one, "away from the coupling");
        return Bench.of(MachineKind.PUMP, 24.7).with(one -> one.withPart(MachinePart.of("motor", motor))
                .withPart(MachinePart.of("pump", pump)).withTrain(DriveTrain.plain()
                        .withCoupling(new CoupledParts("motor", "pump", Coupling.FLEXIBLE)).withBlades(7)))
                .housing("M-NDE", one -> away.apply(one.withPart("motor")))
                .housing("M-DE", one -> towards.apply(one.withPart("motor")))
                .housing("P-DE", one -> towards.apply(one.withPart("pump")))
                .order(1, 0.5, 10, "M-NDE-H", "M-DE-H", "P-DE-H").order(1, 0.4, 100, "M-NDE-V", "M-DE-V", "P-DE-V")
                .order(7, 0.4, 30, "P-DE-H", "P-DE-V", "P-DE-A");
    }

    private static MeasuringPoint axes(MeasuringPoint point, String axial) {
        return point.withPositiveAxis(point.isAxial() ? axial : point.id().endsWith("H") ? "0" : "90");
    }

    @Test
    void misalignment() {
        nothing(pumpSet().survey());
        // Both axial sensors look at the coupling: parts that move against each other give the same sign.
        MachineSurvey angular = pumpSet().order(1, 3, 20, "M-DE-A").order(1, 3.2, 30, "P-DE-A")
                .order(2, 1.5, 50, "M-DE-A", "P-DE-A").order(2, 1.2, 50, "M-DE-H", "P-DE-H").survey();
        assertEquals("misalignment", angular.findings().get(0).code());
        MachineSurvey parallel = pumpSet().order(2, 3.5, 20, "M-DE-H", "M-DE-V").order(2, 3.2, 190, "P-DE-H", "P-DE-V")
                .order(1, 1.5, 0, "M-DE-H").order(1, 1.5, 180, "P-DE-H").order(3, 0.5, 30, "M-DE-H", "P-DE-H").survey();
        leads("misalignment", parallel);
    }

    @Test
    void looseness() {
        Bench fan = fan();
        for (int k = 2; k <= 10; k++) {
            fan.order(k, 2.0 / Math.sqrt(k), 37 * k, "DE-H", "DE-V").order(k - 0.5, 0.5 / Math.sqrt(k), 71 * k, "DE-H",
                    "DE-V");
        }
        leads("looseness", fan.order(0.5, 0.6, 0, "DE-H", "DE-V").order(1, 3, 0, "DE-H", "DE-V").survey());
    }

    @Test
    void bearing() {
        BearingData bearing = new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0), RotatingRing.INNER);
        // Outer race of the published geometry: 3.5848 times the speed.
        Bench fan = Bench.of(MachineKind.FAN, 24.7).with(one -> one.withBearing(bearing))
                .housing("DE", point -> point.withBearing("DE")).order(1, 0.5, 10, "DE-H").order(1, 0.4, 100, "DE-V");
        for (String point : List.of("DE-H", "DE-V")) {
            fan.signal(point, one -> one.impacts(ImpactTrain.of(3.5848 * 24.7, 8, 2200, 0.05).withJitter(0.005), 3));
        }
        MachineSurvey survey = fan.survey();
        assertEquals("rolling-bearing-outer-race", survey.findings().get(0).code(), () -> "" + survey.findings());
        assertEquals(Rank.PLAN_REMEDY, survey.findings().get(0).urgency());
        assertFalse(survey.findings().get(0).explainsLevel());
    }

    @Test
    void twoFaultsAtOnce() {
        MachineSurvey survey = fan().order(1, 4, 10, "DE-H", "NDE-H").order(1, 3.4, 100, "DE-V", "NDE-V")
                .order(9, 4.2, 40, "DE-H", "DE-V", "DE-A").survey();
        leads("unbalance", survey);
        leads("vane-passing", survey);
    }

    @Test
    void lineOfANeighbour() {
        leads("foreign-line", fan().line(31.3, 4, 0, "DE-H", "DE-V").survey());
    }

    /** A level that no line carries: nothing is told, and what was looked for is said. */
    @Test
    void noiseIsNoFault() {
        Bench fan = fan();
        for (String point : RADIAL) {
            fan.signal(point, one -> one.noise(5, point.hashCode() + 1));
        }
        MachineSurvey survey = fan.survey();
        assertTrue(survey.findings().stream().allMatch(one -> one.code().contains("impuls")), () -> "" + survey.findings());
    }
}
