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
        assertEquals("not determined: ISO 20816-3:2022 can't be applied without rated power; not given either, but not"
                + " needed: support, speed", Severity.of(PUMP).choice().reason());
        assertEquals(List.of("rated power"), Severity.of(PUMP).choice().missing());
        assertEquals("not determined: ISO 20816-3:2022 can't be applied without rated power; not given either, but not"
                + " needed: support", Severity.of(PUMP.withSpeed(SPEED)).choice().reason());
        assertEquals("not determined: ISO 20816-3:2022 can't be applied without rated power",
                Severity.of(PUMP.withSpeed(SPEED).withSupport(Support.RIGID)).choice().reason());
    }

    @Test
    void oneOfTwoFactsIsEnoughForAnElectricalMachine() {
        Machine motor = Machine.of(MachineKind.ELECTRIC_MOTOR).withSpeed(SPEED).withSupport(Support.RIGID);
        Choice choice = Severity.of(motor).choice();
        assertEquals("not determined: ISO 20816-3:2022 can't be applied without shaft height or rated power",
                choice.reason());
        assertEquals(List.of("shaft height", "rated power"), choice.missing());
        assertTrue(Severity.of(motor.withShaftHeightMillimetres(225)).choice().hasCriterion());
        assertTrue(Severity.of(motor.withRatedPowerKilowatts(37)).choice().hasCriterion());
    }

    @Test
    void powerAndGroupOfAPumpAreAskedForTogether() {
        Choice choice = ask(PUMP.withSpeed(SPEED), "ISO 10816-7");
        assertEquals("not determined: ISO 10816-7:2009 can't be applied without rated power and the group, one of"
                + " category I / category II / acceptance of category I in situ, preferred range / acceptance of"
                + " category I in situ, allowable range / acceptance of category II in situ, preferred range /"
                + " acceptance of category II in situ, allowable range", choice.reason());
        assertEquals(2, choice.missing().size());
        assertTrue(CriterionTables.shipped().choose(PUMP.withSpeed(SPEED).withRatedPowerKilowatts(37),
                CriterionRequest.of("ISO 10816-7").withGroup("category I")).hasCriterion());
    }

    @Test
    void speedPowerAndGroupOfAGeneratingSetAreAskedForTogether() {
        Machine set = Machine.of(MachineKind.GENERATING_SET);
        Choice choice = ask(set, "ISO 8528-9");
        assertEquals(List.of("speed", "rated power", "the group, one of engine / generator"), choice.missing());
        assertTrue(CriterionTables.shipped().choose(
                set.withSpeed(RotationSpeed.ofRevolutionsPerMinute(1500)).withRatedPowerKilowatts(150),
                CriterionRequest.of("ISO 8528-9").withGroup("engine")).hasCriterion());
    }

    /** A fan for HVAC is BV-2 up to 3.7 kW and BV-3 above; in situ or in the workshop is asked at once. */
    @Test
    void aDutyAsksForPowerAndPlaceTogether() {
        Machine fan = Machine.of(MachineKind.FAN).withSupport(Support.RIGID);
        CriterionRequest duty = CriterionRequest.of("ISO 14694").withDuty("HVAC");
        assertEquals(List.of("rated power", "the group, one of in situ / workshop test"),
                CriterionTables.shipped().choose(fan, duty).missing());
        Choice choice = CriterionTables.shipped().choose(fan.withRatedPowerKilowatts(10), duty.withGroup("in situ"));
        assertEquals("BV-3, in situ", choice.criteria().get(0).groupLabel());
        assertEquals(List.of("rated power"),
                CriterionTables.shipped().choose(fan, duty.withGroup("in situ")).missing());
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
        assertEquals("no criterion applies: the tables have none that is chosen by itself",
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
        assertEquals("not determined: ISO 10816-1:1995 can't be applied without rated power; ISO 20816-3:2022 has no"
                + " group or class for it", Severity.of(small).choice().reason());
    }
}
