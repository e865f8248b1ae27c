package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.envelope.Envelope;
import dev.vibra.filter.CascadeFilter;
import dev.vibra.filter.FilterDesign;
import dev.vibra.filter.FirDesign;
import dev.vibra.filter.FirFilter;
import dev.vibra.filter.SectionCascade;
import dev.vibra.integration.BandLimitingChain;
import dev.vibra.integration.TimeDifferentiator;
import dev.vibra.integration.TimeIntegrator;
import dev.vibra.level.Moments;
import dev.vibra.level.PeakHold;
import dev.vibra.level.RunningMoments;
import dev.vibra.level.RunningRms;
import dev.vibra.meter.EnvelopeMeter;
import dev.vibra.meter.LevelMeter;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Averaging;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumMeter;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.window.Window;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;

/** A stream cut anywhere gives what the whole gives. */
class StreamingProperties {
    @Provide
    Arbitrary<Averaging> averagings() {
        return Arbitraries.of(Averaging.rms(), Averaging.vector(), Averaging.peakHold(), Averaging.exponential(0.3));
    }

    private static SectionCascade bandPass() {
        return bandPass(5);
    }

    private static SectionCascade bandPass(int sections) {
        return FilterDesign.chebyshev1(sections, 1).bandPass(Band.of(30, 220), 1000);
    }

    @Property(tries = 15)
    void levelMeterReadsWhatTheRecordingReads(@ForAll long seed,
            @ForAll @DoubleRange(min = 5, max = 20) double lowest) {
        Band band = Band.of(lowest, 500);
        Waveform wave = Signals.wave(3200, Signals.noise(9000, seed));
        LevelMeter meter = LevelMeter.withDefaults().withBand(band).at(3200);
        Signals.pushInBlocks(meter::push, wave.samples(), seed);
        Waveform velocity = wave.throughSeverityChain(Quantity.VELOCITY, band);
        // Promised is 1e-9; one-pass and two-pass moments differ by rounding only.
        assertEquals(1, meter.velocity().rmsSi() / velocity.rms().si(), 1e-9);
        assertEquals(1, meter.velocity().peakSi() / velocity.peak().si(), 1e-9);
        assertEquals(1, meter.acceleration().rmsSi() / wave.rms().si(), 1e-9);
        assertEquals(1, meter.acceleration().peakSi() / wave.peak().si(), 1e-9);
        assertEquals(1, meter.acceleration().crestFactor() / wave.crestFactor(), 1e-9);
        assertEquals(1, meter.acceleration().kurtosis() / wave.kurtosis(), 1e-9);
    }

    @Property(tries = 40)
    void spectrumMeterReadsWhatTheRecordingReads(@ForAll long seed, @ForAll("averagings") Averaging averaging,
            @ForAll @DoubleRange(min = 0, max = 0.9) double overlap,
            @ForAll @IntRange(min = 256, max = 4000) int length) {
        SpectrumSettings settings = SpectrumSettings.withDefaults().withResolution(1024 / 256.0).withOverlap(overlap)
                .withAveraging(averaging);
        double[] samples = Signals.noise(length, seed);
        SpectrumMeter meter = SpectrumMeter.of(Quantity.ACCELERATION, 1024, settings);
        Signals.pushInBlocks(meter::push, samples, seed);
        Spectrum whole = Spectrum.of(Signals.wave(1024, samples), settings);
        assertEquals(whole.blocks(), meter.blocks());
        Signals.assertClose(whole.amplitudes(Detector.RMS), meter.spectrum().amplitudes(Detector.RMS), 1e-12);
    }

