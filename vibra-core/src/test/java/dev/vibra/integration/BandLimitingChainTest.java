package dev.vibra.integration;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.level.Moments;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BandLimitingChainTest {
    private static final Band SEVERITY = Band.of(10, 1000);

    /**
     * Nominal response of ISO 2954:2012 for 10 Hz to 1000 Hz, third-order Butterworth at both ends, as computed from
     * that definition to four digits; the definition itself is known from public summaries of clause 5.3.
     */
    @ParameterizedTest
    @CsvSource({"1, 0.0010", "2.5, 0.0156", "5, 0.1240", "6.3, 0.2426", "8, 0.4557", "10, 0.7071", "12.6, 0.8945",
        "15.8, 0.9693", "20, 0.9923", "40, 1.000", "80, 1.000", "160, 1.000", "500, 0.9923", "630, 0.9701",
        "794, 0.8942",
        "1000, 0.7071", "1260, 0.4471", "1585, 0.2436", "2000, 0.1240", "4000, 0.0156", "10000, 0.0010"})
    void chainHasTheNominalResponse(double hertz, String printed) {
        double nominal = Double.parseDouble(printed);
        double lastDigit = Math.pow(10, 2 - printed.length());
        assertEquals(nominal, BandLimitingChain.nominalGain(SEVERITY, hertz), 0.51 * lastDigit);
        BandLimitingChain chain = BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, SEVERITY, 51_200);
        double relative = hertz <= 1300 ? 0.001 : 0.005;
        assertEquals(1, chain.gain(hertz) / BandLimitingChain.nominalGain(SEVERITY, hertz), relative);
        assertEquals(nominal, measured(51_200, hertz, Quantity.VELOCITY), relative * nominal + 0.51 * lastDigit);
    }

    /** The stated accuracy at usual sample rates and for both integrations, against the definition. */
    @ParameterizedTest
    @CsvSource({"2560, 0.4", "4096, 0.4", "12000, 0.4", "25600, 0.4", "48000, 0.4", "102400, 0.4"})
    void responseKeepsItsStatedAccuracy(double sampleRate, double highest) {
        for (Quantity target : new Quantity[] {Quantity.ACCELERATION, Quantity.VELOCITY, Quantity.DISPLACEMENT}) {
            BandLimitingChain chain = BandLimitingChain.of(Quantity.ACCELERATION, target, SEVERITY, sampleRate);
            for (double hertz = 1; hertz <= highest * sampleRate; hertz *= 1.03) {
                double ratio = chain.gain(hertz) / BandLimitingChain.nominalGain(SEVERITY, hertz);
                assertEquals(1, ratio, hertz <= 1300 ? 0.001 : 0.005, sampleRate + " Hz, " + target + " at " + hertz);
            }
        }
    }

    /** What comes out for a real sine through the running chain, relative to an ideal integrator. */
    private static double measured(double sampleRate, double hertz, Quantity target) {
        BandLimitingChain chain = BandLimitingChain.of(Quantity.ACCELERATION, target, SEVERITY, sampleRate);
        int periods = (int) Math.ceil(hertz);
        int tail = (int) Math.round(sampleRate * periods / hertz);
        int length = 3 * chain.settlingSamples() + tail;
        double[] x = IntStream.range(0, length).mapToDouble(i -> Math.sin(2 * Math.PI * hertz * i / sampleRate))
                .toArray();
        chain.process(x, 0, x, 0, length);
        double rms = Moments.of(x, length - tail, tail).rms();
        return rms * Math.sqrt(2) * Math.pow(2 * Math.PI * hertz, Quantity.ACCELERATION.integrationsTo(target));
    }

    /** Double integration of a sine of 1 m/s² reads 1/ω², within 0.1 % where the chain is flat within 0.01 %. */
    @ParameterizedTest
    @ValueSource(doubles = {50, 79.4, 133.3, 200})
    void doubleIntegrationOfASine(double hertz) {
        assertEquals(BandLimitingChain.nominalGain(SEVERITY, hertz), measured(12_800, hertz, Quantity.DISPLACEMENT),
                0.001);
    }

    @Test
    void biasDoesNotDrift() {
        BandLimitingChain chain = BandLimitingChain.of(Quantity.ACCELERATION, Quantity.DISPLACEMENT, SEVERITY, 12_800);
        double[] x = new double[12_800 * 60];
        Arrays.fill(x, 9.81);
        chain.process(x, 0, x, 0, x.length);
        assertEquals(0, largest(x, 0, 12_800), 1e-9);
        assertEquals(0, largest(x, 12_800 * 59, 12_800), 1e-9);
    }

    /** Largest magnitude itself, not the distance from the mean: an offset counts. */
    private static double largest(double[] x, int from, int length) {
        return Arrays.stream(x, from, from + length).map(Math::abs).max().orElseThrow();
    }

    @Test
    void toneLeavesNoOffset() {
        BandLimitingChain chain = BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, SEVERITY, 12_800);
        double[] x = IntStream.range(0, 51_200).mapToDouble(i -> 5 + Math.sin(2 * Math.PI * i / 128)).toArray();
        chain.process(x, 0, x, 0, x.length);
        double amplitude = 1 / (2 * Math.PI * 100);
        assertEquals(0, Moments.of(x, 25_600, 12_800).mean() / amplitude, 1e-6);
        assertEquals(amplitude, largest(x, 25_600, 12_800), 1e-3 * amplitude);
    }

    /**
     * After a signal has gone silent the state ends at zero instead of creeping through numbers too small to be fast.
     */
    @Test
    void silenceEndsInZero() {
        BandLimitingChain chain = BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, SEVERITY, 12_800);
        double[] x = new Random(1).doubles(12_800, -1, 1).toArray();
        chain.process(x, 0, x, 0, x.length);
        for (int i = 0; i < 60; i++) {
            x = new double[12_800];
            chain.process(x, 0, x, 0, x.length);
        }
        assertEquals(0, largest(x, 0, x.length), 0);
    }

    @Test
    void startUpHasDecayedAfterTheSettlingTime() {
        BandLimitingChain chain = BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, SEVERITY, 12_800);
        double[] x = new double[3 * chain.settlingSamples()];
        x[0] = 1;
        chain.process(x, 0, x, 0, x.length);
        double during = Moments.of(x, 0, chain.settlingSamples()).peak();
        double after = Moments.of(x, chain.settlingSamples(), chain.settlingSamples()).peak();
        assertEquals(0, after / during, 1e-5);
    }

    @Test
    void anySplitIntoBlocksEqualsOnePass() {
        double[] x = new Random(1).doubles(1000, -1, 1).toArray();
        BandLimitingChain chain = BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, SEVERITY, 12_800);
        double[] whole = new double[1000];
        chain.process(x, 0, whole, 0, 1000);
        chain.reset();
        double[] parts = new double[1000];
        int at = 0;
        for (int block : new int[] {3, 0, 1, 500, 496}) {
            chain.process(x, at, parts, at, block);
            at += block;
        }
        assertArrayEquals(whole, parts, 0);
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("band must be at or below 0.4 times the sample rate, 800.0 Hz: 1000.0",
                () -> BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, SEVERITY, 2000));
        assertMessage("quantity must be velocity or an integral of it: acceleration",
                () -> BandLimitingChain.of(Quantity.VELOCITY, Quantity.ACCELERATION, SEVERITY, 25_600));
        assertMessage("quantity must be a motion to be integrated or differentiated: voltage to velocity",
                () -> BandLimitingChain.of(Quantity.VOLTAGE, Quantity.VELOCITY, SEVERITY, 25_600));
        assertMessage("lowest frequency of the band must be finite and > 0 Hz: 0.0",
                () -> BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, Band.of(0, 10), 25_600));
        assertMessage("sampleRateHertz must be finite and > 0 Hz: NaN",
                () -> BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, SEVERITY, Double.NaN));
    }

    private static void assertMessage(String message, org.junit.jupiter.api.function.Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
