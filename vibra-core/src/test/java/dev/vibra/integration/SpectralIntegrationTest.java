package dev.vibra.integration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.level.Moments;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SpectralIntegrationTest {
    private static final Band BAND = Band.of(10, 1000);
    private static final Band BAND_OF_TWICE = Band.of(10, 100);
    private static final double RATE = 12_800;
    private static final int LENGTH = 4 * 12_800;

    static DoubleStream frequencies() {
        return DoubleStream.of(10, 10.3, 11, 12, 13.37, 24.667, 50, 99.6, 159.155, 333.3, 707.1, 999);
    }

    /** Closed form: a sine of acceleration A has displacement A/ω² and velocity A/ω; off and on the bins alike. */
    @ParameterizedTest
    @MethodSource("frequencies")
    void integralsOfASineAreWithinATenthOfAPercent(double hertz) {
        Waveform acceleration = Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).tone(2, hertz, 0.7).waveform();
        double omega = 2 * Math.PI * hertz;
        assertTone(2 / omega, hertz, 0.7 - Math.PI / 2, acceleration.velocity(BAND));
        assertTone(2 / (omega * omega), hertz, 0.7 - Math.PI, acceleration.displacement(BAND));
    }

    /** Compares with the closed form: sample by sample in the inner half, by rms in all that was settled. */
    private static void assertTone(double amplitude, double hertz, double phase, Waveform actual) {
        double[] expected = new double[actual.length()];
        for (int i = 0; i < expected.length; i++) {
            double t = actual.startSeconds() + i / RATE;
            expected[i] = amplitude * Math.cos(2 * Math.PI * hertz * t + phase);
        }
        double worst = 0;
        for (int i = expected.length / 4; i < expected.length * 3 / 4; i++) {
            worst = Math.max(worst, Math.abs(actual.at(i) - expected[i]));
        }
        assertEquals(0, worst / amplitude, 0.001, hertz + " Hz");
        assertEquals(1, actual.moments().rms() / Moments.of(expected).rms(), hertz < 12 ? 0.0025 : 0.001,
                hertz + " Hz");
    }

    /** The tables and passes give what the formulas of the class comment give, one line after the other. */
    @Test
    void passesAreTheFormulas() {
        double[] x = Synthesis.silence(Quantity.VELOCITY, 1000, 4097).tone(1, 30, 0).noise(2, 4).bias(5).waveform()
                .samples();
        Quantity[] targets = {Quantity.ACCELERATION, Quantity.VELOCITY, Quantity.DISPLACEMENT};
        for (Band band : new Band[] {Band.of(10, 100), Band.of(7.3, 480), Band.of(0, 77), Band.of(20, 20.5)}) {
            for (int i = band.lowestHertz() == 0 ? 1 : 0; i < (band.lowestHertz() == 0 ? 2 : 3); i++) {
                SpectralIntegration plan = SpectralIntegration.of(x.length, 1000, Quantity.VELOCITY, targets[i], band);
                double[] expected = PlainIntegration.of(x, 1000, i - 1, band);
                double[] actual = plan.process(x, 0, new double[plan.settledLength()]);
                double rms = Moments.of(expected).rms();
                org.junit.jupiter.api.Assertions.assertArrayEquals(expected, actual, 1e-10 * rms, band + " " + i);
            }
        }
        double[] twice = PlainIntegration.of(x, 1000, 2, BAND_OF_TWICE);
        SpectralIntegration plan = SpectralIntegration.of(x.length, 1000, Quantity.ACCELERATION, Quantity.DISPLACEMENT,
                BAND_OF_TWICE);
        org.junit.jupiter.api.Assertions.assertArrayEquals(twice, plan.process(x, 0, new double[plan.settledLength()]),
                1e-10 * Moments.of(twice).rms());
    }

    @Test
    void biasAndRampDoNotDrift() {
        double[] x = new double[LENGTH];
        for (int i = 0; i < LENGTH; i++) {
            x[i] = 9.81 + 0.5 * i / LENGTH + Math.cos(2 * Math.PI * 100 * i / RATE);
        }
        Waveform displacement = Waveform.ofSi(Quantity.ACCELERATION, RATE, x).displacement(BAND);
        double expected = 1 / Math.pow(2 * Math.PI * 100, 2);
        assertEquals(1, displacement.peak().si() / expected, 0.001);
        int periods = 100 * 128; // whole periods, which have no mean of their own
        assertEquals(0, displacement.part(0, periods).moments().mean() / expected, 0.001);
        assertEquals(0, displacement.part(displacement.length() - periods, periods).moments().mean() / expected, 0.001);
    }

    @Test
    void whatLiesOutsideTheBandIsGone() {
        Waveform below = Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).tone(1, 5, 0).waveform();
        Waveform above = Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).tone(1, 1500, 0).waveform();
        double omega = 2 * Math.PI * 5;
        assertEquals(0, below.velocity(BAND).rms().si() * omega, 0.005);
        assertEquals(0, above.acceleration(BAND).rms().si(), 1e-4);
    }

    @Test
    void bandFrom0KeepsTheMean() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).bias(3).tone(1, 64, 0).waveform();
        Waveform limited = wave.acceleration(Band.of(0, 1000));
        assertEquals(LENGTH, limited.length());
        assertEquals(3, Moments.of(limited.samples(), LENGTH / 4, LENGTH / 2).mean(), 1e-3);
    }

    @Test
    void planIsReusableAndLeavesItsInputAlone() {
        SpectralIntegration plan = SpectralIntegration.of(9000, 1000, Quantity.VELOCITY, Quantity.VELOCITY,
                Band.of(10, 100));
        double[] x = Synthesis.silence(Quantity.VELOCITY, 1000, 9003).tone(1, 30, 0).noise(0.1, 4).waveform().samples();
        double[] copy = x.clone();
        double[] first = plan.process(x, 3, new double[plan.settledLength()]);
        double[] second = plan.process(x, 3, new double[plan.settledLength()]);
        org.junit.jupiter.api.Assertions.assertArrayEquals(copy, x, 0);
        org.junit.jupiter.api.Assertions.assertArrayEquals(first, second, 0);
        assertEquals(300, plan.settledFrom());
        assertEquals(8400, plan.settledLength());
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("lowest frequency of a band to integrate in must be finite and > 0 Hz: 0.0",
                () -> plan(LENGTH, RATE, Band.of(0, 100)));
        assertMessage("recording must be at least 0.9 s long for a band from 10.0 Hz: 0.5 s",
                () -> plan(6400, RATE, BAND));
        assertMessage("band must be at or below half the sample rate, 500.0 Hz: 1000.0",
                () -> plan(LENGTH, 1000, BAND));
        assertMessage("length must be at least 2: 1", () -> plan(1, RATE, BAND));
        assertMessage("sampleRateHertz must be finite and > 0 Hz: NaN", () -> plan(LENGTH, Double.NaN, BAND));
    }

    private static void plan(int length, double rate, Band band) {
        SpectralIntegration.of(length, rate, Quantity.ACCELERATION, Quantity.VELOCITY, band);
    }

    private static void assertMessage(String message, org.junit.jupiter.api.function.Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
