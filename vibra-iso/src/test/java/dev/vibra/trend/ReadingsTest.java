package dev.vibra.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Unit;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ReadingsTest {
    private static final Instant FIRST = Instant.parse("2026-03-01T06:30:00Z");
    private static final List<Instant> TWO = List.of(FIRST, FIRST.plus(36, ChronoUnit.HOURS));

    private static String message(Class<? extends RuntimeException> type, Runnable call) {
        return assertThrows(type, call::run).getMessage();
    }

    private static Readings of(List<Instant> times, double... values) {
        return Readings.of(times, values, Unit.MM_PER_S);
    }

    @Test
    void daysAreCountedFromTheFirstInstant() {
        Readings readings = of(TWO, 2, 3);
        assertEquals(0, readings.firstDay());
        assertEquals(1.5, readings.lastDay());
        assertEquals(Optional.of(FIRST.plus(36, ChronoUnit.HOURS)), readings.instantOf(1.5));
        assertEquals(Optional.of(FIRST.minus(1, ChronoUnit.DAYS)), readings.instantOf(-1));
        assertEquals(OptionalDouble.of(0.5), readings.dayOf(FIRST.plus(12, ChronoUnit.HOURS)));
        assertEquals("2 readings over 1.5 days, mm/s", readings.toString());
        assertEquals(1, readings.since(FIRST.plusSeconds(1)).size());
        assertEquals(Optional.of(TWO.get(1)), readings.since(FIRST.plusSeconds(1)).instantOf(1.5), "one axis");
        assertEquals(Optional.of(FIRST.plus(18, ChronoUnit.HOURS)), readings.thinnedTo(1).instantOf(0.75));
        assertNotEquals(readings, Readings.ofDays(new double[] {0, 1.5}, new double[] {2, 3}, Unit.MM_PER_S));
    }

    /** Each instant to the microsecond comes back as it was, over seventy years and however uneven the gaps. */
    @Test
    void instantsComeBackAsTheyWere() {
        Random random = new Random(4);
        List<Instant> times = new ArrayList<>(List.of(FIRST));
        Instant end = FIRST.plus(25_567, ChronoUnit.DAYS);
        while (times.get(times.size() - 1).isBefore(end)) {
            Duration gap = Duration.of(1 + (long) Math.pow(10, 14 * random.nextDouble()), ChronoUnit.MICROS);
            times.add(times.get(times.size() - 1).plus(gap));
        }
        times.remove(times.size() - 1);
        Readings readings = of(times, new double[times.size()]);
        assertTrue(times.size() > 300, times.size() + " instants");
        for (int i = 0; i < times.size(); i++) {
            assertEquals(times.get(i), readings.instantOf(readings.day(i)).orElseThrow());
            assertEquals(times.size() - i, readings.since(times.get(i)).size());
        }
    }

    @Test
    void daysHaveNoCalendar() {
        Readings readings = Readings.ofDays(new double[] {0, 1}, new double[] {2, 3}, Unit.MM_PER_S);
        assertEquals(Optional.empty(), readings.instantOf(1));
        assertEquals(OptionalDouble.empty(), readings.dayOf(FIRST));
        assertEquals("instant must be a day, since the readings were given in days: 2026-03-01T06:30:00Z",
                message(IllegalStateException.class, () -> readings.since(FIRST)));
    }

    @Test
    void hostileTimesAreNamed() {
        Class<IllegalArgumentException> wrong = IllegalArgumentException.class;
        assertEquals("times must rise strictly: times[0] 2026-03-01T06:30:00Z, times[1] 2026-03-01T06:30:00Z",
                message(wrong, () -> of(List.of(FIRST, FIRST), 1, 2)));
        assertEquals("times must rise strictly: times[0] 2026-03-01T06:30:00Z, times[1] "
                + "2026-03-01T06:30:00.000000999Z",
                message(wrong, () -> of(List.of(FIRST, FIRST.plusNanos(999)), 1, 2)));
        assertEquals("number of readings must be at least 1: 0", message(wrong, () -> of(List.of())));
        assertEquals("days and values must be of one length: 2, 1", message(wrong, () -> of(TWO, 1)));
        assertEquals("values[1] must be finite: NaN", message(wrong, () -> of(TWO, 1, Double.NaN)));
        assertEquals("day must be finite: NaN", message(wrong, () -> of(TWO, 1, 2).instantOf(Double.NaN)));
        assertEquals("day must be at most that of the last reading, 1.5: 2.0",
                message(wrong, () -> of(TWO, 1, 2).since(FIRST.plus(2, ChronoUnit.DAYS))));
        Class<NullPointerException> nothing = NullPointerException.class;
        assertEquals("times[1]", message(nothing, () -> of(Arrays.asList(FIRST, null), 1, 2)));
        assertEquals("times[0]", message(nothing, () -> of(Arrays.asList(null, FIRST), 1, 2)));
        assertEquals("times", message(nothing, () -> of(null, 1, 2)));
        assertEquals("values", message(nothing, () -> Readings.of(TWO, null, Unit.MM_PER_S)));
        assertEquals("unit", message(nothing, () -> Readings.of(TWO, new double[] {1, 2}, null)));
        assertEquals("days", message(nothing, () -> Readings.ofDays(null, null, Unit.MM_PER_S)));
        assertEquals("instant", message(nothing, () -> of(TWO, 1, 2).dayOf(null)));
        assertEquals("Index 2 out of bounds for length 2",
                message(IndexOutOfBoundsException.class, () -> of(TWO, 1, 2).day(2)));
    }

    /** The whole range of an instant can be given; beyond it an answer is the end of the range. */
    @Test
    void theEndsOfTimeAreHeld() {
        Readings all = of(List.of(Instant.MIN, Instant.MAX), 1, 2);
        assertEquals(Optional.of(Instant.MAX), all.instantOf(1e300));
        assertEquals(Optional.of(Instant.MIN), all.instantOf(-1e-3));
        assertEquals(Optional.of(Instant.MIN), of(List.of(Instant.MAX), 1).instantOf(-Double.MAX_VALUE));
        assertEquals(Optional.of(FIRST), of(List.of(FIRST), 1).instantOf(-0.0));
    }

    /** The readings of a pump that rises by 0.01 mm/s a day from the hundredth day on. */
    @Test
    void changeAndDateAreInstants() {
        List<Instant> times = new ArrayList<>();
        Random random = new Random(8);
        double[] values = new double[40];
        for (int i = 0; i < values.length; i++) {
            times.add(FIRST.plus(5L * i, ChronoUnit.DAYS));
            values[i] = 2 + 0.01 * Math.max(0, 5 * i - 100) + 0.02 * random.nextGaussian();
        }
        Readings readings = of(times, values);
        ChangePoint onset = ChangePoint.onset(readings, 0.01).orElseThrow();
        Instant found = readings.instantOf(onset.day()).orElseThrow();
        Duration off = Duration.between(FIRST.plus(100, ChronoUnit.DAYS), found);
        assertTrue(off.abs().toDays() <= 10, "onset off by " + off);
        Prognosis prognosis = Trend.of(readings.since(onset.day())).timeTo(3.5);
        Instant truth = FIRST.plus(250, ChronoUnit.DAYS);
        InstantInterval when = prognosis.instants().orElseThrow();
        assertTrue(when.contains(truth), when + " holds " + truth);
        assertTrue(prognosis.toString().contains(" days, " + when + "; linear"), prognosis.toString());
        Instant last = times.get(39);
        double best = prognosis.daysFromLastReading().orElseThrow().best();
        assertEquals(best, Duration.between(last, when.best()).toNanos() / 86_400e9, 1e-9);
        assertEquals(Duration.between(last, when.earliest()).toNanos() / 3.0,
                Duration.between(last, prognosis.measureAgainUntil().orElseThrow()).toNanos(), 2000);
        assertEquals(Optional.empty(), Trend.of(TrendTest.line(30, 2, 0.02, 0.02, 1)).timeTo(7).instants());
        assertEquals(Optional.empty(), Trend.of(readings.since(onset.day())).timeTo(1e9).instants());
    }

    @Test
    void intervalsOfInstants() {
        InstantInterval days = new InstantInterval(FIRST, TWO.get(1), FIRST.plus(9, ChronoUnit.DAYS));
        assertEquals("2026-03-02 (2026-03-01 to 2026-03-10)", days.toString());
        assertEquals("2026-03-01T06:30:00Z (2026-03-01T06:30:00Z to 2026-03-02T18:30:00Z)",
                new InstantInterval(FIRST, FIRST, TWO.get(1)).toString());
        assertTrue(days.contains(FIRST) && !days.contains(FIRST.minusNanos(1)));
        assertTrue(days.contains(days.latest()) && !days.contains(days.latest().plusNanos(1)));
        assertEquals("earliest, best and latest must rise: 2026-03-02T18:30:00Z, 2026-03-01T06:30:00Z, "
                + "2026-03-02T18:30:00Z", message(IllegalArgumentException.class,
                        () -> new InstantInterval(TWO.get(1), FIRST, TWO.get(1))));
    }
}
