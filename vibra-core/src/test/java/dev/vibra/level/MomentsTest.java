package dev.vibra.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.testing.Reference;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MomentsTest {
    /** SciPy 1.10 {@code stats.skew}, {@code stats.kurtosis(fisher=False)}: see reference/scipy-moments.txt. */
    @Test
    void momentsAgreeWithSciPy() {
        Reference scipy = Reference.of("scipy-moments.txt");
        Moments moments = Moments.of(scipy.row("samples"));
        assertEquals(scipy.value("mean"), moments.mean(), 1e-14);
        assertEquals(scipy.value("rms"), moments.rms(), 1e-12);
        assertEquals(scipy.value("skewness"), moments.skewness(), 1e-11);
        assertEquals(scipy.value("kurtosis"), moments.kurtosis(), 1e-10);
    }

    /** Closed forms of a sine: crest factor √2, kurtosis 1.5. */
    @Test
    void sineHasItsClosedForms() {
        double[] x = IntStream.range(0, 4000).mapToDouble(i -> 5 + 3 * Math.cos(2 * Math.PI * i / 400)).toArray();
        Moments moments = Moments.of(x);
        assertEquals(5, moments.mean(), 1e-13);
        assertEquals(3 / Math.sqrt(2), moments.rms(), 1e-12);
        assertEquals(3, moments.peak(), 1e-12);
        assertEquals(6, moments.peakToPeak(), 1e-12);
        assertEquals(8, moments.highest(), 1e-12);
        assertEquals(2, moments.lowest(), 1e-12);
        assertEquals(Math.sqrt(2), moments.crestFactor(), 1e-12);
        assertEquals(0, moments.skewness(), 1e-12);
        assertEquals(1.5, moments.kurtosis(), 1e-12);
    }

    @Test
    void handValues() {
        Moments moments = Moments.of(-1, 0, 0, 5);
        assertEquals(1, moments.mean());
        assertEquals(4, moments.peak());
        assertEquals(6, moments.peakToPeak());
        assertEquals(Math.sqrt((4 + 1 + 1 + 16) / 4.0), moments.rms(), 1e-15);
        assertEquals((-8 - 1 - 1 + 64) / 4.0 / Math.pow(5.5, 1.5), moments.skewness(), 1e-14);
        assertEquals((16 + 1 + 1 + 256) / 4.0 / (5.5 * 5.5), moments.kurtosis(), 1e-14);
        assertEquals("mean 1.00, rms 2.35, peak 4.00 (4 samples)", moments.toString());
    }

    /** The same samples times a power of two: every figure keeps its digits, whatever the size. */
    @ParameterizedTest
    @ValueSource(ints = {-1000, -700, -300, -200, 0, 200, 300, 700, 1000})
    void sizeChangesNoFigure(int power) {
        double scale = Math.scalb(1.0, power);
        Moments plain = Moments.of(-1, 0, 0, 5);
        Moments moments = Moments.of(-scale, 0, 0, 5 * scale);
        assertEquals(plain.rms() * scale, moments.rms());
        assertEquals(plain.crestFactor(), moments.crestFactor());
        assertEquals(plain.skewness(), moments.skewness(), 1e-15);
        assertEquals(plain.kurtosis(), moments.kurtosis(), 1e-15);
        assertEquals(plain.shapeFactor(), moments.shapeFactor(), 1e-15);
        assertEquals(plain.impulseFactor(), moments.impulseFactor(), 1e-15);
        assertEquals(plain.clearanceFactor(), moments.clearanceFactor(), 1e-14);
    }

    @Test
    void constantSamplesHaveNoShape() {
        Moments moments = Moments.of(0.1, 0.1, 0.1);
        assertEquals(0, moments.rms());
        assertEquals("kurtosis needs samples that vary: all are 0.1",
                assertThrows(IllegalStateException.class, moments::kurtosis).getMessage());
        assertThrows(IllegalStateException.class, moments::skewness);
        assertThrows(IllegalStateException.class, moments::crestFactor);
    }

    @Test
    void badSamplesAreNamed() {
        assertMessage("length must be at least 1: 0", () -> Moments.of());
        assertMessage("samples[1] must be finite: NaN", () -> Moments.of(1, Double.NaN));
        assertMessage("samples[0] must be finite: -Infinity", () -> Moments.of(Double.NEGATIVE_INFINITY, 1));
        assertEquals(1.25e308, Moments.of(1e308, 1.5e308).mean());
        assertMessage("highest less lowest sample must be finite: Infinity", () -> Moments.of(-1e308, 1e308));
        assertMessage("samples must lie inside the array of length 2: offset 1, length 2",
                () -> Moments.of(new double[2], 1, 2));
    }

    private static void assertMessage(String message, org.junit.jupiter.api.function.Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
