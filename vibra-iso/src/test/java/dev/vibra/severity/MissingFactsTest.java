package dev.vibra.severity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.RotationSpeed;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A choice that can't be made names all that is missing at once, by the rules of the tables. */
class MissingFactsTest {
    private static final Machine PUMP = Machine.of(MachineKind.PUMP);
    private static final RotationSpeed SPEED = RotationSpeed.ofRevolutionsPerMinute(1480);

    private static Choice ask(Machine machine, String standard) {
        return CriterionTables.shipped().choose(machine, CriterionRequest.of(standard));
    }

    @Test
    void whatIsAssumedIsNamedBesideWhatIsMissing() {
        Machine blower = Machine.of(MachineKind.BLOWER);
        assertEquals("ISO 20816-3:2022 can't be applied without rated power; not given either, but not needed:"
                + " support", Severity.of(blower.withSpeed(SPEED)).choice().reason());
        assertEquals("ISO 20816-3:2022 can't be applied without rated power",
                Severity.of(blower.withSpeed(SPEED).withSupport(Support.RIGID)).choice().reason());
        assertEquals("ISO 10816-7:2009 can't be applied without rated power; not given either, but not needed: speed",
                Severity.of(PUMP).choice().reason());
    }

    @Test
    void oneOfTwoFactsIsEnoughForAnElectricalMachine() {
        Machine motor = Machine.of(MachineKind.ELECTRIC_MOTOR).withSpeed(SPEED).withSupport(Support.RIGID);
        Choice choice = Severity.of(motor).choice();
        assertEquals("ISO 20816-3:2022 can't be applied without shaft height or rated power", choice.reason());
        assertEquals(List.of("shaft height", "rated power"), choice.missing());
        assertTrue(Severity.of(motor.withShaftHeightMillimetres(225)).choice().hasCriterion());
        assertTrue(Severity.of(motor.withRatedPowerKilowatts(37)).choice().hasCriterion());
    }

    @Test
    void speedAndPowerOfAGeneratingSetAreAskedForTogether() {
        Machine set = Machine.of(MachineKind.GENERATING_SET);
        assertEquals(List.of("speed", "rated power"), ask(set, "ISO 8528-9").missing());
        assertEquals(List.of("place of measurement"),
                ask(set.withSpeed(SPEED).withRatedPowerKilowatts(150), "ISO 8528-9").undecided());
    }

    @Test
    void aDutyWithoutAGroupAtThisPowerIsRefused() {
        CriterionTables own = CriterionTables.parse("""
                [standards]
                standard | title
                Plant:1  | fans of the plant
                [scope]
                standard | kinds | power kW | speed r/min
                Plant:1  | fan   | any      | any
                [classes]
                standard | class | kinds | power kW | shaft height mm | support | chosen     | remark
                Plant:1  | P     | fan   | any      | any             | any     | on request |
                [bands]
                standard | speed r/min | band Hz
                Plant:1  | any         | 10 to 1000
                [limits]
                standard | clause | class | support | quantity | detector | unit | A/B | B/C | C/D | confidence | note
                Plant:1  | 1      | P     | any     | velocity | rms      | mm/s | 1   | 2   | 4   | firm       |
                [duties]
                standard | duty  | power kW | group
                Plant:1  | dryer | <= 10    | P
                """);
        CriterionRequest dryer = CriterionRequest.of("Plant").withDuty("dryer");
        Machine fan = Machine.of(MachineKind.FAN);
        assertTrue(own.choose(fan.withRatedPowerKilowatts(10), dryer).hasCriterion());
        assertEquals("request Plant, duty dryer refused: Plant:1 has no group for that duty at this power",
                own.choose(fan.withRatedPowerKilowatts(10.1), dryer).reason());
    }

    @Test
    void tablesWithoutAStandardSaySo() {
        assertEquals("no criterion applies by itself to a machine of kind pump",
                CriterionTables.parse("").choose(PUMP).reason());
    }

    @Test
    void limitsThatFollowTheSpeedAskForItAtOnce() {
        CriterionRequest shaft = CriterionRequest.of("ISO 20816-3").withGroup("shaft relative");
        Choice choice = CriterionTables.shipped().choose(Machine.unknown().withKind(MachineKind.COMPRESSOR), shaft);
        assertFalse(choice.hasCriterion());
        assertTrue(choice.missing().contains("speed"), choice::toString);
    }

    @Test
    void whyAnotherStandardDoesNotHoldIsSaidToo() {
        Machine small = Machine.of(MachineKind.ELECTRIC_MOTOR).withShaftHeightMillimetres(159).withSpeed(SPEED);
        assertEquals("ISO 10816-1:1995 can't be applied without rated power; ISO 20816-3:2022 has no group or class"
                + " for shaft height 159 mm", Severity.of(small).choice().reason());
    }
}
