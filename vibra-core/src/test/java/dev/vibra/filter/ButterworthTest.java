package dev.vibra.filter;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.testing.Reference;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ButterworthTest {
    private static final Reference SCIPY = Reference.of("scipy-filters.txt");

    /** SciPy 1.10 {@code butter(output="sos")} and {@code sosfilt}: see reference/scipy-filters.txt. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7})
    void sectionsAndOutputAgreeWithSciPy(int order) {
        compare("lowpass." + order, Butterworth.lowPass(order, 120, 1000));
        compare("highpass." + order, Butterworth.highPass(order, 35, 1000));
    }

    /** SciPy pairs the equal zeros with the poles in another order: the poles are compared, and what the whole does. */
    private static void compare(String name, SectionCascade cascade) {
        double[] expected = SCIPY.row(name + ".sections");
        assertEquals(expected.length / 6, cascade.size());
        for (int s = 0; s < cascade.size(); s++) {
            assertEquals(expected[6 * s + 4], cascade.section(s)[4], 1e-10, name);
            assertEquals(expected[6 * s + 5], cascade.section(s)[5], 1e-10, name);
        }
        double[] x = SCIPY.row("samples");
        double[] y = new double[x.length];
        cascade.newFilter().process(x, 0, y, 0, x.length);
        SCIPY.assertRow(name + ".output", y, 1e-10);
    }

    @Test
    void gainFollowsTheFormulaAtCornerZeroAndNyquist() {
        for (int order = 1; order <= 20; order++) {
            assertEquals(Math.sqrt(0.5), Butterworth.lowPass(order, 1000, 25_600).gain(1000, 25_600), 1e-9);
            assertEquals(1, Butterworth.lowPass(order, 1000, 25_600).gain(0, 25_600), 1e-9);
            assertEquals(0, Butterworth.lowPass(order, 1000, 25_600).gain(12_800, 25_600), 1e-9);
            assertEquals(Math.sqrt(0.5), Butterworth.highPass(order, 100, 25_600).gain(100, 25_600), 1e-8);
            assertEquals(1, Butterworth.highPass(order, 100, 25_600).gain(12_800, 25_600), 1e-8);
        }
    }

    @Test
    void anySplitIntoBlocksEqualsOnePass() {
        SectionCascade cascade = Butterworth.highPass(3, 10, 1000).then(Butterworth.lowPass(4, 200, 1000));
        double[] x = new Random(5).doubles(500, -1, 1).toArray();
        double[] whole = new double[500];
        cascade.newFilter().process(x, 0, whole, 0, 500);
        CascadeFilter filter = cascade.newFilter();
        double[] parts = new double[500];
        int at = 0;
        for (int block : new int[] {1, 0, 7, 250, 242}) {
            filter.process(x, at, parts, at, block);
            at += block;
        }
        assertArrayEquals(whole, parts, 0);
        filter.reset();
        double[] inPlace = x.clone();
        filter.process(inPlace, 0, inPlace, 0, 500);
        assertArrayEquals(whole, inPlace, 0);
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("order must be from 1 to 20: 0", () -> Butterworth.lowPass(0, 10, 100));
        assertMessage("order must be from 1 to 20: 21", () -> Butterworth.lowPass(21, 10, 100));
        assertMessage("cornerHertz must be above 0 and below half the sample rate, 50.0 Hz: 50.0",
                () -> Butterworth.lowPass(2, 50, 100));
        assertMessage("cornerHertz must be above 0 and below half the sample rate, 50.0 Hz: NaN",
                () -> Butterworth.highPass(2, Double.NaN, 100));
        assertMessage("sampleRateHertz must be finite and > 0 Hz: -1.0", () -> Butterworth.highPass(2, 1, -1));
        assertMessage("section[0] must have 6 coefficients: 5", () -> SectionCascade.of(new double[5]));
        assertMessage("section[0][3] (a0) must not be zero", () -> SectionCascade.of(new double[6]));
        assertMessage("section[0] must be stable: a1 0.0, a2 1.0",
                () -> SectionCascade.of(new double[] {1, 0, 0, 1, 0, 1}));
        assertMessage("section[0] must be stable: a1 -2.0, a2 0.9",
                () -> SectionCascade.of(new double[] {1, 0, 0, 2, -4, 1.8}));
        assertMessage("number of sections must be at least 1: 0", SectionCascade::of);
        assertMessage("index must be from 0 to 1: 2", () -> Butterworth.lowPass(3, 1, 100).section(2));
        assertMessage("out must lie inside the array of length 3: offset 0, length 4",
                () -> Butterworth.lowPass(3, 1, 100).newFilter().process(new double[4], 0, new double[3], 0, 4));
    }

    private static void assertMessage(String message, org.junit.jupiter.api.function.Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
