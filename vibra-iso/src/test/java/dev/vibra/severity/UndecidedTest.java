package dev.vibra.severity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.evidence.Confidence;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.uncertainty.DecisionRule;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A missing fact: of two sets of criteria the worse decides, of more there is a zone only where all agree. */
class UndecidedTest {
    private static final Machine PUMP = machine(MachineKind.PUMP, 75).withSupport(Support.RIGID);
    private static final Machine FAN = machine(MachineKind.FAN, 22).withSupport(Support.FLEXIBLE);

    private static Machine machine(MachineKind kind, double kilowatts) {
        return Machine.of(kind).withRatedPowerKilowatts(kilowatts)
                .withSpeed(RotationSpeed.ofRevolutionsPerMinute(1480));
    }

    private static Level level(double millimetresPerSecond) {
        return Level.of(millimetresPerSecond, Unit.MM_PER_S, Detector.RMS).within(Band.of(10, 1000));
    }

    private static Verdict judge(Machine machine, double millimetresPerSecond) {
        return Severity.of(machine).judge(level(millimetresPerSecond));
    }

    /** ISO 10816-7:2009, up to 200 kW: category I 2.5 / 4.0 / 6.6, II 3.2 / 5.1 / 8.5 mm/s. */
    @Test
    void ofTwoCategoriesTheWorseDecides() {
        Verdict verdict = judge(PUMP, 4.6);
        assertEquals(Optional.of(Zone.C), verdict.zone());
        assertEquals(List.of(Zone.B, Zone.C), verdict.zonesPossible());
        assertEquals(List.of("category"), verdict.undecidedBy());
        assertEquals("zone C", verdict.rating());
        assertEquals(Zone.C.meaning(), verdict.meaning());
        assertEquals("category not given: judged by category I and by category II, the worse zone decides; duties are"
                + " critical service, general service", verdict.choice().remarks().get(0));
        assertEquals("ISO 10816-7:2009 category I / category II, up to 200 kW: rated power 75 kW (up to 200 kW), speed"
                + " 1480 r/min (above 600 r/min)", verdict.choice().reason());
        assertEquals("I, up to 200 kW", verdict.deciding().criterion().group());
        Severity second = Severity.of(PUMP, CriterionRequest.of("ISO 10816-7").withGroup("category II"));
        assertEquals(Optional.of(Zone.B), second.judge(level(4.6)).zone());
        assertEquals(List.of(), judge(PUMP, 9).undecidedBy(), "zone D by both");
    }

    @Test
    void supportOfAPumpMakesNoDifference() {
        Machine any = machine(MachineKind.PUMP, 75);
        assertEquals(Severity.of(PUMP).choice().candidates(), Severity.of(any).choice().candidates());
    }

    /** ISO 14694:2003, flexible: start-up 9.0, 6.3, 4.5, 2.8 and alarm 14, 11.8, 7.1, 5.6 mm/s for BV-2 to BV-5. */
    @Test
    void ofMoreThanTwoAllHaveToAgree() {
        assertEquals(Optional.of(Zone.A), judge(FAN, 2.8).zone());
        assertEquals(List.of(), judge(FAN, 2.8).undecidedBy());
        Verdict open = judge(FAN, 5.0);
        assertEquals(Optional.empty(), open.zone());
        assertEquals(Optional.empty(), open.zoneBy(DecisionRule.simple()));
        assertEquals(List.of(Zone.A, Zone.B), open.zonesPossible());
        assertEquals(List.of("duty"), open.undecidedBy());
        assertEquals("within start-up or above start-up", open.rating());
        assertEquals("which of them holds depends on the duty, not known", open.meaning());
        assertEquals("BV-5, in situ", open.deciding().criterion().groupLabel());
        assertTrue(open.toString().startsWith(open.rating() + ": " + open.meaning() + "; in the worst case "));
        assertTrue(open.choice().remarks().get(0).startsWith("duty not given: 4 sets of limits may hold, and there is a"
                + " zone only where all agree; duties are residential, HVAC, "));
    }

    @Test
    void supportAndDutyMayBeOpenTogether() {
        Verdict open = judge(machine(MachineKind.FAN, 22), 5.0);
        assertEquals(8, open.judgements().size());
        assertEquals(List.of("support", "duty"), open.undecidedBy());
        assertEquals("within start-up, above start-up or above alarm", open.rating());
        Severity known = Severity.of(machine(MachineKind.FAN, 22),
                CriterionRequest.of("ISO 14694").withDuty("industrial process"));
        assertEquals(Optional.of(Zone.B), known.judge(level(5.0)).zone(), "rigid or flexible: the worse");
    }

