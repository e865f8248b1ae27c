package dev.vibra.transform;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.lang.management.ManagementFactory;
import java.util.Random;
import java.util.stream.IntStream;
import org.jtransforms.fft.DoubleFFT_1D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Oracle: each band by itself, transformed back by JTransforms. */
class BandBankTest {
    @ParameterizedTest
    @CsvSource({"102400, 6", "100000, 6", "4096, 2", "6000, 3", "20000, 4", "8192, 5", "16, 2", 
            "9999, 7"})
    void sumsAreThoseOfEachBandTransformedByItself(int length, int levels) {
        double[] samples = new Random(length).doubles(length, -1, 1).toArray();
        RealTransform transform = RealTransform.of(length);
        double[] spectrum = transform.forward(samples, 0, new double[2 * transform.lines()]);
        BandBank bank = BandBank.of(length, levels);
        bank.load(new double[spectrum.length]);
        bank.load(spectrum);
        for (int level = 1; level <= levels; level++) {
            double[] squares = new double[1 << level];
            double[] fourths = new double[1 << level];
            bank.sums(level, squares, fourths);
            int width = bank.linesPerBand(level);
            for (int band = 0; band < squares.length; band++) {
                double[] values = new double[2 * width];
                System.arraycopy(spectrum, 2 * band * width, values, 0, 2 * width);
                new DoubleFFT_1D(width).complexInverse(values, false);
                double square = 0;
                double fourth = 0;
                for (int i = bank.leftOut(level); i < width - bank.leftOut(level); i++) {
                    double power = values[2 * i] * values[2 * i] + values[2 * i + 1] * values[2 * i + 1];
                    square += power;
                    fourth += power * power;
                }
                assertEquals(square, squares[band], 1e-12 * square, "level " + level + ", band " + band);
                assertEquals(fourth, fourths[band], 1e-12 * fourth, "level " + level + ", band " + band);
            }
        }
    }

    @Test
    void bandsFillTheRangeButForAFewLines() {
        assertEquals(800, BandBank.of(102_400, 6).linesPerBand(6));
        assertEquals(25_600, BandBank.of(102_400, 6).linesPerBand(1));
        assertEquals(780, BandBank.of(100_000, 6).linesPerBand(6));
        assertArrayEquals(new int[] {32, 16, 8, 4, 8, 4}, IntStream.rangeClosed(1, 6).map(BandBank.of(102_400, 6)::leftOut)
                .toArray());
        assertEquals(0, BandBank.of(64, 3).leftOut(1));
        assertEquals(2, BandBank.of(128, 2).leftOut(2));
    }

    @Test
    void badArgumentsAreNamed() {
        assertEquals("levels must be from 2 to 12: 0",
                assertThrows(IllegalArgumentException.class, () -> BandBank.of(4096, 0)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> BandBank.of(15, 2));
        BandBank bank = BandBank.of(64, 2);
        assertThrows(IllegalArgumentException.class, () -> bank.load(new double[65]));
        assertThrows(IllegalArgumentException.class, () -> bank.sums(3, new double[8], new double[8]));
        assertThrows(IllegalArgumentException.class, () -> bank.sums(2, new double[3], new double[4]));
    }

    @Test
    void nothingIsAllocatedOnceWarm() {
        BandBank bank = BandBank.of(12_800, 6);
        double[] spectrum = new Random(1).doubles(12_802, -1, 1).toArray();
        for (int i = 0; i < 20; i++) {
            bank.load(spectrum);
        }
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        for (int i = 0; i < 20; i++) {
            bank.load(spectrum);
        }
        assertEquals(0, (threads.getCurrentThreadAllocatedBytes() - before) / 20 / 64);
    }
}
