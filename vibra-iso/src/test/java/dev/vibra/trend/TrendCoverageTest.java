package dev.vibra.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Unit;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * How often the 95 % interval for the time to a limit holds the true time: 2,000 seeded runs for each way of fitting.
 * All runs count; one that is refused counts as a miss.
 */
class TrendCoverageTest {
    private static final int RUNS = 2000;
    private static final double LIMIT = 4.5;

    /** Share of the runs whose interval holds the true day; truth gives the value without scatter. */
    private static double coverage(TrendSettings settings, int count, DoubleUnaryOperator truth, double trueDay,
            Scatter scatter) {
        Random random = new Random(2015);
        int held = 0;
        for (int run = 0; run < RUNS; run++) {
            double[] days = new double[count];
            double[] values = new double[count];
            for (int i = 0; i < count; i++) {
                days[i] = (i + 0.5 * random.nextDouble()) * 180 / count;
                values[i] = scatter.of(truth.applyAsDouble(days[i]), random);
            }
            Prognosis prognosis = Trend.of(Readings.ofDays(days, values, Unit.MM_PER_S), settings).timeTo(LIMIT);
            double ahead = trueDay - days[count - 1];
            if (prognosis.daysFromLastReading().filter(interval -> interval.contains(ahead)).isPresent()) {
                held++;
            }
        }
        return held / (double) RUNS;
    }

    private interface Scatter {
        double of(double value, Random random);
    }

    private static void assertHeld(double share) {
        assertTrue(share >= 0.92 && share <= 0.98, "held in " + share + " of the runs");
    }

    private static double straight(double day) {
        return 1 + 0.0125 * day;
    }

    private static double growing(double day) {
        return Math.exp(0.1 + 0.005 * day);
    }

    private static final double STRAIGHT_DAY = 3.5 / 0.0125;
    private static final double GROWING_DAY = (Math.log(LIMIT) - 0.1) / 0.005;
    private static final Scatter NORMAL = (value, random) -> value + 0.15 * random.nextGaussian();
    private static final Scatter RELATIVE = (value, random) -> value * Math.exp(0.06 * random.nextGaussian());
    private static final TrendSettings ROBUST = TrendSettings.withDefaults();
    private static final TrendSettings LEAST_SQUARES = ROBUST.withMethod(TrendMethod.LEAST_SQUARES);

    @Test
    void robustLine() {
        assertHeld(coverage(ROBUST, 30, TrendCoverageTest::straight, STRAIGHT_DAY, NORMAL));
        assertHeld(coverage(ROBUST, 15, TrendCoverageTest::straight, STRAIGHT_DAY, NORMAL));
    }

    @Test
    void leastSquaresLine() {
        assertHeld(coverage(LEAST_SQUARES, 30, TrendCoverageTest::straight, STRAIGHT_DAY, NORMAL));
    }

    @Test
    void exponential() {
        assertHeld(coverage(ROBUST.withModel(TrendModel.EXPONENTIAL), 30, TrendCoverageTest::growing, GROWING_DAY,
                RELATIVE));
        assertHeld(coverage(LEAST_SQUARES.withModel(TrendModel.EXPONENTIAL), 30, TrendCoverageTest::growing,
                GROWING_DAY, RELATIVE));
    }

    /** Long tails: Student's distribution with 3 degrees of freedom. */
    @Test
    void robustLineUnderLongTails() {
        assertHeld(coverage(ROBUST, 30, TrendCoverageTest::straight, STRAIGHT_DAY, (value, random) -> value + 0.1
                * random.nextGaussian() / Math.sqrt((square(random) + square(random) + square(random)) / 3)));
    }

    private static double square(Random random) {
        double value = random.nextGaussian();
        return value * value;
    }

    /** Without a trend a date is given in about 2.5 % of the runs: the chance of a rise that stands out by itself. */
    @Test
    void flatReadingsGetNoDate() {
        Random random = new Random(17359);
        int dated = 0;
        for (int run = 0; run < RUNS; run++) {
            double[] days = new double[20];
            double[] values = new double[20];
            for (int i = 0; i < 20; i++) {
                days[i] = 7 * i;
                values[i] = 2 + 0.2 * random.nextGaussian();
            }
            if (Trend.of(Readings.ofDays(days, values, Unit.MM_PER_S), LEAST_SQUARES.withHorizon(1e6)).timeTo(LIMIT)
                    .daysFromLastReading().isPresent()) {
                dated++;
            }
        }
        assertEquals(0.025, dated / (double) RUNS, 4 * Math.sqrt(0.025 * 0.975 / RUNS));
    }
}
