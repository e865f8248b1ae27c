package dev.vibra.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.testing.Reference;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RunningLevelsTest {
    /** {@code numpy.percentile} with its default interpolation: see reference/scipy-time-domain.txt. */
    @Test
    void percentilesAgreeWithNumPy() {
        Reference reference = Reference.of("scipy-time-domain.txt");
        Percentiles percentiles = Percentiles.of(reference.row("samples"));
        double[] at = {0, 1, 10, 50, 90, 99, 100};
        double[] values = IntStream.range(0, 7).mapToDouble(i -> percentiles.at(at[i])).toArray();
        reference.assertRow("percentiles", values, 1e-12);
        assertEquals(5, Percentiles.of(5).at(37));
    }

    /**
     * Decibels of 1 mm/s, 1 m/s² and 1 g by ISO 1683: 120 dB, 120 dB, 139.83 dB; at 1000 rad/s three levels coincide.
     */
    @Test
    void decibelsAgreeWithTheirReferences() {
        assertEquals(120, Decibels.of(Level.of(1, Unit.MM_PER_S, Detector.RMS)), 1e-12);
        assertEquals(120, Decibels.of(Level.of(1, Unit.M_PER_S2, Detector.RMS)), 1e-12);
        assertEquals(139.83, Decibels.of(Level.of(1, Unit.G, Detector.RMS)), 0.005);
        Level velocity = Level.of(2.2, Unit.MM_PER_S, Detector.RMS);
        double hertz = 1000 / (2 * Math.PI);
        assertEquals(Decibels.of(velocity), Decibels.of(velocity.sineAs(Quantity.ACCELERATION, Detector.RMS, hertz)),
                1e-9);
        assertEquals(Decibels.of(velocity), Decibels.of(velocity.sineAs(Quantity.DISPLACEMENT, Detector.RMS, hertz)),
                1e-9);
        assertEquals(2.2e-3, Decibels.toLevel(Decibels.of(velocity), Quantity.VELOCITY).si(), 1e-15);
        // The reference of 50 nm/s, also in use, reads 33.98 dB less.
        assertEquals(33.98, 20 * Math.log10(50e-9 / Decibels.reference(Quantity.VELOCITY)), 0.005);
    }

    /** Closed form: a sine over whole periods reads A/√2, over a window that slides; a step decays as exp(-t/τ). */
    @Test
    void runningRmsKeepsItsDefinitions() {
        double[] sine = IntStream.range(0, 1000).mapToDouble(i -> 3 * Math.sin(2 * Math.PI * i / 50)).toArray();
        RunningRms linear = RunningRms.linear(0.1, 1000);
        linear.push(sine, 0, 25);
        assertEquals(3 / Math.sqrt(2), linear.rms(), 1e-12); // half a period has the same mean square
        linear.push(sine, 25, 975);
        assertEquals(3 / Math.sqrt(2), linear.rms(), 1e-12);
        linear.push(new double[99], 0, 99);
        assertEquals(Math.abs(sine[999]) / 10, linear.rms(), 1e-12);
        RunningRms exponential = RunningRms.exponential(0.2, 1000);
        double[] step = new double[1000];
        java.util.Arrays.fill(step, 2);
        exponential.push(step, 0, 1000);
        assertEquals(4 * (1 - Math.exp(-1 / 0.2)), exponential.rms() * exponential.rms(), 1e-12);
        exponential.push(new double[200], 0, 200);
        assertEquals(4 * (1 - Math.exp(-5)) * Math.exp(-1), exponential.rms() * exponential.rms(), 1e-12);
        exponential.reset();
        assertThrows(IllegalStateException.class, exponential::rms);
        assertEquals("running rms over 100 samples", linear.toString());
    }

    @Test
    void slidingWindowEqualsItsDefinitionAllAlong() {
        double[] x = new Random(3).doubles(500, -1, 1).toArray();
        RunningRms running = RunningRms.linear(0.037, 1000);
        for (int i = 0; i < 500; i++) {
            running.push(x, i, 1);
            double sum = 0;
            int count = Math.min(37, i + 1);
            for (int k = 0; k < count; k++) {
                sum += x[i - k] * x[i - k];
            }
            assertEquals(Math.sqrt(sum / count), running.rms(), 1e-9);
        }
    }

    /** A sample of 1e8 among 1e-3 swamps their squares; once it has left the window they must be there again. */
    @Test
    void aLargeSampleThatLeavesHidesNothing() {
        RunningRms running = RunningRms.linear(0.01, 1000);
        double[] x = new double[100];
        java.util.Arrays.fill(x, 1e-3);
        x[42] = 1e8;
        running.push(x, 0, 60);
        assertEquals(1e-3, running.rms(), 1e-12);
    }

    /** A staircase of ever smaller transients hides the rest step by step. */
    @Test
    void aStaircaseOfTransientsHidesNothing() {
        RunningRms running = RunningRms.linear(0.1, 1000);
        double[] x = new double[173];
        java.util.Arrays.fill(x, 1e-3);
        x[39] = 1e8;
        x[50] = 1_150_826.795958971;
        x[57] = 31_873.221347478662;
        x[67] = 503.0100726579833;
        x[72] = 6.415891218598943;
        running.push(x, 0, 173);
        assertEquals(1e-3, running.rms(), 1e-9);
    }

    @Test
    void peakHoldDecaysAndHolds() {
        PeakHold hold = PeakHold.of(0.5, 100);
        hold.push(new double[] {0, -4, 1}, 0, 3);
        assertEquals(4 * Math.exp(-0.02), hold.peak(), 1e-12);
        hold.push(new double[50], 0, 50);
        assertEquals(4 * Math.exp(-0.02) * Math.exp(-1), hold.peak(), 1e-12);
        hold.push(new double[] {5}, 0, 1);
        assertEquals(5, hold.peak());
        hold.reset();
        assertEquals(0, hold.peak());
        PeakHold forEver = PeakHold.of(Double.POSITIVE_INFINITY, 100);
        forEver.push(new double[] {2, 0, 0, 0}, 0, 4);
        assertEquals(2, forEver.peak());
    }

    /** Sine: shape π/(2√2), impulse π/2, clearance 1/(mean √|sin|)², which is 1.7198 (Beta function). */
    @Test
    void shapeFactorsOfASine() {
        Moments sine = Moments.of(IntStream.range(0, 100_000)
                .mapToDouble(i -> Math.sin(2 * Math.PI * (i + 0.5) / 100_000))
                .toArray());
        assertEquals(Math.PI / (2 * Math.sqrt(2)), sine.shapeFactor(), 1e-6);
        assertEquals(Math.PI / 2, sine.impulseFactor(), 1e-6);
        double meanRoot = Math.exp(org.apache.commons.math3.special.Beta.logBeta(0.75, 0.5)) / Math.PI;
        assertEquals(1 / (meanRoot * meanRoot), sine.clearanceFactor(), 1e-4);
    }

    @Test
    void runningMomentsEqualTheWhole() {
        double[] x = new Random(8).doubles(1000, -1, 3).map(v -> v * v * v + 1000).toArray();
        RunningMoments running = new RunningMoments();
        running.push(x, 0, 300);
        running.push(x, 300, 0);
        running.push(x, 300, 700);
        Moments whole = Moments.of(x);
        assertEquals(1000, running.count());
        assertEquals(whole.mean(), running.mean(), 1e-9);
        assertEquals(1, running.rms() / whole.rms(), 1e-10);
        assertEquals(whole.peak(), running.peak(), 1e-9);
        assertEquals(whole.peakToPeak(), running.peakToPeak());
        assertEquals(whole.crestFactor(), running.crestFactor(), 1e-9);
        assertEquals(whole.skewness(), running.skewness(), 1e-8);
        assertEquals(whole.kurtosis(), running.kurtosis(), 1e-8);
        running.reset();
        assertEquals(0, running.count());
        running.push(new double[] {2, 2}, 0, 2);
        assertThrows(IllegalStateException.class, running::kurtosis);
    }

    @Test
    void derivedPeaksAreToldApart() {
        Level rms = Level.of(2, Unit.MM_PER_S, Detector.RMS);
        assertEquals("2.83 mm/s 0-peak derived from rms", rms.derivedPeak().toString());
        assertThrows(IllegalArgumentException.class, () -> rms.derivedPeak().derivedPeak());
    }

    @ParameterizedTest
    @CsvSource({"NaN", "Infinity"})
    void samplesThatAreNotFiniteAreRefused(double bad) {
        double[] x = {bad};
        assertThrows(IllegalArgumentException.class, () -> RunningRms.exponential(1, 10).push(x, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> PeakHold.of(1, 10).push(x, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> new RunningMoments().push(x, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> Percentiles.of(x));
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("windowSeconds must be finite and > 0 s: 0.0", () -> RunningRms.linear(0, 10));
        assertMessage("samples of the window must be within 1.0 to 6.7108864E7: 0.0",
                () -> RunningRms.linear(0.01, 10));
        assertMessage("timeConstantSeconds must be finite and > 0 s: NaN",
                () -> RunningRms.exponential(Double.NaN, 10));
        assertMessage("timeConstantSeconds must be > 0 s: 0.0", () -> PeakHold.of(0, 10));
        assertMessage("percent must be within 0.0 to 100.0 %: 101.0", () -> Percentiles.of(1).at(101));
        assertMessage("number of values must be at least 1: 0", Percentiles::of);
        assertMessage("detector must be rms: 0-peak",
                () -> Decibels.of(Level.of(1, Unit.G, Detector.ZERO_TO_PEAK)));
        assertMessage("level must be finite and > 0 (acceleration in SI units): 0.0",
                () -> Decibels.of(Level.of(0, Unit.G, Detector.RMS)));
        assertMessage("quantity must be a motion: voltage", () -> Decibels.toLevel(1, Quantity.VOLTAGE));
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
