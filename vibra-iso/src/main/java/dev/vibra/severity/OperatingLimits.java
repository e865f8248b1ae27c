package dev.vibra.severity;

import dev.vibra.evidence.Confidence;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What a standard says on change, alarm and trip beside its zones, in the unit of the criterion.
 *
 * @see "ISO 20816-1:2016, criterion II; ISO 20816-3:2022, 6.5; ISO 10816-7:2009, Table A.1"
 */
public final class OperatingLimits implements Serializable {
    private static final long serialVersionUID = 1;

    private final Double change; // null, as the next two, where the standard has none
    private final Double highestAlarm;
    private final Double highestTrip;
    private final String clause;
    private final Confidence confidence;

    OperatingLimits(OptionalDouble change, OptionalDouble highestAlarm, OptionalDouble highestTrip, String clause,
            Confidence confidence) {
        this.change = positiveOrNull("change", change);
        this.highestAlarm = positiveOrNull("highest alarm", highestAlarm);
        this.highestTrip = positiveOrNull("highest trip", highestTrip);
        this.clause = Objects.requireNonNull(clause, "clause");
        this.confidence = Objects.requireNonNull(confidence, "confidence");
    }

    private Object readResolve() {
        return new OperatingLimits(significantChange(), highestAlarm(), highestTrip(), clause, confidence);
    }

    private static Double positiveOrNull(String name, OptionalDouble value) {
        return value.isEmpty() ? null : Double.valueOf(Require.positive(name, value.getAsDouble(), ""));
    }

    /**
     * Returns the change of a level that matters, up or down.
     *
     * @return change in the unit of the criterion; empty if the standard gives none
     */
    public OptionalDouble significantChange() {
        return optional(change);
    }

    /**
     * Returns the value that an alarm setting should not exceed.
     *
     * @return level in the unit of the criterion; empty if the standard gives none
     */
    public OptionalDouble highestAlarm() {
        return optional(highestAlarm);
    }

    /**
     * Returns the value that a trip setting should not exceed.
     *
     * @return level in the unit of the criterion; empty if the standard gives none
     */
    public OptionalDouble highestTrip() {
        return optional(highestTrip);
    }

    /**
     * Returns the place in the standard.
     *
     * @return clause or table
     */
    public String clause() {
        return clause;
    }

    /** {@return how far these values can be relied on, which may be less than the limits of the zones} */
    public Confidence confidence() {
        return confidence;
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** Two are equal if all their values are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof OperatingLimits limits
                && Objects.equals(change, limits.change)
                && Objects.equals(highestAlarm, limits.highestAlarm)
                && Objects.equals(highestTrip, limits.highestTrip)
                && clause.equals(limits.clause)
                && confidence == limits.confidence;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(change, highestAlarm, highestTrip, clause, confidence);
    }

    /** Returns the values, as in {@code change 0.7, alarm up to 3.5, trip up to 5.625 (from memory, unverified)}. */
    @Override
    public String toString() {
        List<String> parts = new ArrayList<>();
        significantChange().ifPresent(value -> parts.add("change " + Digits.compact(value, 4)));
        highestAlarm().ifPresent(value -> parts.add("alarm up to " + Digits.compact(value, 4)));
        highestTrip().ifPresent(value -> parts.add("trip up to " + Digits.compact(value, 4)));
        return String.join(", ", parts) + (confidence == Confidence.FIRM ? "" : " (" + confidence + ")");
    }
}
