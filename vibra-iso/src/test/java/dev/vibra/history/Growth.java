package dev.vibra.history;

import dev.vibra.quantity.Unit;
import dev.vibra.trend.Readings;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;

/** The forward model of a history: a level that scatters, and from a day on rises by so much a day. */
record Growth(double level, double onsetDay, double risePerDay, double scatter) {
    static final Instant BEGIN = Instant.parse("2025-01-01T08:00:00Z");

    /** Readings at equal distances with normal scatter. */
    Readings readings(int visits, double everyDays, long seed) {
        return series(visits, everyDays, seed, this::at);
    }

    /** Readings of a level that from a day on grows by e in so many days, with a relative scatter. */
    static Readings exponential(double level, double onsetDay, double daysOfGrowth, double scatter, int visits,
            double everyDays, long seed) {
        return series(visits, everyDays, seed, (day, deviation) -> level * Math.exp(Math.max(0, day - onsetDay)
                / daysOfGrowth + scatter * deviation));
    }

    private static Readings series(int visits, double everyDays, long seed, DoubleBinaryOperator course) {
        Random random = new Random(seed);
        List<Instant> times = new ArrayList<>();
        double[] values = new double[visits];
        for (int i = 0; i < visits; i++) {
            times.add(at(i * everyDays));
            values[i] = course.applyAsDouble(i * everyDays, random.nextGaussian());
        }
        return Readings.of(times, values, Unit.MM_PER_S);
    }

    double at(double day, double deviation) {
        return level + Math.max(0, day - onsetDay) * risePerDay + scatter * deviation;
    }

    static Instant at(double day) {
        return BEGIN.plus(Duration.ofSeconds(Math.round(86_400 * day)));
    }

    /** The day on which the undisturbed level reaches a limit. */
    double dayOf(double limit) {
        return onsetDay + (limit - level) / risePerDay;
    }
}
