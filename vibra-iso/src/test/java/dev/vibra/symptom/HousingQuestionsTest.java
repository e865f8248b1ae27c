package dev.vibra.symptom;

import static dev.vibra.symptom.Bench.fan;
import static dev.vibra.symptom.Bench.orders;
import static dev.vibra.symptom.Bench.quiet;
import static dev.vibra.symptom.Site.Kind.COUPLING;
import static dev.vibra.symptom.Site.Kind.SHAFT;

import dev.vibra.machine.CoupledParts;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachinePart;
import dev.vibra.severity.Coupling;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.synthesis.Synthesis;
import org.junit.jupiter.api.Test;

/** Comparisons of sizes between points; sizes are those of the sines that the recordings are made of. */
class HousingQuestionsTest {
    private static Bench pair(String first, Synthesis one, String second, Synthesis other) {
        return Bench.of(fan()).with(first, one).with(second, other);
    }

    static MachineDescription pumpSet() {
        return fan().withTrain(DriveTrain.plain().withCoupling(new CoupledParts("motor", "pump", Coupling.FLEXIBLE)))
                .withPart(MachinePart.of("motor", Machine.of(MachineKind.ELECTRIC_MOTOR)))
                .withPart(MachinePart.of("pump", Machine.of(MachineKind.PUMP)));
    }

    private static Bench set(Synthesis motorRadial, Synthesis motorAxial, Synthesis pumpRadial, Synthesis pumpAxial) {
        return Bench.of(pumpSet()).with(Bench.point("M-DE-H").withPart("motor"), motorRadial)
                .with(Bench.point("M-DE-A").withPart("motor"), motorAxial)
                .with(Bench.point("P-DE-H").withPart("pump"), pumpRadial)
                .with(Bench.point("P-DE-A").withPart("pump"), pumpAxial);
    }

    @Test
    void theAxialLineIsHeldAgainstTheRadialOneOfItsHousing() {
        pair("B-H", orders(1), "B-A", orders(0.55)).seen("axial 1 0.5", SHAFT, "B-A");
        pair("B-H", orders(1), "B-A", orders(0.45)).notSeen("axial 1 0.5", SHAFT);
        pair("B-H", orders(1), "C-A", orders(0.55)).notMeasured("axial 1 0.5", SHAFT);
        pair("B-H", quiet(1), "B-A", quiet(2)).notMeasured("axial 1 0.5", SHAFT);
    }

    @Test
    void oneRadialDirectionIsHeldAgainstTheOther() {
        pair("B-H", orders(1), "B-V", orders(3.2)).seen("directional 1 3", SHAFT, "B-V");
        pair("B-H", orders(1), "B-V", orders(2.8)).notSeen("directional 1 3", SHAFT);
        pair("B-H", orders(1), "C-V", orders(3.2)).notMeasured("directional 1 3", SHAFT);
        pair("B-H", orders(1), "B-V", quiet(1)).seen("directional 1 3", SHAFT, "B-H");
        pair("B-H", quiet(1), "B-V", quiet(2)).notMeasured("directional 1 3", SHAFT);
    }

    @Test
    void oneHousingIsHeldAgainstAllOthers() {
        pair("B-H", orders(1), "C-H", orders(3.2)).with("D-H", orders(0.5)).seen("local 1 3", SHAFT, "C-H");
        pair("B-H", orders(1), "C-H", orders(3.2)).with("D-H", orders(1.5)).notSeen("local 1 3", SHAFT);
        pair("B-H", orders(1), "B-V", orders(3.2)).notMeasured("local 1 3", SHAFT);
        pair("B-H", orders(1), "C-V", orders(3.2)).notMeasured("local 1 3", SHAFT);
    }

    @Test
    void bothSidesOfACouplingMustShowOneOfTheTwo() {
        set(orders(1, 0.6), orders(0.1), orders(1), orders(0.6))
                .seen("both-sides 2 1 0.5", COUPLING, "M-DE-H", "P-DE-A");
        set(orders(1, 0.6), orders(0.6), orders(1), orders(0.1)).notSeen("both-sides 2 1 0.5", COUPLING);
        Bench.of(pumpSet()).with(Bench.point("M-DE-H").withPart("motor"), orders(1, 0.6))
                .with(Bench.point("P-DE-H").withPart("pump"), orders(1)).notMeasured("both-sides 2 1 0.5", COUPLING);
    }
}
