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
 * @see "ISO 20816-3:2022, 6.5; ISO 10816-3:2009, 5.4; ISO 10816-7:2009, Table A.1"
 */
public final class AlarmSetting implements Serializable {
    private static final long serialVersionUID = 1;

    private final Criterion criterion;
    private final double alarm;
    private final double trip;
    private final List<String> remarks;

    private AlarmSetting(Criterion criterion, double alarm, double trip, List<String> remarks) {
        this.criterion = criterion;
        this.alarm = alarm;
        this.trip = trip;
        this.remarks = List.copyOf(remarks);
    }

    /**
     * Sets alarm and trip from a baseline.
     *
     * @param criterion criterion of the measuring point
     * @param baseline readings of the sound machine, of the quantity, detector and band of the criterion
     * @return the setting, its remarks said
     * @throws IllegalArgumentException if the baseline doesn't suit the criterion, the criterion doesn't say which
     *     change matters, or the alarm would not lie below the trip
     */
    public static AlarmSetting of(Criterion criterion, Baseline baseline) {
        criterion.zoneOf(baseline.level());
        double change = limits(criterion).significantChange().orElseThrow(() -> lacking(criterion));
        double level = baseline.level().in(criterion.unit());
        List<String> remarks = new ArrayList<>();
        if (!baseline.isSettled()) {
            int count = baseline.readings().size();
            remarks.add("baseline of " + count + (count == 1 ? " reading" : " readings") + " is not settled: set anew"
                    + " from " + Baseline.SETTLED_READINGS + " on");
        }
        double alarm = level + change;
        double cap = limits(criterion).highestAlarm().orElse(Double.POSITIVE_INFINITY);
        if (alarm > cap) {
            alarm = cap;
            remarks.add(level < cap ? "baseline plus change exceeds the cap: set to the cap"
                    : "the baseline itself is not below the cap: the machine needs a remedy, not an alarm setting");
        }
        double trip = startingTrip(criterion);
        if (alarm >= trip) {
            throw new IllegalArgumentException("baseline must leave the alarm below the trip, "
                    + Digits.compact(trip, 6) + " " + criterion.unit() + ", for " + criterion.standard() + " "
                    + criterion.groupLabel() + ": alarm " + Digits.compact(alarm, 6)
                    + "; the machine needs a remedy, not an alarm setting");
        }
        return new AlarmSetting(criterion, alarm, trip, remarks);
    }

    /**
     * Sets alarm and trip where there is no baseline yet: at the boundaries B/C and C/D.
     *
     * @param criterion criterion of the measuring point
     * @return the setting, to be renewed once a baseline is settled
     * @throws IllegalArgumentException if the criterion has no boundary B/C
     */
    public static AlarmSetting withoutBaseline(Criterion criterion) {
        double boundary = criterion.boundary("B/C").map(Boundary::limit).orElseThrow(
                () -> new IllegalArgumentException("criterion must have a boundary B/C: " + criterion));
        return new AlarmSetting(criterion, boundary, startingTrip(criterion),
                List.of("no baseline: starts at B/C and C/D (common practice, no source); set anew once a baseline is"
                        + " settled"));
    }

    /**
     * Sets another trip value, one agreed with the maker for example.
     *
     * @param newTrip value in the unit of the criterion, above the alarm and not above the standard's cap
     * @return the setting with that trip
     * @throws IllegalArgumentException if the value is out of range
     */
    public AlarmSetting withTrip(double newTrip) {
        double cap = limits(criterion).highestTrip().orElse(Double.MAX_VALUE);
        if (!(newTrip > alarm && newTrip <= cap)) {
            throw Require.failure("trip", "above the alarm, " + Digits.compact(alarm, 6) + ", and not above the cap, "
                    + Digits.compact(cap, 6) + " " + criterion.unit(), newTrip);
        }
        return new AlarmSetting(criterion, alarm, newTrip, remarks);
    }

    private static double startingTrip(Criterion criterion) {
        return criterion.boundary("C/D").map(Boundary::limit).orElse(Double.NaN);
    }

    private static OperatingLimits limits(Criterion criterion) {
        return criterion.operatingLimits().orElseThrow(() -> lacking(criterion));
    }

    private static IllegalArgumentException lacking(Criterion criterion) {
        return new IllegalArgumentException("criterion must say which change matters, in [operation] of its tables: "
                + criterion);
    }

    /**
     * Returns the alarm value.
     *
     * @return value in the unit of the criterion
     */
    public double alarm() {
        return alarm;
    }

    /**
     * Returns the trip value.
     *
     * @return value in the unit of the criterion; empty if the criterion has no boundary to start from
     */
    public OptionalDouble trip() {
        return Double.isNaN(trip) ? OptionalDouble.empty() : OptionalDouble.of(trip);
    }

    /**
     * Returns the alarm as a level.
     *
     * @return level of the quantity, detector and band of the criterion
     */
    public Level alarmLevel() {
        return level(alarm);
    }

    /**
     * Returns the trip as a level.
     *
     * @return level of the quantity, detector and band of the criterion; empty if there is none
     */
    public Optional<Level> tripLevel() {
        return Double.isNaN(trip) ? Optional.empty() : Optional.of(level(trip));
    }

    private Level level(double value) {
        return Level.of(value, criterion.unit(), criterion.detector()).within(criterion.band());
    }

    /**
     * Returns the criterion that the values belong to.
     *
     * @return the criterion
     */
    public Criterion criterion() {
        return criterion;
    }

    /**
     * Returns what has to be known of the values.
     *
     * @return unmodifiable list of phrases
     */
    public List<String> remarks() {
        return remarks;
    }

    /**
     * Makes the rule that watches readings by these values, with default hysteresis and persistence.
     *
     * @return the rule
     */
    public AlarmRule rule() {
        AlarmRule rule = AlarmRule.of(alarmLevel().si());
        return tripLevel().map(level -> rule.withTrip(level.si())).orElse(rule);
    }

    /** Two settings are equal if criterion, values and remarks are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof AlarmSetting setting
                && criterion.equals(setting.criterion)
                && Double.compare(alarm, setting.alarm) == 0
                && Double.compare(trip, setting.trip) == 0
                && remarks.equals(setting.remarks);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(criterion, alarm, trip, remarks);
    }

    /**
     * Returns the values in one line, as in {@code alarm 2.3, trip 4.5 mm/s rms (10–1000 Hz); ISO 20816-3:2022 6.5}.
     */
    @Override
    public String toString() {
        String clause = criterion.operatingLimits().map(limits -> " " + limits.clause()
                + (limits.confidence() == Confidence.FIRM ? "" : " (" + limits.confidence() + ")")).orElse("");
        // The alarm is computed; a trip is chosen, and has to be read as it was typed.
        return "alarm " + Digits.compact(alarm, 4) + (Double.isNaN(trip) ? "" : ", trip " + Digits.compact(trip, 6))
                + " " + criterion.unit() + " " + criterion.detector() + " (" + criterion.band() + "); "
                + criterion.standard() + clause;
    }
}
