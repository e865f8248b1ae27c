package dev.vibra.history;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Values at which somebody is called, and what they rest on. Immutable.
 */
public final class HistoryLimits implements Serializable {
    private static final long serialVersionUID = 1;

    private final double alarm;
    private final Double trip;
    private final String source;

    private HistoryLimits(double alarm, Double trip, String source) {
        this.alarm = Require.positive("alarm", alarm, "");
        if (trip != null && !(trip > alarm && trip < Double.POSITIVE_INFINITY)) {
            throw Require.failure("trip", "finite and above the alarm, " + alarm, trip);
        }
        this.trip = trip;
        this.source = Require.notBlank("source", source);
    }

    private Object readResolve() {
        return new HistoryLimits(alarm, trip, source);
    }

    /**
     * Takes an alarm value alone.
     *
     * @param alarm alarm value in the unit of the readings, finite, above zero
     * @param source what it rests on
     * @return limits without trip
     * @throws IllegalArgumentException if the value is out of range
     */
    public static HistoryLimits alarmAt(double alarm, String source) {
        return new HistoryLimits(alarm, null, source);
    }

    /**
     * Adds a trip value.
     *
     * @param newTrip trip value in the unit of the readings, above the alarm
     * @return the limits with it
     * @throws IllegalArgumentException if the value is out of range
     */
    public HistoryLimits withTrip(double newTrip) {
        return new HistoryLimits(alarm, newTrip, source);
    }

    /** The same with something more to know of them. */
    HistoryLimits withRemark(String remark) {
        return new HistoryLimits(alarm, trip, source + "; " + remark);
    }

    /** {@return alarm value in the unit of the readings} */
    public double alarm() {
        return alarm;
    }

    /** {@return trip value in the unit of the readings, if there is one} */
    public OptionalDouble trip() {
        return Optional.ofNullable(trip).map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    /** {@return what the values rest on, with standard and clause or its mark} */
    public String source() {
        return source;
    }

    /** Two limits are equal if their values and their source are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof HistoryLimits limits && alarm == limits.alarm && Objects.equals(trip, limits.trip)
                && source.equals(limits.source);
    }

    /** Returns a hash code that agrees with {@link #equals}. */
    @Override
    public int hashCode() {
        return Objects.hash(alarm, trip, source);
    }

    /** Returns the values and their source, as in {@code alarm 2.30, trip 4.50 (ISO 20816-3:2022 6.5)}. */
    @Override
    public String toString() {
        return "alarm " + Digits.significant(alarm, 3) + (trip == null ? "" : ", trip " + Digits.significant(trip, 3))
                + " (" + source + ")";
    }
}
