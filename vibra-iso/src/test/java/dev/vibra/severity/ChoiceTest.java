package dev.vibra.severity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.RotationSpeed;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The words of a choice, each of them once, and requests by name. */
class ChoiceTest {
    private static final Machine BLOWER = Machine.of(MachineKind.BLOWER).withRatedPowerKilowatts(37)
            .withShaftHeightMillimetres(225).withSupport(Support.RIGID)
            .withSpeed(RotationSpeed.ofRevolutionsPerMinute(1480));
    private static final Machine MOTOR = BLOWER.withKind(MachineKind.ELECTRIC_MOTOR);

    private static Choice choose(Machine machine) {
        return CriterionTables.shipped().choose(machine);
    }

    private static Choice choose(Machine machine, CriterionRequest request) {
        return CriterionTables.shipped().choose(machine, request);
    }

    private static String label(Choice choice) {
        assertEquals(1, choice.candidates().size(), choice::toString);
        return choice.candidates().get(0).toString();
    }

    @Test
    void classByPowerOrShaftHeight() {
        Choice choice = choose(BLOWER);
        assertEquals("ISO 20816-3:2022 group 2: rated power 37 kW (above 15 kW up to 300 kW)", choice.reason());
        assertEquals(List.of(), choice.remarks());
        assertEquals(choice.reason(), choice.toString());
        assertEquals("ISO 20816-3:2022 group 1: shaft height 315 mm (from 315 mm)",
                choose(MOTOR.withShaftHeightMillimetres(315)).reason());
        assertEquals("ISO 20816-3:2022 group 2: shaft height 280 mm (from 160 mm below 315 mm)",
                choose(MOTOR.withShaftHeightMillimetres(280)).reason());
        Machine without = Machine.of(MachineKind.ELECTRIC_MOTOR).withRatedPowerKilowatts(250)
                .withSupport(Support.FLEXIBLE).withSpeed(RotationSpeed.ofHertz(25));
        assertEquals(List.of("shaft height not given: classed by rated power; from 315 mm shaft height on group 1, with"
                + " higher limits, would hold"), choose(without).remarks());
    }

    @Test
    void onlyStandardsThatComeNearAreNamed() {
        assertEquals("ISO 10816-1:1995 class I: rated power 15 kW (up to 15 kW); ISO 20816-3:2022 covers a rated power"
                + " above 15 kW, not 15 kW", choose(BLOWER.withRatedPowerKilowatts(15)).reason());
        Choice slow = choose(BLOWER.withSpeed(RotationSpeed.ofRevolutionsPerMinute(119)));
        assertFalse(slow.hasCriterion());
        assertEquals("no criterion applies: ISO 20816-3:2022 covers a speed from 120 r/min up to 30000 r/min, not 119"
                + " r/min; ISO 10816-1:1995 covers a speed from 600 r/min up to 12000 r/min, not 119 r/min",
                slow.reason());
        assertTrue(slow.missing().isEmpty());
        Choice wind = choose(Machine.of(MachineKind.WIND_TURBINE));
        assertEquals("no criterion applies by itself to a machine of kind wind turbine", wind.reason());
        assertEquals(List.of("ISO 20816-21:2025 is the part for wind turbines"), wind.remarks());
        assertEquals("ISO 20816-3:2022 has a group or class for it on rigid support only",
                choose(BLOWER.withKind(MachineKind.FAN).withSupport(Support.FLEXIBLE)).reason().split("; ")[1]);
        assertEquals(1, choose(Machine.of(MachineKind.SCREW_COMPRESSOR)).remarks().size());
        assertEquals(2, choose(BLOWER.withKind(MachineKind.GEARBOX)).remarks().size());
    }

    @Test
    void missingFactsAreNamed() {
        Choice unknown = choose(Machine.unknown());
        assertEquals(List.of("rated power", "kind of machine"), unknown.missing());
        assertEquals("ISO 20816-3:2022 can't be applied without rated power and kind of machine;"
                + " not given either, but not needed: support, speed", unknown.reason());
        assertEquals(List.of("shaft height", "rated power"), choose(Machine.of(MachineKind.GENERATOR)).missing());
    }

