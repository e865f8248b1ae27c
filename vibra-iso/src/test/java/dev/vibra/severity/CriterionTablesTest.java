package dev.vibra.severity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.evidence.Confidence;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The form of the tables, and tables brought by a user. The plant rule here is invented for the test. */
class CriterionTablesTest {
    private static final String PLANT_RULE = """
            [standards]
            standard       | title
            Plant rule:4   | invented

            [scope]
            standard     | kinds    | power kW | speed r/min
            Plant rule:4 | rotating | any      | > 60 < 600

            [classes]
            standard     | class      | kinds    | power kW | shaft height mm | support | chosen    | remark
            Plant rule:4 | category X | rotating | any      | any             | any     | by itself |

            [bands]
            standard     | speed r/min | band Hz
            Plant rule:4 | any         | 0.5 to 200

            [limits]
            standard|clause|class|support|quantity|detector|unit|A/B|B/C|C/D|confidence|note
            Plant rule:4|1.2|category X|any|displacement|peak-peak|mil|-|4|8.5|supplied by the user|slow rolls
            """;

    private static final Machine ROLL = Machine.of(MachineKind.OTHER).withRatedPowerKilowatts(37)
            .withSpeed(RotationSpeed.ofRevolutionsPerMinute(200)).withSupport(Support.RIGID);

    @Test
    void shippedTablesAreThere() {
        CriterionTables shipped = CriterionTables.shipped();
        assertEquals("ISO 20816-3:2022", shipped.standards().get(0));
        assertTrue(shipped.toString().endsWith(" rows of limits from " + String.join(", ", shipped.standards())));
    }

    @Test
    void ownTableComesFirstWhereItFits() {
        CriterionTables both = CriterionTables.shipped().preferring(CriterionTables.parse(PLANT_RULE));
        Severity severity = Severity.by(both.choose(ROLL));
        assertEquals("Plant rule:4 category X", severity.toString());
        Band band = Band.of(0.5, 200);
        Level level = Level.of(8.5, Unit.MIL, Detector.PEAK_TO_PEAK).within(band);
        assertEquals("zone C: 8.50 ± 0.83 mil peak-peak (0.5\u2013200 Hz); zone C or D within uncertainty; limits 4 /"
                + " 8.5 (supplied by the user); Plant rule:4 1.2, category X", severity.judge(level).toString());
        Level silent = Level.of(0, Unit.MIL, Detector.PEAK_TO_PEAK).within(band);
        assertEquals(Zone.B, severity.judge(silent).zone().orElseThrow());
        Machine fast = ROLL.withSpeed(RotationSpeed.ofRevolutionsPerMinute(600));
        assertEquals("ISO 20816-3:2022", both.choose(fast).criteria().get(0).standard());
        assertEquals("zone must be one that the criterion tells apart: A", assertThrows(IllegalArgumentException.class,
                () -> severity.criteria().get(0).levelIn(Zone.A, 0.5)).getMessage());
    }

    @Test
    void ownTableOnRequestAndForForeignKinds() {
        CriterionTables own = CriterionTables.parse(PLANT_RULE);
        assertEquals("as requested, Plant rule:4 category X",
                own.choose(ROLL, CriterionRequest.of("plant rule")).reason());
        Choice foreign = own.choose(ROLL.withKind(MachineKind.GENERATOR), CriterionRequest.of("plant rule"));
        assertEquals("Plant rule:4 does not cover a machine of kind generator", foreign.outOfScope().orElseThrow()
                .reason());
        assertFalse(foreign.outOfScope().orElseThrow().fitting().hasCriterion());
        assertEquals("Plant rule:4 can't be applied without speed", own.choose(Machine.of(MachineKind.OTHER)).reason());
        assertEquals(List.of("speed"), own.choose(Machine.of(MachineKind.OTHER)).missing());
        assertEquals("standards must not be in both tables: Plant rule:4",
                assertThrows(IllegalArgumentException.class, () -> own.preferring(own)).getMessage());
    }

    @Test
    void speedWithoutABandIsRefused() {
        CriterionTables own = CriterionTables.parse(PLANT_RULE.replace("| any         | 0.5 to 200", "| > 300 | 0.5 to"
                + " 200"));
        assertEquals("no criterion applies: Plant rule:4 has no frequency band for this speed",
                own.choose(ROLL).reason());
    }

    private static String failure(String wrong, String replacement) {
        assertEquals(true, PLANT_RULE.contains(wrong), wrong);
        return assertThrows(IllegalArgumentException.class,
                () -> CriterionTables.parse(PLANT_RULE.replace(wrong, replacement))).getMessage();
    }

