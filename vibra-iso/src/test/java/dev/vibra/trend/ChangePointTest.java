package dev.vibra.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Unit;
import java.io.IOException;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class ChangePointTest {
    private static Readings made(int count, DoubleUnaryOperator truth, double scatter, Random random) {
        double[] days = new double[count];
        Arrays.setAll(days, i -> i);
        return Readings.ofDays(days, Arrays.stream(days)
                .map(day -> truth.applyAsDouble(day) + scatter * random.nextGaussian()).toArray(), Unit.MM_PER_S);
    }

    private static DoubleUnaryOperator hinge(double begin, double slope) {
        return day -> 2 + slope * Math.max(0, day - begin);
    }

    @Test
    void theOnsetIsFoundWhereItWasMade() {
        Random random = new Random(3);
        double worst = 0;
        for (int run = 0; run < 200; run++) {
            ChangePoint found = ChangePoint.onset(made(60, hinge(30, 0.1), 0.1, random), 0.01).orElseThrow();
            worst = Math.max(worst, Math.abs(found.day() - 30));
        }
        assertTrue(worst <= 6, "worst " + worst + " days off");
        Random none = new Random(1);
        ChangePoint exact = ChangePoint.onset(made(20, hinge(7, 0.5), 0, none), 0.01).orElseThrow();
        assertEquals(7, exact.day());
        assertEquals(0, exact.probability());
        assertEquals("change at day 7, by chance less than 0.01 %", exact.toString());
        assertEquals("change at day 20425.25, by chance at most 0.5 %", new ChangePoint(20425.25, 0.005).toString());
        assertEquals(4, ChangePoint.onset(made(20, hinge(4, -0.1), 0.01, none), 0.01).orElseThrow().day(), 1);
        assertEquals(0, ChangePoint.onset(made(20, day -> 1 + day, 0, none), 0.01).orElseThrow().day(),
                "a line from the first reading on");
    }

    /** The bound on the probability must hold: at the level 5 % not more than 5 % of flat courses have a change. */
    @Test
    void flatReadingsHaveNone() {
        Random random = new Random(5);
        int onsets = 0;
        int steps = 0;
        for (int run = 0; run < 1000; run++) {
            Readings flat = made(30, day -> 2, 0.2, random);
            onsets += ChangePoint.onset(flat, 0.05).isPresent() ? 1 : 0;
            steps += ChangePoint.step(flat, 0.05).isPresent() ? 1 : 0;
        }
        double allowed = 1000 * 0.05 + 4 * Math.sqrt(1000 * 0.05 * 0.95);
        assertTrue(onsets <= allowed, "onsets " + onsets);
        assertTrue(steps <= allowed, "steps " + steps);
        assertTrue(onsets > 0 && steps > 0, "the level is used: " + onsets + ", " + steps);
        assertEquals(Optional.empty(), ChangePoint.onset(made(10, day -> 2, 0, random), 0.05));
        assertEquals(Optional.empty(), ChangePoint.step(made(10, day -> 2, 0, random), 0.05));
    }

    /**
     * Five readings of 1, then five of 2: U = -25 at the step, K = 25, p = 2·exp(-6·625/1100) = 0.0661; with ten and
     * ten K = 100, p = 2·exp(-6·10000/8400) = 0.001581 (by hand from Pettitt's formula).
     */
    @Test
    void stepByPettitt() {
        Random random = new Random(1);
        DoubleUnaryOperator five = day -> day < 5 ? 1 : 2;
        assertEquals(Optional.empty(), ChangePoint.step(made(10, five, 0, random), 0.05));
        ChangePoint ten = ChangePoint.step(made(20, day -> day < 10 ? 1 : 2, 0, random), 0.05).orElseThrow();
        assertEquals(10, ten.day());
        assertEquals(0.001581, ten.probability(), 5e-7);
        assertEquals(0.0661, ChangePoint.step(made(10, five, 0, random), 0.1).orElseThrow().probability(), 5e-5);
        assertEquals("change at day 10, by chance at most 0.16 %", ten.toString());
        double[] wild = {1, 1.1, 90, 1.2, 1, 1.3, 1, 1.1, 1.2, 1, 2, 2.1, 2.2, 1.9, 2, 2.1, 2.3, 2, 2.1, 2.2};
        double[] days = new double[20];
        Arrays.setAll(days, i -> i);
        assertEquals(10, ChangePoint.step(Readings.ofDays(days, wild, Unit.MM_PER_S), 0.05).orElseThrow().day());
    }

    /** Best bend and its bound, put together in SciPy 1.10 (linregress, f.sf) by trend_fits.py. */
    @Test
    void onsetAgreesWithSciPy() throws IOException {
        Map<String, double[]> rows = TrendTest.reference();
        Readings readings = Readings.ofDays(rows.get("onset days"), rows.get("onset values"), Unit.MM_PER_S);
        ChangePoint onset = ChangePoint.onset(readings, 0.01).orElseThrow();
        assertEquals(rows.get("onset")[0], onset.day());
        assertEquals(rows.get("onset")[1], onset.probability(), 1e-9);
        assertEquals(Optional.empty(), ChangePoint.onset(readings, onset.probability()), "only below the level");
    }

    @Test
    void sinceTheOnsetTheTrendIsStraight() {
        Readings readings = made(60, hinge(30, 0.05), 0.05, new Random(9));
        assertTrue(Trend.of(readings).isBent());
        ChangePoint onset = ChangePoint.onset(readings, 0.01).orElseThrow();
        Prognosis prognosis = Trend.of(readings.since(onset.day())).timeTo(4);
        assertTrue(prognosis.daysFromLastReading().orElseThrow().contains(70 - 59), prognosis::toString);
    }

    @Test
    void badInputIsNamed() {
        Readings seven = made(7, day -> 2, 0.1, new Random(1));
        assertEquals("number of readings must be at least 8: 7", message(() -> ChangePoint.onset(seven, 0.01)));
        assertEquals("number of readings must be at least 8: 7", message(() -> ChangePoint.step(seven, 0.01)));
        Readings eight = made(8, day -> 2, 0.1, new Random(1));
        assertEquals("level must be above 0 and at most 0.5: NaN", message(() -> ChangePoint.step(eight, Double.NaN)));
        assertEquals("level must be above 0 and at most 0.5: 0.0", message(() -> ChangePoint.onset(eight, 0)));
        assertEquals("probability must be within 0.0 to 1.0: 2.0", message(() -> new ChangePoint(1, 2)));
    }

    private static String message(Runnable call) {
        return assertThrows(IllegalArgumentException.class, call::run).getMessage();
    }
}
