package dev.vibra.spectrum;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.window.Window;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PeakPlanTest {
    private static final double RESOLUTION = 0.5;

    static Stream<Window> windows() {
        return Stream.of(Window.hann(), Window.hamming(), Window.blackman(), Window.nuttall(),
                Window.blackmanHarris(), Window.flatTop(), Window.kaiser(3), Window.kaiser(20), Window.triangular(),
                Window.rectangular());
    }

    private static double[] noise(int lines, long seed) {
        Random random = new Random(seed);
        return random.doubles(lines).map(u -> -Math.log(u)).toArray();
    }

    private record Peak(double hertz, double rms) {}

    /** Plainly: all maxima, each by Brent's method of Commons Math on the window's response, sorted. */
    private static List<Peak> plainly(double[] squares, Window window, int integrations, double from, double to) {
        int first = (int) Math.ceil(window.mainLobeHalfWidth());
        List<Peak> peaks = new ArrayList<>();
        for (int k = first; k < squares.length - first; k++) {
            if (squares[k] > squares[k - 1] && squares[k] >= squares[k + 1]) {
                double wanted = (Math.sqrt(squares[k + 1]) - Math.sqrt(squares[k - 1])) / Math.sqrt(squares[k]);
                UnivariateFunction excess = d -> (window.response(1 - d) - window.response(1 + d)) / window.response(d)
                        - wanted;
                double d = excess.value(-0.5) >= 0 ? -0.5 : excess.value(0.5) <= 0 ? 0.5
                        : new BrentSolver(1e-13, 1e-13).solve(1000, excess, -0.5, 0.5);
                double hertz = (k + d) * RESOLUTION;
                if (hertz >= from && hertz <= to) {
                    peaks.add(new Peak(hertz, Math.sqrt(squares[k]) / window.response(d)
                            / Math.pow(2 * Math.PI * hertz, integrations)));
                }
            }
        }
        peaks.sort(Comparator.comparingDouble(Peak::rms).reversed());
        return peaks;
    }

    @ParameterizedTest
    @MethodSource("windows")
    void findsWhatAPlainSearchFinds(Window window) {
        double[] squares = noise(1025, 3);
        PeakPlan plan = PeakPlan.of(squares.length, RESOLUTION, window);
        for (int integrations = -2; integrations <= 2; integrations++) {
            assertPeaks(plainly(squares, window, integrations, 0, Double.MAX_VALUE),
                    plan.withIntegrations(integrations), squares);
            assertPeaks(plainly(squares, window, integrations, 30.2, 77.7),
                    plan.withIntegrations(integrations).withBand(Band.of(30.2, 77.7)), squares);
        }
    }

    private static void assertPeaks(List<Peak> all, PeakPlan plan, double[] squares) {
        for (int count : new int[] {1, 2, 20, 600}) {
            double[] hertz = new double[count];
            double[] rms = new double[count];
            int found = plan.largest(squares, count, hertz, rms);
            assertEquals(Math.min(count, all.size()), found);
            for (int i = 0; i < found; i++) {
                assertEquals(all.get(i).hertz(), hertz[i], 1e-9 * hertz[i]);
                assertEquals(all.get(i).rms(), rms[i], 1e-9 * rms[i]);
            }
        }
    }

    /** {@code (|W(1-d)| - |W(1+d)|) / |W(d)|} is 6d/(4-d²) for Hann's window, by its transform in closed form. */
    @Test
    void placesASineUnderAHannWindowAsItsClosedFormDoes() {
        LinePlace place = new LinePlace(Window.hann());
        for (double d = -0.5; d <= 0.5; d += 0.01) {
            assertEquals(d, place.distance(6 * d / (4 - d * d)), 1e-14);
        }
        assertEquals(0.5, place.distance(0.9));
        assertEquals(-0.5, place.distance(-0.9));
    }

    @Test
    void spectraAskIt() {
        Spectrum spectrum = Spectrum.of(Synthesis.silence(Quantity.ACCELERATION, 2560, 20_000).noise(1, 1)
                .tone(3, 100.3, 0).tone(2, 333.3, 0).waveform());
        PeakPlan plan = PeakPlan.of(SpectrumPlan.of(2560, Window.hann()), 2560).withIntegrations(1);
        double[] squares = new double[spectrum.lines()];
        for (int k = 0; k < squares.length; k++) {
            squares[k] = spectrum.meanSquare(k);
        }
        double[] hertz = new double[7];
        double[] rms = new double[7];
        assertEquals(7, plan.largest(squares, 7, hertz, rms));
        List<SpectralPeak> peaks = spectrum.velocity().peaks(7);
        assertArrayEquals(peaks.stream().mapToDouble(SpectralPeak::frequencyHertz).toArray(), hertz);
        assertArrayEquals(peaks.stream().mapToDouble(peak -> peak.level().si()).toArray(), rms);
    }

    @Test
    void ofTwoEqualPeaksTheLowerComesFirst() {
        double[] squares = new double[40];
        squares[10] = squares[20] = squares[30] = 4;
        double[] hertz = new double[2];
        double[] rms = new double[2];
        assertEquals(2, PeakPlan.of(40, 1, Window.hann()).largest(squares, 2, hertz, rms));
        assertArrayEquals(new double[] {10, 20}, hertz);
        assertArrayEquals(new double[] {2, 2}, rms);
        assertEquals(0, PeakPlan.of(40, 1, Window.hann()).largest(new double[40], 2, hertz, rms));
        assertEquals(0, PeakPlan.of(3, 1, Window.hann()).largest(new double[] {0, 1, 0}, 2, hertz, rms));
    }

    @ParameterizedTest
    @MethodSource("windows")
    void allocatesNothing(Window window) {
        PeakPlan plan = PeakPlan.of(4097, RESOLUTION, window).withIntegrations(1);
        double[] squares = noise(4097, 5);
        double[] hertz = new double[20];
        double[] rms = new double[20];
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        int found = 0;
        for (int i = 0; i < 50; i++) {
            found += plan.largest(squares, 20, hertz, rms);
        }
        threads.getCurrentThreadAllocatedBytes();
        long before = threads.getCurrentThreadAllocatedBytes();
        for (int i = 0; i < 100; i++) {
            found += plan.largest(squares, 20, hertz, rms);
        }
        assertTrue(threads.getCurrentThreadAllocatedBytes() - before < 1000);
        assertEquals(150 * 20, found);
    }

    @Test
    void refusesWhatDoesNotFit() {
        PeakPlan plan = PeakPlan.of(100, 1, Window.hann());
        double[] squares = new double[100];
        double[] out = new double[3];
        assertMessage("lines must be at least 1: 0", () -> PeakPlan.of(0, 1, Window.hann()));
        assertMessage("resolutionHertz must be finite and > 0 Hz: NaN",
                () -> PeakPlan.of(100, Double.NaN, Window.hann()));
        assertMessage("sampleRateHertz must be finite and > 0 Hz: 0.0",
                () -> PeakPlan.of(SpectrumPlan.of(8, Window.hann()), 0));
        assertMessage("times must be from -2 to 2: 3", () -> plan.withIntegrations(3));
        assertMessage("count must be at least 1: 0", () -> plan.largest(squares, 0, out, out.clone()));
        assertMessage("meanSquares must lie inside the array of length 3: offset 0, length 100",
                () -> plan.largest(out, 3, out, out.clone()));
        assertMessage("hertz must lie inside the array of length 3: offset 0, length 4",
                () -> plan.largest(squares, 4, out, out.clone()));
        assertMessage("rms must lie inside the array of length 3: offset 0, length 4",
                () -> plan.largest(squares, 4, new double[4], out));
        assertEquals("peaks of 100 lines, 1.00 Hz apart", plan.toString());
        assertEquals(100, plan.lines());
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
