package dev.vibra.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.FullSpectrum;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.testing.Reference;
import dev.vibra.transfer.FrequencyResponse;
import dev.vibra.window.Window;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Maps, averaging, zoom, peaks and confidence against SciPy 1.10 and closed forms. */
class SpectralReferenceTest {
    private static SpectrumSettings hann(double resolution) {
        return SpectrumSettings.withDefaults().withResolution(resolution);
    }

    /** {@code scipy.signal.spectrogram}, both scalings, even and odd blocks. */
    @ParameterizedTest
    @ValueSource(ints = {64, 75})
    void mapsAgreeWithSciPy(int block) {
        Reference scipy = Reference.of("scipy-maps.txt");
        Spectrogram map = Spectrogram.of(Waveform.ofSi(Quantity.ACCELERATION, 1000, scipy.row("samples")),
                hann(1000.0 / block));
        double[] squares = new double[map.blocks() * map.lines()];
        double[] densities = new double[squares.length];
        double[] times = new double[map.blocks()];
        for (int b = 0; b < map.blocks(); b++) {
            times[b] = map.timeSeconds(b);
            for (int k = 0; k < map.lines(); k++) {
                squares[b * map.lines() + k] = map.rms(b, k) * map.rms(b, k);
                densities[b * map.lines() + k] = map.density(b, k);
            }
        }
        scipy.assertRow("spectrum." + block, squares, 1e-9);
        scipy.assertRow("density." + block, densities, 1e-9);
        scipy.assertRow("times." + block, times, 1e-9);
    }

    /** {@code scipy.signal.stft} without continued ends; its lines are √2 below the one-sided rms lines here. */
    @Test
    void complexLinesAgreeWithSciPy() {
        Reference scipy = Reference.of("scipy-maps.txt");
        double[] x = scipy.row("samples");
        double mean = Arrays.stream(x).average().orElseThrow();
        double[] centred = Arrays.stream(x).map(v -> v - mean).toArray();
        SpectrumPlan.Worker worker = SpectrumPlan.of(64, Window.hann()).newWorker();
        int blocks = (500 - 64) / 32 + 1;
        double[] re = new double[33 * blocks];
        double[] im = new double[33 * blocks];
        for (int b = 0; b < blocks; b++) {
            double[] lines = worker.complexLines(centred, 32 * b, new double[66]);
            for (int k = 0; k < 33; k++) {
                double factor = k == 0 || k == 32 ? 1 : 1 / Math.sqrt(2);
                re[33 * b + k] = factor * lines[2 * k];
                im[33 * b + k] = factor * lines[2 * k + 1];
            }
        }
        scipy.assertRow("stft.re", re, 1e-9);
        scipy.assertRow("stft.im", im, 1e-9);
    }

    /** {@code scipy.signal.find_peaks} on the same averaged spectrum finds the same lines. */
    @Test
    void peaksAreTheLocalMaximaThatSciPyFinds() {
        Reference scipy = Reference.of("scipy-peaks.txt");
        Spectrum spectrum = Spectrum.of(Waveform.ofSi(Quantity.ACCELERATION, 1000, scipy.row("samples")), hann(10));
        int[] found = spectrum.peaks(100).stream().mapToInt(p -> (int) Math.rint(p.frequencyHertz() / 10)).sorted()
                .toArray();
        double[] expected = scipy.row("lines");
        // SciPy's slice can't see a peak on its first and last line; half a bin of interpolation may round to a
        // neighbour.
        int matched = 0;
        for (double line : expected) {
            matched += Arrays.stream(found).anyMatch(f -> Math.abs(f - line) <= 1) ? 1 : 0;
        }
        assertEquals(expected.length, matched);
        assertTrue(found.length - expected.length <= 2, found.length + " against " + expected.length);
    }

