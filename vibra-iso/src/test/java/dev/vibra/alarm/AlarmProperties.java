package dev.vibra.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** The evaluator against a slow oracle that looks back over the whole history after each reading. */
class AlarmProperties {
    private static Level level(double metresPerSecond) {
        return Level.ofSi(metresPerSecond, Quantity.VELOCITY, Detector.RMS);
    }

    @Property(tries = 500)
    void theStreamSaysWhatTheHistorySays(@ForAll @IntRange(min = 1, max = 4) int toRaise,
            @ForAll @IntRange(min = 1, max = 4) int toClear, @ForAll @DoubleRange(min = 0, max = 0.5) double hysteresis,
            @ForAll @Size(min = 1, max = 40) List<@DoubleRange(min = 0, max = 6) Double> readings) {
        AlarmRule rule = AlarmRule.of(level(2)).withTrip(level(4)).withHysteresis(hysteresis)
                .withPersistence(toRaise, toClear);
        AlarmEvaluator evaluator = rule.newEvaluator();
        for (int i = 0; i < readings.size(); i++) {
            AlarmState state = evaluator.updateSi(readings.get(i));
            List<Double> history = readings.subList(0, i + 1);
            boolean trip = raised(rule, 4, history);
            boolean alarm = raised(rule, 2, history);
            assertEquals(trip ? AlarmState.TRIP : alarm ? AlarmState.ALARM : AlarmState.NORMAL, state);
        }
    }

    /** Stopped after any reading: by value and by numbers it goes on the same; another rule's counts are refused. */
    @Property(tries = 200)
    void stoppedAnywhereItGoesOn(@ForAll @Size(min = 1, max = 40) List<@DoubleRange(min = 0, max = 6) Double> readings,
            @ForAll @IntRange(min = 0, max = 40) int stop) {
        AlarmRule rule = AlarmRule.of(level(2)).withTrip(level(4)).withPersistence(2, 3);
        AlarmEvaluator through = rule.newEvaluator();
        AlarmEvaluator resumed = rule.newEvaluator();
        double[] numbers = new double[through.stateLength()];
        for (int i = 0; i < readings.size(); i++) {
            if (i == stop) {
                resumed = through.snapshot().resume();
                through.snapshotTo(numbers, 0);
                through.resumeFrom(numbers, 0);
                assertThrows(IllegalArgumentException.class, () -> rule.withHysteresis(0.2).newEvaluator()
                        .resumeFrom(numbers, 0));
            }
            AlarmState state = through.updateSi(readings.get(i));
            if (i >= stop) {
                assertEquals(state, resumed.updateSi(readings.get(i)));
            }
        }
    }

    /** The latest run of readings, long enough above or clear below, that ended last decides. */
    private static boolean raised(AlarmRule rule, double limit, List<Double> history) {
        for (int end = history.size(); end > 0; end--) {
            if (run(history, end, rule.readingsToRaise(), limit, true)) {
                return true;
            }
            if (run(history, end, rule.readingsToClear(), limit * (1 - rule.hysteresis()), false)) {
                return false;
            }
        }
        return false;
    }

    private static boolean run(List<Double> history, int end, int length, double limit, boolean above) {
        return end >= length && history.subList(end - length, end).stream()
                .allMatch(reading -> above ? reading > limit : reading <= limit);
    }
}