    @Test
    void whatIsAssumedIsSaid() {
        Choice choice = choose(Machine.unknown().withRatedPowerKilowatts(37));
        assertEquals(List.of("support not given: judged as rigid and as flexible, the worse zone decides",
                "kind of machine not given: judged as one that is neither electrical nor a pump nor a fan",
                "speed not given: ISO 20816-3:2022 covers a speed from 120 r/min up to 30000 r/min; band 10\u20131000"
                + " Hz as for a speed above 600 r/min"), choice.remarks());
        Choice motor = choose(Machine.of(MachineKind.ELECTRIC_MOTOR).withShaftHeightMillimetres(200)
                .withSupport(Support.RIGID).withSpeed(RotationSpeed.ofHertz(25)));
        assertEquals(List.of("rated power not given: ISO 20816-3:2022 covers a rated power above 15 kW"),
                motor.remarks());
    }

    /** ISO 20816-3:2022 takes motors with a flexible coupling; a pump with its motor belongs to ISO 10816-7. */
    @Test
    void aMotorRigidlyCoupledToAPumpIsAPartOfIt() {
        assertEquals(List.of(), choose(MOTOR.withCoupling(Coupling.FLEXIBLE, MachineKind.PUMP)).remarks());
        assertEquals(List.of("rigidly coupled: the part for the driven machine counts, too"),
                choose(MOTOR.withCoupling(Coupling.RIGID)).remarks());
        Choice pump = choose(MOTOR.withCoupling(Coupling.RIGID, MachineKind.PUMP));
        assertEquals(choose(MOTOR.withKind(MachineKind.PUMP)).candidates(), pump.candidates());
        assertTrue(pump.remarks().contains("motor rigidly coupled to a pump: judged as a part of the pump"));
        Choice asked = choose(MOTOR.withCoupling(Coupling.RIGID, MachineKind.PUMP), CriterionRequest.of("ISO 10816-7"));
        assertEquals(pump.candidates(), asked.candidates());
        assertTrue(asked.outOfScope().isEmpty());
    }

    @Test
    void requestIsHonouredOrRefusedWithReason() {
        Choice honoured = choose(BLOWER, CriterionRequest.of("ISO 20816-3").withEdition("2022"));
        assertEquals("as requested, " + choose(BLOWER).reason(), honoured.reason());
        assertEquals(choose(BLOWER).candidates(), honoured.candidates());
        Choice small = choose(BLOWER.withRatedPowerKilowatts(11), CriterionRequest.of("ISO 20816-3"));
        assertEquals("request ISO 20816-3 refused: ISO 20816-3:2022 has no group or class for rated power 11 kW",
                small.reason());
        assertTrue(small.remarks().get(0).startsWith("without the request: ISO 10816-1:1995 class I: "));
        assertEquals("request ISO 20816-3:1998 refused: standards in the tables are "
                + String.join(", ", CriterionTables.shipped().standards()), choose(BLOWER,
                CriterionRequest.of("ISO 20816-3:1998")).reason());
        assertEquals("request ISO 10816-1, group 2 refused: ISO 10816-1:1995 has class I; class II; class III; class"
                + " IV", choose(BLOWER, CriterionRequest.of("ISO 10816-1").withGroup("2")).reason());
        assertEquals(List.of("rated power"),
                choose(Machine.of(MachineKind.FAN), CriterionRequest.of("ISO 10816-3")).missing());
    }

    @Test
    void aStandardThatDoesNotCoverTheMachineIsUsedAsAsked() {
        Machine pump = BLOWER.withKind(MachineKind.PUMP);
        Choice choice = choose(pump, CriterionRequest.of("ISO 20816-3"));
        assertEquals("group 2, rigid", label(choice));
        OutOfScope outside = choice.outOfScope().orElseThrow();
        assertEquals("ISO 20816-3:2022 does not cover a machine of kind pump", outside.reason());
        assertEquals(choose(pump), outside.fitting());
        assertEquals("out of scope: " + outside.reason() + "; without the request: " + choose(pump).reason(),
                choice.remarks().get(0));
        Choice small = choose(BLOWER.withRatedPowerKilowatts(11), CriterionRequest.of("ISO 20816-3").withGroup("2"));
        assertEquals("ISO 20816-3:2022 covers a rated power above 15 kW, not 11 kW",
                small.outOfScope().orElseThrow().reason());
        Choice unknown = choose(Machine.unknown().withRatedPowerKilowatts(37), CriterionRequest.of("ISO 10816-7"));
        assertTrue(unknown.outOfScope().isEmpty(), "nothing that is known speaks against it");
        assertEquals(2, unknown.candidates().size());
    }

