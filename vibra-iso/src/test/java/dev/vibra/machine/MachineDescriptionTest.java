package dev.vibra.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import java.util.Map;
import org.junit.jupiter.api.Test;

class MachineDescriptionTest {
    private static MachineDescription set() {
        return MachineDescription.of("set").withMachine(Machine.unknown().withSpeed(RotationSpeed.ofHertz(25)))
                .withTrain(DriveTrain.plain().withShaft("motor", 2))
                .withPart(MachinePart.of("motor", Machine.of(MachineKind.ELECTRIC_MOTOR)).onShaft("motor"))
                .withPart(MachinePart.of("fan", Machine.of(MachineKind.FAN)));
    }

    @Test
    void aPointTurnsWithItsShaftOrElseWithThatOfItsPart() {
        MachineDescription set = set();
        assertEquals(2, set.ratioAt(MeasuringPoint.of("1").withPart("motor")));
        assertEquals(2, set.ratioAt(MeasuringPoint.of("2").withPart("fan").withShaft("motor")));
        assertEquals(1, set.ratioAt(MeasuringPoint.of("3").withPart("fan")));
        assertEquals(1, set.ratioAt(MeasuringPoint.of("4")));
    }

    @Test
    void aChainChangesNothingThatWasHandedOut() {
        MachineDescription before = set();
        MachineDescription after = before.withPoint(MeasuringPoint.of("P")).withBaseline("P", Map.of("kurtosis", 3.0))
                .withFaulty(MachineDescription.Fact.SPEED);
        assertEquals(0, before.points().size());
        assertEquals(0, before.faulty().size());
        assertEquals(Map.of("kurtosis", 3.0), after.baseline("P"));
        assertEquals(Map.of(), after.baseline("Q"));
    }

    @Test
    void whatIsNotThereIsRefused() {
        MachineDescription set = set();
        assertThrows(IllegalArgumentException.class, () -> MachineDescription.of(" "));
        assertThrows(IllegalArgumentException.class, () -> set.withPoint(MeasuringPoint.of("P").withPart("gear")));
        assertThrows(IllegalArgumentException.class, () -> set.withPoint(MeasuringPoint.of("P").withShaft("gear")));
        MachineDescription one = set.withPoint(MeasuringPoint.of("P"));
        assertThrows(IllegalArgumentException.class, () -> one.withPoint(MeasuringPoint.of("P")));
        assertThrows(IllegalArgumentException.class, () -> set.withPart(set.part("fan")));
    }
}