    @Test
    void whateverIsWrongIsToldWithItsPlace() {
        assertEquals("criteria tables, line 19: column 'C/D': limit must be a number or '-': 8,5",
                failure("8.5", "8,5"));
        assertEquals("criteria tables, line 19: column 'C/D': limit C/D must be finite and > 0: NaN",
                failure("8.5", "NaN"));
        assertEquals("criteria tables, line 19: limits must rise without a gap: B/C 4, C/D 3", failure("8.5", "3"));
        assertEquals("criteria tables, line 19: limits must rise without a gap: A/B 4, C/D 8.5",
                failure("-|4|", "4|-|"));
        assertEquals("criteria tables, line 19: a row of [limits] must have a limit", failure("4|8.5", "-|-"));
        assertEquals("criteria tables, line 19: column 'unit': unit must measure displacement: mm/s",
                failure("mil", "mm/s"));
        assertEquals("criteria tables, line 19: column 'quantity': quantity must be one of displacement, velocity,"
                + " acceleration: voltage", failure("displacement", "voltage"));
        assertEquals("criteria tables, line 19: column 'detector': detector must be one of rms, 0-peak, peak-peak: pp",
                failure("peak-peak", "pp"));
        assertEquals("criteria tables, line 19: column 'confidence': confidence must be one of 'firm', 'secondary"
                + " source,"
                + " verify', 'from memory, unverified', 'supplied by the user': sure", failure("supplied by the user",
                "sure"));
        assertEquals("criteria tables, line 7: column 'speed r/min': range must be like '> 15 <= 300', 'near 1500"
                + " 1800', 'any' or 'not given': > 60 - 600", failure("> 60 < 600", "> 60 - 600"));
        for (String wrong : List.of("> 600 < 60", "near", "not near 60 x", "> 60 near 600 any", "")) {
            assertTrue(failure("> 60 < 600", wrong).startsWith("criteria tables, line 7: column 'speed r/min': range"
                    + " must be like"), wrong);
        }
        assertEquals("criteria tables, line 11: column 'chosen': chosen must be one of by itself,"
                + " otherwise, on request, by name, replaced: always",
                failure("by itself", "always"));
        assertEquals("criteria tables, line 15: column 'band Hz': band must be like '10 to 1000' or '1 to 3 x"
                + " speed, at least 125': 0.5-200",
                failure("0.5 to 200", "0.5-200"));
        assertEquals("criteria tables, line 3: standard must carry its edition, as in ISO 20816-3:2022: Plant rule",
                failure("Plant rule:4   | invented", "Plant rule | invented"));
    }

    @Test
    void brokenFormIsToldWithItsLine() {
        assertEquals("criteria tables, line 1: section must be one of standards, scope, classes, bands, limits,"
                + " ratings, operation, duties, see also: [limit]", failure("[standards]", "[limit]"));
        assertEquals("criteria tables, line 1: a row must stand below a [section]: standards",
                failure("[standards]", "standards"));
        assertEquals("criteria tables, line 2: columns of [standards] must be standard | title, with or without parted"
                + " by: standard | name",
                failure("standard       | title", "standard | name"));
        assertEquals("criteria tables, line 3: a row of [standards] must have 2 cells: 3",
                failure("invented", "a | b"));
        assertEquals("criteria tables: [scope] must have a row for Plant rule:4",
                failure("Plant rule:4 | rotating | any      | > 60 < 600", ""));
        assertEquals("criteria tables: [limits] must have a row for Plant rule:4 category Y",
                failure("Plant rule:4 | category X | rotating", "Plant rule:4 | category Y | rotating"));
    }

    private static final String MORE = PLANT_RULE + """

            [ratings]
            standard     | zone | rating  | meaning | limit
            Plant rule:4 | B    | quiet   | as new  | warn
            Plant rule:4 | C    | restless | watch  |

            [operation]
            standard     | clause | class | change     | highest alarm | highest trip | confidence
            Plant rule:4 | 3      | any   | 0.5 x B/C  | 5             | -            | supplied by the user

            [duties]
            standard     | duty     | power kW | group
            Plant rule:4 | long run | > 10     | category X
            """;

    @Test
    void ownRatingsOperationAndDuties() {
        CriterionTables own = CriterionTables.parse(MORE);
        Choice choice = own.choose(ROLL, CriterionRequest.of("Plant rule").withDuty("Long Run"));
        Criterion criterion = choice.criteria().get(0);
        assertEquals(List.of("quiet", "restless", "zone D"),
                criterion.zones().stream().map(criterion::rating).toList());
        assertEquals("as new", criterion.meaning(Zone.B));
        assertEquals(Zone.D.meaning(), criterion.meaning(Zone.D));
        OperatingLimits limits = criterion.operatingLimits().orElseThrow();
        assertEquals(2, limits.significantChange().orElseThrow());
        assertEquals(5, limits.highestAlarm().orElseThrow());
        assertEquals(true, limits.highestTrip().isEmpty());
        assertEquals(Confidence.SUPPLIED, limits.confidence());
        assertEquals("change 2, alarm up to 5 (supplied by the user)", limits.toString());
        assertEquals("request Plant rule, duty short refused: duties of Plant rule:4 are long run",
                own.choose(ROLL, CriterionRequest.of("Plant rule").withDuty("short")).reason());
        CriterionTables without = CriterionTables.parse(MORE.replace("0.5 x B/C", "0.5 x A/B"));
        assertEquals(true, without.choose(ROLL).criteria().get(0).operatingLimits().orElseThrow().significantChange()
                .isEmpty(), "a part of a boundary that the row lacks");
    }

