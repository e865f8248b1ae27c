package dev.vibra.severity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.RotationSpeed;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The words of a choice, and requests by name. */
class ChoiceTest {
    private static final Machine BRINE_PUMP = Machine.of(MachineKind.PUMP).withRatedPowerKilowatts(37)
            .withShaftHeightMillimetres(225).withSupport(Support.RIGID)
            .withSpeed(RotationSpeed.ofRevolutionsPerMinute(1480));
    private static final String PUMP_PART =
            "ISO 10816-7:2009 is the part for rotodynamic pumps, which ISO 10816-3 left to it in 2009";

    private static Choice choose(Machine machine) {
        return CriterionTables.shipped().choose(machine);
    }

    private static Choice choose(Machine machine, CriterionRequest request) {
        return CriterionTables.shipped().choose(machine, request);
    }

    @Test
    void pumpByPower() {
        Choice choice = choose(BRINE_PUMP);
        assertEquals("ISO 20816-3:2022 group 2: rated power 37 kW (above 15 kW up to 300 kW)", choice.reason());
        assertEquals(List.of(PUMP_PART), choice.remarks());
        assertEquals(choice.reason(), choice.toString());
    }

    @Test
    void motorByShaftHeightEvenWhereItsPowerPointsElsewhere() {
        Machine motor = Machine.of(MachineKind.ELECTRIC_MOTOR).withRatedPowerKilowatts(250)
                .withSupport(Support.FLEXIBLE).withSpeed(RotationSpeed.ofHertz(25));
        assertEquals("ISO 20816-3:2022 group 1: shaft height 315 mm (from 315 mm)",
                choose(motor.withShaftHeightMillimetres(315)).reason());
        assertEquals("ISO 20816-3:2022 group 2: shaft height 280 mm (from 160 mm below 315 mm)",
                choose(motor.withShaftHeightMillimetres(280)).reason());
        assertEquals("ISO 20816-3:2022 group 2: rated power 250 kW (above 15 kW up to 300 kW)", choose(motor).reason());
        assertEquals(List.of("shaft height not given: classed by rated power; from 315 mm shaft height on group 1, with"
                + " higher limits, would hold"), choose(motor).remarks());
    }

    @Test
    void smallMachineGoesToClassOne() {
        assertEquals("ISO 10816-1:1995 class I: rated power 15 kW (up to 15 kW); ISO 20816-3:2022 covers a rated power"
                + " above 15 kW, not 15 kW", choose(BRINE_PUMP.withRatedPowerKilowatts(15)).reason());
    }

    @Test
    void slowMachineHasNone() {
        Choice choice = choose(BRINE_PUMP.withSpeed(RotationSpeed.ofRevolutionsPerMinute(119)));
        assertFalse(choice.hasCriterion());
        assertEquals("no criterion applies: ISO 20816-3:2022 covers a speed from 120 r/min up to 30000 r/min, not 119"
                + " r/min;"
                + " ISO 10816-1:1995 covers a speed from 600 r/min up to 12000 r/min, not 119 r/min", choice.reason());
        assertTrue(choice.missing().isEmpty());
    }

    @Test
    void otherStandardsAreNamed() {
        Choice large = choose(Machine.of(MachineKind.STEAM_TURBINE).withRatedPowerKilowatts(60_000));
        assertEquals(List.of("ISO 20816-2:2017 is the part for steam turbines, gas turbines and generators above 40"
                + " MW"),
                large.remarks());
        assertEquals("no criterion applies: ISO 20816-3:2022 covers a rated power above 15 kW up to 40000 kW, not 60000"
                + " kW; ISO 10816-1:1995 has no group or class for it", large.reason());
        Choice pistons = choose(Machine.of(MachineKind.RECIPROCATING_COMPRESSOR).withRatedPowerKilowatts(200));
        assertEquals("no criterion applies: ISO 20816-3:2022 does not cover a machine of kind reciprocating compressor;"
                + " ISO 10816-1:1995 does not cover a machine of kind reciprocating compressor", pistons.reason());
        assertEquals(List.of("ISO 20816-8:2018 is the part for reciprocating compressor systems"), pistons.remarks());
    }

