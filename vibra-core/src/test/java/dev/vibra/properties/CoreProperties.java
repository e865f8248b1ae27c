package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.integration.BandLimitingChain;
import dev.vibra.level.Moments;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.transform.ComplexTransform;
import dev.vibra.transform.RealTransform;
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

/** Laws that hold for all signals. */
class CoreProperties {
    private static final Band SEVERITY = Band.of(10, 1000);

    @Provide
    Arbitrary<Window> windows() {
        return Arbitraries.of(Window.rectangular(), Window.hann(), Window.hamming(), Window.blackmanHarris(),
                Window.flatTop());
    }

    private static double[] noise(int length, long seed) {
        return new Random(seed).doubles(length, -1, 1).toArray();
    }

    /** Parseval's theorem, for any length. */
    @Property(tries = 200)
    void energyOfSamplesAndLinesIsEqual(@ForAll @IntRange(min = 1, max = 3000) int length, @ForAll long seed) {
        double[] x = noise(length, seed);
        RealTransform transform = RealTransform.of(length);
        double[] spectrum = transform.forward(x, 0, new double[2 * transform.lines()]);
        double energy = 0;
        for (int k = 0; k < transform.lines(); k++) {
            double square = spectrum[2 * k] * spectrum[2 * k] + spectrum[2 * k + 1] * spectrum[2 * k + 1];
            energy += (k == 0 || 2 * k == length ? 1 : 2) * square / length;
        }
        double expected = java.util.Arrays.stream(x).map(v -> v * v).sum();
        assertEquals(expected, energy, 1e-11 * expected);
    }

    @Property(tries = 200)
    void inverseUndoesForward(@ForAll @IntRange(min = 1, max = 5000) int length, @ForAll long seed) {
        double[] x = noise(2 * length, seed);
        double[] y = x.clone();
        ComplexTransform transform = ComplexTransform.of(length);
        transform.forward(y, 0);
        transform.inverse(y, 0);
        assertArrayEquals(x, y, 1e-12);
    }

    @Property(tries = 100)
    void transformIsLinear(@ForAll @IntRange(min = 1, max = 2000) int length, @ForAll long seed,
            @ForAll @DoubleRange(min = -5, max = 5) double factor) {
        double[] x = noise(2 * length, seed);
        double[] y = noise(2 * length, seed + 1);
        double[] sum = new double[2 * length];
        for (int i = 0; i < sum.length; i++) {
            sum[i] = x[i] + factor * y[i];
        }
        ComplexTransform transform = ComplexTransform.of(length);
        transform.forward(x, 0);
        transform.forward(y, 0);
        transform.forward(sum, 0);
        for (int i = 0; i < sum.length; i++) {
            assertEquals(x[i] + factor * y[i], sum[i], 1e-10);
        }
    }