    @Test
    void whatIsWrongInTheFurtherSectionsIsTold() {
        assertEquals("criteria tables, line 23: column 'zone': zone must be one of A, B, C, D: E",
                more("| B    | quiet", "| E    | quiet"));
        assertEquals("criteria tables, line 28: column 'change': amount must be like '1.25 x B/C', '5.0' or '-':"
                + " 0.5 of B/C", more("0.5 x B/C", "0.5 of B/C"));
        assertEquals("criteria tables, line 19: either all limits of a row must follow the speed or none: 4/sqrt(n),"
                + " 8.5", more("|4|", "|4/sqrt(n)|"));
        assertEquals("criteria tables, line 22: columns of [ratings] must be standard | zone | rating | meaning |"
                + " limit,"
                + " with or without class, acceptance: standard | zone | rating | meaning",
                more("| meaning | limit", "| meaning"));
        assertEquals("criteria tables: [bands] must have a row for Plant rule:4",
                failure("Plant rule:4 | any         | 0.5 to 200", ""));
        assertEquals("criteria tables: [standards] must have a row for Plant rule:4",
                failure("Plant rule:4   | invented", "Plant rule:5   | invented"));
        assertEquals("criteria tables: [classes] must have a row for Plant rule:4 category X",
                failure("Plant rule:4 | category X | rotating | any      | any             | any     | by itself |",
                ""));
    }

    private static String more(String wrong, String replacement) {
        assertEquals(true, MORE.contains(wrong), wrong);
        return assertThrows(IllegalArgumentException.class,
                () -> CriterionTables.parse(MORE.replace(wrong, replacement))).getMessage();
    }

    @Test
    void bandThatFollowsTheSpeed() {
        CriterionTables own = CriterionTables.parse(PLANT_RULE.replace("0.5 to 200", "0.5 to 4 x speed, at least 20"));
        assertEquals(Band.of(0.5, 20), own.choose(ROLL).criteria().get(0).band());
        Machine faster = ROLL.withSpeed(RotationSpeed.ofRevolutionsPerMinute(420));
        assertEquals(Band.of(0.5, 28), own.choose(faster).criteria().get(0).band());
        assertEquals(List.of(), own.criteria());
    }

    @Test
    void rangesKeepTheirEdges() {
        Range range = Range.parse(Range.Fact.POWER, "> 15 <= 300");
        assertEquals(List.of(Fit.NOT_MET, Fit.MET, Fit.MET, Fit.NOT_MET, Fit.OPEN),
                List.of(fit(range, 15), fit(range, Math.nextUp(15.0)), fit(range, 300), fit(range, Math.nextUp(300.0)),
                        range.fit(Machine.unknown())));
        assertEquals(Fit.MET, Range.parse(Range.Fact.POWER, "> 15?").fit(Machine.unknown()));
        Range near = Range.parse(Range.Fact.POWER, "near 50 100");
        Range apart = Range.parse(Range.Fact.POWER, "> 15 <= 300 not near 50 100");
        assertEquals(List.of(Fit.MET, Fit.MET, Fit.NOT_MET, Fit.MET),
                List.of(fit(near, 49), fit(near, 51), fit(near, 52), fit(near, 102)));
        assertEquals(List.of(Fit.NOT_MET, Fit.NOT_MET, Fit.MET, Fit.NOT_MET, Fit.NOT_MET),
                List.of(fit(apart, 49), fit(apart, 51), fit(apart, 52), fit(apart, 102), fit(apart, 301)));
        assertEquals("above 15 kW up to 300 kW but not near 50, 100 kW", apart.bounds());
        assertEquals(Fit.MET, Range.parse(Range.Fact.POWER, "not given").fit(Machine.unknown()));
        assertEquals(Fit.NOT_MET, fit(Range.parse(Range.Fact.POWER, "not given"), 1));
        assertEquals(Fit.OPEN, Fit.MET.and(Fit.OPEN));
        assertEquals(Fit.NOT_MET, Fit.NOT_MET.and(Fit.OPEN));
    }

    private static Fit fit(Range range, double kilowatts) {
        return range.fit(Machine.unknown().withRatedPowerKilowatts(kilowatts));
    }
}
