package dev.vibra.alarm;

import dev.vibra.evidence.Confidence;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Level;
import dev.vibra.severity.Boundary;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.OperatingLimits;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * ALARM and TRIP of one measuring point, set from its baseline and the boundaries of its criterion.
 *
 * <p>ALARM is the baseline plus the change that matters (a quarter of B/C), but not above the standard's cap (1.25 of
 * B/C). TRIP belongs to the strength of the machine, not to the baseline: it starts at C/D (common practice, no source)
 * and may go up to the standard's cap (1.25 of C/D). For steady operation; run-up and coast-down need other values.
 *
 * <p>A trip stops a machine and protects people and plant: its value is to be agreed with the maker and the persons
 * responsible, under the local codes. Immutable.
 *
 * @param criterion criterion of the measuring point, which the limits are of the quantity, detector and band of
 * @param rule alarm and trip, with the hysteresis and persistence that readings are watched with
 * @param remarks what has to be known of the values
 * @see "ISO 20816-3:2022, 6.5; ISO 10816-3:2009, 5.4; ISO 10816-7:2009, Table A.1"
 */
public record AlarmSetting(Criterion criterion, AlarmRule rule, List<String> remarks) implements Serializable {
    /**
     * Checks that the criterion means such limits.
     *
     * @param criterion criterion of the measuring point
     * @param rule alarm and trip
     * @param remarks what has to be known of them
     * @throws IllegalArgumentException if the criterion objects to the alarm
     */
    public AlarmSetting {
        Objects.requireNonNull(criterion, "criterion");
        Objects.requireNonNull(rule, "rule");
        criterion.zoneOf(rule.alarm());
        remarks = Require.copy("remarks", remarks);
    }

    /**
     * Says why alarm and trip can't be set from a baseline: it doesn't suit the criterion, the criterion doesn't say
     * which change matters, or the alarm would not lie below the trip.
     *
     * @param criterion criterion of the measuring point
     * @param baseline readings of the sound machine
     * @return the objection; empty if they can be set
     */
    public static Optional<String> objectionTo(Criterion criterion, Baseline baseline) {
        Objects.requireNonNull(criterion, "criterion");
        Objects.requireNonNull(baseline, "baseline");
        Optional<String> objection = criterion.objectionTo(baseline.level());
        if (objection.isPresent()) {
            return objection;
        }
        if (Change.significant(criterion).isEmpty()) {
            return Optional.of(Change.lacking(criterion));
        }
        double alarm = alarm(criterion, baseline);
        return trip(criterion).filter(trip -> alarm >= trip).map(trip -> "baseline must leave the alarm below the"
                + " trip, " + Digits.compact(trip, 6) + " " + criterion.unit() + ", for " + criterion.standard() + " "
                + criterion.groupLabel() + ": alarm " + Digits.compact(alarm, 6)
                + "; the machine needs a remedy, not an alarm setting");
    }

    /**
     * Sets alarm and trip from a baseline.
     *
     * @param criterion criterion of the measuring point
     * @param baseline readings of the sound machine, of the quantity, detector and band of the criterion
     * @return the setting, its remarks said
     * @throws IllegalArgumentException if there is an {@linkplain #objectionTo objection}
     */
    public static AlarmSetting of(Criterion criterion, Baseline baseline) {
        Objects.requireNonNull(criterion, "criterion");
        Objects.requireNonNull(baseline, "baseline");
        objectionTo(criterion, baseline).ifPresent(objection -> {
            throw new IllegalArgumentException(objection);
        });
        List<String> remarks = new ArrayList<>();
        if (!baseline.isSettled()) {
            int count = baseline.readings().size();
            remarks.add("baseline of " + count + (count == 1 ? " reading" : " readings") + " is not settled: set anew"
                    + " from " + Baseline.SETTLED_READINGS + " on");
        }
        double level = baseline.level().in(criterion.unit());
        double cap = cap(criterion, OperatingLimits::highestAlarm);
        if (level + Change.significant(criterion).getAsDouble() > cap) {
            remarks.add(level < cap ? "baseline plus change exceeds the cap: set to the cap"
                    : "the baseline itself is not below the cap: the machine needs a remedy, not an alarm setting");
        }
        return of(criterion, alarm(criterion, baseline), remarks);
    }

