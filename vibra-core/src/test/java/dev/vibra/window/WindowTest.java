package dev.vibra.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.testing.Reference;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WindowTest {
    private static final Map<String, Window> WINDOWS = Map.of("rectangular", Window.rectangular(), "hann",
            Window.hann(),
            "hamming", Window.hamming(), "blackmanHarris", Window.blackmanHarris(), "flatTop", Window.flatTop());
    private static final Map<String, Window> MORE = Map.of("triangular", Window.triangular(), "blackman",
            Window.blackman(),
            "nuttall", Window.nuttall(), "kaiser", Window.kaiser(8.6), "tukey", Window.tukey(0.3),
            "exponential", Window.exponential(0.05));

    /** SciPy 1.10 {@code get_window(fftbins=True)} and {@code general_cosine}: see reference/scipy-windows.txt. */
    @Test
    void samplesAgreeWithSciPy() {
        Reference reference = Reference.of("scipy-windows.txt");
        WINDOWS.forEach((name, window) -> {
            reference.assertRow(name + ".16", window.samples(16), 1e-14);
            reference.assertRow(name + ".15", window.samples(15), 1e-14);
        });
    }

    /** SciPy 1.10, {@code bartlett}, {@code kaiser}, {@code tukey} …: see reference/scipy-more-windows.txt. */
    @Test
    void moreSamplesAgreeWithSciPy() {
        Reference reference = Reference.of("scipy-more-windows.txt");
        for (int n : new int[] {16, 15}) {
            MORE.forEach((name, window) -> reference.assertRow(name + "." + n, window.samples(n), 1e-13));
            reference.assertRow("closed.kaiser." + n, Window.kaiser(8.6).closedSamples(n), 1e-13);
            reference.assertRow("closed.hann." + n, Window.hann().closedSamples(n), 1e-13);
        }
    }

    /**
     * Computed from the definitions for 4096 points (DFT-even): gain, noise bandwidth, scallop loss, correlation of
     * white noise at 50 % and 75 % overlap; those of F. J. Harris 1978, Table 1 agree but for the entries named there
     * as misprints.
     */
    @ParameterizedTest
    @CsvSource({"rectangular, 1.0000, 1.0000, 3.922, 50.0, 75.0", "hann, 0.5000, 1.5000, 1.424, 16.7, 65.9",
        "hamming, 0.5400, 1.3628, 1.751, 23.4, 70.7", "blackman, 0.4200, 1.7268, 1.099, 9.0, 56.7",
        "blackmanHarris, 0.3588, 2.0044, 0.826, 3.8, 46.0", "kaiser2, 0.4892, 1.4963, 1.453, 16.9, 65.7",
        "kaiser3, 0.4025, 1.7952, 1.023, 7.4, 53.9", "kaiser35, 0.3735, 1.9284, 0.890, 4.8, 48.8"})
    void figuresOfMeritAreThoseOfTheDefinition(String name, double gain, double bandwidth, double scallop, double half,
            double threeQuarters) {
        Window window = switch (name) {
            case "kaiser2" -> Window.kaiser(2 * Math.PI);
            case "kaiser3" -> Window.kaiser(3 * Math.PI);
            case "kaiser35" -> Window.kaiser(3.5 * Math.PI);
            default -> WINDOWS.getOrDefault(name, MORE.get(name));
        };
        assertEquals(gain, window.coherentGain(), 0.00005);
        assertEquals(bandwidth, window.noiseBandwidth(), 0.00005);
        assertEquals(scallop, window.scallopLoss(), 0.0006);
        assertEquals(half, 100 * window.overlapCorrelation(0.5), 0.06);
        assertEquals(threeQuarters, 100 * window.overlapCorrelation(0.75), 0.06);
    }

    /** Triangle: noise bandwidth 4/3 and scallop loss 1.82 dB, F. J. Harris 1978, Table 1. */
    @Test
    void triangleHasItsClosedForms() {
        assertEquals(4.0 / 3, Window.triangular().noiseBandwidth(), 1e-6);
        assertEquals(1.82, Window.triangular().scallopLoss(), 0.005);
        assertEquals(0.5, Window.triangular().coherentGain(), 1e-7);
    }

    /**
     * A force window of a short pulse is a rectangle of that length with a half-cosine behind it, whatever the length:
     * mean f·(1 + 1/8), mean square f·(1 + 3/32), a transform that is flat up to 1/f bins.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1e-9, 1e-6, 1e-3, 0.1, 0.8})
    void shortForceWindowsKeepTheirFigures(double fraction) {
        Window window = Window.force(fraction);
        assertEquals(1.125 * fraction, window.coherentGain(), 1e-6 * fraction);
        assertEquals(1.09375 / (1.125 * 1.125 * fraction), window.noiseBandwidth(), 1e-5 / fraction);
        assertEquals(1, window.response(0), 1e-12);
        assertEquals(1, window.overlapCorrelation(1), 1e-12);
        assertEquals(Window.force(0.8).response(0.4), window.response(0.32 / fraction), 1e-6);
    }

    /** Integrals of exp(-d·t) over the block, d the logarithm of the end value: closed forms. */
    @ParameterizedTest
    @ValueSource(doubles = {4.9e-324, 1e-20, 0.05, 0.999999, 1})
    void exponentialWindowsHaveClosedForms(double endValue) {
        Window window = Window.exponential(endValue);
        double decay = -Math.log(endValue);
        assertEquals(decay == 0 ? 1 : (1 - endValue) / decay, window.coherentGain(), 1e-9);
        assertEquals(1, window.response(0), 1e-9);
        double sum = 0;
        double turned = 0;
        double plain = 0;
        for (int i = 0; i < 200_000; i++) {
            double weight = Math.pow(endValue, (i + 0.5) / 200_000);
            sum += weight * Math.cos(2 * Math.PI * 1.3 * (i + 0.5) / 200_000);
            turned += weight * Math.sin(2 * Math.PI * 1.3 * (i + 0.5) / 200_000);
            plain += weight;
        }
        assertEquals(Math.hypot(sum, turned) / plain, window.response(1.3), 1e-6);
    }

    @Test
    void forceWindowPassesThePulse() {
        double[] w = Window.force(0.2).samples(100);
        assertEquals(1, w[0]);
        assertEquals(1, w[20]);
        assertEquals(0.5 + 0.5 * Math.cos(Math.PI * 2 / 5), w[22], 1e-12);
        assertEquals(0, w[25], 1e-12);
        assertEquals(0, w[99]);
    }

    @Test
    void badShapesAreNamed() {
        assertMessage("beta must be within 0.0 to 50.0: -1.0", () -> Window.kaiser(-1));
        assertMessage("fraction must be above 0 and at most 1: 0.0", () -> Window.tukey(0));
        assertMessage("fraction must be above 0 and at most 1: 2.0", () -> Window.force(2));
        assertMessage("endValue must be above 0 and at most 1: NaN", () -> Window.exponential(Double.NaN));
        assertMessage("overlap must be within 0.0 to 1.0: 1.5", () -> Window.hann().overlapCorrelation(1.5));
        assertEquals("Kaiser 8.6", Window.kaiser(8.6).toString());
        assertEquals("Tukey 0.3", Window.tukey(0.3).toString());
    }

    private static void assertMessage(String message, org.junit.jupiter.api.function.Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }

    /**
     * Figures by F. J. Harris 1978, Table 1, to its two decimals; where the print departs from its own definition
     * (Hamming's scallop loss, printed 1.78), and for the flat top, which Harris doesn't list, the value computed from
     * the definition for 4096 points.
     */
    @ParameterizedTest
    @CsvSource({"rectangular, 1.00, 1.00, 3.92", "hann, 0.50, 1.50, 1.42", "hamming, 0.54, 1.36, 1.75",
        "blackmanHarris, 0.36, 2.00, 0.83", "flatTop, 1.00, 3.77, 0.01"})
    void figuresOfMeritAgreeWithHarris(String name, double gain, double noiseBandwidth, double scallopLoss) {
        Window window = WINDOWS.get(name);
        assertEquals(gain, window.coherentGain(), 0.005);
        assertEquals(noiseBandwidth, window.noiseBandwidth(), 0.005);
        assertEquals(scallopLoss, window.scallopLoss(), 0.005);
    }

    /** The closed forms against the definitions, summed over 4096 samples. */
    @Test
    void closedFormsAreTheSumsOfTheDefinition() {
        int n = 4096;
        Stream.concat(WINDOWS.values().stream(), MORE.values().stream()).forEach(window -> {
            // Windows that jump or bend at an end differ between the sum over the block and the integral by O(1/n).
            double bound = WINDOWS.containsValue(window) ? 1e-6 : 2e-3;
            double[] w = window.samples(n);
            double sum = Arrays.stream(w).sum();
            assertEquals(sum / n, window.coherentGain(), bound);
            assertEquals(n * Arrays.stream(w).map(x -> x * x).sum() / (sum * sum), window.noiseBandwidth(), bound);
            for (double bins : new double[] {0, 0.25, 0.5, 1, 1.5, 2.3}) {
                assertEquals(transform(w, bins) / sum, window.response(bins), bound, window + " at " + bins);
                assertEquals(window.response(bins), window.response(-bins), 1e-15);
            }
        });
    }

    private static double transform(double[] w, double bins) {
        double re = 0;
        double im = 0;
        for (int i = 0; i < w.length; i++) {
            double angle = 2 * Math.PI * bins * i / w.length;
            re += w[i] * Math.cos(angle);
            im += w[i] * Math.sin(angle);
        }
        return Math.hypot(re, im);
    }

    @Test
    void windowsAreValues() {
        assertEquals(Window.hann(), Window.hann());
        assertEquals(Window.hann().hashCode(), Window.hann().hashCode());
        assertNotEquals(Window.hann(), Window.hamming());
        assertEquals("flat top", Window.flatTop().toString());
        Window.hann().samples(4)[0] = 7;
        assertEquals(0, Window.hann().samples(4)[0]);
    }

    @Test
    void lengthBelowOneIsRefused() {
        assertEquals("length must be from 1 to 67108864: 0",
                assertThrows(IllegalArgumentException.class, () -> Window.hann().samples(0)).getMessage());
    }
}
