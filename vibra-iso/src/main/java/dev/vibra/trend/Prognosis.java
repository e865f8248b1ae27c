package dev.vibra.trend;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * When a trend reaches a limit, as an interval of days from the last reading; or why the readings support no such date.
 *
 * <p>Assumes that the machine runs on as before and that one mechanism goes on. The limit is a choice, not the moment
 * of failure; the interval tells nothing of faults that come suddenly. Whether a machine may run on is for the persons
 * responsible for it, with the maker's limits, under the local codes.
 *
 * @see "ISO 13381-1 (estimated time to failure with confidence); ISO 17359:2018 on the interval of measurements"
 */
public final class Prognosis implements Serializable {
    private static final long serialVersionUID = 1;

    private final Trend trend;
    private final double limit;
    private final Interval days;
    private final List<String> refusals;
    private final List<String> doubts;

    /** {@code days} is null if refused. */
    Prognosis(Trend trend, double limit, Interval days, List<String> refusals, List<String> doubts) {
        this.trend = trend;
        this.limit = limit;
        this.days = days;
        this.refusals = Require.copy("refusals", refusals);
        this.doubts = Require.copy("doubts", doubts);
    }

    private Object readResolve() {
        return trend.timeTo(limit);
    }

    /**
     * {@return the time from the last reading until the trend reaches the limit, best and latest in days; the earliest
     * below zero if it may have happened already; empty if refused}
     */
    public Optional<Interval> daysFromLastReading() {
        return Optional.ofNullable(days);
    }

    /**
     * {@return the same as instants, at most {@link Instant#MAX}; empty if refused, or if the readings were given in
     * days}
     */
    public Optional<InstantInterval> instants() {
        return daysFromLastReading().flatMap(span -> after(span.best()).map(best -> new InstantInterval(
                after(span.lowest()).orElseThrow(), best, after(span.highest()).orElseThrow())));
    }

    private Optional<Instant> after(double daysFromLastReading) {
        return trend.readings().instantOf(trend.readings().lastDay() + daysFromLastReading);
    }

    /**
     * Returns why there is no date.
     *
     * @return unmodifiable list; empty if there is one
     */
    public List<String> refusals() {
        return refusals;
    }

    /**
     * Returns what makes the date doubtful.
     *
     * @return unmodifiable list
     */
    public List<String> doubts() {
        return doubts;
    }

    /**
     * Returns within how many days to measure again: a third of the earliest time to the limit.
     *
     * @return days from the last reading, zero if the limit may have been reached; empty if there is no date
     * @see "ISO 17359:2018 (common reading: at most half, better a third of the shortest warning time; from memory,
     *     unverified)"
     */
    public OptionalDouble measureAgainWithinDays() {
        return days == null ? OptionalDouble.empty() : OptionalDouble.of(Math.max(0, days.lowest()) / 3);
    }

    /** {@return until when to measure again; empty if there is no date, or if the readings were given in days} */
    public Optional<Instant> measureAgainUntil() {
        return days == null ? Optional.empty() : after(measureAgainWithinDays().getAsDouble());
    }

    /**
     * Returns the limit.
     *
     * @return limit in the unit of the readings
     */
    public double limit() {
        return limit;
    }

    /** {@return the trend that is projected} */
    public Trend trend() {
        return trend;
    }

    /** Two are equal if trend and limit are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Prognosis prognosis && trend.equals(prognosis.trend)
                && Double.compare(limit, prognosis.limit) == 0;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(trend, limit);
    }

    /**
     * Returns the date or the refusal in one line, as in {@code 4.5 mm/s in 47.2 (38.9 to 61) days; linear, robust,
     * 95 %}.
     */
    @Override
    public String toString() {
        String goal = Digits.compact(limit, 6) + " " + trend.readings().unit();
        if (days == null) {
            return goal + ": no date, " + String.join("; ", refusals);
        }
        return goal + " in " + days + " days" + instants().map(when -> ", " + when).orElse("") + "; "
                + trend.settings()
                + (doubts.isEmpty() ? "" : "; " + String.join("; ", doubts));
    }
}
