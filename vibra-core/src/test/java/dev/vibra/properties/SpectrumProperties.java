package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.cepstrum.Cepstrum;
import dev.vibra.octave.OctaveBand;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Averaging;
import dev.vibra.spectrum.ConfidenceInterval;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.spectrum.Spectrogram;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.spectrum.ZoomSpectrum;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.window.Window;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Laws of spectra, windows, cepstra and octave bands. */
class SpectrumProperties {
    @Provide
    Arbitrary<Window> windows() {
        return Arbitraries.of(Window.rectangular(), Window.hann(), Window.hamming(), Window.triangular(),
                Window.blackman(), Window.nuttall(), Window.kaiser(8), Window.tukey(0.3), Window.blackmanHarris(),
                Window.flatTop());
    }

    @Provide
    Arbitrary<Window> alsoOneSided() {
        return Arbitraries.oneOf(windows(), Arbitraries.of(Window.exponential(0.05), Window.force(0.4)));
    }

    private static SpectrumSettings settings(Window window, double overlap) {
        return SpectrumSettings.withDefaults().withWindow(window).withResolution(4).withOverlap(overlap);
    }

    /** Parseval block by block: Σ density·Δf = mean over blocks of Σ(w·(x - mean))²/Σw². */
    @Property(tries = 60)
    void averagedDensityHoldsTheWindowedPower(@ForAll("windows") Window window, @ForAll long seed,
            @ForAll @IntRange(min = 256, max = 3000) int length) {
        double[] x = Signals.noise(length, seed);
        Spectrum spectrum = Spectrum.of(Signals.wave(1024, x), settings(window, 0.5));
        double[] w = window.samples(256);
        double sumOfSquares = java.util.Arrays.stream(w).map(v -> v * v).sum();
        double expected = 0;
        int blocks = 0;
        for (int from = 0; from + 256 <= length; from += 128) {
            double mean = 0;
            for (int i = 0; i < 256; i++) {
                mean += x[from + i] / 256;
            }
            for (int i = 0; i < 256; i++) {
                expected += w[i] * w[i] * (x[from + i] - mean) * (x[from + i] - mean) / sumOfSquares;
            }
            blocks++;
        }
        double power = java.util.Arrays.stream(spectrum.densities()).sum() * spectrum.resolutionHertz();
        assertEquals(blocks, spectrum.blocks());
        assertEquals(expected / blocks, power, 1e-10 * power);
    }

    @Property(tries = 60)
    void bandLevelsAddUpByPower(@ForAll("windows") Window window, @ForAll long seed,
            @ForAll @IntRange(min = 1, max = 60) int first, @ForAll @IntRange(min = 62, max = 120) int last) {
        Spectrum spectrum = Spectrum.of(Signals.wave(1024, Signals.noise(2000, seed)), settings(window, 0.5));
        double split = 61.5 * spectrum.resolutionHertz();
        double below = spectrum.bandLevel(Band.of(4.0 * first, split)).si();
        double above = spectrum.bandLevel(Band.of(split, 4.0 * last)).si();
        double both = spectrum.bandLevel(Band.of(4.0 * first, 4.0 * last)).si();
        assertEquals(both * both, below * below + above * above, 1e-12 * both * both);
    }

    /** Asked for all, every maximum is solved; asked for a few, only those that can be among them. */
    @Property(tries = 60)
    void largestPeaksAreTheFirstOfAll(@ForAll("windows") Window window, @ForAll long seed,
            @ForAll @IntRange(min = 1, max = 40) int count, @ForAll @DoubleRange(min = 0, max = 300) double from,
            @ForAll @DoubleRange(min = 4, max = 300) double width) {
        Spectrum measured = Spectrum.of(Signals.wave(1024, Signals.noise(2000, seed)), settings(window, 0.5));
        for (Spectrum spectrum : List.of(measured, measured.velocity(), measured.displacement())) {
            List<SpectralPeak> all = spectrum.peaks(spectrum.lines());
            assertEquals(all.stream().limit(count).toList(), spectrum.peaks(count));
            Band band = Band.of(from, from + width);
            List<SpectralPeak> inBand = all.stream().filter(peak -> band.contains(peak.frequencyHertz())).toList();
            assertEquals(inBand.stream().limit(count).toList(), spectrum.peaks(count, band));
            assertEquals(inBand.stream().findFirst(),
                    spectrum.peakNear(0.5 * (band.lowestHertz() + band.highestHertz()), 0.5 * band.widthHertz()));
        }
    }

    /** On this the choice of the maxima to solve rests. */
    @Property(tries = 40)
    void responseWithinHalfABinStaysAboveThatAtItsEdge(@ForAll("alsoOneSided") Window window) {
        for (double distance = 0; distance <= 0.5; distance += 0.01) {
            double response = window.response(distance);
            assertTrue(response >= 0.99 * Math.min(1, window.response(0.5)) && response <= 1.01, window + " " + response);
        }
    }

