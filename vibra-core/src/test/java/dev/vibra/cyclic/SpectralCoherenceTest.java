package dev.vibra.cyclic;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.testing.Reference;
import dev.vibra.window.Window;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class SpectralCoherenceTest {
    private static Waveform wave(double rate, double... samples) {
        return Waveform.ofSi(Quantity.ACCELERATION, rate, samples);
    }

    /** Normal noise whose amplitude swings as 1 + m·cos 2πat. */
    private static Waveform swinging(double rate, int length, double m, double hertz, long seed) {
        Random random = new Random(seed);
        double[] x = new double[length];
        for (int i = 0; i < length; i++) {
            x[i] = random.nextGaussian() * (1 + m * Math.cos(2 * Math.PI * hertz * i / rate));
        }
        return wave(rate, x);
    }

    /** The sums as they are written down, of lines by the definition of the transform. */
    @Test
    void coherenceIsItsDefinition() {
        for (int length : new int[] {64, 100, 151}) {
            double[] x = new Random(length).doubles(length + 2, 3, 5).toArray();
            SpectralCoherencePlan plan = SpectralCoherencePlan.of(length, length, 8, length / 8.0);
            double[] actual = plan.process(x, 2, new double[plan.carriers() * plan.lines()]);
            double[][] lines = lines(Arrays.copyOfRange(x, 2, length + 2));
            assertEquals(((length - 1) / 2 - (plan.lines() - 1)) / 8, plan.carriers());
            for (int c = 0; c < plan.carriers(); c++) {
                assertEquals(8 * c, plan.carrier(c).lowestHertz(), 1e-9);
                for (int a = 0; a < plan.lines(); a++) {
                    assertEquals(bySum(lines, 8 * c, 8, a), actual[c * plan.lines() + a], 1e-9);
                }
            }
        }
    }

    private static double[][] lines(double[] x) {
        int n = x.length;
        double mean = Arrays.stream(x).average().orElseThrow();
        double[] weights = Window.tukey(0.1).samples(n);
        double[][] lines = new double[n / 2 + 1][2];
        for (int k = 1; k < lines.length; k++) {
            for (int i = 0; i < n; i++) {
                double angle = 2 * Math.PI * k * i / n;
                lines[k][0] += weights[i] * (x[i] - mean) * Math.cos(angle);
                lines[k][1] -= weights[i] * (x[i] - mean) * Math.sin(angle);
            }
        }
        return lines;
    }

    private static double bySum(double[][] x, int first, int width, int a) {
        double re = 0;
        double im = 0;
        double below = 0;
        double above = 0;
        for (int k = first; k < first + width; k++) {
            double[] u = x[k];
            double[] v = x[k + a];
            re += v[0] * u[0] + v[1] * u[1];
            im += v[1] * u[0] - v[0] * u[1];
            below += u[0] * u[0] + u[1] * u[1];
            above += v[0] * v[0] + v[1] * v[1];
        }
        return (re * re + im * im) / below / above;
    }

    /**
     * Closed form: with white N of density S the lines are {@code X(f) = N(f) + m/2·N(f − a) + m/2·N(f + a)}; X(f) and
     * X(f + a) share two terms, together m·S, X(f) and X(f + 2a) one, m²/4·S, and each has the power (1 + m²/2)·S. The
     * estimate is larger by (1 − γ²)²/n in the mean (J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section
     * 9.2).
     */
    @Test
    void modulatedNoiseHasItsClosedForm() {
        for (double m : new double[] {0.3, 0.7, 1}) {
            SpectralCoherence coherence = SpectralCoherence.of(swinging(10_000, 100_000, m, 100, 5), 200, 600);
            ImprovedEnvelopeSpectrum mean = coherence.improvedEnvelopeSpectrum(Band.of(0, 5000));
            double power = 1 + m * m / 2;
            double n = mean.averages();
            double samples = n * mean.carriers();
            assertBiased(Math.pow(m / power, 2), mean.coherence(1000), n, samples);
            assertBiased(Math.pow(m * m / 4 / power, 2), mean.coherence(2000), n, samples);
            assertBiased(0, mean.coherence(3000), n, samples);
            assertBiased(0, mean.coherence(1500), n, samples);
            assertEquals(1, mean.coherence(0), 1e-12);
        }
    }

    private static void assertBiased(double expected, double actual, double averages, double samples) {
        double bias = Math.pow(1 - expected, 2) / averages;
        // Standard deviation of an estimated γ² over all carriers: 2γ·(1 − γ²) and 1/n for γ = 0.
        double scatter = (Math.sqrt(4 * expected / averages) + 1 / averages) * Math.sqrt(averages / samples);
        assertEquals(expected + bias, actual, 4 * scatter, "of " + expected);
    }

    /** Stationary normal noise: γ² of n averages exceeds x with the chance (1 − x)^(n − 1). */
    @Test
    void stationaryNoiseHasItsDistribution() {
        SpectralCoherence coherence = SpectralCoherence.of(swinging(10_000, 100_000, 0, 1, 7), 100, 500);
        double n = coherence.averages();
        // 1/Σw⁴·(Σw²)² of a Tukey window of a tenth: (1 − 5/8·0.1)²/(1 − 93/128·0.1).
        assertEquals(1000 * Math.pow(1 - 0.0625, 2) / (1 - 9.3 / 128), n, 0.5);
        int count = 0;
        int above = 0;
        double sum = 0;
        for (int c = 0; c < coherence.carriers(); c++) {
            for (int a = 10; a < coherence.lines(); a++) {
                sum += coherence.at(c, a);
                above += coherence.at(c, a) > 3 / n ? 1 : 0;
                count++;
            }
        }
        assertEquals(1 / n, sum / count, 0.02 / n);
        assertEquals(Math.pow(1 - 3 / n, n - 1), (double) above / count, 0.002);
    }

    /**
     * SciPy 1.10 {@code signal.coherence} of the recording turned up and down: the averaged cyclic periodogram, another
     * estimate of the same, from a twentieth of the averages per carrier.
     */
    @Test
    void averagedCyclicPeriodogramOfSciPyAgrees() {
        Reference scipy = Reference.of("scipy-cyclic.txt");
        ImprovedEnvelopeSpectrum mean = SpectralCoherence.of(wave(1000, scipy.row("samples")), 100, 150)
                .improvedEnvelopeSpectrum(Band.of(0, 500));
        // Each has the bias of its own averages; that of SciPy's is read where nothing is, at 130 Hz.
        double bias = scipy.value("coherence.130");
        assertTrue(bias < 0.05 && mean.coherence(520) < 0.01, bias + " " + mean.coherence(520));
        double atRate = scipy.value("coherence.50");
        assertEquals(atRate - bias * Math.pow(1 - atRate, 2), mean.coherence(200), 0.03);
        assertEquals(scipy.value("coherence.100") - bias, mean.coherence(400), 0.01);
    }

    /** Two steady tones are as coherent as anything: at their distance, for the carrier of the lower. */
    @Test
    void tonesAreCoherentAtTheirDistance() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 10_000, 40_000).tone(1, 2050, 0).tone(0.1, 2300, 1)
                .noise(1e-3, 1).waveform();
        SpectralCoherence coherence = SpectralCoherence.of(wave, 100, 500);
        int carrier = 2050 / 100;
        assertTrue(coherence.carrier(carrier).contains(2050), coherence.carrier(carrier).toString());
        assertTrue(coherence.at(carrier, 1000) > 0.99, "at 250 Hz: " + coherence.at(carrier, 1000));
        assertTrue(coherence.at(carrier + 8, 1000) < 0.05, "carrier beside: " + coherence.at(carrier + 8, 1000));
    }

    /** Closed form: halfway between two lines (2/π)², by the transform of a block; a little more by fading. */
    @Test
    void rateBetweenTwoLinesReadsLess() {
        double on = SpectralCoherence.of(swinging(10_000, 100_000, 0.7, 100, 5), 200, 300)
                .improvedEnvelopeSpectrum(Band.of(0, 5000)).coherence(1000);
        double between = SpectralCoherence.of(swinging(10_000, 100_000, 0.7, 100.05, 5), 200, 300)
                .improvedEnvelopeSpectrum(Band.of(0, 5000)).coherence(1000);
        assertEquals(4 / Math.PI / Math.PI, between / on, 0.06);
    }

    @Test
    void bestBandIsThatOfTheResonance() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 102_400).noise(1, 1).tone(10, 1333, 0)
                .impacts(ImpactTrain.of(87.3, 1.6, 4200, 0.04).withJitter(0.003), 2).waveform();
        SpectralCoherence coherence = SpectralCoherence.of(wave, 200, 1000);
        CoherentBand found = coherence.bestBand(87, 1).orElseThrow();
        assertTrue(found.band().contains(4200), found.toString());
        assertTrue(found.band().lowestHertz() > 3000 && found.band().highestHertz() < 5500, found.toString());
        assertEquals(87.3, found.cyclicHertz(), 0.3);
        assertTrue(found.excess() > 15, found.toString());
        CoherentBand elsewhere = coherence.bestBand(61, 1).orElseThrow();
        assertTrue(elsewhere.excess() < 10, "nothing at 61 Hz: " + elsewhere);
        assertEquals(Optional.empty(), coherence.bestBand(1001, 0.5));
        assertEquals(Optional.empty(), coherence.bestBand(0.1, 0));
        assertTrue(coherence.bestBand(400, 1).isPresent(), "with two multiples");
    }

    /** A loud neighbour drowns the line of an envelope of the whole; of the mean coherence it takes only its share. */
    @Test
    void eachCarrierHasTheSameSay() {
        Random random = new Random(3);
        double[] x = new double[100_000];
        double[] loud = Synthesis.silence(Quantity.ACCELERATION, 10_000, x.length).tone(100, 1000, 0).waveform()
                .samples();
        for (int i = 0; i < x.length; i++) {
            x[i] = random.nextGaussian() * (1 + 0.7 * Math.cos(2 * Math.PI * 80.0 * i / 10_000));
        }
        double without = ofWhole(x);
        for (int i = 0; i < x.length; i++) {
            x[i] += loud[i];
        }
        assertEquals(1, ofWhole(x) / without, 0.1);
    }

    private static double ofWhole(double... x) {
        return SpectralCoherence.of(wave(10_000, x), 100, 300).improvedEnvelopeSpectrum(Band.of(0, 5000))
                .coherence(800);
    }

    @Test
    void silentCarriersReadZero() {
        Waveform tone = Synthesis.silence(Quantity.ACCELERATION, 1000, 1000).waveform();
        SpectralCoherence coherence = SpectralCoherence.of(tone, 50, 100);
        assertEquals(0, coherence.at(0, 0));
        assertEquals(0, coherence.bestBand(30, 1).orElseThrow().excess());
    }

    @Test
    void spectrumOfARangeIsTheMeanOfItsCarriers() throws IOException, ClassNotFoundException {
        SpectralCoherence coherence = SpectralCoherence.of(swinging(1000, 4000, 0.5, 20, 1), 40, 100);
        ImprovedEnvelopeSpectrum mean = coherence.improvedEnvelopeSpectrum(Band.of(60, 160));
        assertEquals(3, mean.carriers());
        assertEquals(coherence.carrier(1).lowestHertz(), mean.band().lowestHertz(), 1e-9);
        assertEquals(coherence.carrier(3).highestHertz(), mean.band().highestHertz(), 1e-9);
        assertEquals((coherence.at(1, 80) + coherence.at(2, 80) + coherence.at(3, 80)) / 3, mean.coherence(80), 1e-12);
        assertEquals(20, mean.frequencyHertz(80), 1e-9);
        assertEquals(mean.lines(), mean.coherences().length);
        assertEquals("coherence over 40\u2013160 Hz, 0\u2013100 Hz by 0.250 Hz", mean.toString());
        assertEquals("coherence of 9 carriers 40.0 Hz wide, 0\u2013100 Hz by 0.250 Hz, 152 averages",
                coherence.toString());
        assertEquals("3000\u20134000 Hz at 87.30 Hz, excess 41",
                new CoherentBand(Band.of(3000, 4000), 87.3, 41.2).toString());
        SpectralCoherence copy = (SpectralCoherence) copied(coherence);
        assertArrayEquals(mean.coherences(), copy.improvedEnvelopeSpectrum(Band.of(60, 160)).coherences());
    }

    @Test
    void smoothingIsTheMeanOfNeighbours() {
        ImprovedEnvelopeSpectrum fine = SpectralCoherence.of(swinging(1000, 4000, 0.5, 20, 1), 40, 100)
                .improvedEnvelopeSpectrum(Band.of(0, 400));
        ImprovedEnvelopeSpectrum smooth = fine.smoothed(0.75);
        assertEquals((fine.coherence(79) + fine.coherence(80) + fine.coherence(81)) / 3, smooth.coherence(80), 1e-12);
        assertEquals((fine.coherence(1) + fine.coherence(2)) / 2, smooth.coherence(1), 1e-12);
        assertEquals(fine.coherence(0), smooth.coherence(0));
        int last = fine.lines() - 1;
        assertEquals((fine.coherence(last - 1) + fine.coherence(last)) / 2, smooth.coherence(last), 1e-12);
        assertArrayEquals(fine.coherences(), fine.smoothed(0.3).coherences());
        assertMessage("widthHertz must be finite and > 0 Hz: 0.0", () -> fine.smoothed(0));
    }

    @Test
    void planAllocatesNothingOnceMade() {
        double[] x = new Random(1).doubles(10_000).toArray();
        SpectralCoherencePlan plan = SpectralCoherencePlan.of(x.length, 10_000, 200, 500);
        double[] out = new double[plan.carriers() * plan.lines()];
        for (int i = 0; i < 50; i++) {
            plan.process(x, 0, out);
        }
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        for (int i = 0; i < 20; i++) {
            plan.process(x, 0, out);
        }
        long perCall = (threads.getCurrentThreadAllocatedBytes() - before) / 20;
        assertEquals(0, perCall / 64, "bytes allocated per call: " + perCall);
    }

    private static Object copied(Object value) throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(value);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return in.readObject();
        }
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("number of samples must be at least 64: 63", () -> SpectralCoherencePlan.of(63, 100, 10, 10));
        assertMessage("highestCyclicHertz must be within 1.0 to 25.0 Hz: 26.0",
                () -> SpectralCoherencePlan.of(100, 100, 10, 26));
        assertMessage("carrierHertz must be within 8.0 to 39.0 Hz: NaN",
                () -> SpectralCoherencePlan.of(100, 100, Double.NaN, 10));
        SpectralCoherencePlan plan = SpectralCoherencePlan.of(100, 100, 10, 10);
        assertMessage("out must lie inside the array of length 32: offset 0, length 33",
                () -> plan.process(new double[100], 0, new double[32]));
        assertMessage("in must lie inside the array of length 99: offset 0, length 100",
                () -> plan.process(new double[99], 0, new double[33]));
        SpectralCoherence coherence = SpectralCoherence.of(swinging(100, 100, 0, 1, 1), 10, 10);
        assertMessage("range must hold the centre of a carrier, 10.0 Hz wide up to 30.0 Hz: 6\u20137 Hz",
                () -> coherence.improvedEnvelopeSpectrum(Band.of(6, 7)));
        assertMessage("toleranceHertz must be finite and >= 0 Hz: -1.0", () -> coherence.bestBand(5, -1));
        assertMessage("excess must be finite: NaN", () -> new CoherentBand(Band.of(1, 2), 1, Double.NaN));
        assertThrows(IndexOutOfBoundsException.class, () -> coherence.at(0, 11));
        assertThrows(IndexOutOfBoundsException.class, () -> coherence.carrier(3));
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
