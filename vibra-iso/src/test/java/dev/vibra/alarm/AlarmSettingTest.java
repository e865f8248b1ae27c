package dev.vibra.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.CriterionRequest;
import dev.vibra.severity.CriterionTables;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Severity;
import dev.vibra.severity.Support;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** ISO 20816-3:2022 group 2, rigid: A/B 1.4, B/C 2.8, C/D 4.5 mm/s, so a change of 0.7 mm/s matters. */
class AlarmSettingTest {
    private static final Machine BLOWER = Machine.of(MachineKind.BLOWER).withRatedPowerKilowatts(37)
            .withSupport(Support.RIGID).withSpeed(RotationSpeed.ofRevolutionsPerMinute(1480));
    private static final Criterion CRITERION = Severity.of(BLOWER).criteria().get(0);

    private static Level level(double millimetresPerSecond) {
        return Level.of(millimetresPerSecond, Unit.MM_PER_S, Detector.RMS).within(Band.of(10, 1000));
    }

    private static Baseline baseline(double... readings) {
        return Baseline.of("full load", DoubleStream.of(readings).mapToObj(AlarmSettingTest::level).toList());
    }

    private static void assertLevel(double millimetresPerSecond, Level level) {
        assertEquals(millimetresPerSecond, level.in(Unit.MM_PER_S), 1e-12);
        assertEquals(LevelMethod.STATED, level.method());
    }

    private static String message(Runnable call) {
        return assertThrows(IllegalArgumentException.class, call::run).getMessage();
    }

    @Test
    void aChangeOfAQuarterOfTheBoundaryMattersUpAndDown() {
        assertFalse(Change.of(CRITERION, level(1.0), level(1.7)).isSignificant(), "0.7 itself doesn't exceed 0.7");
        assertTrue(Change.of(CRITERION, level(1.0), level(1.7001)).isSignificant());
        assertTrue(Change.of(CRITERION, level(1.7001), level(1.0)).isSignificant());
        Change change = Change.of(CRITERION, level(1.6), level(2.7));
        assertEquals(1.1, change.difference(), 1e-12);
        assertEquals(1.1 / 2.8, change.partOfBoundary().orElseThrow(), 1e-12);
        assertEquals(0.7, change.significantChange(), 1e-12);
        assertEquals("+1.10 mm/s rms, matters: more than 0.7 up or down; ISO 20816-3:2022 6.5 (secondary source,"
                + " verify)", change.toString());
        assertEquals("-0.600 mm/s rms, within 0.7 up or down; ISO 20816-3:2022 6.5 (secondary source, verify)",
                Change.of(CRITERION, level(1.6), level(1.0)).toString());
        Criterion classI = Severity.of(BLOWER.withRatedPowerKilowatts(11)).criteria().get(0);
        assertEquals("+0.500 mm/s rms, matters: more than 0.45 up or down; ISO 10816-1:1995 criterion II of ISO"
                + " 20816-1:2016", Change.of(classI, level(1.0), level(1.5)).toString());
    }

    /** Amplitude the same, phase turned by 60 degrees: an equilateral triangle, so the vector has moved by itself. */
    @Test
    void aVectorMayMoveWhileItsAmplitudeStays() {
        VibrationVector before = VibrationVector.of(1, 30, Unit.MM_PER_S, Detector.RMS, PhaseSense.LAG);
        VibrationVector after = VibrationVector.of(1, 90, Unit.MM_PER_S, Detector.RMS, PhaseSense.LAG);
        Change change = Change.ofVectors(CRITERION, before, after);
        assertEquals(1, change.difference(), 1e-12);
        assertTrue(change.isSignificant());
        assertEquals("vector change 1.00 mm/s rms, matters: more than 0.7 in any direction; ISO 20816-3:2022 6.5"
                + " (secondary source, verify)", change.toString());
        VibrationVector peak = VibrationVector.of(1e-3 * Math.sqrt(2), 90, Unit.M_PER_S, Detector.ZERO_TO_PEAK,
                PhaseSense.LAG);
        assertEquals(1, Change.ofVectors(CRITERION, before, peak).difference(), 1e-12, "same vector in other units");
        assertEquals(change, Change.ofVectors(CRITERION, before, after));
        assertNotEquals(change, Change.of(CRITERION, level(0), level(1)));
    }

