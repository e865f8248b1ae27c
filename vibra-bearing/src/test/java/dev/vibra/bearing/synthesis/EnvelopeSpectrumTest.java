package dev.vibra.bearing.synthesis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.testing.Reference;
import dev.vibra.bearing.testing.Serial;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.util.Arrays;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EnvelopeSpectrumTest {
    private static final Band BAND = Band.of(200, 400);

    @ParameterizedTest
    @ValueSource(ints = {600, 599})
    @DisplayName("depths, level and kurtosis are those of SciPy's analytic signal")
    void agreesWithSciPy(int length) {
        Reference reference = Reference.of("scipy-envelope-spectrum.txt");
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, 1000, reference.row("samples." + length));
        EnvelopeSpectrum spectrum = EnvelopeSpectrum.of(wave, BAND);
        assertEquals(1000.0 / length, spectrum.resolutionHertz(), 1e-12);
        assertEquals(1, spectrum.blocks());
        reference.assertRow("depths." + length, Arrays.copyOf(spectrum.depths(), 100), 1e-10);
        assertEquals(reference.value("kurtosis." + length), spectrum.spectralKurtosis(), 1e-10);
        assertEquals(reference.value("rms." + length), spectrum.level().si(), 1e-10);
    }

    @Test
    @DisplayName("closed form: (1 + a·cos x)² swings 2a/(1 + a²/2) deep at x and a²/2/(1 + a²/2) at 2x")
    void amplitudeModulationInClosedForm() {
        double a = 0.6;
        double carrier = 3000;
        double rate = 40;
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_000, 12_000)
                .tone(5, carrier, 0.3)
                .tone(5 * a / 2, carrier - rate, 0.3).tone(5 * a / 2, carrier + rate, 0.3).waveform();
        EnvelopeSpectrum spectrum = EnvelopeSpectrum.of(wave, Band.of(2000, 4000));
        assertEquals(2 * a / (1 + a * a / 2), spectrum.depth(40), 1e-9);
        assertEquals(a * a / 2 / (1 + a * a / 2), spectrum.depth(80), 1e-9);
        assertEquals(40, spectrum.frequencyHertz(40), 1e-9);
        assertEquals(5 * Math.sqrt((1 + a * a / 2) / 2), spectrum.level().si(), 1e-9);
    }

    @Test
    @DisplayName("impacts that carry all the power swing up to twice the mean deep (Fourier series of a pulse train)")
    void sharpImpactsReadUpToTwo() {
        Waveform wave = BearingSignal.of(BearingGeometry.of(9, 7.94, 39.04, 0).frequencies(30, 0)).withNoise(1e-3)
                .withDefect(BearingElement.OUTER_RACE, 10).withSlip(0, 0).withResonance(4000, 0.1)
                .waveform(25_600, 256_000, 1);
        EnvelopeSpectrum spectrum = EnvelopeSpectrum.of(wave, Band.of(2000, 8000), 0.3);
        double rate = BearingGeometry.of(9, 7.94, 39.04, 0).frequencies(30, 0).outerRaceHertz();
        double deepest = Arrays.stream(spectrum.upTo(1.5 * rate).depths()).max().orElseThrow();
        assertTrue(deepest > 1.6 && deepest < 2, () -> "depth " + deepest);
    }

    @Test
    @DisplayName("spectral kurtosis: 0 for normal noise, -1 for a sine (Antoni 2006)")
    void spectralKurtosis() {
        Synthesis silence = Synthesis.silence(Quantity.ACCELERATION, 12_000, 120_000);
        Band band = Band.of(2000, 4000);
        assertEquals(0, EnvelopeSpectrum.of(silence.noise(1, 3).waveform(), band).spectralKurtosis(), 0.05);
        assertEquals(-1, EnvelopeSpectrum.of(silence.tone(1, 3000, 0).waveform(), band).spectralKurtosis(), 1e-9);
    }

    @Test
    void averagesBlocksThatOverlapByHalf() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_000, 60_000).noise(1, 5).waveform();
        EnvelopeSpectrum spectrum = EnvelopeSpectrum.of(wave, Band.of(2000, 4000), 1);
        assertEquals(1, spectrum.resolutionHertz(), 1e-3);
        assertEquals(9, spectrum.blocks());
        // Variance 1/k·(1 + 1/18·(k-1)/k), Welch 1967
        assertEquals(9 / (1 + 1 / 18.0 * 8 / 9), spectrum.equivalentAverages(), 1e-12);
        assertEquals(1, EnvelopeSpectrum.of(wave, Band.of(2000, 4000)).equivalentAverages());
    }

    @Test
    void levelDoesNotChangeTheDepths() {
        Synthesis noise = Synthesis.silence(Quantity.ACCELERATION, 1000, 2000).noise(1, 4);
        double[] loud = noise.waveform().samples();
        for (int i = 0; i < loud.length; i++) {
            loud[i] *= 1000;
        }
        double[] depths = EnvelopeSpectrum.of(noise.waveform(), BAND).depths();
        double[] loudDepths = EnvelopeSpectrum.of(Waveform.ofSi(Quantity.ACCELERATION, 1000, loud), BAND).depths();
        for (int i = 0; i < depths.length; i++) {
            assertEquals(depths[i], loudDepths[i], 1e-12);
        }
    }

    @Test
    void isAValue() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 1000, 2000).noise(1, 4).waveform();
        EnvelopeSpectrum spectrum = EnvelopeSpectrum.of(wave, BAND);
        assertEquals(spectrum, EnvelopeSpectrum.of(wave, BAND));
        assertEquals(spectrum.hashCode(), EnvelopeSpectrum.of(wave, BAND).hashCode());
        assertNotEquals(spectrum, spectrum.upTo(50));
        assertNotSame(spectrum.depths(), spectrum.depths());
        assertSame(spectrum, spectrum.upTo(1e6));
        assertEquals(101, spectrum.upTo(50).lines());
        assertEquals("envelope spectrum of 200–400 Hz, 0–50 Hz by 0.500 Hz", spectrum.upTo(50).toString());
        assertEquals(spectrum, Serial.copy(spectrum));
    }

    @Test
    void badInputIsNamed() {
        Waveform silent = Synthesis.silence(Quantity.ACCELERATION, 1000, 2000).waveform();
        assertEquals("band must hold vibration: 200–400 Hz is silent",
                assertThrows(IllegalArgumentException.class, () -> EnvelopeSpectrum.of(silent, BAND)).getMessage());
        assertEquals("resolutionHertz must be finite and > 0 Hz: NaN", assertThrows(IllegalArgumentException.class,
                () -> EnvelopeSpectrum.of(silent, BAND, Double.NaN)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> EnvelopeSpectrum.of(silent, Band.of(200, 501)));
    }
}
