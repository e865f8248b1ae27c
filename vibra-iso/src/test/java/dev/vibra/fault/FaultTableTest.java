package dev.vibra.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.machine.Belt;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.Motor;
import dev.vibra.measuring.Direction;
import dev.vibra.symptom.Site;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class FaultTableTest {
    private static final String HEAD = """
            [symptoms]
            code | site | asks | seen as | by | effort
            hot | shaft | test | it is hot | a thermometer | running
            [faults]
            id | words | site | on | urgency | explains | mimics | source
            """;

    private static void fails(String text, String message) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, () -> FaultTable.parse(text)).getMessage());
    }

    @Test
    void errorsNameLineAndColumn() {
        fails(HEAD + "fever | fever | shafts | any | by level | level | fever | a book",
                "table of faults, line 6: column 'site': site must be a kind of site: shafts");
        fails(HEAD + "fever | fever | shaft | any | soon | level | fever | a book",
                "table of faults, line 6: column 'urgency': urgency must be one of by level, plan, watch: soon");
        fails(HEAD + "fever | fever | shaft | any | plan | level | chill | a book",
                "mimics of fever must be ids of faults: chill");
        fails(HEAD + "fever | fever | shaft | any | plan | level | fever | a book\n"
                + "fever | fever | shaft | any | plan | level | fever | a book", "fault must be given once only: fever");
        fails(HEAD.replace("| running", "| lifting"), "table of faults, line 3: column 'effort': effort must be one of"
                + " running, operation, stop: lifting");
    }

    /** The codes that results are stored under; one that is taken away would orphan them. */
    @Test
    void standardTableHoldsTheCodesOfStoredResults() {
        Set<String> codes = FaultTable.standard().faults().stream().map(Fault::code).collect(Collectors.toSet());
        assertTrue(codes.containsAll(Set.of("unbalance", "misalignment", "looseness", "rub", "resonance", "gear-mesh",
                "gear-tooth", "rolling-bearing-outer-race", "rolling-bearing-inner-race", "belt", "vane-passing",
                "rolling-bearing-rolling-element", "rolling-bearing-cage", "twice-line-frequency")), () -> "" + codes);
    }

    /** What stops a machine or loosens a bolt is never asked of a running one. */
    @Test
    void nothingIsTouchedOnARunningMachine() {
        for (Symptom symptom : FaultTable.standard().symptoms()) {
            boolean touches = symptom.by().matches(".*(eased|torque wrench|by hand|uncoupled|inspection cover|dial gauge).*");
            assertTrue(!touches || symptom.effort() == Effort.STOP, symptom::toString);
        }
        for (Fault fault : FaultTable.standard().faults()) {
            List<Confirmation> confirmations = FaultTable.standard().confirmations(fault.code());
            assertFalse(confirmations.isEmpty(), fault::id);
            confirmations.forEach(one -> assertTrue(one.effort() == Effort.STOP || !one.measurement()
                    .matches(".*(eased|by hand|uncoupled|inspection cover|dial gauge).*"), one::toString));
        }
        assertTrue(Effort.STOP.caution().contains("isolated"));
    }

    @Test
    void faultsSitOnWhatAMachineHas() {
        MachineDescription fan = MachineDescription.of("Fan")
                .withPoint(MeasuringPoint.of("DE-H").withDirection(Direction.HORIZONTAL))
                .withPoint(MeasuringPoint.of("DE-V").withDirection(Direction.VERTICAL));
        FaultTable table = FaultTable.standard();
        assertEquals(1, table.sitesOf(table.fault("unbalance/static"), fan).size());
        assertEquals(List.of(), table.sitesOf(table.fault("unbalance/couple"), fan));
        assertEquals(List.of(), table.sitesOf(table.fault("eccentric-pulley"), fan));
        assertEquals(List.of(), table.sitesOf(table.fault("broken-rotor-bars"), fan));
        MachineDescription more = fan.withPoint(MeasuringPoint.of("NDE-H").withDirection(Direction.HORIZONTAL))
                .withTrain(DriveTrain.plain().withBelt(Belt.of("belt", 2.4, 0.2, 0.3)).withMotor(Motor.unknown().withPoles(4)));
        assertEquals(1, table.sitesOf(table.fault("unbalance/couple"), more).size());
        assertFalse(table.sitesOf(table.fault("eccentric-pulley"), more).isEmpty());
        assertEquals(List.of(Site.Kind.MOTOR), table.sitesOf(table.fault("broken-rotor-bars"), more).stream()
                .map(Site::kind).toList());
    }
}