    /** A rectangular window over the whole record leaves all power in the band from 0 Hz to half the rate. */
    @Property(tries = 100)
    void bandLevelOfEverythingIsTheRms(@ForAll @IntRange(min = 2, max = 3000) int length, @ForAll long seed) {
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, 1000, noise(length, seed));
        Spectrum spectrum = Spectrum.of(wave,
                SpectrumSettings.withDefaults().withWindow(Window.rectangular()).withResolution(1000.0 / length));
        double rms = wave.rms().si();
        assertEquals(rms, spectrum.bandLevel(Band.of(0, 500)).si(), 1e-10 * rms + 1e-15);
    }

    /** analyse(synthesise(x)) = x for a tone of any frequency, amplitude and phase, under any window. */
    @Property(tries = 300)
    void toneIsFoundWhereItWasPut(@ForAll("windows") Window window,
            @ForAll @DoubleRange(min = 20, max = 480) double hertz,
            @ForAll @DoubleRange(min = 1e-3, max = 1e3) @Scale(6) double amplitude,
            @ForAll @DoubleRange(min = -3.14, max = 3.14) double phase) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 1000, 4000).tone(amplitude, hertz, phase).waveform();
        SpectralPeak peak = Spectrum.of(wave, SpectrumSettings.withDefaults().withWindow(window)).peaks(1).get(0);
        // The image at negative frequency, 2f away, leaks in: by 1/(π·2f) of the tone under the rectangular window.
        boolean rectangular = window.equals(Window.rectangular());
        double leakage = 1 / (2 * Math.PI * Math.min(hertz, 500 - hertz));
        assertEquals(hertz, peak.frequencyHertz(), rectangular ? 4 * leakage : 0.003);
        assertEquals(1, peak.level().si() * Math.sqrt(2) / amplitude, rectangular ? 4 * leakage : 0.002);
    }

    @Property(tries = 100)
    void velocityPeakOfAToneIsItsClosedForm(@ForAll @DoubleRange(min = 15, max = 450) double hertz,
            @ForAll @DoubleRange(min = -3.14, max = 3.14) double phase) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 1000, 8000).tone(1, hertz, phase).waveform();
        Level level = Spectrum.of(wave).velocity().peaks(1).get(0).level();
        Level expected = Level.ofSi(1, Quantity.ACCELERATION, Detector.ZERO_TO_PEAK)
                .sineAs(Quantity.VELOCITY, Detector.RMS, hertz);
        assertEquals(1, level.si() / expected.si(), 0.001);
    }

    /**
     * Differentiating and integrating again in a band whose flat part holds the signal gives the signal, off the ends.
     */
    @Property(tries = 50)
    void integrationUndoesDifferentiation(@ForAll @DoubleRange(min = 20, max = 400) double hertz, @ForAll long seed) {
        Band band = Band.of(10, 450);
        Waveform velocity = Synthesis.silence(Quantity.VELOCITY, 1000, 9000).tone(1, hertz, 0.3).noise(0.3, seed)
                .waveform()
                .velocity(Band.of(25, 400));
        Waveform again = velocity.acceleration(band).velocity(band);
        int offset = (int) Math.round((again.startSeconds() - velocity.startSeconds()) * 1000);
        for (int i = again.length() / 4; i < again.length() * 3 / 4; i++) {
            assertEquals(velocity.at(i + offset), again.at(i), 0.002);
        }
    }

    @Property(tries = 60)
    void chainReadsAToneWithItsNominalGain(@ForAll @DoubleRange(min = 5, max = 2000) double hertz,
            @ForAll @DoubleRange(min = -3.14, max = 3.14) double phase) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_800, 3 * 12_800).tone(1, hertz, phase).waveform();
        double reading = wave.throughSeverityChain(Quantity.VELOCITY, SEVERITY).rms().si() * Math.sqrt(2)
                * 2 * Math.PI * hertz;
        double expected = BandLimitingChain.nominalGain(SEVERITY, hertz);
        double partOfAPeriod = 1 / (4 * Math.PI * hertz * 2.5); // rms over a broken number of periods
        assertEquals(1, reading / expected, 0.006 + 2 * partOfAPeriod);
    }

    @Property
    void unitsConvertThereAndBack(@ForAll Unit unit, @ForAll @DoubleRange(min = 0, max = 1e6) double value) {
        assertEquals(value, Level.of(value, unit, Detector.RMS).in(unit), 1e-15 * value);
    }

    @Property
    void sineConversionsComeBack(@ForAll @DoubleRange(min = 1e-6, max = 1e6) @Scale(9) double value,
            @ForAll @DoubleRange(min = 0.1, max = 1e4) double hertz, @ForAll Detector detector) {
        Level level = Level.ofSi(value, Quantity.ACCELERATION, Detector.RMS);
        Level back = level.sineAs(Quantity.DISPLACEMENT, detector, hertz)
                .sineAs(Quantity.VELOCITY, Detector.PEAK_TO_PEAK, hertz)
                .sineAs(Quantity.ACCELERATION, Detector.RMS, hertz);
        assertEquals(value, back.si(), 1e-12 * value);
    }

    @Property(tries = 200)
    void momentsScaleAndShift(@ForAll @IntRange(min = 2, max = 500) int length, @ForAll long seed,
            @ForAll @DoubleRange(min = 0.1, max = 100) double scale,
            @ForAll @DoubleRange(min = -100, max = 100) double shift) {
        double[] x = noise(length, seed);
        double[] y = java.util.Arrays.stream(x).map(v -> scale * v + shift).toArray();
        Moments before = Moments.of(x);
        Moments after = Moments.of(y);
        assertEquals(scale * before.rms(), after.rms(), 1e-10 * scale);
        assertEquals(scale * before.peak(), after.peak(), 1e-10 * scale);
        assertEquals(scale * before.peakToPeak(), after.peakToPeak(), 1e-10 * scale);
        assertEquals(before.crestFactor(), after.crestFactor(), 1e-7);
        assertEquals(before.kurtosis(), after.kurtosis(), 1e-7 * before.kurtosis());
        assertEquals(before.skewness(), after.skewness(), 1e-7 * (1 + Math.abs(before.skewness())));
    }
}
