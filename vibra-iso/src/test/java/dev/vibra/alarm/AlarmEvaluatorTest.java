package dev.vibra.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class AlarmEvaluatorTest {
    private static final AlarmRule RULE = AlarmRule.of(2).withTrip(4);

    private static String run(AlarmRule rule, double... readings) {
        AlarmEvaluator evaluator = rule.newEvaluator();
        StringBuilder states = new StringBuilder();
        for (double reading : readings) {
            states.append(evaluator.update(reading).name().charAt(0));
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
        assertEquals("ANAN", run(AlarmRule.of(2).withHysteresis(0).withPersistence(1, 1), 2.1, 2, 2.1, 2));
    }

    @Test
    void persistenceCountsSeparately() {
        assertEquals("NAAAAN", run(AlarmRule.of(2).withPersistence(2, 4), 3, 3, 1, 1, 1, 1));
        assertEquals("AAT", run(AlarmRule.of(2).withTrip(4).withPersistence(1, 3), 3, 3, 5));
    }

    /** A level that flickers about its limit: without persistence hundreds of changes, with it hardly any. */
    @Test
    void flickerDoesNotChatter() {
        int without = changes(AlarmRule.of(2).withHysteresis(0).withPersistence(1, 1));
        int with = changes(AlarmRule.of(2));
        assertTrue(without > 400, "without: " + without);
        assertTrue(with < 20, "with: " + with);
    }

    private static int changes(AlarmRule rule) {
        Random random = new Random(7);
        AlarmEvaluator evaluator = rule.newEvaluator();
        int changes = 0;
        for (int i = 0; i < 1000; i++) {
            AlarmState before = evaluator.state();
            if (evaluator.update(2 + 0.1 * random.nextGaussian()) != before) {
                changes++;
            }
        }
        return changes;
    }

    @Test
    void notANumberNeverChangesTheState() {
        AlarmEvaluator evaluator = RULE.newEvaluator();
        evaluator.update(3);
        evaluator.update(3);
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, -1}) {
            assertThrows(IllegalArgumentException.class, () -> evaluator.update(bad));
        }
        assertEquals(AlarmState.NORMAL, evaluator.state());
        assertEquals(AlarmState.ALARM, evaluator.update(3), "the bad readings broke no row");
        assertEquals("reading must be finite and >= 0: NaN", assertThrows(IllegalArgumentException.class,
                () -> evaluator.update(Double.NaN)).getMessage());
    }

    @Test
    void resetForgets() {
        AlarmEvaluator evaluator = RULE.newEvaluator();
        List<AlarmState> first = states(evaluator);
        evaluator.reset();
        assertEquals(AlarmState.NORMAL, evaluator.state());
        assertEquals(first, states(evaluator));
        evaluator.reset();
        evaluator.update(5);
        evaluator.update(5);
        evaluator.reset();
        assertEquals(AlarmState.NORMAL, evaluator.update(5));
        assertEquals(RULE, evaluator.rule());
    }

    private static List<AlarmState> states(AlarmEvaluator evaluator) {
        List<AlarmState> states = new ArrayList<>();
        for (double reading : new double[] {5, 5, 5, 3, 3, 3, 1, 1}) {
            states.add(evaluator.update(reading));
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
                evaluator.update(i % 7);
            }
            least = Math.min(least, threads.getThreadAllocatedBytes(id) - before);
        }
        assertTrue(least < 1000, "10 000 readings allocated " + least + " bytes");
    }

    @Test
    void ruleNamesBadInputAndPrints() {
        assertEquals("alarm must be finite and > 0: 0.0", message(() -> AlarmRule.of(0)));
        assertEquals("trip must be finite and above the alarm, 2.0: 2.0", message(() -> AlarmRule.of(2).withTrip(2)));
        assertEquals("trip must be finite and above the alarm, 2.0: NaN",
                message(() -> AlarmRule.of(2).withTrip(Double.NaN)));
        assertEquals("trip must be finite and above the alarm, 2.0: Infinity",
                message(() -> AlarmRule.of(2).withTrip(Double.POSITIVE_INFINITY)));
        assertEquals("hysteresis must be from 0 to below 1: 1.0", message(() -> RULE.withHysteresis(1)));
        assertEquals("hysteresis must be from 0 to below 1: NaN", message(() -> RULE.withHysteresis(Double.NaN)));
        assertEquals("readingsToRaise must be at least 1: 0", message(() -> RULE.withPersistence(0, 1)));
        assertEquals("readingsToClear must be at least 1: 0", message(() -> RULE.withPersistence(1, 0)));
        assertEquals("alarm 2, 10 % hysteresis, 3 readings to raise, 3 to clear", AlarmRule.of(2).toString());
        assertEquals("NORMAL by alarm 2, trip 4, 10 % hysteresis, 3 readings to raise, 3 to clear",
                RULE.newEvaluator().toString());
    }

    private static String message(Runnable call) {
        return assertThrows(IllegalArgumentException.class, call::run).getMessage();
    }
}
