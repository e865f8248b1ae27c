package dev.vibra.trend;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;

/**
 * Readings of one descriptor over time: the same point, direction, band and operating state, in rising order of time.
 *
 * <p>Time is in days from any origin, values in one unit. Compare like with like: leave out run-ups and other loads,
 * and begin anew after a repair. Immutable.
 */
public final class Readings implements Serializable {
    private static final long serialVersionUID = 1;

    private final double[] days;
    private final double[] values;
    private final Unit unit;

    private Readings(double[] days, double[] values, Unit unit) {
        this.days = days;
        this.values = values;
        this.unit = unit;
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
        double[] times = days.clone();
        double[] levels = values.clone();
        if (times.length != levels.length) {
            throw new IllegalArgumentException(
                    "days and values must be of one length: " + times.length + ", " + levels.length);
        }
        Require.atLeast("number of readings", times.length, 1);
        Require.allFinite("days", times);
        Require.allFinite("values", levels);
        for (int i = 1; i < times.length; i++) {
            if (!(times[i] > times[i - 1])) {
                throw new IllegalArgumentException("days must rise strictly: days[" + (i - 1) + "] " + times[i - 1]
                        + ", days[" + i + "] " + times[i]);
            }
        }
        return new Readings(times, levels, Objects.requireNonNull(unit, "unit"));
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
        return ofDays(Arrays.copyOfRange(days, from, days.length), Arrays.copyOfRange(values, from, values.length),
                unit);
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
        return ofDays(times, medians, unit);
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
     */
    public double day(int index) {
        return days[index];
    }

    /**
     * Returns the value of a reading.
     *
     * @param index place, from 0
     * @return value in the unit
     */
    public double value(int index) {
        return values[index];
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

    /** Two are equal if times, values and unit are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Readings readings && Arrays.equals(days, readings.days)
                && Arrays.equals(values, readings.values) && unit == readings.unit;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(Arrays.hashCode(days), Arrays.hashCode(values), unit);
    }

    /** Returns count, span and unit, as in {@code 24 readings over 161 days, mm/s}. */
    @Override
    public String toString() {
        return days.length + (days.length == 1 ? " reading" : " readings") + " over "
                + Digits.compact(lastDay() - firstDay(), 4) + " days, " + unit;
    }
}