    @Test
    void changeRefusesWhatDoesNotCompare() {
        assertEquals("level must be limited to the band 10\u20131000 Hz for ISO 20816-3:2022 group 2: 2\u20131000 Hz",
                message(() -> Change.of(CRITERION, level(1), Level.of(1, Unit.MM_PER_S, Detector.RMS)
                        .within(Band.of(2, 1000)))));
        Criterion engine = CriterionTables.shipped().choose(Machine.of(MachineKind.RECIPROCATING_ENGINE)
                .withRatedPowerKilowatts(500), CriterionRequest.of("ISO 10816-6").withGroup("3")).criteria().get(1);
        Level level = Level.of(1, Unit.MM_PER_S, Detector.RMS).within(engine.band());
        assertTrue(message(() -> Change.of(engine, level, level)).startsWith("criterion must say which change matters,"
                + " in [operation] of its tables: velocity 11.2 / 17.8 mm/s rms"));
        assertTrue(message(() -> AlarmSetting.of(engine, Baseline.of("s", List.of(level))))
                .startsWith("criterion must say which change matters"));
        assertLevel(11.2, AlarmSetting.withoutBaseline(engine).alarm());
        assertEquals("alarm 11.2, trip 17.8 mm/s rms (2\u20131000 Hz); ISO 10816-6:1995",
                AlarmSetting.withoutBaseline(engine).toString());
    }

    @Test
    void alarmIsBaselinePlusChangeAndTripStartsAtTheLastBoundary() {
        AlarmSetting setting = AlarmSetting.of(CRITERION, baseline(1.5, 1.7, 1.6, 1.55, 1.65));
        assertLevel(2.3, setting.alarm());
        assertLevel(4.5, setting.trip().orElseThrow());
        assertEquals(List.of(), setting.remarks());
        assertEquals("alarm 2.3, trip 4.5 mm/s rms (10\u20131000 Hz); ISO 20816-3:2022 6.5 (secondary source, verify)",
                setting.toString());
        assertEquals(level(4.5), setting.trip().orElseThrow());
        assertLevel(5.625, setting.withTrip(level(5.625)).trip().orElseThrow());
        assertEquals("alarm 2.3, trip 5.625 mm/s rms (10\u20131000 Hz); ISO 20816-3:2022 6.5 (secondary source,"
                + " verify)", setting.withTrip(level(5.625)).toString());
        assertTrue(setting.withTrip(level(2.3001)).toString().startsWith("alarm 2.3, trip 2.3001 mm/s"));
        assertEquals("trip must not be above the cap, 5.625 mm/s: 5.63 mm/s rms (10\u20131000 Hz)",
                message(() -> setting.withTrip(level(5.63))));
        assertTrue(message(() -> setting.withTrip(setting.alarm())).startsWith("trip must be above the alarm"));
        assertTrue(message(() -> setting.withTrip(Level.of(3, Unit.G, Detector.RMS)))
                .startsWith("trip must be above the alarm"), "of another kind");
        assertEquals("alarm 2.30 mm/s rms (10\u20131000 Hz), trip 4.50 mm/s rms (10\u20131000 Hz), 10 % hysteresis, 3"
                + " readings to raise, 3 to clear", setting.rule().toString());
        assertEquals(CRITERION, setting.criterion());
    }

    /** Class I of ISO 10816-1: C/D 4.5 mm/s and no cap; 4.2 and a quarter of 1.8 make 4.65 mm/s. */
    @Test
    void anAlarmThatWouldNotLieBelowTheTripIsRefused() {
        Criterion classI = Severity.of(BLOWER.withRatedPowerKilowatts(11)).criteria().get(0);
        assertEquals("baseline must leave the alarm below the trip, 4.5 mm/s, for ISO 10816-1:1995 class I: alarm 4.65;"
                + " the machine needs a remedy, not an alarm setting",
                message(() -> AlarmSetting.of(classI, baseline(4.2))));
        assertLevel(4.45, AlarmSetting.of(classI, baseline(4.0)).alarm());
    }

