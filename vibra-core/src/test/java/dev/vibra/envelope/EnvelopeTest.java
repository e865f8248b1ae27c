package dev.vibra.envelope;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.testing.Reference;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EnvelopeTest {
    /**
     * SciPy 1.10 {@code abs(signal.hilbert(x))}; its analytic signal is that of the band from 0 Hz to half the rate.
     */
    @ParameterizedTest
    @ValueSource(ints = {600, 599, 149})
    void envelopeOfTheWholeBandAgreesWithSciPy(int length) {
        Reference scipy = Reference.of("scipy-envelopes.txt");
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, 1000, scipy.row("samples." + length));
        Waveform envelope = Envelope.of(wave, Band.of(0, 500));
        assertEquals(1000, envelope.sampleRateHertz(), 1e-9);
        scipy.assertRow("envelope." + length, envelope.samples(), 1e-10);
    }

    /** Closed form: a carrier of amplitude 1 + m·cos(2πft) has that envelope. */
    @Test
    void envelopeOfAModulatedToneIsItsModulation() {
        Synthesis carrier = Synthesis.silence(Quantity.ACCELERATION, 25_600, 25_600).tone(2, 4000, 0.4)
                .tone(0.5, 4100, 0.4).tone(0.5, 3900, 0.4).tone(7, 300, 0);
        Waveform envelope = Envelope.of(carrier.waveform(), Band.of(3000, 5000));
        assertEquals(4096, envelope.sampleRateHertz(), 1e-9);
        for (int i = 0; i < envelope.length(); i++) {
            double t = i / envelope.sampleRateHertz();
            assertEquals(2 * (1 + 0.5 * Math.cos(2 * Math.PI * 100 * t)), envelope.at(i), 1e-9);
        }
    }

    @Test
    void impactsShowTheirRate() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 102_400)
                .impacts(ImpactTrain.of(87.3, 5, 4200, 0.05), 1).noise(0.5, 2).waveform();
        Waveform envelope = Envelope.of(wave, Band.of(3000, 5500));
        SpectralPeak first = Spectrum.of(envelope).peaks(1).get(0);
        assertEquals(87.3, first.frequencyHertz(), 0.1);
    }

    /**
     * Two tones of amplitude 1 and 0.3 beat at their difference; harmonics of the beat beyond the band must not fold
     * back.
     */
    @Test
    void envelopeHasNoFalseLines() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 51_200).tone(1, 3010, 0).tone(0.6, 4990, 0)
                .waveform();
        Waveform envelope = Envelope.of(wave, Band.of(3000, 5000));
        Spectrum spectrum = Spectrum.of(envelope);
        assertEquals(1980, spectrum.peaks(1).get(0).frequencyHertz(), 0.01);
        double largest = spectrum.peaks(1).get(0).level().si();
        for (SpectralPeak peak : spectrum.peaks(20)) {
            boolean real = Math.abs(peak.frequencyHertz() - 1980) < 3;
            assertTrue(real || peak.level().si() < 1e-3 * largest, peak + " beside " + largest);
        }
    }

    /** The square of the envelope of two tones is 1 + 0.36 + 1.2·cos(2πΔft), exactly. */
    @Test
    void squaredEnvelopeIsExact() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 51_200).tone(1, 3010, 0).tone(0.6, 4990, 0)
                .waveform();
        SquaredEnvelope squared = Envelope.squared(wave, Band.of(3000, 5000));
        for (int i = 0; i < squared.length(); i++) {
            assertEquals(1.36 + 1.2 * Math.cos(2 * Math.PI * 1980 * squared.timeSeconds(i)), squared.at(i), 1e-9);
        }
    }

    /** The sum over the lines of the band, as it is written down: |2/N · Σ X(k)·exp(2πi·k·t)|², single lines once. */
    @Test
    void squaredEnvelopesOfSeveralBandsAreTheirSums() {
        List<Band> bands = List.of(Band.of(0, 500), Band.of(0, 100), Band.of(250, 500), Band.of(123.4, 234.5));
        for (int length : new int[] {64, 100, 101}) {
            double[] x = new java.util.Random(length).doubles(length, -1, 1).toArray();
            double[] shifted = new double[length + 3];
            System.arraycopy(x, 0, shifted, 3, length);
            SquaredEnvelopePlan plan = SquaredEnvelopePlan.of(length, 1000, bands);
            plan.load(shifted, 3);
            for (int b = 0; b < bands.size(); b++) {
                double[] squares = plan.squares(b, new double[plan.outputLength(b)]);
                assertEquals(1000.0 * squares.length / length, plan.outputSampleRateHertz(b), 1e-9);
                for (int i = 0; i < squares.length; i++) {
                    assertEquals(squaredBySum(x, bands.get(b), (double) i / squares.length), squares[i], 1e-9);
                }
            }
        }
    }

    private static double squaredBySum(double[] x, Band band, double part) {
        int n = x.length;
        double re = 0;
        double im = 0;
        for (int k = 0; k <= n / 2; k++) {
            if (1000.0 * k >= band.lowestHertz() * n && 1000.0 * k <= band.highestHertz() * n) {
                double factor = (k == 0 || 2 * k == n ? 1.0 : 2.0) / n;
                for (int i = 0; i < n; i++) {
                    double angle = 2 * Math.PI * k * (part - (double) i / n);
                    re += factor * x[i] * Math.cos(angle);
                    im += factor * x[i] * Math.sin(angle);
                }
            }
        }
        return re * re + im * im;
    }

    /** Closed form again, and the plan beneath, value by value. */
    @Test
    void squaredEnvelopeInOneLine() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 51_200).tone(1, 3010, 0)
                .tone(0.6, 4990, 0).waveform().startingAt(2);
        SquaredEnvelope squared = Envelope.squared(wave, Band.of(3000, 5000));
        SquaredEnvelope second = Envelope.squared(wave, List.of(Band.of(100, 900), Band.of(3000, 5000))).get(1);
        assertArrayEquals(second.squares(), squared.squares());
        assertEquals(Band.of(3000, 5000), second.band());
        assertEquals(2 + 1000 / squared.sampleRateHertz(), squared.timeSeconds(1000), 1e-12);
        assertEquals(1.36 + 1.2 * Math.cos(2 * Math.PI * 1980 * (squared.timeSeconds(1000) - 2)), squared.at(1000),
                1e-9);
        assertEquals(Quantity.ACCELERATION, squared.quantity());
        assertEquals("squared envelope of acceleration, 8,192 values at 4096 Hz, 3000\u20135000 Hz",
                squared.toString());
        squared.squares()[0] = 7;
        assertEquals(2.56, squared.at(0), 1e-9);
        assertThrows(IndexOutOfBoundsException.class, () -> squared.at(8192));
        assertThrows(IndexOutOfBoundsException.class, () -> squared.timeSeconds(-1));
    }

    @Test
    void envelopeKeepsItsStart() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 25_600, 51_200).tone(1, 3010, 0).waveform();
        assertEquals(0.5, Envelope.of(wave.part(12_800, 25_600), Band.of(2500, 3500)).startSeconds(), 1e-12);
    }

    @Test
    void badArgumentsAreNamed() {
        assertMessage("length must be from 4 to 67108864: 3", () -> EnvelopePlan.of(3, 100, Band.of(0, 50)));
        assertMessage("band must be at or below half the sample rate, 50.0 Hz: 51.0",
                () -> EnvelopePlan.of(100, 100, Band.of(0, 51)));
        assertMessage("band must hold at least two lines, 1.0 Hz apart: 10.2\u201311.5 Hz",
                () -> EnvelopePlan.of(100, 100, Band.of(10.2, 11.5)));
        assertMessage("out must lie inside the array of length 3: offset 0, length 100",
                () -> EnvelopePlan.of(100, 100, Band.of(0, 50)).process(new double[100], 0, new double[3]));
        assertMessage("number of bands must be at least 1: 0", () -> SquaredEnvelopePlan.of(100, 100, List.of()));
        SquaredEnvelopePlan squares = SquaredEnvelopePlan.of(100, 100, List.of(Band.of(0, 50)));
        assertMessage("out must lie inside the array of length 3: offset 0, length 100",
                () -> squares.squares(0, new double[3]));
        assertThrows(IndexOutOfBoundsException.class, () -> squares.outputLength(1));
    }

    private static void assertMessage(String message, org.junit.jupiter.api.function.Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