    @Test
    void whatIsOpenIsDescribedAndExported() {
        Verdict open = judge(FAN, 20);
        List<String> lines = open.describe().lines().toList();
        assertEquals("above alarm or above shutdown: " + open.meaning(), lines.get(0));
        assertEquals(4, lines.stream().filter(line -> line.startsWith("possibly above ")).count());
        assertTrue(lines.contains("caution, in the worst case: " + Zone.D.caution()));
        Map<String, Object> plain = open.plainValues();
        assertFalse(plain.containsKey("zone"));
        assertEquals("C; D", plain.get("zonesPossible"));
        assertEquals("duty", plain.get("undecidedBy"));
        assertEquals(20.0, (double) plain.get("velocity.BV-4, in situ, flexible.value"), 1e-12);
    }

    /** Of a displacement that leads to zone C alone the limits are flagged; a velocity in zone C beside it is firm. */
    @Test
    void theFlagTravelsWhereNoFirmLimitLeadsToTheZone() {
        Severity severity = Severity.of(machine(MachineKind.BLOWER, 37).withSupport(Support.RIGID));
        Level displacement = Level.of(50, Unit.UM, Detector.RMS).within(Band.of(10, 1000));
        assertEquals(Optional.of(Confidence.SECONDARY), severity.judge(level(1), displacement).restsOnFlagged());
        assertEquals(Optional.empty(), severity.judge(level(3), displacement).restsOnFlagged());
        assertEquals(Optional.of(Confidence.SECONDARY), judge(PUMP, 9).restsOnFlagged());
        assertEquals(Optional.of(Confidence.UNVERIFIED), judge(FAN, 1).restsOnFlagged(), "BV-2 is from memory");
    }

    /** IEC 60034-14:2018, grade A, above 132 to 280 mm: 2.2 mm/s in free suspension, 1.8 mm/s in rigid mounting. */
    @Test
    void anAcceptanceSpeaksItsOwnWords() {
        Machine motor = machine(MachineKind.ELECTRIC_MOTOR, 90).withShaftHeightMillimetres(280);
        Verdict verdict = Severity.of(motor, CriterionRequest.of("IEC 60034-14")).judge(level(2.0));
        assertTrue(verdict.isAcceptance());
        assertEquals("not accepted", verdict.rating());
        assertEquals("above the limit of the grade", verdict.meaning());
        assertEquals(List.of("test mounting"), verdict.undecidedBy());
        assertEquals(4, verdict.notJudged().size(), "displacement and acceleration of both mountings");
        assertEquals(Optional.empty(), verdict.restsOnFlagged());
        assertFalse(judge(PUMP, 4.6).isAcceptance());
        assertFalse(judge(FAN, 5).isAcceptance(), "start-up, alarm and shutdown are no acceptance");
    }

    /** A set of criteria without a level to judge leaves the zone open, even beside one other. */
    @Test
    void aSetThatNothingWasMeasuredForLeavesTheZoneOpen() {
        CriterionTables tables = CriterionTables.parse("""
                [standards]
                standard | title
                Plant:1  | two classes, each with another quantity
                [scope]
                standard | kinds | power kW | speed r/min
                Plant:1  | other | any      | any
                [classes]
                standard | class | kinds | power kW | shaft height mm | support | chosen    | remark
                Plant:1  | P     | other | any      | any             | any     | by itself |
                Plant:1  | Q     | other | any      | any             | any     | by itself |
                [bands]
                standard | speed r/min | band Hz
                Plant:1  | any         | 10 to 1000
                [limits]
                standard|clause|class|support|quantity|detector|unit|A/B|B/C|C/D|confidence|note
                Plant:1|1|P|any|velocity|rms|mm/s|1|2|4|firm|
                Plant:1|1|Q|any|displacement|rms|um|10|20|40|firm|
                """);
        Verdict verdict = Severity.by(tables.choose(Machine.of(MachineKind.OTHER))).judge(level(3));
        assertEquals(Optional.empty(), verdict.zone());
        assertEquals(List.of(Zone.C), verdict.zonesPossible());
        assertEquals(List.of("group"), verdict.undecidedBy());
        assertEquals(1, verdict.notJudged().size());
    }
}
