package dev.vibra.synthesis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import org.junit.jupiter.api.Test;

class SignalsTest {
    private static Synthesis silence(int length) {
        return Synthesis.silence(Quantity.ACCELERATION, 1000, length);
    }

    @Test
    void sweepGoesFromOneFrequencyToTheOther() {
        double[] x = silence(10_000).sweep(1, 10, 110).waveform().samples();
        // Phase of a linear sweep: 2π(f0·t + (f1-f0)t²/2T).
        for (int i = 0; i < 10_000; i += 37) {
            double t = i / 1000.0;
            assertEquals(Math.cos(2 * Math.PI * (10 * t + 100 * t * t / 20)), x[i], 1e-9);
        }
    }

    @Test
    void harmonicsAndModulationAreTheirFormulas() {
        double[] h = silence(50).harmonics(20, new double[] {1, 0.5}, new double[] {0.1, 0.2}).waveform().samples();
        double[] m = silence(50).modulatedTone(2, 100, 5, 0.5, 0.7).waveform().samples();
        for (int i = 0; i < 50; i++) {
            double t = i / 1000.0;
            assertEquals(Math.cos(2 * Math.PI * 20 * t + 0.1) + 0.5 * Math.cos(2 * Math.PI * 40 * t + 0.2), h[i],
                    1e-12);
            double slow = 2 * Math.PI * 5 * t;
            assertEquals(2 * (1 + 0.5 * Math.cos(slow)) * Math.cos(2 * Math.PI * 100 * t + 0.7 * Math.sin(slow)), m[i],
                    1e-12);
        }
    }

    /**
     * Density falls as 1/f^exponent: ten times the frequency has a tenth (pink) or a hundredth (brown) of the density.
     */
    @Test
    void colouredNoiseHasItsSlope() {
        for (double exponent : new double[] {0, 1, 2}) {
            Waveform noise = silence(400_000).colouredNoise(2, exponent, 3).waveform();
            assertEquals(2, Math.hypot(noise.moments().rms(), noise.moments().mean()), 1e-9);
            Spectrum spectrum = Spectrum.of(noise);
            double low = mean(spectrum, 20, 40);
            double high = mean(spectrum, 200, 400);
            assertEquals(exponent, Math.log10(low / high), 0.05, "exponent " + exponent);
        }
    }

    private static double mean(Spectrum spectrum, int from, int to) {
        double sum = 0;
        for (int k = from; k < to; k++) {
            sum += spectrum.density(k);
        }
        return sum / (to - from);
    }

    @Test
    void profileHasItsAngleAndSpeed() {
        SpeedProfile profile = new SpeedProfile(RotationSpeed.ofHertz(10), RotationSpeed.ofHertz(30), 4);
        assertEquals(80, profile.revolutionsAt(4), 1e-12);
        assertEquals(20, profile.speedAt(2).hertz(), 1e-12);
        double[] volts = profile.tachometer(10_000, 1).samples();
        int pulses = 0;
        for (int i = 1; i < volts.length; i++) {
            pulses += volts[i - 1] < 0.5 && volts[i] >= 0.5 ? 1 : 0;
        }
        assertEquals(79, pulses); // the first mark stands at the first sample, the last one at the end
        assertThrows(IllegalArgumentException.class, () -> profile.tachometer(1000, 0.5, 0.4));
        assertThrows(IllegalArgumentException.class, () -> profile.unbalanceResponse(1000, 1, 20, 0));
        assertThrows(IllegalArgumentException.class, () -> profile.speedAt(5));
    }

    @Test
    void badArgumentsAreNamed() {
        assertThrows(IllegalArgumentException.class, () -> silence(5).sweep(1, 10, 500));
        assertThrows(IllegalArgumentException.class, () -> silence(5).colouredNoise(1, 5, 1));
        assertThrows(IllegalArgumentException.class, () -> silence(5).modulatedTone(1, 100, 5, 2, 0));
        assertThrows(IllegalArgumentException.class,
                () -> silence(5).harmonics(10, new double[] {1}, new double[] {1, 2}));
    }
}
