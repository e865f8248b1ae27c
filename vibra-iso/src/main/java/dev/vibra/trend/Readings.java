package dev.vibra.trend;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Readings of one descriptor over time: the same point, direction, band and operating state, in rising order of time.
 *
 * <p>Times are instants, as a historian has them, or days from any origin; values are in one unit. Gaps do no harm.
 * Compare like with like: leave out run-ups, other loads and readings of bad quality, and begin anew after a repair.
 * Immutable.
 *
 * <pre>{@code
 * Readings.of(times, values, Unit.MM_PER_S)  // List<Instant>, double[]
 * }</pre>
 */
public final class Readings implements Serializable {
    private static final long serialVersionUID = 1;

    private static final double MICROSECONDS_PER_DAY = 86_400e6;

    private final double[] days;
    private final double[] values;
    private final Unit unit;
    private final Instant origin;

    /** Keeps the arrays; {@code origin} is the instant of day 0, null if the days have no calendar. */
    private Readings(double[] days, double[] values, Unit unit, Instant origin) {
        if (days.length != values.length) {
            throw new IllegalArgumentException(
                    "days and values must be of one length: " + days.length + ", " + values.length);
        }
        Require.atLeast("number of readings", days.length, 1);
        Require.allFinite("days", days);
        Require.allFinite("values", values);
        for (int i = 1; i < days.length; i++) {
            if (!(days[i] > days[i - 1])) {
                throw new IllegalArgumentException("days must rise strictly: days[" + (i - 1) + "] " + days[i - 1]
                        + ", days[" + i + "] " + days[i]);
            }
        }
        this.days = days;
        this.values = values;
        this.unit = Objects.requireNonNull(unit, "unit");
        this.origin = origin;
    }

    /**
     * Takes readings with their times in days.
     *
     * @param days times in days from any origin, finite, strictly rising
     * @param values readings in the unit, finite, as many as times
     * @param unit unit of the readings
     * @return the readings
     * @throws IllegalArgumentException if the arrays differ in length, are empty, or a number is out of order
     */
    public static Readings ofDays(double[] days, double[] values, Unit unit) {
        return new Readings(Objects.requireNonNull(days, "days").clone(),
                Objects.requireNonNull(values, "values").clone(), unit, null);
    }

    /**
     * Takes readings with their instants; days are counted from the first one.
     *
     * @param times instants to the microsecond, strictly rising: the same reading fetched twice is to be left out
     * @param values readings in the unit, finite, as many as times
     * @param unit unit of the readings
     * @return the readings, whose answers come as instants, too
     * @throws IllegalArgumentException if the lists differ in length, are empty, or an entry is out of order
     */
    public static Readings of(List<Instant> times, double[] values, Unit unit) {
        Require.atLeast("number of readings", Objects.requireNonNull(times, "times").size(), 1);
        Instant[] instants = times.toArray(Instant[]::new);
        double[] days = new double[instants.length];
        for (int i = 0; i < days.length; i++) {
            int at = i;
            days[i] = days(instants[0], Objects.requireNonNull(instants[i], () -> "times[" + at + "]"));
            if (i > 0 && !(days[i] > days[i - 1])) {
                throw new IllegalArgumentException("times must rise strictly: times[" + (i - 1) + "] "
                        + instants[i - 1] + ", times[" + i + "] " + instants[i]);
            }
        }
        return new Readings(days, Objects.requireNonNull(values, "values").clone(), unit,
                instants[0].truncatedTo(ChronoUnit.MICROS));
    }

    /** Days between two instants, each cut to the microsecond. */
    private static double days(Instant from, Instant to) {
        Duration between = Duration.between(from.truncatedTo(ChronoUnit.MICROS), to.truncatedTo(ChronoUnit.MICROS));
        return (between.getSeconds() * 1e6 + between.getNano() / 1000) / MICROSECONDS_PER_DAY;
    }

    /**
     * Returns the instant of a time on the axis of the readings: of a reading, a change, a date foreseen.
     *
     * @param day time in days, finite
     * @return the instant to the microsecond, at most {@link Instant#MAX} and at least {@link Instant#MIN}; empty if
     *     the readings were given in days
     * @throws IllegalArgumentException if the time is not finite
     */
    public Optional<Instant> instantOf(double day) {
        double microseconds = Math.rint(Require.finite("day", day) * MICROSECONDS_PER_DAY);
        return Optional.ofNullable(origin).map(start -> {
            double seconds = Math.floor(microseconds / 1e6);
            if (!(start.getEpochSecond() + seconds > Instant.MIN.getEpochSecond())) {
                return Instant.MIN;
            }
            if (!(start.getEpochSecond() + seconds < Instant.MAX.getEpochSecond() - 1)) {
                return Instant.MAX;
            }
            return start.plusSeconds((long) seconds).plus((long) (microseconds - seconds * 1e6), ChronoUnit.MICROS);
        });
    }