    /** Up or down by exactly 0.7 mm/s, written in hundredths: rounding of doubles decides nothing. */
    @Test
    void aChangeThatEqualsTheOneThatMattersDoesNotExceedIt() {
        for (int i = 0; i < 1000; i++) {
            Level low = level(i / 100.0);
            Level high = level((i + 70) / 100.0);
            assertFalse(Change.of(CRITERION, low, high).isSignificant(), () -> low + " up");
            assertFalse(Change.of(CRITERION, high, low).isSignificant(), () -> high + " down");
            Level higher = level((i + 70) / 100.0 + 1e-9);
            assertTrue(Change.of(CRITERION, low, higher).isSignificant(), () -> low + " up by more");
        }
        assertEquals("+0.7001 mm/s rms, matters: more than 0.7 up or down",
                Change.of(CRITERION, level(1.6), level(2.3001)).toString().split(";")[0]);
        assertEquals("-0.700 mm/s rms, within 0.7 up or down",
                Change.of(CRITERION, level(2.3), level(1.60004)).toString().split(";")[0]);
    }

    @Test
    void blanksAroundTheNameOfAPointDoNotHideItsBaseline() {
        BaselineRegister register = BaselineRegister.empty().with(" DE-H ", baseline(1.6));
        assertTrue(register.find("DE-H", " full load ").isPresent());
        assertEquals("baselines of DE-H", register.toString());
        assertEquals("point", assertThrows(NullPointerException.class, () -> register.find(null, "x")).getMessage());
    }

    /** The cap is 1.25 times 2.8 mm/s = 3.5 mm/s; with 2.8 mm/s the alarm is just at it. */
    @Test
    void alarmStaysBelowTheCap() {
        assertEquals(List.of(), AlarmSetting.of(CRITERION, baseline(2.79, 2.79, 2.79, 2.79, 2.79)).remarks());
        AlarmSetting capped = AlarmSetting.of(CRITERION, baseline(3.0, 3.0, 3.0, 3.0, 3.0));
        assertLevel(3.5, capped.alarm());
        assertEquals(List.of("baseline plus change exceeds the cap: set to the cap"), capped.remarks());
        AlarmSetting bad = AlarmSetting.of(CRITERION, baseline(3.5));
        assertLevel(3.5, bad.alarm());
        assertEquals(List.of("baseline of 1 reading is not settled: set anew from 5 on",
                "the baseline itself is not below the cap: the machine needs a remedy, not an alarm setting"),
                bad.remarks());
        Criterion pump = CriterionTables.shipped().choose(BLOWER.withKind(MachineKind.PUMP),
                CriterionRequest.of("ISO 10816-7").withGroup("I"))
                .criteria().get(0);
        assertLevel(5.0, AlarmSetting.of(pump, baseline(4.2)).alarm());
        assertLevel(8.3, AlarmSetting.of(pump, baseline(4.2)).withTrip(level(8.3)).trip().orElseThrow());
    }

    @Test
    void withoutBaselineTheBoundariesStart() {
        AlarmSetting setting = AlarmSetting.withoutBaseline(CRITERION);
        assertLevel(2.8, setting.alarm());
        assertLevel(4.5, setting.trip().orElseThrow());
        assertEquals(1, setting.remarks().size());
        Criterion fan = CriterionTables.shipped().choose(Machine.of(MachineKind.FAN).withRatedPowerKilowatts(0.1)
                .withSupport(Support.RIGID), CriterionRequest.of("ISO 14694").withGroup("BV-1, in situ"))
                .criteria().get(0);
        AlarmSetting small = AlarmSetting.withoutBaseline(fan);
        assertLevel(10.6, small.alarm());
        assertTrue(small.trip().isEmpty());
        assertTrue(small.rule().trip().isEmpty());
        assertEquals(setting, AlarmSetting.withoutBaseline(CRITERION));
        assertEquals(setting.hashCode(), AlarmSetting.withoutBaseline(CRITERION).hashCode());
        assertNotEquals(setting, setting.withTrip(level(5)));
    }

