package dev.vibra.alarm;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Limits, hysteresis and persistence by which a stream of readings is watched.
 *
 * <p>Defaults (common practice, no source): a state is raised after 3 readings in a row above its limit and cleared
 * after 3 in a row below the limit less 10 %; no trip. A reading equal to a limit doesn't exceed it. Immutable; shared
 * between threads, each with its own evaluator.
 *
 * @param alarm alarm limit, finite, above zero; in the unit in which the readings will come, usually SI
 * @param trip trip limit in the same unit, above the alarm; NaN for none
 * @param hysteresis part of a limit by which a reading must lie below it to count as clear, from 0 to below 1
 * @param readingsToRaise readings in a row that raise a state, at least 1
 * @param readingsToClear readings in a row that clear a state, at least 1
 */
public record AlarmRule(double alarm, double trip, double hysteresis, int readingsToRaise, int readingsToClear)
        implements Serializable {
    private static final double HYSTERESIS = 0.1;
    private static final int READINGS = 3;

    /**
     * Checks the values.
     *
     * @param alarm alarm limit, finite, above zero
     * @param trip trip limit, above the alarm; NaN for none
     * @param hysteresis from 0 to below 1
     * @param readingsToRaise at least 1
     * @param readingsToClear at least 1
     * @throws IllegalArgumentException if a value is out of range
     */
    public AlarmRule {
        Require.positive("alarm", alarm, "");
        if (!Double.isNaN(trip) && !(trip > alarm && trip < Double.POSITIVE_INFINITY)) {
            throw Require.failure("trip", "finite and above the alarm, " + alarm, trip);
        }
        if (!(hysteresis >= 0 && hysteresis < 1)) {
            throw Require.failure("hysteresis", "from 0 to below 1", hysteresis);
        }
        Require.atLeast("readingsToRaise", readingsToRaise, 1);
        Require.atLeast("readingsToClear", readingsToClear, 1);
    }

    /**
     * Starts with an alarm limit and the defaults.
     *
     * @param alarm alarm limit, finite, above zero
     * @return the rule
     * @throws IllegalArgumentException if the value is out of range
     */
    public static AlarmRule of(double alarm) {
        return new AlarmRule(alarm, Double.NaN, HYSTERESIS, READINGS, READINGS);
    }

    /**
     * Adds a trip limit.
     *
     * @param newTrip trip limit, finite, above the alarm
     * @return the rule with it
     * @throws IllegalArgumentException if the value is out of range
     */
    public AlarmRule withTrip(double newTrip) {
        if (Double.isNaN(newTrip)) {
            throw Require.failure("trip", "finite and above the alarm, " + alarm, newTrip);
        }
        return new AlarmRule(alarm, newTrip, hysteresis, readingsToRaise, readingsToClear);
    }

    /**
     * Sets the hysteresis.
     *
     * @param part part of the limit, from 0 to below 1
     * @return the rule with it
     * @throws IllegalArgumentException if the value is out of range
     */
    public AlarmRule withHysteresis(double part) {
        return new AlarmRule(alarm, trip, part, readingsToRaise, readingsToClear);
    }

    /**
     * Sets how many readings in a row raise and clear a state.
     *
     * @param toRaise at least 1
     * @param toClear at least 1
     * @return the rule with it
     * @throws IllegalArgumentException if a number is out of range
     */
    public AlarmRule withPersistence(int toRaise, int toClear) {
        return new AlarmRule(alarm, trip, hysteresis, toRaise, toClear);
    }

    /**
     * Makes an evaluator for one stream of readings and one thread.
     *
     * @return the evaluator, in state normal
     */
    public AlarmEvaluator newEvaluator() {
        return new AlarmEvaluator(this);
    }

    /** Returns the limits, as in {@code alarm 2.3, trip 4.5, 10 % hysteresis, 3 readings to raise, 3 to clear}. */
    @Override
    public String toString() {
        return "alarm " + Digits.compact(alarm, 6) + (Double.isNaN(trip) ? "" : ", trip " + Digits.compact(trip, 6))
                + ", " + Digits.compact(100 * hysteresis, 3) + " % hysteresis, " + readingsToRaise
                + " readings to raise, " + readingsToClear + " to clear";
    }
}
