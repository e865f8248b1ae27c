package dev.vibra.transfer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.filter.FilterDesign;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.testing.Reference;
import dev.vibra.window.Window;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FrequencyResponseTest {
    /** {@code scipy.signal.csd} and {@code coherence}: see reference/scipy-cross.txt. */
    @ParameterizedTest
    @ValueSource(ints = {64, 75})
    void crossSpectrumAgreesWithSciPy(int block) {
        Reference scipy = Reference.of("scipy-cross.txt");
        FrequencyResponse response = FrequencyResponse.of(Waveform.ofSi(Quantity.ACCELERATION, 1000, scipy.row("x")),
                Waveform.ofSi(Quantity.ACCELERATION, 1000, scipy.row("y")),
                SpectrumSettings.withDefaults().withResolution(1000.0 / block));
        int n = response.lines();
        double[][] rows = new double[5][n];
        for (int k = 0; k < n; k++) {
            rows[0][k] = response.cross(k).getReal();
            rows[1][k] = response.cross(k).getImaginary();
            rows[2][k] = response.crossDensity(k).getReal();
            rows[3][k] = response.crossDensity(k).getImaginary();
            rows[4][k] = response.coherence(k);
        }
        scipy.assertRow("spectrum." + block + ".re", rows[0], 1e-9);
        scipy.assertRow("spectrum." + block + ".im", rows[1], 1e-9);
        scipy.assertRow("density." + block + ".re", rows[2], 1e-9);
        scipy.assertRow("density." + block + ".im", rows[3], 1e-9);
        scipy.assertRow("coherence." + block, rows[4], 1e-9);
    }

    /** H1, H2 and Hv of a filter with noise at one side or both; the filter's own response is the truth. */
    @Test
    void estimatesAreRightWhereTheirNoiseModelHolds() {
        Waveform x = Synthesis.silence(Quantity.ACCELERATION, 1000, 400_000).noise(1, 1).waveform();
        double[] filtered = new double[x.length()];
        var cascade = FilterDesign.butterworth(2).lowPass(200, 1000);
        cascade.newFilter().process(x.samples(), 0, filtered, 0, filtered.length);
        Waveform y = Waveform.ofSi(Quantity.ACCELERATION, 1000, filtered);
        SpectrumSettings settings = SpectrumSettings.withDefaults().withResolution(5);
        Waveform noisyOut = Synthesis.silence(Quantity.ACCELERATION, 1000, 400_000).noise(0.5, 2).plus(y).waveform();
        Waveform noisyIn = Synthesis.silence(Quantity.ACCELERATION, 1000, 400_000).noise(0.5, 3).plus(x).waveform();
        int k = 20;
        double truth = cascade.gain(100, 1000);
        FrequencyResponse outNoise = FrequencyResponse.of(x, noisyOut, settings);
        FrequencyResponse inNoise = FrequencyResponse.of(noisyIn, y, settings);
        assertEquals(truth, outNoise.h1(k).abs(), 5 * outNoise.randomError(k) * truth);
        assertTrue(outNoise.h2(k).abs() > 1.1 * truth);
        assertEquals(truth, inNoise.h2(k).abs(), 5 * inNoise.randomError(k) * truth);
        assertTrue(inNoise.h1(k).abs() < 0.9 * truth);
        double hv = outNoise.hv(k).abs();
        assertEquals(Math.sqrt(outNoise.h1(k).abs() * outNoise.h2(k).abs()), hv, 1e-12);
        assertEquals(outNoise.h1(k).getArgument(), outNoise.phaseRadians(k), 1e-12);
        assertEquals(-Math.PI / 2, FrequencyResponse.of(x, y, settings).phaseRadians(40), 0.02); // at its corner
        assertEquals(1 / 1.25, inNoise.coherence(k), 0.02);
    }

    /** Closed form: accelerance of one degree of freedom, -ω²/(k - ω²m + iωc), its free decay sampled from one blow. */
    @ParameterizedTest
    @CsvSource({"100, 0.01", "63.7, 0.03", "141.3, 0.005"})
    void impactTestFindsFrequencyAndDamping(double natural, double damping) {
        double rate = 4096;
        int length = 16 * 4096;
        double omega = 2 * Math.PI * natural;
        double damped = omega * Math.sqrt(1 - damping * damping);
        double[] force = new double[length];
        double[] velocity = new double[length];
        force[64] = rate; // an impulse of 1 N·s on 1 kg
        for (int i = 64; i < length; i++) {
            double t = (i - 64) / rate;
            velocity[i] = Math.exp(-damping * omega * t)
                    * (Math.cos(damped * t) - damping / Math.sqrt(1 - damping * damping) * Math.sin(damped * t));
        }
        velocity[64] = 0.5; // the jump is sampled half-way
        FrequencyResponse response = ImpactTest.withDefaults()
                .withHit(Waveform.ofSi(Quantity.VOLTAGE, rate, force), Waveform.ofSi(Quantity.VELOCITY, rate, velocity))
                .response();
        Band band = Band.of(0.6 * natural, 1.6 * natural);
        Mode half = ModeFit.halfPower(response, 0, band);
        Mode circle = ModeFit.circle(response, 0, band);
        assertEquals(natural, half.naturalHertz(), 0.001 * natural);
        assertEquals(damping, half.dampingRatio(), 0.02 * damping);
        assertEquals(natural, circle.naturalHertz(), 0.001 * natural);
        assertEquals(damping, circle.dampingRatio(), 0.02 * damping);
        // Mobility at resonance is 1/(2ζωn·m), real.
        Complex top = response.h1((int) Math.rint(natural / response.frequencyHertz(1)));
        assertEquals(1 / (2 * damping * omega), top.abs(), 0.05 / (2 * damping * omega));
    }

    @Test
    void exponentialWindowsDampingIsTakenOff() {
        Mode measured = new Mode(100, 0.012);
        Mode structure = measured.withoutWindowDamping(0.05, 4);
        assertEquals(0.012 - Math.log(20) / (2 * Math.PI * 100 * 4), structure.dampingRatio(), 1e-12);
        assertEquals("100.0 Hz, damping ratio 0.0120", measured.toString());
        assertThrows(IllegalArgumentException.class, () -> measured.withoutWindowDamping(1e-9, 1));
    }

    /**
     * The windows of an impact test leave the response of a blow unchanged: their gain is that at the blow, not the
     * mean.
     */
    @Test
    void impactWindowsDoNotChangeTheScale() {
        double[] force = new double[1000];
        double[] answer = new double[1000];
        force[0] = 5;
        answer[0] = 10;
        ImpactTest test = ImpactTest.withDefaults().withHit(Waveform.ofSi(Quantity.VOLTAGE, 1000, force),
                Waveform.ofSi(Quantity.ACCELERATION, 1000, answer));
        double plain = test.response().h1(100).abs();
        double windowed = test.withWindows(Window.force(0.1), Window.exponential(0.05)).response().h1(100).abs();
        assertEquals(2, plain, 1e-9);
        assertEquals(2, windowed, 0.02);
        assertEquals("impact test of 1 hit(s)", test.toString());
    }

    @Test
    void badArgumentsAreNamed() {
        Waveform a = Waveform.ofSi(Quantity.ACCELERATION, 1000, new double[100]);
        Waveform b = Waveform.ofSi(Quantity.ACCELERATION, 1000, new double[99]);
        assertThrows(IllegalArgumentException.class, () -> FrequencyResponse.of(a, b, SpectrumSettings.withDefaults()));
        assertEquals("an impact test needs at least one hit",
                assertThrows(IllegalStateException.class, () -> ImpactTest.withDefaults().response()).getMessage());
        FrequencyResponse one = FrequencyResponse.of(a, a, SpectrumSettings.withDefaults());
        assertEquals("coherence needs at least 2 blocks: 1",
                assertThrows(IllegalStateException.class, () -> one.coherence(3)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> new Mode(100, 1));
        assertThrows(IllegalArgumentException.class, () -> new Mode(0, 0.1));
    }
}
