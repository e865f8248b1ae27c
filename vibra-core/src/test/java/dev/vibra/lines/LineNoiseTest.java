package dev.vibra.lines;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.testing.Reference;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LineNoiseTest {
    private static final Reference REFERENCE = Reference.of("scipy-statistics.txt");

    @ParameterizedTest
    @ValueSource(doubles = {1, 3, 3.5, 40.25})
    @DisplayName("upper tail and median of the gamma law: SciPy gamma.logsf, gamma.median")
    void tailAndMedian(double averages) {
        LineNoise noise = LineNoise.of(averages);
        double[] ratios = REFERENCE.row("ratios");
        double[] expected = REFERENCE.row("gamma.logsf." + averages);
        for (int i = 0; i < ratios.length; i++) {
            assertEquals(expected[i], noise.logExceedance(ratios[i]), 1e-10 * Math.max(1, -expected[i]));
        }
        assertEquals(REFERENCE.value("gamma.median." + averages), noise.medianOverMean(), 1e-12);
    }

    /** Shape 1 is the exponential law; shape 3 has the tail exp(-x)·(1 + x + x²/2). */
    @Test
    void tailFarBeyondTheSmallestDouble() {
        for (double ratio : new double[] {0, 0.3, 2, 800, 50_000, 1e12}) {
            assertEquals(-ratio, LineNoise.of(1).logExceedance(ratio), 1e-12 * Math.max(1, ratio));
            double x = 3 * ratio;
            double closed = -x + Math.log1p(x + x * x / 2);
            assertEquals(closed, LineNoise.of(3).logExceedance(ratio), 1e-12 * Math.max(1, x));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.7, 1, 2, 5, 40, 500})
    void ratioAtUndoesTheExceedance(double averages) {
        LineNoise noise = LineNoise.of(averages);
        for (double log : new double[] {-0.1, -1, -10, -100, -600}) {
            assertEquals(log, noise.logExceedance(noise.ratioAt(log)), 1e-9 * Math.max(1, -log));
        }
    }

    @Test
    void badArgumentsAreNamed() {
        assertEquals("averages must be within 0.1 to 1.0E9: 0.0", message(() -> LineNoise.of(0)));
        assertEquals("ratio must be finite and >= 0: NaN", message(() -> LineNoise.of(2).logExceedance(Double.NaN)));
        assertEquals("logProbability must be at least -1e100 and below 0: 0.0",
                message(() -> LineNoise.of(2).ratioAt(0)));
    }

    private static String message(Runnable call) {
        return assertThrows(IllegalArgumentException.class, call::run).getMessage();
    }
}
