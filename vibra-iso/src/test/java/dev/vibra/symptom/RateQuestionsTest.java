package dev.vibra.symptom;

import static dev.vibra.symptom.Bench.fan;
import static dev.vibra.symptom.Bench.line;
import static dev.vibra.symptom.Bench.orders;
import static dev.vibra.symptom.Site.Kind.BELT;
import static dev.vibra.symptom.Site.Kind.BLADES;
import static dev.vibra.symptom.Site.Kind.GEAR;
import static dev.vibra.symptom.Site.Kind.MOTOR;

import dev.vibra.machine.Belt;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.Motor;
import dev.vibra.quantity.Quantity;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Lines of rates, of known size. The motor has 4 poles and a slip of 3/4 Hz at 51.5 Hz: it turns at 25 Hz. */
class RateQuestionsTest {
    private static final double LINE = 51.5;
    private static final double TWICE = 103;
    /** 17 teeth on the main shaft. */
    private static final double MESH = 17 * 25;
    private static final double WHEEL = MESH / 53;
    /** {@code π·0.2/2.4·25} Hz. */
    private static final double BELT_RATE = Math.PI * 0.2 / 2.4 * 25;

    private static Bench motor(Synthesis signal) {
        return Bench.of(fan().withTrain(DriveTrain.plain().withMotor(Motor.unknown().withPoles(4)).withLineHertz(LINE)))
                .with("M-H", signal);
    }

    private static Bench gear(Synthesis signal) {
        return Bench.of(fan().withTrain(DriveTrain.plain().withGear(GearStage.of("stage 1", List.of(17, 53)))))
                .with("G-H", signal);
    }

    private static Bench blades(Synthesis signal) {
        return Bench.of(fan().withTrain(DriveTrain.plain().withBlades(6))).with("F-H", signal);
    }

    private static Bench belt(Synthesis signal) {
        return Bench.of(fan().withTrain(DriveTrain.plain().withBelt(Belt.of("belt", 2.4, 0.2, 0.31))))
                .with("F-H", signal);
    }

    @Test
    void aRateIsHighFromSevenTenthsOfTheBoundaryOn() {
        motor(line(orders(1), TWICE, 2.1, 0)).seen("rate-high twice-line", MOTOR, "M-H");
        motor(line(orders(1), TWICE, 1.8, 0)).notSeen("rate-high twice-line", MOTOR);
        gear(line(orders(1), 2 * MESH, 2.1, 0)).seen("rate-high mesh", GEAR, "G-H");
        gear(line(orders(1), 3 * MESH, 9, 0)).notSeen("rate-high mesh", GEAR); // Above 1000 Hz, which isn't limited.
        blades(line(orders(1), 150, 2.1, 0)).seen("rate-high blades", BLADES, "F-H");
        belt(line(orders(1), 2 * BELT_RATE, 2.1, 0)).seen("rate-high belt", BELT, "F-H");
    }

    @Test
    void withoutALineFrequencyNothingIsSaidOfTheMotor() {
        Bench unknown = Bench.of(fan().withTrain(DriveTrain.plain().withMotor(Motor.unknown().withPoles(4))))
                .with("M-H", line(orders(1), TWICE, 2.1, 0));
        for (String asks : List.of("rate-high twice-line", "rate-leads twice-line", "sidebands twice-line shaft 1",
                "sidebands-line 1 pole-pass 1")) {
            unknown.notMeasured(asks, MOTOR);
        }
    }

    @Test
    void aRateLeadsWhereItIsTheLargestLine() {
        motor(line(orders(1), TWICE, 1.2, 0)).seen("rate-leads twice-line", MOTOR, "M-H");
        motor(line(orders(1), TWICE, 0.8, 0)).notSeen("rate-leads twice-line", MOTOR);
        gear(line(orders(1), MESH, 1.2, 0)).seen("rate-leads mesh", GEAR, "G-H");
        gear(line(orders(1), MESH, 0.8, 0)).notSeen("rate-leads mesh", GEAR);
        blades(line(orders(1), 300, 1.2, 0)).seen("rate-leads blades", BLADES, "F-H");
        belt(line(orders(1), BELT_RATE * 2, 1.2, 0)).seen("rate-leads belt", BELT, "F-H");
    }

    @Test
    void aRateRoseWhereItsMultiplesDoubledTogether() {
        gear(line(orders(1), MESH, 0.9, 0)).before("G-H", line(orders(1), MESH, 0.4, 0))
                .seen("rate-rose mesh", GEAR, "G-H");
        gear(line(orders(1), MESH, 0.7, 0)).before("G-H", line(orders(1), MESH, 0.4, 0))
                .notSeen("rate-rose mesh", GEAR);
        gear(line(orders(3), MESH, 0.2, 0)).before("G-H", orders(3)).notSeen("rate-rose mesh", GEAR);
        gear(line(orders(1), MESH, 0.9, 0)).notMeasured("rate-rose mesh", GEAR);
        motor(line(orders(1), TWICE, 0.9, 0)).before("M-H", line(orders(1), TWICE, 0.4, 0))
                .seen("rate-rose twice-line", MOTOR, "M-H");
    }

