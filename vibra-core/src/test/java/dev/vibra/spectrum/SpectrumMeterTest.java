package dev.vibra.spectrum;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.window.Window;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Meters, maps and zoom against closed forms of whole-period tones. */
class SpectrumMeterTest {
    private static final SpectrumSettings SETTINGS =
            SpectrumSettings.withDefaults().withResolution(10).withOverlap(0.25);

    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }

    private static double[] tone(int length) {
        return Synthesis.silence(Quantity.VELOCITY, 1000, length).tone(3, 100, 0.4).waveform().samples();
    }

    @Test
    void meterReadsAToneBlockByBlock() {
        SpectrumMeter meter = SpectrumMeter.of(Quantity.VELOCITY, 1000, SETTINGS);
        assertEquals("no block of 100 samples is complete yet",
                assertThrows(IllegalStateException.class, meter::spectrum).getMessage());
        double[] samples = tone(300);
        meter.push(samples, 0, 99);
        assertEquals(0, meter.blocks());
        meter.push(samples, 99, 1);
        assertEquals(1, meter.blocks());
        meter.push(samples, 100, 74);
        assertEquals(1, meter.blocks());
        meter.push(samples, 174, 126);
        assertEquals(3, meter.blocks());
        Spectrum spectrum = meter.spectrum();
        assertEquals(Quantity.VELOCITY, spectrum.quantity());
        assertEquals(3, spectrum.amplitude(10, Detector.ZERO_TO_PEAK), 1e-12); // Hann on the line
        assertEquals(1.5, spectrum.amplitude(11, Detector.ZERO_TO_PEAK), 1e-12); // and half beside it
        assertEquals(0, spectrum.amplitude(13, Detector.ZERO_TO_PEAK), 1e-12);
        assertEquals("spectrum meter, 3 blocks, Hann, 10.0 Hz, overlap 0.25, rms", meter.toString());
        meter.reset();
        assertEquals(0, meter.blocks());
        meter.push(samples, 25, 100);
        assertEquals(1, meter.blocks());
        assertEquals(3, meter.spectrum().amplitude(10, Detector.ZERO_TO_PEAK), 1e-12);
    }

    /** Noise has different blocks: only the right cut of the overlap gives the spectrum of the whole. */
    @Test
    void meterCutsBlocksLikeTheSpectrum() {
        double[] samples = Synthesis.silence(Quantity.VELOCITY, 1000, 460).noise(1, 5).waveform().samples();
        SpectrumMeter meter = SpectrumMeter.of(Quantity.VELOCITY, 1000, SETTINGS);
        meter.push(samples, 0, samples.length);
        Spectrum whole = Spectrum.of(Waveform.ofSi(Quantity.VELOCITY, 1000, samples), SETTINGS);
        assertArrayEquals(whole.densities(), meter.spectrum().densities(), 1e-15);
    }

    @Test
    void meterRefusesBadArguments() {
        assertRefused("sampleRateHertz must be finite and > 0 Hz: 0.0",
                () -> SpectrumMeter.of(Quantity.VELOCITY, 0, SETTINGS));
        assertRefused("resolutionHertz must be at most half the sample rate, 5.0 Hz: 10.0",
                () -> SpectrumMeter.of(Quantity.VELOCITY, 10, SETTINGS));
        assertRefused("resolutionHertz must be at least 1.0 Hz at this sample rate: 0.5",
                () -> SpectrumMeter.of(Quantity.VELOCITY, 1 << 24, SETTINGS.withResolution(0.5)));
        SpectrumMeter meter = SpectrumMeter.of(Quantity.VELOCITY, 1000, SETTINGS);
        assertRefused("samples[1] must be finite: NaN", () -> meter.push(new double[] {1, Double.NaN}, 0, 2));
        assertRefused("samples[0] must be finite: Infinity", () -> meter.push(new double[] {1.0 / 0}, 0, 1));
        assertRefused("samples must lie inside the array of length 2: offset 1, length 2",
                () -> meter.push(new double[2], 1, 2));
    }

    /**
     * White noise of unit rms has the one-sided density 2/fs everywhere; 399 averages scatter by 5 %, and lines' mean
     * less.
     */
    @Test
    void zoomReadsDensityOfNoise() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 1000, 100_000).noise(1, 3).waveform();
        ZoomSpectrum zoom = ZoomSpectrum.of(wave, Band.of(100, 150), SpectrumSettings.withDefaults().withResolution(2));
        double mean = 0;
        for (int k = 0; k < zoom.lines(); k++) {
            mean += zoom.density(k) / zoom.lines();
        }
        assertEquals(2e-3, mean, 1e-4);
        assertEquals("acceleration zoom", zoom.toString().substring(0, 17));
        assertEquals(100, zoom.frequencyHertz(0), 1e-9);
        assertEquals(150, zoom.frequencyHertz(zoom.lines() - 1), zoom.resolutionHertz());
        assertRefused("band must be below half the sample rate, 500.0 Hz: 500.0",
                () -> ZoomSpectrum.of(wave, Band.of(100, 500), SETTINGS));
    }

    /** The band's own sample rate is that of the analytic signal: 64 lines from 95 Hz to 158 Hz, twice that at most. */
    @Test
    void zoomRefusesAResolutionThatItsBandCannotHold() {
        Waveform wave = Waveform.ofSi(Quantity.VELOCITY, 1000, tone(1000));
        assertRefused("resolutionHertz must be at most half the sample rate, 64.0 Hz: 65.0",
                () -> ZoomSpectrum.of(wave, Band.of(100, 150), SETTINGS.withResolution(65)));
        assertEquals(64, ZoomSpectrum.of(wave, Band.of(100, 150), SETTINGS.withResolution(64)).resolutionHertz());
    }

    @Test
    void mapHasItsAxes() {
        Spectrogram map = Spectrogram.of(Waveform.ofSi(Quantity.VELOCITY, 1000, tone(400)), SETTINGS);
        assertEquals(5, map.blocks());
        assertEquals(51, map.lines());
        assertEquals(100, map.frequencyHertz(10), 1e-12);
        assertEquals(3 / Math.sqrt(2), map.rms(2, 10), 1e-12);
        assertEquals(4.5 / 15, map.density(2, 10), 1e-12); // Hann's noise bandwidth is 1.5 lines of 10 Hz
        assertEquals(false, map.toString().isEmpty());
    }

    @Test
    void planTellsItsMeasuresAndRefusesShortArrays() {
        SpectrumPlan plan = SpectrumPlan.of(100, Window.hann());
        assertEquals(100, plan.length());
        assertEquals(Window.hann(), plan.window());
        assertEquals(Window.hann(), plan.newWorker().window());
        assertEquals("100 samples, Hann", plan.toString());
        SpectrumPlan.Worker worker = plan.newWorker();
        assertRefused("sums must lie inside the array of length 50: offset 0, length 51",
                () -> worker.addMeanSquares(new double[100], 0, new double[50]));
        assertRefused("out must lie inside the array of length 101: offset 0, length 102",
                () -> worker.complexLines(new double[100], 0, new double[101]));
        assertRefused("block must lie inside the array of length 99: offset 0, length 100",
                () -> worker.complexLines(new double[99], 0, new double[102]));
        assertEquals("Hann, 10.0 Hz, overlap 0.25, rms", SETTINGS.toString());
    }

    /**
     * A rectangular pulse of height 2 over 10 of 100 samples less its mean: at line k the energy is |X|²·Δt²·2
     * (one-sided).
     */
    @Test
    void energyDensityOfAPulse() {
        double[] x = new double[100];
        java.util.Arrays.fill(x, 0, 10, 2);
        Spectrum spectrum = Spectrum.of(Waveform.ofSi(Quantity.VELOCITY, 1000, x),
                SpectrumSettings.withDefaults().withResolution(10).withWindow(Window.rectangular()));
        double dirichlet = 2 * Math.sin(Math.PI * 10 * 3 / 100.0) / Math.sin(Math.PI * 3 / 100.0);
        assertEquals(2 * dirichlet * dirichlet * 1e-6, spectrum.energyDensity(3), 1e-15);
        assertThrows(IllegalArgumentException.class, () -> spectrum.densityInterval(3, 0));
        assertThrows(IllegalArgumentException.class, () -> spectrum.densityInterval(3, 1));
        assertRefused("band must hold at least one line, 10.0 Hz apart: " + Band.of(12, 18),
                () -> spectrum.bandLevel(Band.of(12, 18)));
        double line = spectrum.amplitude(3, Detector.RMS);
        assertEquals(line, spectrum.bandLevel(Band.of(30, 39)).si(), 1e-15);
    }

    /** Lines of 0.25 Hz; a Hann main lobe is two lines wide on each side. */
    @Test
    void peaksAtTheEndsOfTheSpectrumAreLeftOut() {
        SpectrumSettings settings = SpectrumSettings.withDefaults().withResolution(0.25);
        Synthesis silence = Synthesis.silence(Quantity.VELOCITY, 100, 4000);
        Spectrum low = Spectrum.of(silence.tone(1, 0.5, 0).waveform(), settings);
        assertEquals(0.5, low.peakNear(0, 1).orElseThrow().frequencyHertz(), 0.02);
        Spectrum lower = Spectrum.of(silence.tone(1, 0.25, 0).waveform(), settings);
        assertTrue(lower.peakNear(0.25, 0.1).isEmpty());
        Spectrum high = Spectrum.of(silence.tone(1, 49.5, 0.3).waveform(), settings);
        assertEquals(49.5, high.peakNear(50, 1).orElseThrow().frequencyHertz(), 0.02);
        assertEquals(49.5, high.peakNear(1000, 1000).orElseThrow().frequencyHertz(), 0.02);
        assertTrue(high.peakNear(1000, 900).isEmpty());
        assertTrue(Spectrum.of(silence.tone(1, 49.75, 0.3).waveform(), settings).peakNear(49.75, 0.1).isEmpty());
        Spectrum middle = Spectrum.of(silence.tone(1, 20, 0).tone(0.5, 22, 0).waveform(), settings);
        double found = middle.peakNear(20, 0.5).orElseThrow().frequencyHertz();
        assertEquals(found, middle.peakNear(found, 0).orElseThrow().frequencyHertz());
        assertTrue(middle.peakNear(20.4, 0.3).isEmpty());
        assertEquals(20, middle.peakNear(20.4, 0.41).orElseThrow().frequencyHertz(), 0.01);
        assertEquals(22, middle.peakNear(22.4, 2).orElseThrow().frequencyHertz(), 0.01);
        assertEquals(20, middle.peakNear(22, 2.1).orElseThrow().frequencyHertz(), 0.01);
        assertRefused("toleranceHertz must be finite and >= 0 Hz: -1.0", () -> middle.peakNear(20, -1));
        assertRefused("hertz must be finite and >= 0 Hz: NaN", () -> middle.peakNear(Double.NaN, 1));
    }

    /**
     * Welch's formula with the correlations of blocks under a Hann window by F. J. Harris, Proc. IEEE 66 (1978) 51-83,
     * Table 1: 65.9 % at an overlap of 75 %, 16.7 % at 50 %; at 25 % 0.75 %, from the closed form.
     */
    @ParameterizedTest
    @CsvSource({"0, 1", "0, 7", "0.5, 1", "0.5, 2", "0.5, 9", "0.75, 2", "0.75, 3", "0.75, 12"})
    void overlappingBlocksCountForFewer(double overlap, int blocks) {
        int block = 400;
        int step = (int) Math.rint(block * (1 - overlap));
        Spectrum spectrum = Spectrum.of(Waveform.ofSi(Quantity.VELOCITY, 400, tone(block + (blocks - 1) * step)),
                SpectrumSettings.withDefaults().withOverlap(overlap));
        assertEquals(blocks, spectrum.blocks());
        double[] correlations = overlap == 0 ? new double[0] : overlap == 0.5 ? new double[] {0.1667}
                : new double[] {0.659, 0.1667, 0.0075};
        double sum = 1;
        for (int j = 1; j <= Math.min(blocks - 1, correlations.length); j++) {
            sum += 2 * (1 - (double) j / blocks) * correlations[j - 1] * correlations[j - 1];
        }
        assertEquals(blocks / sum, spectrum.equivalentAverages(), 1e-3 * blocks / sum);
    }

    @Test
    void equivalentAveragesAreThoseOfRmsAveraging() {
        Spectrum held = Spectrum.of(Waveform.ofSi(Quantity.VELOCITY, 400, tone(800)),
                SpectrumSettings.withDefaults().withAveraging(Averaging.peakHold()));
        assertEquals("equivalent averages need rms averaging: peak hold",
                assertThrows(IllegalStateException.class, held::equivalentAverages).getMessage());
    }

    @Test
    void peakNearLooksNoFartherThanAsked() {
        Spectrum spectrum = Spectrum.of(Synthesis.silence(Quantity.VELOCITY, 1000, 4000).tone(1, 100, 0).tone(2, 130, 0)
                .waveform());
        assertEquals(100, spectrum.peakNear(98, 5).orElseThrow().frequencyHertz(), 0.02);
        assertEquals(130, spectrum.peakNear(104, 40).orElseThrow().frequencyHertz(), 0.02);
        assertEquals(130, spectrum.peakNear(132, 3).orElseThrow().frequencyHertz(), 0.02);
        assertEquals(2, spectrum.peaks(1).get(0).level().si() * Math.sqrt(2), 1e-3);
    }
}
