package dev.vibra.symptom;

import static dev.vibra.symptom.Bench.fan;
import static dev.vibra.symptom.Bench.line;
import static dev.vibra.symptom.Bench.orders;
import static dev.vibra.symptom.Site.Kind.MACHINE;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.Motor;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.Machine;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A line at 61.3 Hz on a machine of 25 Hz belongs to it by no arithmetic. */
class StrangerQuestionsTest {
    private static final double STRANGE = 61.3;

    private static Bench with(Synthesis signal) {
        return Bench.of(fan()).with("P-H", signal);
    }

    @Test
    void aLineOfNoRateIsHighOrLeadsOrRose() {
        with(line(orders(1), STRANGE, 2.1, 0)).seen("stranger-high", MACHINE, "P-H");
        with(line(orders(1), STRANGE, 1.8, 0)).notSeen("stranger-high", MACHINE);
        with(line(orders(1), STRANGE, 1.2, 0)).seen("stranger-leads", MACHINE, "P-H");
        with(line(orders(1), STRANGE, 0.8, 0)).notSeen("stranger-leads", MACHINE);
        with(line(orders(1), STRANGE, 0.8, 0)).before("P-H", orders(1)).seen("stranger-rose", MACHINE, "P-H");
        with(line(orders(1), STRANGE, 0.8, 0)).before("P-H", line(orders(1), STRANGE, 0.5, 0))
                .notSeen("stranger-rose", MACHINE);
        with(line(orders(1), STRANGE, 0.8, 0)).notMeasured("stranger-rose", MACHINE);
    }

    @Test
    void withoutASpeedNobodyKnowsWhatBelongs() {
        Bench unknown = Bench.of(MachineDescription.of("unknown").withMachine(Machine.unknown()))
                .with("P-H", Bench.quiet(1));
        unknown.notMeasured("stranger-high", MACHINE);
        unknown.notMeasured("stranger-leads", MACHINE);
    }

    private static void belongs(MachineDescription machine, double hertz) {
        Bench.of(machine).with("P-H", line(orders(1), hertz, 2.2, 0)).notSeen("stranger-leads", MACHINE);
    }

    @Test
    void whatTheMachineMakesIsNoStranger() {
        belongs(fan(), 12.5 * 3);
        belongs(fan(), 25 * 14);
        belongs(fan(), 150); // A multiple of 50 Hz, a usual line frequency.
        belongs(fan().withTrain(DriveTrain.plain().withLineHertz(58.3)), 3 * 58.3);
        belongs(fan().withTrain(DriveTrain.plain().withShaft("fan", 0.626)), 2 * 0.626 * 25);
        // Teeth on a wheel of 25·17/53 Hz: its 9th multiple.
        belongs(fan().withTrain(DriveTrain.plain().withGear(GearStage.of("stage 1", List.of(17, 53)))),
                9 * 25 * 17 / 53.0);
        BearingData bearing = new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0), RotatingRing.INNER);
        belongs(fan().withBearing(bearing), 2 * bearing.geometry().frequencies(RotatingRing.INNER,
                RotationSpeed.ofHertz(25)).outerRaceHertz());
        // Poles of a motor of 4 pass at 103 - 100 Hz; bars of its rotor at k·25 ± 103 Hz.
        MachineDescription motor = fan().withTrain(DriveTrain.plain().withMotor(Motor.unknown().withPoles(4))
                .withLineHertz(51.5));
        belongs(motor, 28);
        belongs(motor, 22);
        belongs(motor, 28 * 25 + 103);
    }
}
