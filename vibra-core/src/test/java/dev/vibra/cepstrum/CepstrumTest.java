package dev.vibra.cepstrum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.testing.Reference;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CepstrumTest {
    /** {@code numpy.fft.irfft(log(abs(rfft(x))))}: see reference/scipy-cepstra.txt. */
    @ParameterizedTest
    @ValueSource(ints = {256, 255})
    void cepstrumAgreesWithNumPy(int length) {
        Reference numpy = Reference.of("scipy-cepstra.txt");
        Cepstrum cepstrum = Cepstrum.of(Waveform.ofSi(Quantity.ACCELERATION, 1000, numpy.row("samples." + length)));
        double[] values = new double[length];
        for (int i = 0; i < length; i++) {
            values[i] = cepstrum.at(i);
            assertEquals(4 * values[i] * values[i], cepstrum.power(i), 1e-12);
        }
        numpy.assertRow("cepstrum." + length, values, 1e-9);
    }

    /** Closed form: an echo of strength a after T adds a^n/(2n)·(-1)^(n+1) at nT to the real cepstrum. */
    @Test
    void anEchoIsAPeakAtItsDelay() {
        double[] x = new Random(3).doubles(4096, -1, 1).toArray();
        double[] echoed = new double[4096];
        for (int i = 0; i < 4096; i++) {
            echoed[i] = x[i] + 0.5 * x[Math.floorMod(i - 200, 4096)];
        }
        Cepstrum with = Cepstrum.of(Waveform.ofSi(Quantity.ACCELERATION, 1000, echoed));
        Cepstrum without = Cepstrum.of(Waveform.ofSi(Quantity.ACCELERATION, 1000, x));
        assertEquals(0.25, with.at(200) - without.at(200), 1e-9);
        assertEquals(-0.0625, with.at(400) - without.at(400), 1e-9);
        assertEquals(0.2, with.largestSeconds(0.05, 1), 1e-9);
    }

    @Test
    void liftingTakesAFamilyOut() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 8192, 32_768)
                .impacts(ImpactTrain.of(64, 10, 1500, 0.05), 1).noise(0.3, 2).waveform();
        Waveform edited = Cepstrum.of(wave).without(0.9 / 64, 2);
        double before = Spectrum.of(wave).peakNear(1536, 2).orElseThrow().level().si();
        double after = Spectrum.of(edited).peakNear(1536, 2).map(p -> p.level().si()).orElse(0.0);
        assertTrue(after < 0.5 * before, before + " to " + after);
    }

    @Test
    void badArgumentsAreNamed() {
        double[] noise = new Random(1).doubles(100).toArray();
        Cepstrum cepstrum = Cepstrum.of(Waveform.ofSi(Quantity.ACCELERATION, 100, noise));
        assertThrows(IllegalArgumentException.class, () -> cepstrum.largestSeconds(0, 0.1));
        assertThrows(IllegalArgumentException.class, () -> cepstrum.without(0.1, 0.6));
        assertThrows(IllegalArgumentException.class, () -> cepstrum.without(0.101, 0.109));
        assertEquals("samples must not all be zero", assertThrows(IllegalArgumentException.class,
                () -> Cepstrum.of(Waveform.ofSi(Quantity.ACCELERATION, 100, new double[8]))).getMessage());
        assertEquals("cepstrum of 100 values to 0.500 s", cepstrum.toString());
    }
}