    /**
     * Returns where an instant lies on the axis of the readings.
     *
     * @param instant the instant
     * @return days from the first reading given; empty if the readings were given in days
     */
    public OptionalDouble dayOf(Instant instant) {
        Objects.requireNonNull(instant, "instant");
        return origin == null ? OptionalDouble.empty() : OptionalDouble.of(days(origin, instant));
    }

    /**
     * Keeps the readings from an instant on.
     *
     * @param instant first instant to keep, not after the last reading
     * @return the later readings
     * @throws IllegalArgumentException if the instant is after the last reading
     * @throws IllegalStateException if the readings were given in days
     */
    public Readings since(Instant instant) {
        return since(dayOf(instant).orElseThrow(() -> new IllegalStateException(
                "instant must be a day, since the readings were given in days: " + instant)));
    }

    /**
     * Keeps the readings from a day on.
     *
     * @param day first day to keep, finite, not after the last reading
     * @return the later readings
     * @throws IllegalArgumentException if the day is out of range
     */
    public Readings since(double day) {
        Require.finite("day", day);
        if (day > lastDay()) {
            throw Require.failure("day", "at most that of the last reading, " + lastDay(), day);
        }
        int from = 0;
        while (from < days.length && days[from] < day) {
            from++;
        }
        return new Readings(Arrays.copyOfRange(days, from, days.length),
                Arrays.copyOfRange(values, from, values.length), unit, origin);
    }

    /**
     * Puts medians of blocks in place of single readings: each block of neighbours gives its median at the mean of its
     * times.
     *
     * @param most count of blocks, at least 1; with fewer readings than that nothing is changed
     * @return the shorter readings
     * @throws IllegalArgumentException if the count is below 1
     */
    public Readings thinnedTo(int most) {
        Require.atLeast("most", most, 1);
        if (days.length <= most) {
            return this;
        }
        double[] times = new double[most];
        double[] medians = new double[most];
        for (int block = 0; block < most; block++) {
            int from = (int) ((long) block * days.length / most);
            int to = (int) ((block + 1L) * days.length / most);
            double[] sorted = Arrays.copyOfRange(values, from, to);
            Arrays.sort(sorted);
            medians[block] = LineFits.median(sorted);
            times[block] = LineFits.mean(Arrays.copyOfRange(days, from, to));
        }
        return new Readings(times, medians, unit, origin);
    }

    /** {@return the count of readings, at least 1} */
    public int size() {
        return days.length;
    }

    /**
     * Returns the time of a reading.
     *
     * @param index place, from 0
     * @return time in days
     * @throws IndexOutOfBoundsException if there is no such reading
     */
    public double day(int index) {
        return days[Objects.checkIndex(index, days.length)];
    }

    /**
     * Returns the value of a reading.
     *
     * @param index place, from 0
     * @return value in the unit
     * @throws IndexOutOfBoundsException if there is no such reading
     */
    public double value(int index) {
        return values[Objects.checkIndex(index, values.length)];
    }

    /**
     * Returns the time of the first reading.
     *
     * @return time in days
     */
    public double firstDay() {
        return days[0];
    }

    /**
     * Returns the time of the last reading.
     *
     * @return time in days
     */
    public double lastDay() {
        return days[days.length - 1];
    }

    /** {@return the unit of the values} */
    public Unit unit() {
        return unit;
    }

    double[] days() {
        return days.clone();
    }

    double[] values() {
        return values.clone();
    }

    /** Makes a value that came from a stream anew, with copies of its own and all checks. */
    private Object readResolve() {
        return new Readings(days.clone(), values.clone(), unit, origin);
    }

    /** Two are equal if times, values and unit are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Readings readings && Arrays.equals(days, readings.days)
                && Arrays.equals(values, readings.values) && unit == readings.unit
                && Objects.equals(origin, readings.origin);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(Arrays.hashCode(days), Arrays.hashCode(values), unit, origin);
    }

    /** Returns count, span and unit, as in {@code 24 readings over 161 days, mm/s}. */
    @Override
    public String toString() {
        return days.length + (days.length == 1 ? " reading" : " readings") + " over "
                + Digits.compact(lastDay() - firstDay(), 4) + " days, " + unit;
    }
}