    private static double alarm(Criterion criterion, Baseline baseline) {
        return Math.min(cap(criterion, OperatingLimits::highestAlarm),
                baseline.level().in(criterion.unit()) + Change.significant(criterion).getAsDouble());
    }

    /** Infinite where the standard has none. */
    private static double cap(Criterion criterion, Function<OperatingLimits, OptionalDouble> which) {
        return criterion.operatingLimits().map(which).orElse(OptionalDouble.empty()).orElse(Double.POSITIVE_INFINITY);
    }

    /** The trip starts at C/D; a criterion without that boundary has none. */
    private static Optional<Double> trip(Criterion criterion) {
        return criterion.boundary("C/D").map(Boundary::limit);
    }

    /**
     * Sets alarm and trip where there is no baseline yet: at the boundaries B/C and C/D.
     *
     * @param criterion criterion of the measuring point
     * @return the setting, to be renewed once a baseline is settled
     * @throws IllegalArgumentException if the criterion has no boundary B/C
     */
    public static AlarmSetting withoutBaseline(Criterion criterion) {
        Objects.requireNonNull(criterion, "criterion");
        double boundary = criterion.boundary("B/C").map(Boundary::limit).orElseThrow(
                () -> new IllegalArgumentException("criterion must have a boundary B/C: " + criterion));
        return of(criterion, boundary, List.of("no baseline: starts at B/C and C/D (common practice, no source); set"
                + " anew once a baseline is settled"));
    }

    private static AlarmSetting of(Criterion criterion, double alarm, List<String> remarks) {
        AlarmRule rule = AlarmRule.of(level(criterion, alarm));
        return new AlarmSetting(criterion,
                trip(criterion).map(value -> rule.withTrip(level(criterion, value))).orElse(rule), remarks);
    }

    /**
     * Sets another trip value, one agreed with the maker for example.
     *
     * @param newTrip level of the kind of the alarm, above it and not above the standard's cap
     * @return the setting with that trip
     * @throws IllegalArgumentException if the level is of another kind or out of range
     */
    public AlarmSetting withTrip(Level newTrip) {
        AlarmRule changed = rule.withTrip(newTrip);
        double cap = cap(criterion, OperatingLimits::highestTrip);
        if (cap < Double.POSITIVE_INFINITY && newTrip.si() > level(criterion, cap).si()) {
            throw new IllegalArgumentException("trip must not be above the cap, " + Digits.compact(cap, 6) + " "
                    + criterion.unit() + ": " + newTrip);
        }
        return new AlarmSetting(criterion, changed, remarks);
    }

    private static Level level(Criterion criterion, double value) {
        return Level.of(value, criterion.unit(), criterion.detector()).within(criterion.band());
    }

    /**
     * Returns the alarm value.
     *
     * @return level of the quantity, detector and band of the criterion
     */
    public Level alarm() {
        return rule.alarm();
    }

    /**
     * Returns the trip value.
     *
     * @return level of the quantity, detector and band of the criterion; empty if it has no boundary to start from
     */
    public Optional<Level> trip() {
        return rule.trip();
    }

    /**
     * Returns the values in one line, as in {@code alarm 2.3, trip 4.5 mm/s rms (10–1000 Hz); ISO 20816-3:2022 6.5}.
     */
    @Override
    public String toString() {
        String clause = criterion.operatingLimits().map(limits -> " " + limits.clause()
                + (limits.confidence() == Confidence.FIRM ? "" : " (" + limits.confidence() + ")")).orElse("");
        // The alarm is computed; a trip is chosen, and has to be read as it was typed.
        return "alarm " + Digits.compact(alarm().in(criterion.unit()), 4)
                + trip().map(trip -> ", trip " + Digits.compact(trip.in(criterion.unit()), 6)).orElse("") + " "
                + criterion.unit() + " " + criterion.detector() + " (" + criterion.band() + "); "
                + criterion.standard() + clause;
    }
}