    @Property(tries = 40)
    void envelopeMeterAveragesTheEnvelopesOfItsFrames(@ForAll long seed, @ForAll @IntRange(min = 1, max = 6) int frames,
            @ForAll @IntRange(min = 0, max = 511) int rest) {
        Band band = Band.of(200, 300);
        double[] samples = Signals.noise(512 * frames + rest, seed);
        EnvelopeMeter meter = EnvelopeMeter.of(Quantity.ACCELERATION, band, 512, 1000);
        Signals.pushInBlocks(meter::push, samples, seed);
        double mean = 0;
        for (int f = 0; f < frames; f++) {
            Waveform frame = Signals.wave(1000, samples).part(512 * f, 512);
            mean += Envelope.of(frame, band).moments().mean() / frames;
        }
        assertEquals(mean, meter.mean(), 1e-12);
        assertEquals(frames, meter.spectrum().blocks());
    }

    @Property(tries = 60)
    void firFilterForgetsNoCut(@ForAll long seed, @ForAll @IntRange(min = 1, max = 1200) int taps) {
        double[] x = Signals.noise(2500, seed);
        assertArrayEquals(Signals.atOnce(FirDesign.lowPass(taps, 120, 1000, Window.hamming())::process, x),
                Signals.inBlocks(FirDesign.lowPass(taps, 120, 1000, Window.hamming())::process, x, seed));
    }

    /** A non-recursive filter is the convolution sum with its taps. */
    @Property(tries = 60)
    void firFilterIsAConvolution(@ForAll long seed, @ForAll @IntRange(min = 1, max = 1200) int taps) {
        double[] h = Signals.noise(taps, seed + 1);
        double[] x = Signals.noise(2000, seed);
        double[] expected = new double[x.length];
        for (int n = 0; n < x.length; n++) {
            for (int k = 0; k <= Math.min(n, taps - 1); k++) {
                expected[n] += h[k] * x[n - k];
            }
        }
        Signals.assertClose(expected, Signals.atOnce(FirFilter.of(h)::process, x), 1e-13);
        Signals.assertClose(expected, FirFilter.of(h).filtered(x), 1e-13);
    }

    /** Many blocks of the transform, with a rest. */
    @Property(tries = 10)
    void aWholeSignalIsFilteredAsItsStream(@ForAll long seed, @ForAll @IntRange(min = 60, max = 3000) int taps,
            @ForAll @IntRange(min = 0, max = 30_000) int length) {
        double[] x = Signals.noise(length, seed);
        FirFilter filter = FirFilter.of(Signals.noise(taps, seed + 1));
        Signals.assertClose(Signals.atOnce(filter::process, x), filter.filtered(x), 1e-12);
    }

    @Property(tries = 60)
    void cascadeFilterForgetsNoCut(@ForAll long seed, @ForAll @IntRange(min = 1, max = 9) int sections) {
        double[] x = Signals.noise(2500, seed);
        // The same operations in the same order: the very same numbers.
        assertArrayEquals(Signals.atOnce(bandPass(sections).newFilter()::process, x),
                Signals.inBlocks(bandPass(sections).newFilter()::process, x, seed));
    }

    /** Sections run together give what they give one behind the other. */
    @Property(tries = 60)
    void aCascadeIsItsSectionsInSeries(@ForAll long seed, @ForAll @IntRange(min = 1, max = 9) int sections) {
        double[] x = Signals.noise(500, seed);
        SectionCascade cascade = bandPass(sections);
        double[] expected = x;
        for (int s = 0; s < sections; s++) {
            expected = Signals.atOnce(SectionCascade.of(cascade.section(s)).newFilter()::process, expected);
        }
        assertArrayEquals(expected, Signals.atOnce(cascade.newFilter()::process, x));
    }

    @Property(tries = 30)
    void resetFilterIsANewFilter(@ForAll long seed) {
        CascadeFilter used = bandPass().newFilter();
        Signals.atOnce(used::process, Signals.noise(300, seed + 1));
        used.reset();
        double[] x = Signals.noise(300, seed);
        assertArrayEquals(Signals.atOnce(bandPass().newFilter()::process, x), Signals.atOnce(used::process, x));
    }