    @Test
    void missingFactsAreNamed() {
        assertEquals(List.of("rated power", "kind of machine"), choose(Machine.unknown()).missing());
        assertEquals("not determined: ISO 20816-3:2022 can't be applied without rated power and kind of machine;"
                + " not given either, but not needed: support, speed",
                choose(Machine.unknown()).reason());
        assertEquals(List.of("shaft height", "rated power"),
                choose(Machine.of(MachineKind.GENERATOR)).missing());
    }

    @Test
    void whatIsAssumedIsSaid() {
        Choice choice = choose(Machine.unknown().withRatedPowerKilowatts(37));
        assertEquals(List.of("kind of machine not given: classed by rated power, as a machine that is not electrical",
                "speed not given: ISO 20816-3:2022 covers a speed from 120 r/min up to 30000 r/min; band 10\u20131000"
                + " Hz as for a speed above 600 r/min",
                "support not given: judged as rigid and as flexible, the worse zone decides"), choice.remarks());
        Choice motor = choose(Machine.of(MachineKind.ELECTRIC_MOTOR).withShaftHeightMillimetres(200)
                .withSupport(Support.RIGID).withSpeed(RotationSpeed.ofHertz(25)));
        assertEquals(List.of("rated power not given: ISO 20816-3:2022 covers a rated power above 15 kW"),
                motor.remarks());
    }

    @Test
    void bandBeginsAtTwoHertzUpToAndWith600() {
        assertEquals("[velocity 1.4 / 2.8 / 4.5 mm/s rms (2\u20131000 Hz); ISO 20816-3:2022 Table A.2, group 2, rigid]",
                velocityOf(choose(BRINE_PUMP.withSpeed(RotationSpeed.ofRevolutionsPerMinute(600)))));
        assertEquals("[velocity 1.4 / 2.8 / 4.5 mm/s rms (10\u20131000 Hz); ISO 20816-3:2022 Table A.2, group 2,"
                + " rigid]",
                velocityOf(choose(BRINE_PUMP.withSpeed(RotationSpeed.ofRevolutionsPerMinute(Math.nextUp(600.0))))));
    }

    private static String velocityOf(Choice choice) {
        return choice.criteria().subList(0, 1).toString();
    }

    @Test
    void requestIsHonouredOrRefusedWithReason() {
        Choice honoured = choose(BRINE_PUMP, CriterionRequest.of("ISO 20816-3").withEdition("2022"));
        assertEquals("as requested, ISO 20816-3:2022 group 2: rated power 37 kW (above 15 kW up to 300 kW)",
                honoured.reason());
        assertEquals(choose(BRINE_PUMP).criteria(), honoured.criteria());
        Choice small = choose(BRINE_PUMP.withRatedPowerKilowatts(11), CriterionRequest.of("ISO 20816-3"));
        assertEquals("request ISO 20816-3 refused: ISO 20816-3:2022 covers a rated power above 15 kW, not 11 kW",
                small.reason());
        assertEquals(List.of("without the request: ISO 10816-1:1995 class I: rated power 11 kW (up to 15 kW);"
                + " ISO 20816-3:2022 covers a rated power above 15 kW, not 11 kW", PUMP_PART), small.remarks());
        assertEquals("request ISO 20816-3:1998 refused: standards in the tables are "
                + String.join(", ", CriterionTables.shipped().standards()), choose(BRINE_PUMP,
                CriterionRequest.of("ISO 20816-3:1998")).reason());
        assertEquals("request ISO 10816-1, group 2 refused: ISO 10816-1:1995 has class I, class II, class III, class"
                + " IV",
                choose(BRINE_PUMP, CriterionRequest.of("ISO 10816-1").withGroup("2")).reason());
        assertEquals(List.of("rated power"),
                choose(Machine.of(MachineKind.FAN), CriterionRequest.of("ISO 10816-3")).missing());
    }