    @Test
    void baselineKeepsLikeReadings() {
        Baseline baseline = baseline(1, 2, 3, 4);
        assertEquals(2.5, baseline.level().in(Unit.MM_PER_S), 1e-12);
        assertEquals(Math.sqrt(5 / 3.0), baseline.standardDeviation().in(Unit.MM_PER_S), 1e-12);
        assertEquals("2.50 mm/s rms (10\u20131000 Hz), mean of 4 (full load), not settled", baseline.toString());
        Baseline five = baseline.with(level(5));
        assertTrue(five.isSettled());
        assertEquals("3.00 mm/s rms (10\u20131000 Hz), mean of 5 (full load)", five.toString());
        assertEquals(5, five.readings().size());
        assertEquals(baseline(1, 2, 3, 4, 5), five);
        assertEquals("readings must be of one quantity, detector and band: 1.00 mm/s rms (10\u20131000 Hz), 3.00 mm/s"
                + " rms", message(() -> baseline.with(Level.of(3, Unit.MM_PER_S, Detector.RMS))));
        assertTrue(message(() -> baseline.with(Level.of(3, Unit.MM_PER_S, Detector.ZERO_TO_PEAK)
                .within(Band.of(10, 1000)))).startsWith("readings must be"));
        assertTrue(message(() -> baseline.with(Level.of(3, Unit.UM, Detector.RMS).within(Band.of(10, 1000))))
                .startsWith("readings must be"));
        assertEquals("state must not be blank", message(() -> Baseline.of(" ", List.of(level(1)))));
        assertEquals("readings must not be empty", message(() -> Baseline.of("s", List.of())));
        assertEquals("a standard deviation needs at least 2 readings: 1", assertThrows(IllegalStateException.class,
                () -> baseline(1).standardDeviation()).getMessage());
        Level unlimited = Level.of(1, Unit.MM_PER_S, Detector.RMS);
        assertTrue(Baseline.of("s", List.of(unlimited)).level().band().isEmpty());
    }

    @Test
    void baselineMixesNoMethods() {
        Level chain = level(3).by(LevelMethod.SEVERITY_CHAIN);
        assertEquals(LevelMethod.SEVERITY_CHAIN, Baseline.of("s", List.of(chain, chain)).level().method());
        assertEquals(LevelMethod.STATED, Baseline.of("s", List.of(chain, level(3))).level().method());
        assertEquals("readings must be measured by one method: stated by the caller, severity chain of ISO 2954,"
                + " zero-phase band", message(() -> Baseline.of("s", List.of(level(1), chain,
                level(3).by(LevelMethod.ZERO_PHASE_BAND)))));
    }

    @Test
    void registerKeepsPointsAndStates() {
        BaselineRegister register = BaselineRegister.empty().with("DE-H", baseline(1))
                .with("DE-H", Baseline.of("half load", List.of(level(0.8)))).with("NDE-H", baseline(2))
                .with("DE-H", baseline(1.1));
        assertEquals("baselines of DE-H, NDE-H", register.toString());
        assertEquals(baseline(1.1), register.find("DE-H", "full load").orElseThrow());
        assertEquals("half load", register.find("DE-H", " half load ").orElseThrow().state());
        assertTrue(register.find("DE-H", "idle").isEmpty());
        assertTrue(register.find("DE-V", "full load").isEmpty());
        assertEquals(2, register.points().get("DE-H").size());
        BaselineRegister renewed = register.renewed("2026-05-04 new bearing");
        assertEquals("no baseline", renewed.toString());
        assertEquals(List.of("2026-05-04 new bearing"), renewed.renewals());
        assertEquals(List.of("2026-05-04 new bearing"), renewed.with("DE-H", baseline(1)).renewals());
        assertNotEquals(register, renewed);
        assertEquals("point must not be blank", message(() -> register.with(" ", baseline(1))));
        assertEquals("reason must not be blank", message(() -> register.renewed("")));
        assertThrows(UnsupportedOperationException.class, () -> register.points().clear());
    }