    @Property(tries = 40)
    void settledFilterPassesAConstantByItsGainAtZero(@ForAll @DoubleRange(min = -100, max = 100) double value,
            @ForAll @IntRange(min = 1, max = 8) int order) {
        CascadeFilter filter = FilterDesign.butterworth(order).lowPass(100, 1000).newFilter();
        filter.settleAt(value);
        double[] x = new double[50];
        java.util.Arrays.fill(x, value);
        assertArrayEquals(x, Signals.atOnce(filter::process, x), 1e-10 * Math.abs(value) + 1e-15);
    }

    @Property(tries = 30)
    void severityChainForgetsNoCut(@ForAll long seed, @ForAll @DoubleRange(min = 2, max = 20) double lowest) {
        Band band = Band.of(lowest, 1000);
        double[] x = Signals.noise(4000, seed);
        double[] whole = Signals.atOnce(
                BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, band, 6400)::process, x);
        double[] cut = Signals.inBlocks(
                BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, band, 6400)::process, x, seed);
        assertArrayEquals(whole, cut);
    }

    @Property(tries = 40)
    void timeIntegratorForgetsNoCut(@ForAll long seed, @ForAll @IntRange(min = 1, max = 2) int integrations,
            @ForAll @DoubleRange(min = 0.5, max = 50) double corner) {
        double[] x = Signals.noise(3000, seed);
        assertArrayEquals(Signals.atOnce(TimeIntegrator.of(integrations, corner, 1000)::process, x),
                Signals.inBlocks(TimeIntegrator.of(integrations, corner, 1000)::process, x, seed));
    }

    @Property(tries = 40)
    void timeDifferentiatorForgetsNoCut(@ForAll long seed) {
        double[] x = Signals.noise(2000, seed);
        assertArrayEquals(Signals.atOnce(TimeDifferentiator.at(1000)::process, x),
                Signals.inBlocks(TimeDifferentiator.at(1000)::process, x, seed));
    }

    @Property(tries = 100)
    void runningMomentsAreMoments(@ForAll long seed, @ForAll @IntRange(min = 2, max = 3000) int length,
            @ForAll @DoubleRange(min = -20, max = 20) double shift) {
        double[] x = java.util.Arrays.stream(Signals.noise(length, seed)).map(v -> v + shift).toArray();
        RunningMoments running = new RunningMoments();
        Signals.pushInBlocks(running::push, x, seed);
        Moments whole = Moments.of(x);
        assertEquals(length, running.count());
        assertEquals(whole.mean(), running.mean(), 1e-12 * (1 + Math.abs(shift)));
        assertEquals(whole.rms(), running.rms(), 1e-9 * whole.rms());
        assertEquals(whole.peak(), running.peak(), 1e-9 * whole.peak());
        assertEquals(whole.peakToPeak(), running.peakToPeak(), 1e-12 * whole.peakToPeak());
        assertEquals(whole.skewness(), running.skewness(), 1e-8);
        assertEquals(whole.kurtosis(), running.kurtosis(), 1e-8 * whole.kurtosis());
    }

    @Property(tries = 60)
    void runningMomentsForgetNoCut(@ForAll long seed, @ForAll @IntRange(min = 2, max = 5000) int length) {
        double[] x = Signals.noise(length, seed);
        RunningMoments whole = new RunningMoments();
        whole.push(x, 0, length);
        RunningMoments cut = new RunningMoments();
        Signals.pushInBlocks((samples, from, n) -> {
            cut.push(samples, from, n);
            if (cut.count() > 0) {
                cut.mean(); // a reading on the way changes nothing
            }
        }, x, seed);
        assertArrayEquals(whole.snapshot().numbers(), cut.snapshot().numbers());
        assertEquals(whole.kurtosis(), cut.kurtosis());
    }

    /** A first sample far off, an offset that changes: what is added about one value must not lose the digits of others. */
    @Property(tries = 60)
    void runningMomentsKeepTheirDigits(@ForAll long seed, @ForAll @DoubleRange(min = -1e6, max = 1e6) double first,
            @ForAll @DoubleRange(min = -1e4, max = 1e4) double step) {
        double[] x = Signals.noise(6000, seed);
        x[0] = first;
        for (int i = 2500; i < x.length; i++) {
            x[i] += step;
        }
        RunningMoments running = new RunningMoments();
        running.push(x, 0, x.length);
        Moments whole = Moments.of(x);
        assertEquals(1, running.rms() / whole.rms(), 1e-11);
        assertEquals(1, running.kurtosis() / whole.kurtosis(), 1e-11);
        assertEquals(whole.skewness(), running.skewness(), 1e-11 * (1 + Math.abs(whole.skewness())));
    }

    @Property(tries = 100)
    void linearRunningRmsIsThatOfTheLastWindow(@ForAll long seed, @ForAll @IntRange(min = 1, max = 300) int window,
            @ForAll @IntRange(min = 1, max = 1000) int length) {
        double[] x = Signals.noise(length, seed);
        RunningRms running = RunningRms.linear(window / 1000.0, 1000);
        Signals.pushInBlocks(running::push, x, seed);
        int used = Math.min(window, length);
        double sum = 0;
        for (int i = length - used; i < length; i++) {
            sum += x[i] * x[i];
        }
        assertEquals(Math.sqrt(sum / used), running.rms(), 1e-9);
    }

    /** Samples of 1e-3 with transients up to 1e8 anywhere: read after each block, to rounding. */
    @Property(tries = 100)
    void noTransientSpoilsALinearRunningRms(@ForAll long seed, @ForAll @IntRange(min = 1, max = 300) int window,
            @ForAll @IntRange(min = 0, max = 12) int transients) {
        Random random = new Random(seed);
        double[] x = new double[1000];
        java.util.Arrays.setAll(x, i -> 1e-3 * random.nextGaussian());
        for (int t = 0; t < transients; t++) {
            x[random.nextInt(x.length)] = Math.pow(10, -3 + 11 * random.nextDouble());
        }
        RunningRms running = RunningRms.linear(window / 1000.0, 1000);
        for (int i = 0; i < x.length; i++) {
            running.push(x, i, 1);
            double sum = 0;
            for (int j = Math.max(0, i + 1 - window); j <= i; j++) {
                sum += x[j] * x[j];
            }
            double expected = Math.sqrt(sum / Math.min(window, i + 1));
            assertEquals(expected, running.rms(), 1e-13 * expected, "sample " + i);
        }
    }

    /** Closed form: a weight that falls by 1/e a time constant, over the whole past. */
    @Property(tries = 60)
    void exponentialRunningRmsIsItsWeightedSum(@ForAll long seed,
            @ForAll @DoubleRange(min = 0.001, max = 2) @Scale(4) double seconds) {
        double[] x = Signals.noise(800, seed);
        RunningRms running = RunningRms.exponential(seconds, 1000);
        Signals.pushInBlocks(running::push, x, seed);
        double keep = Math.exp(-1 / (1000 * seconds));
        double sum = 0;
        for (int age = 0; age < x.length; age++) {
            double value = x[x.length - 1 - age];
            sum += (1 - keep) * Math.pow(keep, age) * value * value;
        }
        assertEquals(Math.sqrt(sum), running.rms(), 1e-9);
    }

    @Property(tries = 60)
    void peakHoldIsTheLargestDecayedValue(@ForAll long seed,
            @ForAll @DoubleRange(min = 0.001, max = 5) @Scale(4) double seconds) {
        double[] x = Signals.noise(700, seed);
        PeakHold hold = PeakHold.of(seconds, 1000);
        Signals.pushInBlocks(hold::push, x, seed);
        double largest = 0;
        for (int age = 0; age < x.length; age++) {
            largest = Math.max(largest, Math.abs(x[x.length - 1 - age]) * Math.exp(-age / (1000 * seconds)));
        }
        assertEquals(largest, hold.peak(), 1e-10);
    }
}
