package dev.vibra.lines;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class LinesTest {
    private static Synthesis noise(long seed) {
        return Synthesis.silence(Quantity.ACCELERATION, 2048, 65_536).noise(1, seed);
    }

    /** White noise of standard deviation 1: every line's mean square is 2·B/fs, B the noise bandwidth of a line. */
    @Test
    void floorOfWhiteNoiseIsItsDensity() {
        Spectrum spectrum = Spectrum.of(noise(1).tone(2, 300, 0).waveform());
        NoiseFloor floor = NoiseFloor.of(spectrum, 100);
        double expected = Math.sqrt(2 * spectrum.noiseBandwidthHertz() / 2048);
        for (double hertz : new double[] {20, 150, 300, 700, 1000, 1024}) {
            assertEquals(1, floor.rms(hertz) / expected, 0.05, hertz + " Hz");
        }
    }

    /** In simulation a line of noise exceeds the level of probability p in the fraction p of all cases. */
    @Test
    void probabilityOfNoiseIsCalibrated() {
        int beyond = 0;
        int all = 0;
        for (long seed = 1; seed <= 40; seed++) {
            Spectrum spectrum = Spectrum.of(noise(seed).waveform(), SpectrumSettings.withDefaults().withResolution(2));
            NoiseFloor floor = NoiseFloor.of(spectrum, 400);
            for (int k = 10; k < 500; k += 5) {
                double p = floor.probability(spectrum.frequencyHertz(k), spectrum.amplitude(k, Detector.RMS));
                beyond += p < 0.02 ? 1 : 0;
                all++;
            }
        }
        assertEquals(0.02, (double) beyond / all, 0.008);
    }

    @Test
    void probabilityOfSeveralLinesIsThatOfTheLargest() {
        NoiseFloor floor = NoiseFloor.of(Spectrum.of(noise(2).waveform()), 200);
        double rms = 1.5 * floor.rms(500);
        double one = floor.probability(500, rms);
        assertEquals(1 - Math.pow(1 - one, 7), floor.probability(500, rms, 7), 1e-12);
        assertEquals(0.5, floor.probability(500, floor.rms(500) * 0.99), 0.1);
        assertEquals(Math.log10(floor.probability(500, rms, 7)), floor.log10Probability(500, rms, 7), 1e-12);
    }

    /** In one block the law is exponential: what lies r times over the floor has the probability exp(-r²). */
    @Test
    void linesTooImprobableForANumberAreToldApart() {
        Spectrum one = Spectrum.of(noise(7).waveform().part(0, 2048));
        NoiseFloor floor = NoiseFloor.of(one, 200);
        for (double times : new double[] {5, 20, 100, 1e60}) {
            double expected = -Math.min(times * times, 1e100) / Math.log(10);
            assertEquals(expected, floor.log10Probability(300, times * floor.rms(300), 1), -1e-12 * expected);
            assertEquals(expected + Math.log10(30), floor.log10Probability(300, times * floor.rms(300), 30),
                    -1e-9 * expected);
        }
        assertEquals(Math.exp(-400), floor.probability(300, 20 * floor.rms(300)), 1e-10 * Math.exp(-400));
    }

    /** Lines that are no spectrum: the same floor as theirs where both are told the same. */
    @Test
    void floorOfLinesIsThatOfTheirSpectrum() {
        Spectrum spectrum = Spectrum.of(noise(8).waveform());
        double[] squares = java.util.Arrays.stream(spectrum.amplitudes(Detector.RMS)).map(a -> a * a).toArray();
        NoiseFloor floor = NoiseFloor.of(squares, spectrum.resolutionHertz(),
                LineNoise.of(spectrum.equivalentAverages()), 1, 30);
        NoiseFloor expected = NoiseFloor.of(spectrum, 60);
        for (int k = 0; k < spectrum.lines(); k += 7) {
            assertEquals(expected.meanSquare(k), floor.meanSquare(k));
            assertEquals(Math.sqrt(expected.meanSquare(k)), floor.rms(spectrum.frequencyHertz(k)));
        }
        assertEquals(spectrum.equivalentAverages(), floor.noise().averages());
    }

    @Test
    void harmonicsAreFoundAndTheirFundamentalRefined() {
        double fundamental = 47.23;
        Waveform wave = noise(3).harmonics(fundamental, new double[] {0.4, 0, 0.3, 0.5}, new double[] {0, 0, 1, 2})
                .waveform();
        Spectrum spectrum = Spectrum.of(wave);
        NoiseFloor floor = NoiseFloor.of(spectrum, 60);
        HarmonicFamily family = HarmonicFamily.of(spectrum, floor, 47, 4, 0.01, 1e-4);
        assertEquals(fundamental, family.fundamentalHertz(), 0.02);
        assertEquals(List.of(1, 3, 4), family.members().stream().map(FamilyMember::number).toList());
        assertEquals(Math.sqrt((0.16 + 0.09 + 0.25) / 2), family.rms(), 0.02);
        assertTrue(family.toString().startsWith("3 of 4 harmonics of 47.2"), family.toString());
        HarmonicFamily none = HarmonicFamily.of(spectrum, floor, 61.7, 4, 0.005, 1e-4);
        assertEquals(0, none.members().size());
        assertEquals(61.7, none.fundamentalHertz());
        HarmonicFamily cut = HarmonicFamily.of(spectrum, floor, 400, 10, 0.005, 1e-4);
        assertEquals(2, cut.searched());
    }

    /** Amplitude modulation of depth m makes one pair of sidebands of m/2 each. */
    @Test
    void sidebandsOfAModulatedToneAreFound() {
        Waveform wave = noise(4).modulatedTone(2, 400, 23.5, 0.6, 0).waveform();
        Spectrum spectrum = Spectrum.of(wave);
        SidebandFamily family = SidebandFamily.of(spectrum, NoiseFloor.of(spectrum, 60), 400, 23.5, 3, 1, 1e-4);
        assertEquals(List.of(-1, 1), family.members().stream().map(FamilyMember::number).toList());
        assertEquals(0.6 / Math.sqrt(2), family.members().get(0).peak().level().si(), 0.03);
        assertEquals(423.5, family.members().get(1).peak().frequencyHertz(), 0.05);
        assertEquals(6, family.searched());
    }

    @Test
    void familiesAreLookedForWithinTheSpectrumOnly() {
        Spectrum spectrum = Spectrum.of(noise(6).tone(1, 960, 0).tone(0.5, 1010, 1).waveform());
        NoiseFloor floor = NoiseFloor.of(spectrum, 60);
        SidebandFamily high = SidebandFamily.of(spectrum, floor, 960, 50, 3, 1, 1e-4);
        assertEquals(4, high.searched()); // 810 to 910 Hz and 1010 Hz; 1060 Hz is above half the sample rate
        assertEquals(1, high.members().get(high.members().size() - 1).number());
        assertEquals(high.members().size() + " of 4 sidebands 50.00 Hz apart around 960.00 Hz", high.toString());
        SidebandFamily low = SidebandFamily.of(spectrum, floor, 70, 40, 4, 1, 1e-4);
        assertEquals(5, low.searched()); // 30 Hz and 110 to 230 Hz
        // 1023 + 1 Hz isn't below 1024 Hz
        assertEquals(3, SidebandFamily.of(spectrum, floor, 983, 40, 3, 1, 1e-4).searched());
        assertEquals("noise floor of 1025 lines", floor.toString());
    }

    /** A floor of nothing: whatever is there is no noise. */
    @Test
    void silenceHasNoNoise() {
        Spectrum silent = Spectrum.of(Waveform.ofSi(Quantity.ACCELERATION, 2048, new double[8192]));
        NoiseFloor floor = NoiseFloor.of(silent, 60);
        assertEquals(0, floor.rms(100));
        assertEquals(1, floor.probability(100, 0));
        assertEquals(0, floor.probability(100, 1e-9));
        assertEquals(1, floor.probability(100, 0, 5));
        assertEquals(0, floor.probability(100, 1e-9, 5));
        assertTrue(floor.log10Probability(100, 1e-9, 5) < -1e98);
        assertEquals(0, HarmonicFamily.of(silent, floor, 50, 3, 0.01, 0.01).members().size());
        assertMessage("hertz must be within 0.0 to 1024.000000001024 Hz: 1025.0", () -> floor.rms(1025));
    }

    @Test
    void badArgumentsAreNamed() {
        Spectrum spectrum = Spectrum.of(noise(5).waveform());
        NoiseFloor floor = NoiseFloor.of(spectrum, 50);
        assertMessage("widthHertz must be within 10.0 to 1024.0 Hz: 5.0", () -> NoiseFloor.of(spectrum, 5));
        assertMessage("searched must be at least 1: 0", () -> floor.probability(10, 1, 0));
        LineNoise noise = LineNoise.of(1);
        assertMessage("number of lines must be at least 1: 0", () -> NoiseFloor.of(new double[0], 1, noise, 0, 5));
        assertMessage("meanSquares[1] must be finite and >= 0: NaN",
                () -> NoiseFloor.of(new double[] {1, Double.NaN}, 1, noise, 0, 5));
        assertMessage("resolutionHertz must be finite and > 0 Hz: 0.0",
                () -> NoiseFloor.of(new double[] {1, 2}, 0, noise, 0, 5));
        assertMessage("first must be at least 0: -1", () -> NoiseFloor.of(new double[] {1, 2}, 1, noise, -1, 5));
        assertMessage("reach must be at least 1: 0", () -> NoiseFloor.of(new double[] {1, 2}, 1, noise, 0, 0));
        assertMessage("rms must be finite and >= 0: NaN", () -> floor.probability(10, Double.NaN));
        assertMessage("falseAlarm must be above 0 and below 1: 0.0",
                () -> HarmonicFamily.of(spectrum, floor, 50, 3, 0.01, 0));
        assertMessage("falseAlarm must be above 0 and below 1: 1.0",
                () -> HarmonicFamily.of(spectrum, floor, 50, 3, 0.01, 1));
        assertMessage("falseAlarm must be above 0 and below 1: 1.0",
                () -> SidebandFamily.of(spectrum, floor, 50, 20, 3, 0.5, 1));
        assertMessage("falseAlarm must be above 0 and below 1: NaN",
                () -> SidebandFamily.of(spectrum, floor, 50, 20, 3, 0.5, Double.NaN));
        assertMessage("spacingHertz must be more than two lines, 2.0 Hz: Infinity",
                () -> SidebandFamily.of(spectrum, floor, 50, Double.POSITIVE_INFINITY, 3, 0.5, 0.01));
        assertMessage("relativeTolerance must be within 0.0 to 0.2: 0.5",
                () -> HarmonicFamily.of(spectrum, floor, 50, 3, 0.5, 0.01));
        assertMessage("spacingHertz must be more than two lines, 2.0 Hz: 2.0",
                () -> SidebandFamily.of(spectrum, floor, 50, 2, 3, 0.5, 0.01));
        assertMessage("toleranceHertz must be within 0.0 to 10.0 Hz: 11.0",
                () -> SidebandFamily.of(spectrum, floor, 50, 20, 3, 11, 0.01));
    }

    @Test
    void resultsCheckWhatTheyAreGiven() {
        SpectralPeak peak = new SpectralPeak(10, Level.ofSi(1, Quantity.ACCELERATION, Detector.RMS));
        assertMessage("frequencyHertz must be finite and > 0 Hz: NaN", () -> new SpectralPeak(Double.NaN, peak.level()));
        assertMessage("probability must be within 0.0 to 1.0: 2.0", () -> new FamilyMember(1, peak, 10, 2));
        FamilyMember member = new FamilyMember(1, peak, 10, 0.1);
        assertMessage("searched must be at least 1: 0", () -> new HarmonicFamily(10, List.of(member), 0));
        assertMessage("spacingHertz must be finite and > 0 Hz: 0.0", () -> new SidebandFamily(10, 0, List.of(), 0));
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