    @Test
    void averagingModesKeepTheirDefinitions() {
        double[] x = new double[300];
        for (int i = 0; i < 300; i++) {
            x[i] = (i < 100 ? 1 : i < 200 ? 3 : 2) * Math.cos(2 * Math.PI * i / 10);
        }
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, 100, x);
        SpectrumSettings settings = hann(1).withWindow(Window.rectangular()).withOverlap(0);
        assertEquals(Math.sqrt((1 + 9 + 4) / 6.0), line(wave, settings), 1e-12);
        assertEquals(3 / Math.sqrt(2), line(wave, settings.withAveraging(Averaging.peakHold())), 1e-12);
        assertEquals(2 / Math.sqrt(2), line(wave, settings.withAveraging(Averaging.vector())), 1e-12);
        double forgetting = 0.25 * 4 + 0.75 * (0.25 * 9 + 0.75 * 1);
        assertEquals(Math.sqrt(forgetting / 2), line(wave, settings.withAveraging(Averaging.exponential(0.25))), 1e-12);
        assertThrows(IllegalStateException.class,
                () -> Spectrum.of(wave, settings.withAveraging(Averaging.peakHold())).equivalentAverages());
    }

    private static double line(Waveform wave, SpectrumSettings settings) {
        return Spectrum.of(wave, settings).amplitude(10, Detector.RMS);
    }

    /** A tone out of step with the blocks averages out as a vector: by 1/n for phases that go round. */
    @Test
    void vectorAveragingKeepsOnlyWhatIsInStep() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 1000, 10_000).tone(1, 50, 0.4).tone(1, 120.1, 0)
                .waveform();
        Spectrum spectrum = Spectrum.of(wave, hann(1).withOverlap(0).withAveraging(Averaging.vector()));
        assertEquals(1, spectrum.amplitude(50, Detector.ZERO_TO_PEAK), 1e-3);
        assertEquals(0, spectrum.amplitude(120, Detector.ZERO_TO_PEAK), 0.02);
    }

    /**
     * Independent blocks without overlap: n averages. Hann with half overlap: P. D. Welch 1967 gives n·0.947 for many.
     */
    @Test
    void equivalentAveragesFollowWelch() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 1000, 100_000).noise(1, 1).waveform();
        assertEquals(100, Spectrum.of(wave, hann(1).withOverlap(0)).equivalentAverages(), 1e-9);
        Spectrum half = Spectrum.of(wave, hann(1));
        assertEquals(199 / (1 + 2.0 / 36), half.equivalentAverages(), 0.1);
    }

    /** {@code scipy.stats.chi2.ppf}; and in simulation 95 % of the intervals hold the truth. */
    @Test
    void confidenceIntervalHoldsTheTruth() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 1000, 4000).noise(1, 9).waveform();
        Spectrum one = Spectrum.of(wave, hann(0.25).withOverlap(0));
        double[] chi = Reference.of("scipy-statistics.txt").row("chi2.2.0");
        assertEquals(2 * one.density(100) / chi[2], one.densityInterval(100, 0.95).lower(), 1e-9 * one.density(100));
        assertEquals(2 * one.density(100) / chi[0], one.densityInterval(100, 0.95).upper(), 1e-6 * one.density(100));
        int inside = 0;
        int all = 0;
        double truth = 2.0 / 1000;
        for (long seed = 1; seed <= 60; seed++) {
            Spectrum spectrum = Spectrum.of(Synthesis.silence(Quantity.ACCELERATION, 1000, 8000).noise(1, seed)
                    .waveform(),
                    hann(2));
            for (int k = 5; k < 240; k += 5) {
                ConfidenceInterval interval = spectrum.densityInterval(k, 0.95);
                inside += interval.lower() <= truth && truth <= interval.upper() ? 1 : 0;
                all++;
            }
        }
        assertEquals(0.95, (double) inside / all, 0.015);
    }

    /** Parseval: the energy of a transient in the block. */
    @Test
    void energyDensityAddsUpToTheEnergy() {
        Waveform burst = Synthesis.silence(Quantity.ACCELERATION, 1000, 1000)
                .impacts(ImpactTrain.of(1, 5, 120, 0.05), 1)
                .waveform();
        Spectrum spectrum = Spectrum.of(burst, hann(1).withWindow(Window.rectangular()));
        double energy = 0;
        for (int k = 1; k < spectrum.lines(); k++) {
            energy += spectrum.energyDensity(k) * spectrum.resolutionHertz();
        }
        double rms = burst.rms().si();
        assertEquals(rms * rms * 1.0, energy, 1e-10);
        assertEquals("energy density needs a spectrum of one block: 3", assertThrows(IllegalStateException.class,
                () -> Spectrum.of(burst, hann(2)).energyDensity(3)).getMessage());
    }

    @Test
    void zoomTellsCloseLinesApart() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_800, 20 * 12_800).tone(1, 2500, 0)
                .tone(0.5, 2501, 1)
                .tone(30, 400, 0).noise(0.02, 1).waveform();
        ZoomSpectrum zoom = ZoomSpectrum.of(wave, Band.of(2480, 2520), hann(0.1));
        assertEquals(0.1, zoom.resolutionHertz(), 0.02);
        assertEquals(2480, zoom.frequencyHertz(0), 0.06);
        assertEquals(1 / Math.sqrt(2), largest(zoom, 2499.8, 2500.2), 0.1);
        assertEquals(0.5 / Math.sqrt(2), largest(zoom, 2500.8, 2501.2), 0.05);
        assertEquals(0, largest(zoom, 2500.4, 2500.6), 0.02);
        assertTrue(zoom.blocks() > 1);
        assertEquals(2.0 * 0.02 * 0.02 / 12_800, zoom.density(20), 2.0 * 0.02 * 0.02 / 12_800 * 1.5);
    }

    private static double largest(ZoomSpectrum zoom, double from, double to) {
        double largest = 0;
        for (int k = 0; k < zoom.lines(); k++) {
            if (zoom.frequencyHertz(k) >= from && zoom.frequencyHertz(k) <= to) {
                largest = Math.max(largest, zoom.amplitude(k, Detector.RMS));
            }
        }
        return largest;
    }

    /** J. Antoni 2006: 0 for stationary normal noise, -1 for a tone, large in the band where impacts ring. */
    @Test
    void spectralKurtosisTellsNoiseTonesAndImpactsApart() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_800, 128_000).noise(1, 1).tone(5, 1000, 0)
                .impacts(ImpactTrain.of(11, 40, 4000, 0.02), 2).waveform();
        Spectrogram map = Spectrogram.of(wave, hann(100));
        double[] kurtosis = map.spectralKurtosis();
        assertEquals(-1, kurtosis[10], 0.1);
        Waveform noise = Synthesis.silence(Quantity.ACCELERATION, 12_800, 128_000).noise(1, 1).waveform();
        assertEquals(0, Arrays.stream(Spectrogram.of(noise, hann(100)).spectralKurtosis(), 2, 62).average()
                .orElseThrow(),
                0.02);
        assertTrue(kurtosis[40] > 2, "at the resonance " + kurtosis[40]);
    }

    @Test
    void resolutionIsAskedInLinesHertzOrOrders() {
        SpectrumSettings settings = SpectrumSettings.withDefaults();
        assertEquals(0.625, settings.withLines(1600, 1000).resolutionHertz());
        assertEquals(0.5, settings.withOrders(0.02, RotationSpeed.ofHertz(25)).resolutionHertz(), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> settings.withLines(0, 1000));
    }

    @Test
    void blockAndStepFollowFromResolutionAndOverlap() {
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, 1000, new double[100]);
        assertEquals(83, hann(12).blockLength(wave)); // 83.3
        assertEquals(100, hann(1).blockLength(wave));
        assertEquals(1000, hann(1).blockLength(1000, 5000));
        assertEquals(Integer.MAX_VALUE, hann(1e-300).blockLength(1000, Integer.MAX_VALUE));
        assertEquals(2, hann(500).blockLength(wave));
        assertEquals(42, hann(12).step(83)); // half of 83 shared, rounded down: 41
        assertEquals(1, hann(12).withOverlap(0.95).step(1));
        assertEquals(83, hann(12).withOverlap(0).step(83));
        assertRefused("longest must be at least 1: 0", () -> hann(1).blockLength(1000, 0));
        assertRefused("sampleRateHertz must be finite and > 0 Hz: NaN", () -> hann(1).blockLength(Double.NaN, 9));
        assertRefused("blockLength must be at least 1: 0", () -> hann(1).step(0));
    }

    /** All that averages in blocks asks the settings. */
    @Test
    void aResolutionAboveHalfTheSampleRateIsRefusedEverywhere() {
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, 1000, new double[100]);
        String message = "resolutionHertz must be at most half the sample rate, 500.0 Hz: 600.0";
        assertRefused(message, () -> Spectrum.of(wave, hann(600)));
        assertRefused(message, () -> Spectrogram.of(wave, hann(600)));
        assertRefused(message, () -> FullSpectrum.of(wave, wave, hann(600)));
        assertRefused(message, () -> FrequencyResponse.of(wave, wave, hann(600)));
        assertRefused(message, () -> SpectrumMeter.of(Quantity.ACCELERATION, 1000, hann(600)));
    }

    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }

    /**
     * The scatter of the frequency of a tone in noise against the bound of Cramér and Rao, var(f) ≥
     * 12/(SNR·(2π)²·N·(N²-1))·fs² with SNR = A²/(2σ²): S. M. Kay, Fundamentals of Statistical Signal Processing, 1993,
     * section 3.11; D. C. Rife, R. R. Boorstyn, IEEE Trans. Inf. Theory 20 (1974) 591-598. Standard deviation within
     * twice the bound at 20 dB and 40 dB; and at 40 dB within 0.02 bin and 0.5 %.
     */
    @ParameterizedTest
    @CsvSource({"20", "40"})
    void frequencyScattersLessThanTwiceTheBound(double decibels) {
        int n = 1024;
        double fs = 1024;
        double sigma = Math.sqrt(0.5 / Math.pow(10, decibels / 10));
        double bound = Math.sqrt(12 / (Math.pow(10, decibels / 10) * 4 * Math.PI * Math.PI * n * ((double) n * n - 1)))
                * fs;
        Random random = new Random(17);
        double squares = 0;
        double worst = 0;
        double worstAmplitude = 0;
        int tries = 400;
        for (int i = 0; i < tries; i++) {
            double hertz = 100 + random.nextDouble();
            Waveform wave = Synthesis.silence(Quantity.ACCELERATION, fs, n).tone(1, hertz, 6.28 * random.nextDouble())
                    .noise(sigma, i).waveform();
            SpectralPeak peak = Spectrum.of(wave, hann(1)).peaks(1).get(0);
            double error = peak.frequencyHertz() - hertz;
            squares += error * error;
            worst = Math.max(worst, Math.abs(error));
            worstAmplitude = Math.max(worstAmplitude, Math.abs(peak.level().si() * Math.sqrt(2) - 1));
        }
        double ratio = Math.sqrt(squares / tries) / bound;
        assertTrue(ratio < 2, "standard deviation over bound: " + ratio);
        assertTrue(ratio > 0.9, "better than possible: " + ratio);
        if (decibels == 40) {
            assertTrue(worst < 0.02, "bins " + worst);
            // Six standard deviations of the amplitude's own bound, σ·√(2/N), times the window's noise bandwidth.
            assertTrue(worstAmplitude < 0.005, "amplitude " + worstAmplitude);
        }
    }
}