    @Test
    void groupOnRequestStandsInForPower() {
        CriterionRequest group1 = CriterionRequest.of("ISO 20816-3").withGroup("1");
        Choice choice = choose(BRINE_PUMP, group1);
        assertEquals("as requested, ISO 20816-3:2022 group 1", choice.reason());
        assertEquals("by the rule of the standard: ISO 20816-3:2022 group 2: rated power 37 kW (above 15 kW up to 300"
                + " kW)",
                choice.remarks().get(0));
        assertEquals(List.of(2.3, 4.5, 7.1), choice.criteria().get(0).limits());
        Choice unknown = choose(Machine.of(MachineKind.FAN).withSupport(Support.RIGID), group1);
        assertTrue(unknown.hasCriterion());
        assertTrue(unknown.remarks().contains("by the rule of the standard: not determined without rated power"),
                unknown.remarks()::toString);
        assertEquals(choose(BRINE_PUMP).criteria(),
                choose(BRINE_PUMP, CriterionRequest.of("ISO 20816-3").withGroup("group 2")).criteria());
        assertFalse(choose(BRINE_PUMP.withRatedPowerKilowatts(15), group1).hasCriterion());
        assertEquals("as requested, ISO 10816-1:1995 class IV",
                choose(BRINE_PUMP.withSupport(Support.FLEXIBLE),
                        CriterionRequest.of("ISO 10816-1").withGroup("class iv")).reason());
    }

    @Test
    void classWithoutRowForOneSupportIsSaid() {
        Machine fan = Machine.of(MachineKind.FAN).withRatedPowerKilowatts(200).withSpeed(RotationSpeed.ofHertz(25));
        Choice choice = choose(fan, CriterionRequest.of("ISO 10816-1:1995"));
        assertEquals(1, choice.criteria().size());
        assertEquals("on flexible support ISO 10816-1:1995 has no group or class for it", choice.remarks().get(0));
    }

    @Test
    void namesAreRead() {
        for (MachineKind kind : MachineKind.values()) {
            assertEquals(kind, MachineKind.ofName(kind.toString()));
        }
        assertEquals(MachineKind.ELECTRIC_MOTOR, MachineKind.ofName("motor"));
        assertEquals("kind must be one of pump, fan, blower, compressor, electric motor, generator, gearbox, turbine,"
                + " steam turbine, gas turbine, hydraulic turbine, wind turbine, reciprocating compressor,"
                + " reciprocating engine, generating set, other: pmup",
                assertThrows(IllegalArgumentException.class, () -> MachineKind.ofName("pmup")).getMessage());
        assertEquals(Support.FLEXIBLE, Support.ofName("flexible"));
        assertEquals("support must be one of rigid, flexible: stiff",
                assertThrows(IllegalArgumentException.class, () -> Support.ofName("stiff")).getMessage());
    }

    @Test
    void machinePrintsWhatIsKnown() {
        assertEquals("pump, 37 kW, shaft height 225 mm, rigid support, 1480 r/min (24.67 Hz)", BRINE_PUMP.toString());
        assertEquals("machine of unknown kind, support unknown", Machine.unknown().toString());
        assertEquals("rated power must be finite and > 0 kW: NaN", assertThrows(IllegalArgumentException.class,
                () -> BRINE_PUMP.withRatedPowerKilowatts(Double.NaN)).getMessage());
        assertEquals("shaft height must be finite and > 0 mm: 0.0", assertThrows(IllegalArgumentException.class,
                () -> BRINE_PUMP.withShaftHeightMillimetres(0)).getMessage());
        assertEquals("standard must not be blank",
                assertThrows(IllegalArgumentException.class, () -> CriterionRequest.of(" ")).getMessage());
        assertEquals("ISO 20816-3:2022, group 2",
                CriterionRequest.of("ISO 20816-3:2022").withGroup("2").toString());
    }
}
