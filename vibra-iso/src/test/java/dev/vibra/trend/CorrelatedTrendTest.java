package dev.vibra.trend;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Unit;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How often the interval of the time to a limit holds the truth, for readings whose neighbours correlate: a straight rise
 * with an AR(1) scatter, the limit half a span ahead. What is asked here is what the doubts of a prognosis promise.
 */
class CorrelatedTrendTest {
    private static final int RUNS = 1000;

    @ParameterizedTest
    @CsvSource({"0, 10, 0.95", "0, 20, 0.95", "0, 40, 0.95", "0.5, 10, 0.88", "0.5, 20, 0.88", "0.5, 40, 0.90",
        "0.8, 10, 0.80", "0.8, 20, 0.80", "0.8, 40, 0.85"})
    void theIntervalHoldsTheTruthAsOftenAsItSays(double correlation, int readings, double least) {
        Random random = new Random(5 + readings + Math.round(100 * correlation));
        double crossing = 1.5 * (readings - 1);
        int given = 0;
        int held = 0;
        for (int run = 0; run < RUNS; run++) {
            Optional<Interval> days = days(random, readings, correlation, crossing);
            double truth = crossing - (readings - 1);
            given += days.isPresent() ? 1 : 0;
            held += days.filter(one -> one.lowest() <= truth && truth <= one.highest()).isPresent() ? 1 : 0;
        }
        // Two standard errors of the count beside.
        double error = Math.sqrt(least * (1 - least) / given);
        assertTrue(given > RUNS / 3 && held > (least - 2 * error) * given, held + " of " + given);
    }

    private static Optional<Interval> days(Random random, int readings, double correlation, double crossing) {
        double slope = 0.8 / readings;
        double[] days = new double[readings];
        double[] values = new double[readings];
        double wander = random.nextGaussian();
        for (int i = 0; i < readings; i++) {
            wander = i == 0 ? wander
                    : correlation * wander + Math.sqrt(1 - correlation * correlation) * random.nextGaussian();
            days[i] = i;
            values[i] = 2 + slope * i + 0.06 * wander;
        }
        return Trend.of(Readings.ofDays(days, values, Unit.MM_PER_S)).timeTo(2 + slope * crossing)
                .daysFromLastReading();
    }
}
