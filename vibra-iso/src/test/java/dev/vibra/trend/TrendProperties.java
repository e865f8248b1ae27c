package dev.vibra.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Unit;
import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** A made trend is found again, whatever its size, and moving the axes moves the result with them. */
class TrendProperties {
    private static Readings made(int count, double start, double slope, double origin) {
        double[] days = new double[count];
        Arrays.setAll(days, i -> origin + 3.0 * i);
        double[] values = new double[count];
        Arrays.setAll(values, i -> start + slope * 3 * i + 0.01 * ((i * 7) % 5 - 2));
        return Readings.ofDays(days, values, Unit.MM_PER_S);
    }

    @Property(tries = 200)
    void theTrueCrossingIsFoundAgain(@ForAll TrendMethod method, @ForAll @IntRange(min = 20, max = 60) int count,
            @ForAll @DoubleRange(min = 0.5, max = 5) double start, @ForAll @DoubleRange(min = 0.01,
                    max = 1) double slope) {
        TrendSettings settings = TrendSettings.withDefaults().withMethod(method);
        double last = 3.0 * (count - 1);
        double ahead = 0.5 * last;
        Prognosis prognosis = Trend.of(made(count, start, slope, 0), settings).timeTo(start + slope * (last + ahead));
        Interval days = prognosis.daysFromLastReading().orElseThrow();
        assertEquals(ahead, days.best(), 0.05 / slope);
        assertTrue(days.lowest() < days.best() && days.best() < days.highest());
    }

    @Property(tries = 100)
    void theOriginOfTimeDoesNotMatter(@ForAll TrendMethod method,
            @ForAll @DoubleRange(min = -20_000, max = 20_000) double origin) {
        TrendSettings settings = TrendSettings.withDefaults().withMethod(method);
        Interval here = Trend.of(made(20, 1, 0.02, 0), settings).timeTo(2.6).daysFromLastReading().orElseThrow();
        Interval there = Trend.of(made(20, 1, 0.02, origin), settings).timeTo(2.6).daysFromLastReading().orElseThrow();
        assertEquals(here.lowest(), there.lowest(), 1e-6);
        assertEquals(here.best(), there.best(), 1e-6);
        assertEquals(here.highest(), there.highest(), 1e-6);
    }

    @Property(tries = 100)
    void moreConfidenceGivesAWiderInterval(@ForAll TrendMethod method,
            @ForAll @DoubleRange(min = 0.5, max = 0.9) double confidence) {
        TrendSettings settings = TrendSettings.withDefaults().withMethod(method);
        Interval narrow = Trend.of(made(20, 1, 0.02, 0), settings.withConfidence(confidence)).at(100);
        Interval wide = Trend.of(made(20, 1, 0.02, 0), settings.withConfidence(confidence + 0.05)).at(100);
        assertTrue(wide.lowest() < narrow.lowest() && wide.highest() > narrow.highest());
        assertEquals(wide.best(), narrow.best());
    }
}
