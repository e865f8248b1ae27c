package dev.vibra.alarm;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Level;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/**
 * Limits, hysteresis and persistence by which a stream of levels is watched:
 *
 * <pre>{@code
 * AlarmEvaluator watch = AlarmSetting.of(criterion, baseline).rule().newEvaluator();
 * watch.update(meter.velocity().rms());
 * }</pre>
 *
 * <p>Defaults (common practice, no source): a state is raised after 3 readings in a row above its limit and cleared
 * after 3 in a row below the limit less 10 %; no trip. A reading equal to a limit doesn't exceed it. Immutable; shared
 * between threads, each with its own evaluator.
 */
public final class AlarmRule implements Serializable {
    private static final long serialVersionUID = 1;
    private static final double HYSTERESIS = 0.1;
    private static final int READINGS = 3;

    private final Level alarm;
    private final Level trip;
    private final double hysteresis;
    private final int readingsToRaise;
    private final int readingsToClear;

    private AlarmRule(Level alarm, Level trip, double hysteresis, int readingsToRaise, int readingsToClear) {
        this.alarm = Objects.requireNonNull(alarm, "alarm");
        this.trip = trip;
        this.hysteresis = hysteresis;
        this.readingsToRaise = Require.atLeast("readingsToRaise", readingsToRaise, 1);
        this.readingsToClear = Require.atLeast("readingsToClear", readingsToClear, 1);
        Require.positive("alarm", alarm.si(), "(SI)");
        if (trip != null && !(trip.isLike(alarm) && trip.si() > alarm.si())) {
            throw new IllegalArgumentException("trip must be above the alarm, " + alarm + ": " + trip);
        }
        if (!(hysteresis >= 0 && hysteresis < 1)) {
            throw Require.failure("hysteresis", "from 0 to below 1", hysteresis);
        }
    }

    private Object readResolve() {
        return new AlarmRule(alarm, trip, hysteresis, readingsToRaise, readingsToClear);
    }

    /**
     * Starts with an alarm limit and the defaults.
     *
     * @param alarm alarm limit, above zero
     * @return the rule
     * @throws IllegalArgumentException if the limit is zero
     */
    public static AlarmRule of(Level alarm) {
        return new AlarmRule(alarm, null, HYSTERESIS, READINGS, READINGS);
    }

    /**
     * Adds a trip limit.
     *
     * @param newTrip trip limit of the quantity, detector and band of the alarm, above it
     * @return the rule with it
     * @throws IllegalArgumentException if it is of another kind or not above the alarm
     */
    public AlarmRule withTrip(Level newTrip) {
        return new AlarmRule(alarm, Objects.requireNonNull(newTrip, "trip"), hysteresis, readingsToRaise,
                readingsToClear);
    }

    /**
     * Sets the hysteresis.
     *
     * @param part part of the limit by which a reading must lie below it to count as clear, from 0 to below 1
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

    /**
     * Returns the alarm limit.
     *
     * @return level above zero
     */
    public Level alarm() {
        return alarm;
    }

    /**
     * Returns the trip limit.
     *
     * @return level above the alarm; empty if there is none
     */
    public Optional<Level> trip() {
        return Optional.ofNullable(trip);
    }

    /**
     * Returns the part of a limit by which a reading must lie below it to count as clear.
     *
     * @return part from 0 to below 1
     */
    public double hysteresis() {
        return hysteresis;
    }

    /**
     * Returns how many readings in a row raise a state.
     *
     * @return at least 1
     */
    public int readingsToRaise() {
        return readingsToRaise;
    }

    /**
     * Returns how many readings in a row clear a state.
     *
     * @return at least 1
     */
    public int readingsToClear() {
        return readingsToClear;
    }

    /** Two rules are equal if limits, hysteresis and persistence are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof AlarmRule rule && alarm.equals(rule.alarm) && Objects.equals(trip, rule.trip)
                && Double.compare(hysteresis, rule.hysteresis) == 0 && readingsToRaise == rule.readingsToRaise
                && readingsToClear == rule.readingsToClear;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(alarm, trip, hysteresis, readingsToRaise, readingsToClear);
    }

    /** Returns the limits, as in {@code alarm 2.30 mm/s rms (10–1000 Hz), 10 % hysteresis, 3 readings to raise, …}. */
    @Override
    public String toString() {
        return "alarm " + alarm + (trip == null ? "" : ", trip " + trip) + ", " + Digits.compact(100 * hysteresis, 3)
                + " % hysteresis, " + readingsToRaise + " readings to raise, " + readingsToClear + " to clear";
    }
}