    @Test
    void groupOnRequestStandsInForPower() {
        CriterionRequest group1 = CriterionRequest.of("ISO 20816-3").withGroup("1");
        Choice choice = choose(BLOWER, group1);
        assertEquals("as requested, ISO 20816-3:2022 group 1", choice.reason());
        assertEquals("by the rule of the standard: " + choose(BLOWER).reason(), choice.remarks().get(0));
        assertEquals(List.of(2.3, 4.5, 7.1), choice.criteria().get(0).limits());
        Choice unknown = choose(Machine.of(MachineKind.FAN).withSupport(Support.RIGID), group1);
        assertTrue(unknown.hasCriterion());
        assertTrue(unknown.remarks().contains("by the rule of the standard: not determined without rated power"),
                unknown.remarks()::toString);
        assertEquals(choose(BLOWER).candidates(),
                choose(BLOWER, CriterionRequest.of("ISO 20816-3").withGroup("group 2")).candidates());
        assertEquals("class IV", label(choose(BLOWER.withSupport(Support.FLEXIBLE),
                CriterionRequest.of("ISO 10816-1").withGroup("class iv"))));
    }

    @Test
    void classWithoutRowForOneSupportIsSaid() {
        Machine fan = Machine.of(MachineKind.FAN).withRatedPowerKilowatts(200).withSpeed(RotationSpeed.ofHertz(25));
        Choice choice = choose(fan, CriterionRequest.of("ISO 10816-1:1995"));
        assertEquals("class II", label(choice));
        assertTrue(choice.remarks().contains("on flexible support ISO 10816-1:1995 has no group or class for it"));
    }

    @Test
    void namesAreRead() {
        for (MachineKind kind : MachineKind.values()) {
            assertEquals(kind, MachineKind.ofName(kind.toString()));
        }
        assertEquals(MachineKind.ELECTRIC_MOTOR, MachineKind.ofName("motor"));
        String message = assertThrows(IllegalArgumentException.class, () -> MachineKind.ofName("pmup")).getMessage();
        assertTrue(message.startsWith("kind must be one of pump, fan, blower, ") && message.endsWith(", other: pmup"),
                message);
        assertEquals(Support.FLEXIBLE, Support.ofName("flexible"));
        assertEquals("support must be one of rigid, flexible: stiff",
                assertThrows(IllegalArgumentException.class, () -> Support.ofName("stiff")).getMessage());
    }

    @Test
    void machinePrintsWhatIsKnown() {
        assertEquals("blower, 37 kW, shaft height 225 mm, rigid support, 1480 r/min (24.67 Hz)", BLOWER.toString());
        assertTrue(MOTOR.withCoupling(Coupling.RIGID, MachineKind.PUMP).toString()
                .endsWith(", rigid coupling to a pump"));
        assertEquals("machine of unknown kind, support unknown", Machine.unknown().toString());
        assertEquals("rated power must be finite and > 0 kW: NaN", assertThrows(IllegalArgumentException.class,
                () -> BLOWER.withRatedPowerKilowatts(Double.NaN)).getMessage());
        assertEquals("shaft height must be finite and > 0 mm: 0.0", assertThrows(IllegalArgumentException.class,
                () -> BLOWER.withShaftHeightMillimetres(0)).getMessage());
        assertEquals("standard must not be blank",
                assertThrows(IllegalArgumentException.class, () -> CriterionRequest.of(" ")).getMessage());
        assertEquals("ISO 20816-3:2022, group 2",
                CriterionRequest.of("ISO 20816-3:2022").withGroup("2").toString());
    }
}