    @Property(tries = 40)
    void averagesAreOrderedVectorRmsPeakHold(@ForAll long seed, @ForAll @IntRange(min = 600, max = 3000) int length,
            @ForAll @DoubleRange(min = 0.05, max = 1) double weight) {
        Waveform wave = Signals.wave(1024, Signals.noise(length, seed));
        SpectrumSettings settings = settings(Window.hann(), 0.5);
        double[] vector = Spectrum.of(wave, settings.withAveraging(Averaging.vector())).amplitudes(Detector.RMS);
        double[] rms = Spectrum.of(wave, settings).amplitudes(Detector.RMS);
        double[] peak = Spectrum.of(wave, settings.withAveraging(Averaging.peakHold())).amplitudes(Detector.RMS);
        double[] exponential = Spectrum.of(wave, settings.withAveraging(Averaging.exponential(weight)))
                .amplitudes(Detector.RMS);
        for (int k = 0; k < rms.length; k++) {
            assertTrue(vector[k] <= rms[k] + 1e-14);
            assertTrue(rms[k] <= peak[k] + 1e-14);
            assertTrue(exponential[k] <= peak[k] + 1e-14);
        }
    }

    @Property(tries = 40)
    void densityIntervalsHoldTheEstimateAndNest(@ForAll long seed,
            @ForAll @DoubleRange(min = 0.5, max = 0.9) double narrow,
            @ForAll @IntRange(min = 1500, max = 4000) int length, @ForAll @IntRange(min = 1, max = 127) int line) {
        Spectrum spectrum = Spectrum.of(Signals.wave(1024, Signals.normal(length, seed)), settings(Window.hann(), 0.5));
        ConfidenceInterval inner = spectrum.densityInterval(line, narrow);
        ConfidenceInterval outer = spectrum.densityInterval(line, 0.99);
        double estimate = spectrum.density(line);
        assertTrue(inner.lower() < estimate && estimate < inner.upper());
        assertTrue(outer.lower() < inner.lower() && inner.upper() < outer.upper());
        assertTrue(spectrum.equivalentAverages() >= 1 && spectrum.equivalentAverages() <= spectrum.blocks() + 1e-9);
    }

    @Property(tries = 40)
    void spectraOfMotionConvertThereAndBack(@ForAll long seed, @ForAll @IntRange(min = 1, max = 128) int line) {
        Spectrum spectrum = Spectrum.of(Signals.wave(1024, Signals.noise(1500, seed)), settings(Window.hann(), 0.5));
        double omega = 2 * Math.PI * spectrum.frequencyHertz(line);
        double a = spectrum.amplitude(line, Detector.RMS);
        assertEquals(a, spectrum.velocity().amplitude(line, Detector.RMS) * omega, 1e-12 * a);
        assertEquals(a, spectrum.displacement().amplitude(line, Detector.RMS) * omega * omega, 1e-12 * a);
        assertEquals(a, spectrum.displacement().acceleration().amplitude(line, Detector.RMS), 1e-12 * a);
        assertEquals(2 * Math.sqrt(2) * a, spectrum.amplitude(line, Detector.PEAK_TO_PEAK), 1e-12 * a);
    }

    /** The mean over blocks of the time-frequency map is the averaged spectrum of the same settings. */
    @Property(tries = 40)
    void spectrogramAveragesToTheSpectrum(@ForAll long seed, @ForAll @IntRange(min = 600, max = 3000) int length,
            @ForAll @DoubleRange(min = 0, max = 0.9) double overlap) {
        Waveform wave = Signals.wave(1024, Signals.noise(length, seed));
        Spectrogram map = Spectrogram.of(wave, settings(Window.hann(), overlap));
        Spectrum spectrum = Spectrum.of(wave, settings(Window.hann(), overlap));
        assertEquals(spectrum.blocks(), map.blocks());
        for (int k = 0; k < spectrum.lines(); k += 7) {
            double mean = 0;
            for (int b = 0; b < map.blocks(); b++) {
                mean += map.density(b, k) / map.blocks();
            }
            assertEquals(spectrum.density(k), mean, 1e-12 + 1e-9 * mean);
        }
    }

