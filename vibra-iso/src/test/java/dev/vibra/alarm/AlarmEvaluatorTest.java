package dev.vibra.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.vibra.meter.LevelMeter;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Severity;
import dev.vibra.severity.Support;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class AlarmEvaluatorTest {
    private static final AlarmRule RULE = alarm(2).withTrip(level(4));

    private static Level level(double metresPerSecond) {
        return Level.ofSi(metresPerSecond, Quantity.VELOCITY, Detector.RMS).within(Band.of(10, 1000));
    }

    private static AlarmRule alarm(double metresPerSecond) {
        return AlarmRule.of(level(metresPerSecond));
    }

    private static String run(AlarmRule rule, double... readings) {
        AlarmEvaluator evaluator = rule.newEvaluator();
        StringBuilder states = new StringBuilder();
        for (double reading : readings) {
            states.append(evaluator.updateSi(reading).name().charAt(0));
        }
        return states.toString();
    }

    @Test
    void threeInARowRaiseAndThreeClear() {
        assertEquals("NNAAAAAN", run(RULE, 2.1, 2.1, 2.1, 2.1, 2.1, 1.7, 1.7, 1.7));
        assertEquals("NNNNNNA", run(RULE, 2.1, 2.1, 1.9, 2.1, 1.9, 2.1, 2.1).substring(0, 6)
                + run(RULE, 2.1, 2.1, 2.1).charAt(2));
        assertEquals("NNTTTTA", run(RULE, 5, 5, 5, 5, 3, 3, 3));
        assertEquals("NNTTTN", run(RULE, 5, 5, 5, 1, 1, 1));
        assertEquals("NNNN", run(RULE, 2, 2, 2, 2), "a reading equal to the limit doesn't exceed it");
    }

    /** Cleared at and below 1.8: a level between 1.8 and 2 neither raises nor clears. */
    @Test
    void hysteresisHoldsTheState() {
        assertEquals("NNAAAAAA", run(RULE, 2.1, 2.1, 2.1, 1.9, 1.85, 1.81, 1.9, 1.9));
        assertEquals("NNAAAAN", run(RULE, 2.1, 2.1, 2.1, 1.9, 1.8, 1.8, 1.8));
        assertEquals("NNAAAAAAN", run(RULE, 2.1, 2.1, 2.1, 1.8, 1.8, 1.9, 1.8, 1.8, 1.8));
        assertEquals("ANAN", run(alarm(2).withHysteresis(0).withPersistence(1, 1), 2.1, 2, 2.1, 2));
    }

    /** 2.3 mm/s and a meter that reads in m/s: the same level, whatever the unit that it was written in. */
    @Test
    void aLevelAlarmsInWhateverUnitItIsWritten() {
        Level limit = Level.of(2.3, Unit.MM_PER_S, Detector.RMS).within(Band.of(10, 1000));
        AlarmEvaluator evaluator = AlarmRule.of(limit).withPersistence(1, 1).newEvaluator();
        assertEquals(AlarmState.ALARM, evaluator.update(level(0.0024)));
        assertEquals(AlarmState.NORMAL, evaluator.update(Level.of(0.04, Unit.IN_PER_S, Detector.RMS)
                .within(Band.of(10, 1000))));
        assertEquals("reading must be of the quantity, detector and band of the alarm, 2.30 mm/s rms (10\u20131000 Hz):"
                + " 2.40 mm/s rms", message(() -> evaluator.update(Level.of(2.4, Unit.MM_PER_S, Detector.RMS))));
    }

    /** A meter's stream against the setting of a criterion: 4 mm/s rms at 50 Hz is above 2.8 and below 4.5 mm/s. */
    @Test
    void settingRuleAndMeterSpeakOneUnit() {
        Criterion criterion = Severity.of(Machine.of(MachineKind.FAN).withRatedPowerKilowatts(37)
                .withSupport(Support.RIGID).withSpeed(RotationSpeed.ofHertz(50))).criteria().get(0);
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 5000, 25_000)
                .tone(4e-3 * Math.sqrt(2) * 2 * Math.PI * 50, 50, 0).waveform();
        LevelMeter meter = LevelMeter.withDefaults().at(5000);
        AlarmEvaluator watch = AlarmSetting.withoutBaseline(criterion).rule().newEvaluator();
        meter.push(wave.samples(), 0, 10_000);
        for (int second = 2; second < 5; second++) {
            meter.restartReading();
            meter.push(wave.samples(), 5000 * second, 5000);
            watch.update(meter.velocity().rms());
        }
        assertEquals(AlarmState.ALARM, watch.state());
    }

    @Test
    void persistenceCountsSeparately() {
        assertEquals("NAAAAN", run(alarm(2).withPersistence(2, 4), 3, 3, 1, 1, 1, 1));
        assertEquals("AAT", run(alarm(2).withTrip(level(4)).withPersistence(1, 3), 3, 3, 5));
    }

    /** A level that flickers about its limit: without persistence hundreds of changes, with it hardly any. */
    @Test
    void flickerDoesNotChatter() {
        int without = changes(alarm(2).withHysteresis(0).withPersistence(1, 1));
        int with = changes(alarm(2));
        assertTrue(without > 400, "without: " + without);
        assertTrue(with < 20, "with: " + with);
    }

    private static int changes(AlarmRule rule) {
        Random random = new Random(7);
        AlarmEvaluator evaluator = rule.newEvaluator();
        int changes = 0;
        for (int i = 0; i < 1000; i++) {
            AlarmState before = evaluator.state();
            if (evaluator.updateSi(2 + 0.1 * random.nextGaussian()) != before) {
                changes++;
            }
        }
        return changes;
    }

    @Test
    void notANumberNeverChangesTheState() {
        AlarmEvaluator evaluator = RULE.newEvaluator();
        evaluator.updateSi(3);
        evaluator.updateSi(3);
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, -1}) {
            assertThrows(IllegalArgumentException.class, () -> evaluator.updateSi(bad));
        }
        assertEquals(AlarmState.NORMAL, evaluator.state());
        assertEquals(AlarmState.ALARM, evaluator.updateSi(3), "the bad readings broke no row");
        assertEquals("reading must be finite and >= 0 (SI): NaN", assertThrows(IllegalArgumentException.class,
                () -> evaluator.updateSi(Double.NaN)).getMessage());
    }

    @Test
    void resetForgets() {
        AlarmEvaluator evaluator = RULE.newEvaluator();
        List<AlarmState> first = states(evaluator);
        evaluator.reset();
        assertEquals(AlarmState.NORMAL, evaluator.state());
        assertEquals(first, states(evaluator));
        evaluator.reset();
        evaluator.updateSi(5);
        evaluator.updateSi(5);
        evaluator.reset();
        assertEquals(AlarmState.NORMAL, evaluator.updateSi(5));
        assertEquals(RULE, evaluator.rule());
    }

    private static List<AlarmState> states(AlarmEvaluator evaluator) {
        List<AlarmState> states = new ArrayList<>();
        for (double reading : new double[] {5, 5, 5, 3, 3, 3, 1, 1}) {
            states.add(evaluator.updateSi(reading));
        }
        return states;
    }

    @Test
    void updateAllocatesNothing() {
        AlarmEvaluator evaluator = RULE.newEvaluator();
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long id = Thread.currentThread().getId();
        long least = Long.MAX_VALUE;
        for (int round = 0; round < 5; round++) {
            long before = threads.getThreadAllocatedBytes(id);
            for (int i = 0; i < 10_000; i++) {
                evaluator.updateSi(i % 7);
            }
            least = Math.min(least, threads.getThreadAllocatedBytes(id) - before);
        }
        assertTrue(least < 1000, "10 000 readings allocated " + least + " bytes");
    }

    @Test
    void ruleNamesBadInputAndPrints() {
        assertEquals("alarm must be finite and > 0 (SI): 0.0", message(() -> alarm(0)));
        assertEquals("trip must be above the alarm, 2000 mm/s rms (10\u20131000 Hz): 2000 mm/s rms (10\u20131000 Hz)",
                message(() -> alarm(2).withTrip(level(2))));
        assertEquals("hysteresis must be from 0 to below 1: 1.0", message(() -> RULE.withHysteresis(1)));
        assertEquals("hysteresis must be from 0 to below 1: NaN", message(() -> RULE.withHysteresis(Double.NaN)));
        assertEquals("readingsToRaise must be at least 1: 0", message(() -> RULE.withPersistence(0, 1)));
        assertEquals("readingsToClear must be at least 1: 0", message(() -> RULE.withPersistence(1, 0)));
        assertEquals("alarm 2000 mm/s rms (10\u20131000 Hz), 10 % hysteresis, 3 readings to raise, 3 to clear",
                alarm(2).toString());
        assertEquals("NORMAL by " + RULE,
                RULE.newEvaluator().toString());
    }

    private static String message(Runnable call) {
        return assertThrows(IllegalArgumentException.class, call::run).getMessage();
    }
}
