package dev.vibra.bearing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LineNoiseTest {
    private static final Reference REFERENCE = Reference.of("scipy-line-noise.txt");

    @Test
    @DisplayName("one block: two degrees of freedom, exceedance exp(-ratio), SciPy chi2")
    void oneBlock() {
        LineNoise noise = new LineNoise(1);
        assertEquals(2, noise.degreesOfFreedom());
        assertEquals(REFERENCE.value("median.2"), noise.median(), 1e-12);
        assertEquals(Math.log(2), noise.median(), 1e-12);
        double[] ratios = REFERENCE.row("ratios");
        for (int i = 0; i < ratios.length; i++) {
            assertEquals(-ratios[i], noise.logExceedance(ratios[i]), 1e-10 * ratios[i]);
            assertEquals(REFERENCE.row("log.2")[i], noise.logExceedance(ratios[i]), 1e-10 * ratios[i]);
        }
        assertEquals(-50_000, noise.logExceedance(50_000), 1e-6, "far beyond the smallest double");
    }

    @Test
    @DisplayName("six degrees of freedom: SciPy chi2")
    void severalDegrees() {
        LineNoise noise = LineNoise.ofDegrees(6);
        double[] ratios = REFERENCE.row("ratios");
        for (int i = 0; i < ratios.length; i++) {
            double expected = REFERENCE.row("log.6")[i];
            assertEquals(expected, noise.logExceedance(ratios[i]), 1e-10 * Math.max(1, -expected));
        }
        assertEquals(REFERENCE.value("median.6"), noise.median(), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 40, 500})
    void ratioAtUndoesTheExceedance(int blocks) {
        LineNoise noise = new LineNoise(blocks);
        for (double log : new double[] {-0.1, -1, -10, -100, -600}) {
            assertEquals(log, noise.logExceedance(noise.ratioAt(log)), 1e-9 * Math.max(1, -log));
        }
    }

    @Test
    @DisplayName("blocks that overlap by half count almost in full: variance 1/k·(1 + 1/18·(k-1)/k), Welch 1967")
    void overlap() {
        assertEquals(2 * 10 / (1 + 1 / 18.0 * 0.9), new LineNoise(10).degreesOfFreedom(), 1e-12);
        assertTrue(new LineNoise(10).degreesOfFreedom() < 20);
    }
}