    @Property(tries = 40)
    void zoomReadsATonesAmplitude(@ForAll @DoubleRange(min = 210, max = 290) double hertz,
            @ForAll @DoubleRange(min = 0.1, max = 10) double amplitude) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 1000, 16_000).tone(amplitude, hertz, 0.4).waveform();
        ZoomSpectrum zoom = ZoomSpectrum.of(wave, Band.of(200, 300),
                SpectrumSettings.withDefaults().withWindow(Window.flatTop()).withResolution(0.25));
        int best = 0;
        for (int k = 0; k < zoom.lines(); k++) {
            best = zoom.amplitude(k, Detector.RMS) > zoom.amplitude(best, Detector.RMS) ? k : best;
        }
        assertEquals(hertz, zoom.frequencyHertz(best), 0.5 * zoom.resolutionHertz() + 1e-9 + 0.05);
        // A flat top between two lines reads within 0.01 dB; the band edge of the whole recording leaks far less
        // than 1 %.
        assertEquals(amplitude, zoom.amplitude(best, Detector.ZERO_TO_PEAK), 0.01 * amplitude);
    }

    @Property(tries = 60)
    void windowsAreBoundedAndSymmetric(@ForAll("windows") Window window,
            @ForAll @IntRange(min = 2, max = 800) int length) {
        double[] closed = window.closedSamples(length);
        assertArrayEquals(closed, Signals.reversed(closed), 1e-12);
        // The coefficients of a flat top are printed for a mean of 1; at ±0.5 they reach 1 + 1.93 + 1.29 + 0.388 +
        // 0.028.
        boolean flatTop = window.equals(Window.flatTop());
        for (double w : closed) {
            assertTrue(w <= (flatTop ? 4.65 : 1 + 1e-6) && w >= (flatTop ? -0.4 : -1e-12), "weight " + w);
        }
        assertTrue(window.noiseBandwidth() >= 1 - 1e-9);
        assertTrue(window.coherentGain() > 0 && window.coherentGain() <= 1 + 1e-9);
        assertEquals(1, window.response(0), 1e-9);
        assertEquals(1, window.overlapCorrelation(1), 1e-6);
    }

    /** Cauchy-Schwarz. */
    @Property(tries = 60)
    void overlapCorrelationIsAtMostOne(@ForAll("windows") Window window,
            @ForAll @DoubleRange(min = 0, max = 1) double overlap) {
        assertTrue(Math.abs(window.overlapCorrelation(overlap)) <= 1 + 1e-6);
    }

    /** The logarithm makes a factor an addend at quefrency 0. */
    @Property(tries = 60)
    void cepstrumIsSymmetricAndScalesAtZeroOnly(@ForAll long seed, @ForAll @IntRange(min = 8, max = 600) int length,
            @ForAll @DoubleRange(min = 0.01, max = 100) double factor) {
        double[] x = Signals.noise(length, seed);
        Cepstrum before = Cepstrum.of(Signals.wave(1000, x));
        Cepstrum after = Cepstrum.of(Signals.wave(1000, java.util.Arrays.stream(x).map(v -> factor * v).toArray()));
        assertEquals(before.at(0) + Math.log(factor), after.at(0), 1e-9);
        for (int i = 1; i < length; i++) {
            assertEquals(before.at(i), after.at(i), 1e-9);
            assertEquals(before.at(i), before.at(length - i), 1e-9);
        }
    }

    /** An echo of strength a after d samples is a peak of about a/2 at d (its series is a - a²/2 …). */
    @Property(tries = 40)
    void cepstrumFindsAnEcho(@ForAll long seed, @ForAll @IntRange(min = 40, max = 200) int delay,
            @ForAll @DoubleRange(min = 0.4, max = 0.8) double strength) {
        double[] direct = Signals.normal(4096, seed);
        double[] both = direct.clone();
        for (int i = 0; i < both.length; i++) {
            both[i] += strength * direct[Math.floorMod(i - delay, both.length)];
        }
        Cepstrum cepstrum = Cepstrum.of(Signals.wave(1000, both));
        assertEquals(delay / 1000.0, cepstrum.largestSeconds(0.02, 0.25), 1e-9);
    }

    @Property(tries = 100)
    void octaveBandsTileTheAxis(@ForAll @IntRange(min = 1, max = 24) int fraction,
            @ForAll @IntRange(min = -100, max = 100) int index) {
        OctaveBand band = new OctaveBand(fraction, index);
        OctaveBand next = new OctaveBand(fraction, index + 1);
        assertEquals(1, band.edges().highestHertz() / next.edges().lowestHertz(), 1e-12);
        assertEquals(1, band.midbandHertz() / Math.sqrt(band.edges().lowestHertz() * band.edges().highestHertz()),
                1e-12);
        assertEquals(Math.pow(10, 0.3), new OctaveBand(fraction, index + fraction).midbandHertz() / band.midbandHertz(),
                1e-10);
    }

    @Property(tries = 60)
    void octaveBandsOfARangeAreThoseWithTheirMiddleInIt(@ForAll @IntRange(min = 1, max = 24) int fraction,
            @ForAll @DoubleRange(min = 1, max = 100) double lowest,
            @ForAll @DoubleRange(min = 200, max = 20000) double highest) {
        List<OctaveBand> bands = OctaveBand.within(fraction, Band.of(lowest, highest));
        for (int i = 0; i < bands.size(); i++) {
            double middle = bands.get(i).midbandHertz();
            assertTrue(middle >= lowest * (1 - 1e-8) && middle <= highest * (1 + 1e-8));
            assertEquals(bands.get(0).index() + i, bands.get(i).index());
        }
        OctaveBand before = new OctaveBand(fraction, bands.get(0).index() - 1);
        OctaveBand after = new OctaveBand(fraction, bands.get(bands.size() - 1).index() + 1);
        assertTrue(before.midbandHertz() < lowest && after.midbandHertz() > highest);
    }
}
