package dev.vibra.severity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.evidence.Confidence;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * The standards written for one kind of machine: every limit, its flag, the way to ask for it and the words it uses.
 */
class MachineStandardsTest {
    private static final CriterionTables TABLES = CriterionTables.shipped();
    private static final Map<String, Confidence> FLAGS = Map.of("firm", Confidence.FIRM,
            "secondary", Confidence.SECONDARY, "unverified", Confidence.UNVERIFIED);

    /** Cells: standard, class, support, quantity, unit, A/B, B/C, C/D, confidence. */
    private static List<String[]> published() throws IOException {
        try (InputStream in = MachineStandardsTest.class
                .getResourceAsStream("/reference/severity-limits-by-machine.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#")).map(line -> line.split("; ")).toList();
        }
    }

    private static Machine machine(MachineKind kind, double kilowatts, double revolutionsPerMinute) {
        return Machine.of(kind).withRatedPowerKilowatts(kilowatts)
                .withSpeed(RotationSpeed.ofRevolutionsPerMinute(revolutionsPerMinute)).withSupport(Support.RIGID);
    }

    private static Choice ask(Machine machine, String standard, String group) {
        return TABLES.choose(machine, CriterionRequest.of(standard).withGroup(group));
    }

    private static Level level(Criterion criterion, double value) {
        return Level.of(value, criterion.unit(), criterion.detector()).within(criterion.band());
    }

    @Test
    void everyLimitIsThePublishedOneWithItsFlag() throws IOException {
        Set<Criterion> found = new HashSet<>();
        for (String[] cells : published()) {
            List<Criterion> rows = TABLES.criteria().stream()
                    .filter(each -> each.standard().equals(cells[0]) && each.groupLabel().equals(cells[1])
                            && each.support().map(Support::toString).orElse("any").equals(cells[2])
                            && each.quantity().toString().equals(cells[3])).toList();
            assertFalse(rows.isEmpty(), String.join("; ", cells));
            found.addAll(rows);
            for (Criterion row : rows) {
                assertEquals(cells[4], row.unit().plainSymbol());
                assertEquals(FLAGS.get(cells[8]), row.confidence(), row::toString);
                assertBoundaries(row, cells);
            }
        }
        Set<String> general = Set.of("ISO 20816-3:2022", "ISO 10816-3:2009", "ISO 10816-1:1995");
        assertEquals(found.size(), TABLES.criteria().stream().filter(each -> !general.contains(each.standard()))
                .count(), "no limit without a published row");
    }

    private static void assertBoundaries(Criterion row, String[] cells) {
        for (int i = 0; i < 3; i++) {
            String name = List.of("A/B", "B/C", "C/D").get(i);
            if (cells[5 + i].equals("-")) {
                assertTrue(row.boundary(name).isEmpty(), row::toString);
            } else {
                double limit = row.boundary(name).orElseThrow().limit();
                assertEquals(Double.parseDouble(cells[5 + i]), limit, row::toString);
                Level on = level(row, limit);
                assertEquals(Zone.values()[i], row.zoneOf(on));
                assertEquals(Zone.values()[i + 1], row.zoneOf(
                        Level.ofSi(Math.nextUp(on.si()), on.quantity(), on.detector()).within(row.band())));
            }
        }
    }

    /** Displacement is velocity / (2 pi f), acceleration velocity * 2 pi f, rounded: from the sources of the tables. */
    @Test
    void displacementAndAccelerationFollowFromTheVelocity() {
        Map<String, double[]> hertz = Map.of("ISO 10816-6:1995", new double[] {10, 250},
                "ISO 20816-8:2018", new double[] {10, 200}, "IEC 60034-14:2018", new double[] {10, 250},
                "ISO 8528-9:2017", new double[] {10, 100}, "ISO 10816-3:1998", new double[] {20, 0});
        int compared = 0;
        for (Criterion row : TABLES.criteria()) {
            if (!hertz.containsKey(row.standard()) || row.quantity() == Quantity.VELOCITY) {
                continue;
            }
            Criterion velocity = TABLES.criteria().stream().filter(each -> each.quantity() == Quantity.VELOCITY
                    && each.band().equals(row.band()) && each.source().equals(row.source())).findFirst().orElseThrow();
            double corner = hertz.get(row.standard())[row.quantity() == Quantity.DISPLACEMENT ? 0 : 1];
            for (int i = 0; i < row.limits().size(); i++) {
                double computed = Level.of(velocity.limits().get(i), Unit.MM_PER_S, Detector.RMS)
                        .sineAs(row.quantity(), Detector.RMS, corner).in(row.unit());
                assertEquals(computed, row.limits().get(i), 0.05 * computed, row::toString);
                compared++;
            }
        }
        // Limits besides velocity: engines 2 * 7 * 2, compressors 2 * 6 * 3, motors 2 * 11, sets 2 * 25, pumps 2 * 4 *
        // 3.
        assertEquals(28 + 36 + 22 + 2 * 25 + 24, compared);
    }

    /**
     * In situ, BV-3 to BV-5: the peak values of the same source in inch per second, within one step of R20 (12.2 %).
     */
    @Test
    void fansAgreeWithThePeakValuesInInches() {
        Map<String, double[]> inchesPerSecond = Map.of("BV-3, in situ", new double[] {0.25, 0.40, 0.50},
                "BV-4, in situ", new double[] {0.16, 0.25, 0.40}, "BV-5, in situ", new double[] {0.10, 0.20, 0.30});
        int compared = 0;
        for (Criterion row : TABLES.criteria()) {
            double[] peaks = inchesPerSecond.get(row.groupLabel());
            if (peaks != null && row.support().orElseThrow() == Support.RIGID) {
                for (int i = 0; i < 3; i++) {
                    double rms = peaks[i] * 25.4 / Math.sqrt(2);
                    assertEquals(1, row.limits().get(i) / rms, Math.pow(10, 1 / 20.0) - 1, row::toString);
                    compared++;
                }
            }
        }
        assertEquals(9, compared);
    }

    @Test
    void pumpByCategoryAndPower() {
        Machine pump = machine(MachineKind.PUMP, 200, 1480);
        Choice first = ask(pump, "ISO 10816-7", "I");
        assertEquals(List.of(2.5, 4.0, 6.6), first.criteria().get(0).limits());
        assertEquals(List.of(4.2, 6.1, 9.5),
                ask(machine(MachineKind.PUMP, 200.1, 1480), "ISO 10816-7", "category II").criteria().get(0).limits());
        assertEquals("I, up to 200 kW", first.criteria().get(0).group());
        OperatingLimits limits = first.criteria().get(0).operatingLimits().orElseThrow();
        assertEquals("change 1, alarm up to 5, trip up to 8.3 (secondary source, verify)", limits.toString());
        assertEquals("Table A.1", limits.clause());
        assertEquals(TABLES.choose(pump).candidates(),
                TABLES.choose(pump, CriterionRequest.of("ISO 10816-7")).candidates());
        assertEquals(4, ask(pump, "ISO 10816-7", "acceptance in situ").candidates().size());
    }

    /** Up to 600 r/min 20 um peak-to-peak for each mm/s of the columns up to 200 kW, rounded. */
    @Test
    void slowPumpsHaveDisplacementLimits() {
        int compared = 0;
        for (String category : List.of("I", "II")) {
            Criterion slow = ask(machine(MachineKind.PUMP, 900, 600), "ISO 10816-7", category).criteria().get(0);
            Criterion fast = ask(machine(MachineKind.PUMP, 100, 601), "ISO 10816-7", category).criteria().get(0);
            assertEquals(Detector.PEAK_TO_PEAK, slow.detector());
            assertEquals(Band.of(2, 1000), slow.band());
            for (int i = 0; i < 3; i++) {
                assertEquals(20, slow.limits().get(i) / fast.limits().get(i), 0.65);
                compared++;
            }
        }
        assertEquals(6, compared);
    }


    /** The printed ALARM and TRIP values of the pump part are 1.25 times B/C and C/D, rounded to a tenth. */
    @Test
    void alarmAndTripOfPumpsAreTheRuleRounded() {
        int compared = 0;
        for (Criterion row : TABLES.criteria()) {
            if (row.groupLabel().startsWith("category ") && row.quantity() == Quantity.VELOCITY) {
                OperatingLimits limits = row.operatingLimits().orElseThrow();
                assertEquals(1.25 * row.limits().get(1), limits.highestAlarm().orElseThrow(), 0.051);
                assertEquals(1.25 * row.limits().get(2), limits.highestTrip().orElseThrow(), 0.051);
                compared++;
            }
        }
        assertEquals(4, compared);
    }

    @Test
    void dutyInWordsFindsTheGroup() {
        Machine fan = machine(MachineKind.FAN, 3.7, 1450);
        CriterionRequest request = CriterionRequest.of("ISO 14694").withDuty("hvac");
        assertEquals("as requested, ISO 14694:2003 BV-2, in situ", TABLES.choose(fan, request).reason());
        Machine larger = fan.withRatedPowerKilowatts(3.8);
        assertEquals("BV-3, in situ, rigid", TABLES.choose(larger, request).candidates().get(0).label());
        assertEquals("BV-3, workshop test, rigid",
                TABLES.choose(larger, request.withGroup("workshop test")).candidates().get(0).label());
        CriterionRequest industrial = CriterionRequest.of("ISO 14694").withDuty("industrial process");
        assertEquals("BV-4, in situ, rigid",
                TABLES.choose(fan.withRatedPowerKilowatts(350), industrial).candidates().get(0).label());
        assertEquals(List.of("rated power"), TABLES.choose(Machine.of(MachineKind.FAN), request).missing());
        assertTrue(TABLES.choose(fan, request.withDuty("kitchen")).reason().startsWith("request ISO 14694,"
                + " duty kitchen refused: duties of ISO 14694:2003 are residential, HVAC, "));
        assertEquals("request ISO 20816-3, duty HVAC refused: ISO 20816-3:2022 has no duties in the tables",
                TABLES.choose(fan, CriterionRequest.of("ISO 20816-3").withDuty("HVAC")).reason());
        Choice critical = TABLES.choose(machine(MachineKind.PUMP, 300, 1480),
                CriterionRequest.of("ISO 10816-7").withDuty("critical service"));
        assertEquals("category I, above 200 kW", critical.criteria().get(0).groupLabel());
        assertEquals("duty must not be blank", assertThrows(IllegalArgumentException.class,
                () -> request.withDuty(" ")).getMessage());
        assertEquals("hvac", request.duty().orElseThrow());
    }


    @Test
    void fanSaysStartUpAlarmAndShutdown() {
        Machine fan = machine(MachineKind.FAN, 55, 1450);
        Severity severity = Severity.by(ask(fan, "ISO 14694", "BV-3, in situ"));
        Criterion criterion = severity.criteria().get(0);
        assertTrue(criterion.hasOwnRatings());
        assertEquals(List.of("within start-up", "above start-up", "above alarm", "above shutdown"),
                List.of(Zone.values()).stream().map(criterion::rating).toList());
        Verdict verdict = severity.judge(level(criterion, 7.5));
        assertEquals("above alarm: 7.50 ± 0.73 mm/s rms (10\u20131000 Hz); above start-up or above alarm within"
                + " uncertainty; limits 4.5 / 7.1 / 9 (secondary source, verify); ISO 14694:2003 8.4, BV-3, in"
                + " situ, rigid", verdict.toString());
        assertTrue(verdict.describe().contains("limits       start-up 4.5, alarm 7.1, shutdown 9 mm/s"),
                verdict::describe);
        assertTrue(verdict.describe().startsWith("above alarm: above the alarm limit; a remedy is to be planned\n"));
        Criterion small = ask(fan, "ISO 14694", "BV-1, in situ").criteria().get(0);
        assertEquals(Zone.C, small.zoneOf(level(small, 100)), "no shutdown limit, so no zone D");
        assertEquals(Confidence.UNVERIFIED, small.confidence());
    }

    @Test
    void motorIsAcceptedOrNot() {
        Machine motor = machine(MachineKind.ELECTRIC_MOTOR, 75, 1480).withShaftHeightMillimetres(280);
        Choice choice = ask(motor, "IEC 60034-14", "grade B, rigid mounting");
        assertEquals(3, choice.criteria().size());
        Severity severity = Severity.by(choice);
        Verdict verdict = severity.judge(level(choice.criteria().get(1), 0.9));
        assertTrue(verdict.toString().startsWith("accepted: 0.90"), verdict::toString);
        Verdict worse = severity.judge(level(choice.criteria().get(1), 0.9), level(choice.criteria().get(2), 1.5));
        assertTrue(worse.toString().startsWith("not accepted: 1.50 ± 0.15 m/s² rms"), worse::toString);
        assertEquals("request IEC 60034-14, grade B, rigid mounting refused: IEC 60034-14:2018 has no group or class"
                + " for shaft height 132 mm",
                ask(motor.withShaftHeightMillimetres(132), "IEC 60034-14", "grade B, rigid mounting").reason());
        Choice grade = TABLES.choose(motor, CriterionRequest.of("IEC 60034-14"));
        assertEquals(List.of("test mounting"), grade.undecided(), "grade A where none is stated");
        assertTrue(grade.candidates().stream().allMatch(set -> set.label().startsWith("grade A, ")));
        assertEquals(List.of("shaft height"),
                ask(Machine.of(MachineKind.GENERATOR).withSpeed(RotationSpeed.ofHertz(25)),
                "IEC 60034-14", "grade A, free suspension").missing());
    }

    /** 4800, 9000 and 13200 over the root of the speed, as published at 3000, 3600 and 10 000 r/min. */
    @Test
    void shaftVibrationFollowsTheSpeed() {
        double[][] published = {{3000, 87.6, 164.3, 241.0}, {3600, 80, 150, 220}, {10_000, 48, 90, 132},
            {1000, 151.8, 284.6, 417.4}};
        for (double[] row : published) {
            Criterion criterion = ask(machine(MachineKind.COMPRESSOR, 900, row[0]), "ISO 20816-3", "shaft relative")
                    .criteria().get(0);
            for (int i = 0; i < 3; i++) {
                assertEquals(row[i + 1], criterion.limits().get(i), 0.051);
            }
            assertEquals(Detector.PEAK_TO_PEAK, criterion.detector());
            assertEquals(Band.of(1, Math.max(125, 3 * row[0] / 60)), criterion.band());
            assertEquals(0.25 * criterion.limits().get(1),
                    criterion.operatingLimits().orElseThrow().significantChange().orElseThrow(), 1e-12);
        }
        Machine slow = machine(MachineKind.COMPRESSOR, 900, 599);
        assertFalse(ask(slow, "ISO 20816-3", "shaft relative").hasCriterion());
        assertEquals(List.of("speed"), ask(Machine.of(MachineKind.COMPRESSOR).withRatedPowerKilowatts(900),
                "ISO 20816-3", "shaft relative").missing());
        assertTrue(TABLES.criteria().stream().noneMatch(each -> each.groupLabel().equals("shaft relative")));
    }

    @Test
    void whatElseFitsIsNamed() {
        assertAlternatives("[ISO 10816-7:2009, acceptance in situ, up to 200 kW]", machine(MachineKind.PUMP, 37, 1480));
        assertAlternatives("[ISO 20816-3:2022, shaft relative, ISO 14694:2003]", machine(MachineKind.FAN, 37, 1480));
        assertAlternatives("[ISO 20816-3:2022, shaft relative, IEC 60034-14:2018]",
                machine(MachineKind.GENERATOR, 90, 1480).withShaftHeightMillimetres(280));
        assertAlternatives("[ISO 8528-9:2017]", machine(MachineKind.GENERATING_SET, 150, 1500));
        assertAlternatives("[ISO 10816-6:1995]", machine(MachineKind.RECIPROCATING_ENGINE, 101, 1500));
        assertAlternatives("[ISO 20816-8:2018]", machine(MachineKind.RECIPROCATING_COMPRESSOR, 90, 740));
        assertAlternatives("[ISO 10816-5:2000]", machine(MachineKind.HYDRAULIC_TURBINE, 1000, 300));
        assertAlternatives("[]", machine(MachineKind.HYDRAULIC_TURBINE, 999, 300));
        assertAlternatives("[]", machine(MachineKind.WIND_TURBINE, 90, 740));
        Choice shaft = ask(machine(MachineKind.FAN, 37, 1480), "ISO 20816-3", "shaft relative");
        assertEquals("[ISO 20816-3:2022, group 2, ISO 14694:2003]", shaft.alternatives().toString());
    }

    private static void assertAlternatives(String expected, Machine machine) {
        assertEquals(expected, TABLES.choose(machine).alternatives().toString());
    }

    /** Scopes by the public abstracts: part 2 above 40 MW at four speeds, part 4 above 3 MW, the rest part 3. */
    @Test
    void largeTurbinesBySpeed() {
        Machine generator = machine(MachineKind.GENERATOR, 60_000, 3000);
        Choice part2 = TABLES.choose(generator);
        assertFalse(part2.hasCriterion());
        assertEquals("[ISO 20816-2:2017, steam turbine or generator at 3000 or 3600 r/min]",
                part2.alternatives().toString());
        Severity asked = Severity.of(generator, part2.alternatives().get(0));
        assertEquals(List.of(3.8, 7.5, 11.8), asked.criteria().get(0).limits());
        assertEquals(Confidence.UNVERIFIED, asked.judge(level(asked.criteria().get(0), 12)).restsOnFlagged()
                .orElseThrow());
        Choice part3 = TABLES.choose(machine(MachineKind.GENERATOR, 60_000, 2400));
        assertEquals("group 1, rigid", part3.candidates().get(0).label());
        assertEquals(List.of("speed"), TABLES.choose(Machine.of(MachineKind.STEAM_TURBINE)
                .withRatedPowerKilowatts(60_000)).missing());
        assertEquals(List.of(2.8, 5.3, 8.5), TABLES.choose(machine(MachineKind.STEAM_TURBINE, 50_000, 1500),
                CriterionRequest.of("ISO 20816-2")).criteria().get(0).limits());
        Machine gas = machine(MachineKind.GAS_TURBINE, 5000, 11_000);
        assertEquals("[ISO 20816-4:2018, gas turbine]", TABLES.choose(gas).alternatives().toString());
        assertTrue(TABLES.choose(gas, CriterionRequest.of("ISO 20816-3")).outOfScope().isPresent());
    }


    @Test
    void theOldPumpGroupsAreNamedByTheirEditionOnly() {
        Machine pump = machine(MachineKind.PUMP, 37, 500);
        assertEquals("request ISO 10816-3, group 3 refused: ISO 10816-3:2009 has group 1; group 2",
                ask(pump, "ISO 10816-3", "3").reason());
        Choice old = ask(pump, "ISO 10816-3:1998", "3");
        assertEquals(List.of("withdrawn edition: pumps with separate driver"), old.remarks());
        assertEquals(Band.of(2, 1000), old.criteria().get(0).band());
        assertEquals(List.of("driver"), TABLES.choose(pump, CriterionRequest.of("ISO 10816-3:1998")).undecided());
    }

    @Test
    void machineSetsAndEnginesByName() {
        Machine hydro = Machine.of(MachineKind.HYDRAULIC_TURBINE).withSpeed(RotationSpeed.ofRevolutionsPerMinute(250));
        assertEquals(List.of(2.5, 4.0, 6.4), ask(hydro, "ISO 10816-5", "2").criteria().get(0).limits());
        assertFalse(ask(hydro, "ISO 10816-5", "1").hasCriterion(), "group 1 is for more than 300 r/min");
        Machine set = machine(MachineKind.GENERATING_SET, 250, 1500);
        Choice generator = ask(set, "ISO 8528-9", "generator");
        Verdict verdict = Severity.by(generator).judge(level(generator.criteria().get(1), 20.1));
        assertTrue(verdict.toString().startsWith("above value 1: 20.1 ± 2.0 mm/s rms (2\u2013300 Hz)"),
                verdict::toString);
        assertEquals("to be assessed and agreed between maker and user", verdict.meaning());
        assertEquals(List.of(20.0, 28.0), generator.criteria().get(1).limits());
        Choice engine = ask(machine(MachineKind.RECIPROCATING_ENGINE, 500, 750), "ISO 10816-6", "5");
        assertEquals("zone A or B", engine.criteria().get(1).rating(Zone.B));
        assertEquals("severity grades 28 and 45", engine.criteria().get(1).note());
    }

    /** Each combination of the facts that the on-request standards part their classes by, at every edge. */
    @Test
    void everyRequestOfASetIsUniqueOrUndecided() {
        List<String> outcomes = new ArrayList<>();
        double[] speeds = {719, 720, 721, 1299, 1300, 1999, 2000, 3600};
        double[] powers = {7.9, 8, 12, 12.1, 40, 40.1, 100, 100.1, 200, 200.1, 1000, 1000.1};
        for (double speed : speeds) {
            for (double power : powers) {
                Choice choice = ask(machine(MachineKind.GENERATING_SET, power, speed), "ISO 8528-9", "generator");
                int expected = expectedSet(speed, power);
                assertEquals(expected, choice.candidates().size(), () -> speed + " r/min, " + power + " kW: " + choice);
                assertEquals(expected > 1, !choice.undecided().isEmpty(), choice::toString);
                outcomes.add(String.valueOf(expected));
            }
        }
        assertEquals(Set.of("0", "1", "2"), Set.copyOf(outcomes));
    }

    /** How many rows for the generator hold, written out a second time. */
    private static int expectedSet(double speed, double power) {
        if (speed >= 2000) {
            return power <= 12 ? 2 : 1;
        }
        if (speed >= 1300) {
            return power >= 8 ? 1 : 0;
        }
        if (speed > 720) {
            return power >= 200 ? 1 : 0;
        }
        return power > 1000 ? 1 : 0;
    }
}
