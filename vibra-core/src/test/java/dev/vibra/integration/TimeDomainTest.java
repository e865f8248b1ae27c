package dev.vibra.integration;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.level.Moments;
import dev.vibra.testing.Reference;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TimeDomainTest {
    /**
     * {@code scipy.signal.detrend}, {@code scipy.integrate.cumulative_trapezoid}: see reference/scipy-time-domain.txt.
     */
    @Test
    void trendAndTrapezoidAgreeWithSciPy() {
        Reference scipy = Reference.of("scipy-time-domain.txt");
        double[] x = scipy.row("samples");
        scipy.assertRow("line", Detrending.withoutLine(x), 1e-11);
        scipy.assertRow("mean", Detrending.withoutMean(x), 1e-12);
        scipy.assertRow("trapezoid", TimeIntegrator.runningTrapezoid(x, 1000), 1e-12);
    }

    /** Closed form: gain over an ideal integrator is that of the high-pass times (x/tan x)ⁿ, x = πf/fs. */
    @ParameterizedTest
    @CsvSource({"1, 100", "2, 100", "1, 1000", "2, 400"})
    void integratorHasItsStatedGain(int integrations, double hertz) {
        double rate = 12_800;
        TimeIntegrator integrator = TimeIntegrator.of(integrations, 5, rate);
        double x = Math.PI * hertz / rate;
        double expected = Math.pow(x / Math.tan(x), integrations);
        assertEquals(1, integrator.gain(hertz) / expected, 1e-6);
        double[] sine = IntStream.range(0, 64_000).mapToDouble(i -> 7 + Math.sin(2 * Math.PI * hertz * i / rate))
                .toArray();
        integrator.process(sine, 0, sine, 0, sine.length);
        double rms = Moments.of(sine, 51_200, 12_800).rms() * Math.sqrt(2)
                * Math.pow(2 * Math.PI * hertz, integrations);
        assertEquals(expected, rms, 1e-4);
        assertEquals(0, Moments.of(sine, 51_200, 12_800).mean() * Math.pow(2 * Math.PI * hertz, integrations), 1e-3);
    }

    /** Closed form: the derivative of a sine is ω times a cosine, 32 samples late. */
    @ParameterizedTest
    @ValueSource(doubles = {10, 333.3, 2000, 5000})
    void differentiatorDifferentiates(double hertz) {
        double rate = 12_800;
        TimeDifferentiator differentiator = TimeDifferentiator.at(rate);
        assertEquals(1, differentiator.gain(hertz), 0.0001);
        double omega = 2 * Math.PI * hertz;
        double[] sine = IntStream.range(0, 1000).mapToDouble(i -> Math.sin(omega * i / rate)).toArray();
        differentiator.process(sine, 0, sine, 0, 1000);
        for (int i = 100; i < 1000; i++) {
            assertEquals(Math.cos(omega * (i - TimeDifferentiator.DELAY) / rate), sine[i] / omega, 0.0001);
        }
    }

    @Test
    void anySplitEqualsOnePass() {
        double[] x = new Random(5).doubles(400, -1, 1).toArray();
        TimeIntegrator integrator = TimeIntegrator.of(2, 10, 1000);
        TimeDifferentiator differentiator = TimeDifferentiator.at(1000);
        double[] whole = new double[400];
        double[] slope = new double[400];
        integrator.process(x, 0, whole, 0, 400);
        differentiator.process(x, 0, slope, 0, 400);
        integrator.reset();
        differentiator.reset();
        double[] parts = new double[400];
        double[] slopes = new double[400];
        int at = 0;
        for (int block : new int[] {7, 0, 1, 300, 92}) {
            integrator.process(x, at, parts, at, block);
            differentiator.process(x, at, slopes, at, block);
            at += block;
        }
        assertArrayEquals(whole, parts, 0);
        assertArrayEquals(slope, slopes, 0);
    }

    @Test
    void badArgumentsAreNamed() {
        assertEquals("integrations must be within 1.0 to 2.0: 3.0",
                assertThrows(IllegalArgumentException.class, () -> TimeIntegrator.of(3, 1, 100)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> TimeIntegrator.of(1, 60, 100));
        assertThrows(IllegalArgumentException.class, () -> TimeDifferentiator.at(0));
        assertThrows(IllegalArgumentException.class, () -> Detrending.withoutMean());
        assertThrows(IllegalArgumentException.class, () -> Detrending.withoutLine(1));
        assertThrows(IllegalArgumentException.class, () -> TimeIntegrator.runningTrapezoid(new double[0], 1));
        assertEquals("double integrator, high-pass 10.0 Hz", TimeIntegrator.of(2, 10, 1000).toString());
    }
}