    /** Readings 1 to 10: mean 5.5, s = sqrt(82.5/9); Student's t(0.99; 9) = 2.8214 (SciPy 1.10, stats.t.ppf). */
    @Test
    void statisticalLimits() {
        Baseline ten = baseline(1, 2, 3, 4, 5, 6, 7, 8, 9, 10);
        double s = Math.sqrt(82.5 / 9);
        StatisticalRule rule = StatisticalRule.withDefaults();
        assertEquals(5.5 + 3 * s, rule.limit(ten).in(Unit.MM_PER_S), 1e-12);
        assertEquals(5.5 + 2.5 * s, rule.withFactor(2.5).limit(ten).in(Unit.MM_PER_S), 1e-12);
        assertEquals(5.5 + 2.8214379 * s * Math.sqrt(1.1),
                rule.withFalseAlarmProbability(0.01).limit(ten).in(Unit.MM_PER_S), 1e-6);
        assertEquals("a statistical limit must rest on at least 10 readings: 9",
                message(() -> rule.limit(baseline(1, 2, 3, 4, 5, 6, 7, 8, 9))));
        assertEquals(2 + 3.0, rule.withMinimumReadings(3).limit(baseline(1, 2, 3)).in(Unit.MM_PER_S), 1e-12);
        assertTrue(message(() -> rule.withMinimumReadings(3).limit(baseline(1, 1, 1)))
                .startsWith("standard deviation of the readings must be finite and > 0 (SI): 0.0"));
        // Eleven times 1.7: the sum of doubles leaves a scatter of 1e-16 of the mean.
        double[] alike = DoubleStream.generate(() -> 1.7000000000000006).limit(11).toArray();
        assertTrue(message(() -> rule.limit(baseline(alike)))
                .startsWith("standard deviation of the readings must be above rounding, 1.0E-12 of their mean (SI): "));
        assertEquals("minimumReadings must be at least 3: 2", message(() -> rule.withMinimumReadings(2)));
        assertEquals("factor must be finite and > 0: NaN", message(() -> rule.withFactor(Double.NaN)));
        assertEquals("probability must be above 0 and at most 0.5: 0.0",
                message(() -> rule.withFalseAlarmProbability(0)));
        assertEquals("mean + 3 standard deviations of at least 10 readings", rule.toString());
        assertEquals("prediction limit exceeded by 1 % of at least 12 readings",
                rule.withFalseAlarmProbability(0.01).withMinimumReadings(12).toString());
        assertEquals(rule, rule.withFactor(3));
        assertEquals(rule.hashCode(), rule.withFactor(3).hashCode());
        assertNotEquals(rule, rule.withFactor(2));
    }

    /** The next reading of a normal scatter exceeds the 5 % limit in 5 % of 20 000 seeded runs, within four sd. */
    @Test
    void predictionLimitKeepsItsProbability() {
        Random random = new Random(20816);
        StatisticalRule rule = StatisticalRule.withDefaults().withFalseAlarmProbability(0.05);
        int exceeded = 0;
        int runs = 20_000;
        for (int run = 0; run < runs; run++) {
            double[] readings = random.doubles(0, 1).limit(10).map(unused -> 3 + 0.1 * random.nextGaussian()).toArray();
            if (3 + 0.1 * random.nextGaussian() > rule.limit(baseline(readings)).in(Unit.MM_PER_S)) {
                exceeded++;
            }
        }
        assertEquals(0.05, exceeded / (double) runs, 4 * Math.sqrt(0.05 * 0.95 / runs));
    }

    /** Neighbours as far apart as may be don't hang together; steps up and down of one size do. */
    @Test
    void aLimitForMonitoringAllowsForWhatItsBaselineTells() {
        StatisticalRule rule = StatisticalRule.forMonitoring();
        Baseline apart = baseline(3, 3.2, 3, 3.2, 3, 3.2, 3, 3.2, 3, 3.2);
        assertEquals(2 * 3.1, rule.limit(apart).in(Unit.MM_PER_S), 1e-12, "a doubling at least");
        double plain = StatisticalRule.withDefaults().limit(apart).in(Unit.MM_PER_S);
        double alone = rule.withLeastRatio(1).limit(apart).in(Unit.MM_PER_S);
        assertEquals(3.1 + 3 * apart.standardDeviation().in(Unit.MM_PER_S) * Math.sqrt(1.1) * Math.sqrt(0.9 / 0.9), alone,
                1e-12, "no correlation: factor times the spread of the next reading");
        Baseline together = baseline(3, 3, 3, 3.2, 3.2, 3.2, 3, 3, 3, 3.2);
        assertTrue(rule.withLeastRatio(1).limit(together).in(Unit.MM_PER_S) > alone && alone > plain);
        assertTrue(rule.objectionTo(baseline(5, 4.5, 4.1, 3.8, 3.6, 3.4, 3.3, 3.2, 3.1, 3)).orElseThrow()
                .contains("fall still"));
        assertTrue(rule.objectionTo(baseline(1, 2, 3, 4, 5, 6, 7, 8, 9, 10)).orElseThrow().contains("rise already"));
        assertEquals(Optional.empty(), rule.objectionTo(apart));
        assertEquals("mean + 3 standard deviations of at least 10 readings that may hang together, at least 2 times the"
                + " mean", rule.toString());
        assertNotEquals(rule, rule.withLeastRatio(3));
    }

    @Test
    void listsAreNotHandedOut() {
        assertThrows(UnsupportedOperationException.class, () -> baseline(1).readings().add(level(2)));
        assertEquals(List.of(), Collections.unmodifiableList(AlarmSetting.of(CRITERION, baseline(1, 1, 1, 1, 1))
                .remarks()));
    }
}