    @Test
    void multiplesOfTheMeshAreHeldAgainstIt() {
        gear(line(line(orders(1), MESH, 0.5, 0), 2 * MESH, 0.6, 0)).seen("rate-multiples mesh", GEAR, "G-H");
        gear(line(line(orders(1), MESH, 0.5, 0), 3 * MESH, 0.4, 0)).notSeen("rate-multiples mesh", GEAR);
        gear(line(line(orders(5), MESH, 0.1, 0), 2 * MESH, 0.2, 0)).notSeen("rate-multiples mesh", GEAR);
        MachineDescription fast =
                fan().withTrain(DriveTrain.plain().withGear(GearStage.of("stage 1", List.of(97, 53))));
        Bench.of(fast).with("G-H", line(orders(1), 97 * 25, 0.5, 0)).notMeasured("rate-multiples mesh", GEAR);
    }

    @Test
    void aFamilyOfTheBeltIsTwoOfItsMultiples() {
        belt(line(line(orders(1), BELT_RATE, 0.3, 0), 2 * BELT_RATE, 0.3, 0))
                .seen("rate-family belt 2 0.2", BELT, "F-H");
        belt(line(line(orders(1), BELT_RATE, 0.1, 0), 2 * BELT_RATE, 0.3, 0)).notSeen("rate-family belt 2 0.2", BELT);
        MachineDescription locked =
                fan().withTrain(DriveTrain.plain().withBelt(Belt.of("belt", Math.PI * 0.4, 0.2, 0.3)));
        Bench.of(locked).with("F-H", line(orders(1, 1), 12.5, 0.3, 0)).notMeasured("rate-family belt 2 0.2", BELT);
    }

    /** {@code (1 + d·cos)·carrier} has two lines of half the depth. */
    private static Synthesis modulated(double hertz, double millimetres, double spacing, double depth) {
        return line(line(line(orders(1), hertz, millimetres, 0), hertz - spacing, millimetres * depth / 2, 0),
                hertz + spacing, millimetres * depth / 2, 0);
    }

    @Test
    void linesBesideTheMeshBelongToAWheel() {
        gear(modulated(MESH, 0.5, WHEEL, 0.7)).seen("sidebands mesh shaft 1 0.3", GEAR, "G-H");
        gear(modulated(MESH, 0.5, 25, 0.7)).seen("sidebands mesh shaft 1 0.3", GEAR, "G-H");
        gear(modulated(MESH, 0.5, 25, 0.5)).notSeen("sidebands mesh shaft 1 0.3", GEAR);
        gear(modulated(MESH, 0.5, 25, 0.7)).notSeen("sidebands mesh shaft 3 0.05", GEAR);
        gear(orders(1)).notMeasured("sidebands mesh shaft 1 0.3", GEAR);
        blades(modulated(150, 0.5, 25, 0.7)).seen("sidebands blades shaft 1 0.3", BLADES, "F-H");
    }

    @Test
    void linesBesideTheMeshRoseTogether() {
        gear(modulated(MESH, 0.5, 25, 0.7)).before("G-H", modulated(MESH, 0.5, 25, 0.2))
                .seen("sidebands-rose mesh", GEAR, "G-H");
        gear(modulated(MESH, 0.5, 25, 0.3)).before("G-H", modulated(MESH, 0.5, 25, 0.2))
                .notSeen("sidebands-rose mesh", GEAR);
        gear(modulated(MESH, 0.5, 25, 0.7)).notMeasured("sidebands-rose mesh", GEAR);
    }

    /** Poles pass at 103 - 4·25 = 3 Hz. */
    @Test
    void linesOfTheMotorStandBesideTheSpeedAndTwiceTheLineFrequency() {
        motor(line(line(line(orders(1), 22, 0.2, 0), 28, 0.2, 0), TWICE, 0.5, 0))
                .seen("sidebands-line 1 pole-pass 1", MOTOR, "M-H");
        motor(line(orders(1), TWICE, 0.5, 0)).notSeen("sidebands-line 1 pole-pass 1", MOTOR);
        motor(modulated(TWICE, 0.5, 25, 0.3)).seen("sidebands twice-line shaft 1", MOTOR, "M-H");
        motor(line(orders(1), TWICE, 0.5, 0)).notSeen("sidebands twice-line shaft 1", MOTOR);
    }

    /** A knock of 60 m/s² that rings at 2 kHz in each turn of the wheel; without it there is smooth noise. */
    @Test
    void aWheelKnocksOnceInItsTurn() {
        Synthesis noisy = orders(1).noise(1, 3);
        gear(noisy.impacts(ImpactTrain.of(WHEEL, 30, 2000, 0.05), 1)).seen("knocks shaft", GEAR, "G-H");
        gear(noisy.impacts(ImpactTrain.of(25, 20, 2000, 0.05), 1)).seen("knocks shaft", GEAR, "G-H");
        gear(noisy).notSeen("knocks shaft", GEAR);
        gear(noisy.impacts(ImpactTrain.of(37.3, 20, 2000, 0.05).withJitter(0.005), 1)).notSeen("knocks shaft", GEAR);
        gear(line(Synthesis.silence(Quantity.VELOCITY, 6400, 51200).noise(1e-5, 1), 25, 1, 0))
                .notMeasured("knocks shaft", GEAR);
    }
}
