package dev.vibra.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.testing.Reference;
import dev.vibra.window.Window;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SpectrumTest {
    private static final Band SEVERITY = Band.of(10, 1000);

    /** SciPy 1.10 {@code welch}, both scalings, even and odd block lengths: see reference/scipy-spectra.txt. */
    @ParameterizedTest
    @CsvSource({"hann, 128", "hann, 125", "flatTop, 128", "flatTop, 125"})
    void averagedSpectrumAgreesWithSciPy(String window, int block) {
        Reference scipy = Reference.of("scipy-spectra.txt");
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, 1000, scipy.row("samples"));
        Spectrum spectrum = Spectrum.of(wave, SpectrumSettings.withDefaults().withResolution(1000.0 / block)
                .withWindow(window.equals("hann") ? Window.hann() : Window.flatTop()));
        double[] squares = Arrays.stream(spectrum.amplitudes(Detector.RMS)).map(x -> x * x).toArray();
        scipy.assertRow("spectrum." + window + "." + block, squares, 1e-10);
        scipy.assertRow("density." + window + "." + block, spectrum.densities(), 1e-10);
    }

    /**
     * A sine of amplitude A reads A/√2, A, 2A within 0.05 % under a flat top, on the bin and 1 Hz and half a bin off
     * it.
     */
    @ParameterizedTest
    @ValueSource(doubles = {100, 101, 102, 102.5, 99})
    void flatTopReadsASineWithinFiveHundredthsOfAPercent(double hertz) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 10_000, 40_000).tone(3, hertz, 1).waveform();
        Spectrum spectrum = Spectrum.of(wave,
                SpectrumSettings.withDefaults().withWindow(Window.flatTop()).withResolution(5));
        int line = (int) Math.rint(hertz / 5);
        assertEquals(1, spectrum.peaks(1).get(0).level().si() / (3 / Math.sqrt(2)), 0.0005);
        // 0.0090 dB of scallop loss half-way between two lines, standing out of reach of 0.05 %
        double flatness = 0.0011;
        assertEquals(1, spectrum.amplitude(line, Detector.ZERO_TO_PEAK) / 3, hertz == 102.5 ? flatness : 0.0005);
        assertEquals(2, spectrum.amplitude(line, Detector.PEAK_TO_PEAK) / spectrum.amplitude(line,
                Detector.ZERO_TO_PEAK),
                1e-12);
    }

    /** The table of the class comment, for white noise of standard deviation 2 at 1000 Hz. */
    @Test
    void noiseReadsAsTheTableSays() {
        Waveform noise = Synthesis.silence(Quantity.ACCELERATION, 1000, 400_000).noise(2, 1).waveform();
        Spectrum spectrum = Spectrum.of(noise, SpectrumSettings.withDefaults().withResolution(10));
        double density = Arrays.stream(spectrum.densities(), 2, 48).average().orElseThrow();
        double line = Arrays.stream(spectrum.amplitudes(Detector.RMS), 2, 48).map(x -> x * x).average().orElseThrow();
        assertEquals(15, spectrum.noiseBandwidthHertz(), 1e-9);
        assertEquals(1, density / (2 * 4 / 1000.0), 0.01);
        assertEquals(1, line / (4 * 2 * 15 / 1000.0), 0.01);
        assertEquals(2, spectrum.bandLevel(Band.of(0, 500)).si(), 0.02);
    }

    /**
     * Relative sensitivity of ISO 2954:1975 (secondary sources; rows of 1 Hz, 2.5 Hz and 10 kHz and their limits from
     * memory, checked against a third-order slope). The brick wall keeps the pass band and the upper limits; the lower
     * limits at 2.5 Hz and 4 kHz ask for a slope, which a brick wall doesn't have.
     */
    @ParameterizedTest
    @CsvSource({"1, 0, 0.01", "2.5, 0, 0.025", "10, 0.8, 1.1", "20, 0.9, 1.1", "40, 0.9, 1.1", "80, 0.98, 1.02",
        "160, 0.9, 1.1", "500, 0.9, 1.1", "1000, 0.8, 1.1", "4000, 0, 0.025", "10000, 0, 0.01"})
    void bandLevelKeepsTheSensitivityOf1975(double hertz, double lowest, double highest) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 102_400).tone(1, hertz, 0.3).waveform();
        double reading = Spectrum.of(wave).bandLevel(SEVERITY).si() * Math.sqrt(2);
        assertTrue(reading >= lowest && reading <= highest, hertz + " Hz: " + reading);
    }

    @Test
    void velocityAndDisplacementOfASine() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 102_400).tone(5, 24.37, 0).waveform();
        Spectrum spectrum = Spectrum.of(wave);
        double omega = 2 * Math.PI * 24.37;
        SpectralPeak velocity = spectrum.velocity().peaks(1).get(0);
        assertEquals(24.37, velocity.frequencyHertz(), 1e-3);
        assertEquals(1, velocity.level().si() / (5 / omega / Math.sqrt(2)), 0.0005);
        SpectralPeak displacement = spectrum.displacement().peakNear(24, 1).orElseThrow();
        assertEquals(1, displacement.level().si() / (5 / omega / omega / Math.sqrt(2)), 0.0005);
        assertEquals(Quantity.DISPLACEMENT, displacement.level().quantity());
        assertEquals(0, spectrum.velocity().amplitude(0, Detector.RMS));
        assertEquals(1.2185, velocity.order(RotationSpeed.ofHertz(20)), 0.0001);
        assertEquals(spectrum.peaks(1), spectrum.velocity().acceleration().peaks(1));
        assertTrue(spectrum.peakNear(400, 0.1).isEmpty() || spectrum.peakNear(400, 0.1).get().level().si() < 1e-3);
    }

    /** Band level of velocity equals the level of the integrated waveform: two paths, one answer. */
    @Test
    void bandLevelAgreesWithTheIntegratedWaveform() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_800, 4 * 12_800)
                .tone(1, 25, 0).tone(2, 120, 1).tone(4, 640, 2).noise(0.1, 3).waveform();
        double spectral = Spectrum.of(wave).velocity().bandLevel(SEVERITY).si();
        assertEquals(1, wave.velocity(SEVERITY).rms().si() / spectral, 0.005);
        assertEquals(1, wave.throughSeverityChain(Quantity.VELOCITY, SEVERITY).rms().si() / spectral, 0.005);
    }

    @Test
    void spectraPrintWell() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 102_400).tone(5, 50, 0).tone(1, 100, 0)
                .waveform();
        Spectrum spectrum = Spectrum.of(wave);
        assertEquals("acceleration spectrum, 12,801 lines of 1 Hz to 12800 Hz, 7 averages, Hann", spectrum.toString());
        assertEquals("    50.00 Hz      3.54 m/s\u00b2 rms\n   100.00 Hz     0.707 m/s\u00b2 rms",
                spectrum.peaks(2).toString());
        assertEquals("100.00 Hz  0.707 m/s\u00b2 rms", spectrum.peaks(2).get(1).toString());
        assertEquals(7, spectrum.blocks());
        assertEquals(0.00354, spectrum.peaks(1).get(0).level().in(Unit.M_PER_S2) / 1000, 0.00001);
    }

    @Test
    void shortRecordingsGetTheResolutionThatTheyHold() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 1000, 250).tone(1, 100, 0).waveform();
        Spectrum spectrum = Spectrum.of(wave);
        assertEquals(4, spectrum.resolutionHertz(), 1e-12);
        assertEquals(1, spectrum.blocks());
        assertEquals(126, spectrum.lines());
        assertEquals(500, spectrum.frequencyHertz(125), 1e-12);
    }

    @Test
    void badArgumentsAreNamed() {
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, 1000, new double[100]);
        Spectrum spectrum = Spectrum.of(wave);
        assertMessage("number of samples must be at least 2: 1",
                () -> Spectrum.of(Waveform.ofSi(Quantity.ACCELERATION, 1, 1)));
        assertMessage("band must be at or below half the sample rate, 500.0 Hz: 501.0",
                () -> spectrum.bandLevel(Band.of(0, 501)));
        assertMessage("band must hold at least one line, 10.0 Hz apart: 11\u201319 Hz",
                () -> spectrum.bandLevel(Band.of(11, 19)));
        assertMessage("count must be at least 1: 0", () -> spectrum.peaks(0));
        assertMessage("hertz must be finite and >= 0 Hz: NaN", () -> spectrum.peakNear(Double.NaN, 1));
        assertMessage("overlap must be within 0.0 to 0.95: 1.0", () -> SpectrumSettings.withDefaults().withOverlap(1));
        assertMessage("resolutionHertz must be finite and > 0 Hz: 0.0",
                () -> SpectrumSettings.withDefaults().withResolution(0));
        assertMessage("block length must be at least 2: 1", () -> SpectrumPlan.of(1, Window.hann()));
        assertMessage("quantity must be a motion to be integrated or differentiated: voltage to velocity",
                () -> Spectrum.of(Waveform.ofSi(Quantity.VOLTAGE, 1000, new double[100])).velocity());
        assertThrows(IndexOutOfBoundsException.class, () -> spectrum.amplitude(51, Detector.RMS));
        assertTrue(spectrum.peaks(5).isEmpty());
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
