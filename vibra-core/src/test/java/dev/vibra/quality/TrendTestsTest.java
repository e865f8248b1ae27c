package dev.vibra.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrendTestsTest {
    /**
     * Bendat and Piersol, Random Data, table of percentage points of reverse arrangements (from memory, unverified: N =
     * 10, 20, 30 at 0.99, 0.975, 0.95): the count is exceeded with that probability. The exact distribution gives each
     * within one, by which the print rounds.
     */
    @ParameterizedTest
    @CsvSource({"10, 0.01, 9", "10, 0.025, 11", "10, 0.05, 13", "20, 0.01, 59", "20, 0.025, 64", "20, 0.05, 69",
        "30, 0.01, 152", "30, 0.025, 162", "30, 0.05, 171"})
    void limitsAreThoseOfTheTable(int n, double tail, int expected) {
        assertEquals(expected, TrendTests.reverseArrangementsLimit(n, tail).orElseThrow(), 1);
    }

    /** By hand: of 3 values there are 6 orders with 0, 1, 1, 2, 2, 3 reverse arrangements. */
    @Test
    void smallCasesByHand() {
        assertEquals(3, TrendTests.reverseArrangements(3, 2, 1));
        assertEquals(0, TrendTests.reverseArrangements(1, 2, 3));
        assertEquals(1, TrendTests.reverseArrangements(1, 3, 2));
        assertEquals(2.0 / 6, TrendTests.reverseArrangementsProbability(1, 2, 3), 1e-12);
        assertEquals(2.0 / 6, TrendTests.reverseArrangementsProbability(3, 2, 1), 1e-12);
        assertEquals(1, TrendTests.reverseArrangementsProbability(1, 3, 2), 1e-12);
        assertEquals(2, TrendTests.runs(1, 2, 8, 9));
        assertEquals(4, TrendTests.runs(1, 8, 2, 9));
        assertEquals(2, TrendTests.runs(1, 2, 5, 8, 9)); // the value on the median counts for no side
        // Of 6 ways to put 2 above and 2 below, 2 have 2 runs, 2 have 3 and 2 have 4.
        assertEquals(2 * 2.0 / 6, TrendTests.runsProbability(1, 2, 8, 9), 1e-12);
        assertEquals(1, TrendTests.runsProbability(1, 8, 9, 2), 1e-12);
        assertEquals(1, TrendTests.runsProbability(5, 5, 5), 1e-12);
    }

    /**
     * Simulation: independent values are rejected as often as the significance says, or less (the counts are whole).
     */
    @Test
    void independentValuesAreRarelyRejected() {
        Random random = new Random(4);
        int reversed = 0;
        int runs = 0;
        for (int i = 0; i < 4000; i++) {
            double[] values = random.doubles(20).toArray();
            reversed += TrendTests.reverseArrangementsProbability(values) <= 0.05 ? 1 : 0;
            runs += TrendTests.runsProbability(values) <= 0.05 ? 1 : 0;
        }
        assertTrue(reversed > 100 && reversed < 230, "reverse arrangements: " + reversed);
        assertTrue(runs > 40 && runs < 230, "runs: " + runs);
    }

    @Test
    void trendsAndSwingsAreRejected() {
        double[] trend = new double[20];
        double[] swing = new double[20];
        for (int i = 0; i < 20; i++) {
            trend[i] = i + 3 * Math.sin(i);
            swing[i] = Math.sin(2 * Math.PI * i / 20) + 0.01 * Math.cos(7 * i);
        }
        assertTrue(TrendTests.reverseArrangementsProbability(trend) < 0.001);
        assertTrue(TrendTests.runsProbability(swing) < 0.001);
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, 100, new double[2000]);
        assertTrue(!Steadiness.of(wave, trend).steady());
        assertTrue(Steadiness.of(wave, 1, 1.01, 1.02, 1.03, 1.04, 1.05, 1.06, 1.07, 1.08, 1.09).steady(), "negligible");
    }

    @Test
    void badArgumentsAreNamed() {
        assertEquals("number of values must be within 2.0 to 200.0: 1.0", assertThrows(IllegalArgumentException.class,
                () -> TrendTests.runsProbability(1)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> TrendTests.reverseArrangementsProbability(1, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> TrendTests.reverseArrangementsLimit(1, 0.05));
        assertTrue(TrendTests.reverseArrangementsLimit(3, 0.1).isEmpty()); // one order in six has none
    }

    /** The search shares what sequences of equal length have in common; each by itself says the same. */
    @Test
    void longestSteadyStretchIsTheFirstThatIsSteadyByItself() {
        Random random = new Random(11);
        for (int run = 0; run < 20; run++) {
            double[] values = new double[40];
            for (int i = 0; i < values.length; i++) {
                values[i] = 10 + random.nextGaussian() + (i < run ? 0.4 * (run - i) : 0);
            }
            Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, 1000, new double[4000]);
            assertEquals(direct(wave, values), Steadiness.of(wave, values).longestSteady()
                    .map(part -> part.startSeconds() + " " + part.length()).orElse("none"));
        }
    }

    private static String direct(Waveform wave, double[] values) {
        for (int count = values.length; count >= 10; count--) {
            for (int from = 0; from + count <= values.length; from++) {
                if (Steadiness.of(wave, Arrays.copyOfRange(values, from, from + count)).steady()) {
                    return wave.part(100 * from, 100 * count).startSeconds() + " " + 100 * count;
                }
            }
        }
        return "none";
    }
}
