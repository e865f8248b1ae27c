package dev.vibra.bearing.synthesis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.testing.Serial;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.transform.RealTransform;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Path to the sensor and machine around, against closed forms. */
class SurroundingsTest {
    private static final double RATE = 51_200;
    private static final int LENGTH = 512_000;
    private static final KinematicFrequencies RATES = BearingGeometry.of(9, 7.94, 39.04, 0)
            .frequencies(RotatingRing.INNER, RotationSpeed.ofHertz(25));
    private static final BearingSignal SILENT = BearingSignal.of(RATES).withNoise(0);

    @Test
    @DisplayName("energy of the ringing: g²·b²/(4a(a² + b²)), and that of two resonances apart adds up")
    void resonancesAddTheirEnergies() {
        Resonance low = new Resonance(2000, 0.03, 1);
        Resonance high = new Resonance(9000, 0.02, 0.7);
        double power = RATES.outerRaceHertz() * (low.energySeconds() + high.energySeconds());
        Waveform both = SILENT.withResonances(low, high).withDefect(BearingElement.OUTER_RACE, 5)
                .waveform(RATE, LENGTH, 1);
        assertEquals(5 * Math.sqrt(power), both.rms().si(), 0.02 * both.rms().si());
        double a = 2 * Math.PI * 0.02 * 9000;
        double b = 2 * Math.PI * 9000 * Math.sqrt(1 - 0.0004);
        assertEquals(0.49 * b * b / (4 * a * (a * a + b * b)), high.energySeconds(), 1e-15);
    }

    @Test
    @DisplayName("noise falling as 1/f^e has 2^(e-1) times the power of the next octave")
    void slopeOfTheNoise() {
        double[] spectrum = spectrum(SILENT.withSurroundings(Surroundings.ofNoise(2).withNoise(2, 1.5))
                .waveform(RATE, LENGTH, 3));
        double low = power(spectrum, 1000, 2000);
        double high = power(spectrum, 2000, 4000);
        // Each octave holds 10,000 lines or more, whose mean power scatters by 1 %.
        assertEquals(Math.sqrt(2), low / high, 4 * 0.0123 * Math.sqrt(2));
        assertEquals(4, 2 * power(spectrum, 0, RATE / 2), 1e-6);
    }

    @Test
    @DisplayName("a mesh of amplitude A, swinging by m, stands with A/n between sidebands of A·m/2n")
    void meshAndSidebands() {
        GearMesh mesh = new GearMesh(750, 2, 25, 0.6);
        double[] spectrum = spectrum(SILENT.withSurroundings(Surroundings.ofNoise(0).withGear(mesh))
                .waveform(RATE, LENGTH, 1));
        for (int n = 1; n <= 3; n++) {
            assertEquals(2.0 / n, amplitude(spectrum, n * 750), 1e-9, "harmonic " + n);
            assertEquals(0.6 / n, amplitude(spectrum, n * 750 - 25), 1e-9, "lower sideband of " + n);
            assertEquals(0.6 / n, amplitude(spectrum, n * 750 + 25), 1e-9, "upper sideband of " + n);
        }
        assertEquals(0, amplitude(spectrum, 4 * 750), 1e-9);
    }

    @Test
    @DisplayName("of the power, a first-order sensor shows 1/(1 + r²), a second-order one 1/((1 - r²)² + 4ζ²r²)")
    void sensorsRollOff() {
        BearingSignal tones = SILENT.withShaftTones(1);
        double[] first = spectrum(tones.withSensor(SensorResponse.firstOrder(50)).waveform(RATE, LENGTH, 1));
        double[] second = spectrum(tones.withSensor(SensorResponse.secondOrder(50, 0.1)).waveform(RATE, LENGTH, 1));
        double[] firstGain = {Math.sqrt(1 / 1.25), Math.sqrt(0.5), Math.sqrt(1 / 3.25), Math.sqrt(0.2)};
        double[] secondGain = {1 / Math.hypot(0.75, 0.1), 5, 1 / Math.hypot(1.25, 0.3), 1 / Math.hypot(3, 0.4)};
        for (int n = 1; n <= 4; n++) {
            assertEquals(firstGain[n - 1] / n, amplitude(first, 25 * n), 1e-9);
            assertEquals(secondGain[n - 1] / n, amplitude(second, 25 * n), 1e-9);
            assertEquals(firstGain[n - 1] * firstGain[n - 1], SensorResponse.firstOrder(50).power(25 * n), 1e-12);
            assertEquals(secondGain[n - 1] * secondGain[n - 1], SensorResponse.secondOrder(50, 0.1).power(25 * n),
                    1e-9);
        }
    }

    @Test
    @DisplayName("strikes of 1 and w make a line of depth 2(1 - w²)/(1 + w²) at the spin, less what ringing blurs")
    void unequalStrikesShowTheSpin() {
        double weaker = 0.6;
        double expected = 2 * (1 - weaker * weaker) / (1 + weaker * weaker)
                / Math.hypot(1, RATES.spinHertz() / (2 * 0.05 * 3000));
        assertEquals(expected, depthAtSpin(SILENT.withUnequalStrikes(weaker)), 0.03 * expected);
        assertEquals(0, depthAtSpin(SILENT), 0.02);
    }

    private static double depthAtSpin(BearingSignal signal) {
        Waveform wave = signal.withSlip(0, 0).withDefect(BearingElement.ROLLING_ELEMENT, 1).waveform(RATE, LENGTH, 1);
        EnvelopeSpectrum spectrum = EnvelopeSpectrum.of(wave, Band.of(500, 20_000));
        int line = (int) Math.round(RATES.spinHertz() / spectrum.resolutionHertz());
        double squares = 0;
        for (int k = line - 4; k <= line + 4; k++) {
            squares += spectrum.depth(k) * spectrum.depth(k);
        }
        return Math.sqrt(squares / 1.5); // a Hann window spreads the power of a line over 1.5 of them
    }

    @Test
    void strikesOfASlippingElementSwingWithTheSlippingCage() {
        Waveform wave = SILENT.withSlip(-0.02, 0).withDefect(BearingElement.ROLLING_ELEMENT, 1)
                .waveform(RATE, LENGTH, 1);
        EnvelopeSpectrum spectrum = EnvelopeSpectrum.of(wave, Band.of(500, 20_000));
        int slipped = (int) Math.round(0.98 * RATES.cageHertz() / spectrum.resolutionHertz());
        int kinematic = (int) Math.round(RATES.cageHertz() / spectrum.resolutionHertz());
        assertTrue(spectrum.depth(slipped) > 0.5, "depth at the slipped rate: " + spectrum.depth(slipped));
        assertTrue(spectrum.depth(kinematic + 1) < 0.05, "beside it: " + spectrum.depth(kinematic + 1));
    }

    @Test
    void valuesPrintAndTravel() {
        assertEquals("noise 2 m/s² rms falling as 1/f^1.5, shaft tones 0.3 m/s², 1 mesh", Surroundings.ofNoise(2)
                .withNoise(2, 1.5).withShaftTones(0.3).withGear(new GearMesh(750, 2, 25, 0.6)).toString());
        assertEquals("mesh 750 Hz, 2 m/s², swinging by 0.6 at 25 Hz", new GearMesh(750, 2, 25, 0.6).toString());
        assertEquals("9000 Hz, damping 0.02, gain 0.7", new Resonance(9000, 0.02, 0.7).toString());
        assertEquals("first order at 8000 Hz", SensorResponse.firstOrder(8000).toString());
        assertEquals("second order at 8000 Hz, damping 0.7", SensorResponse.secondOrder(8000, 0.7).toString());
        BearingSignal full = SILENT.withResonances(new Resonance(2000, 0.03, 1), new Resonance(9000, 0.02, 0.7))
                .withSensor(SensorResponse.firstOrder(8000)).withDefect(BearingElement.OUTER_RACE, 5)
                .withSurroundings(Surroundings.ofNoise(1).withGear(new GearMesh(750, 2, 25, 0.6)));
        assertEquals("outer race 5 m/s², ringing at 2000, 9000 Hz, noise 1 m/s² rms, 1 mesh", full.toString());
        assertEquals(full.waveform(RATE, 1000, 1), Serial.copy(full).waveform(RATE, 1000, 1));
    }

    @Test
    void badValuesAreNamed() {
        assertEquals("gain must be finite and > 0: 0.0", assertThrows(IllegalArgumentException.class,
                () -> new Resonance(1000, 0.1, 0)).getMessage());
        assertEquals("order must be within 1.0 to 2.0: 3.0", assertThrows(IllegalArgumentException.class,
                () -> new SensorResponse(3, 1000, 1)).getMessage());
        assertEquals("slope must be within 0.0 to 4.0: NaN", assertThrows(IllegalArgumentException.class,
                () -> Surroundings.ofNoise(1).withNoise(1, Double.NaN)).getMessage());
        assertEquals("depth must be within 0.0 to 1.0: 2.0", assertThrows(IllegalArgumentException.class,
                () -> new GearMesh(750, 2, 25, 2)).getMessage());
        assertEquals("share must be within 0.0 to 1.0: -1.0", assertThrows(IllegalArgumentException.class,
                () -> SILENT.withUnequalStrikes(-1)).getMessage());
        assertEquals("number of resonances must be at least 1: 0", assertThrows(IllegalArgumentException.class,
                SILENT::withResonances).getMessage());
    }

    /** Amplitude spectrum, real and imaginary parts interleaved. */
    private static double[] spectrum(Waveform wave) {
        RealTransform transform = RealTransform.of(wave.length());
        return transform.forward(wave.samples(), 0, new double[2 * transform.lines()]);
    }

    private static double amplitude(double[] spectrum, double hertz) {
        int k = (int) Math.round(hertz * LENGTH / RATE);
        return 2 * Math.hypot(spectrum[2 * k], spectrum[2 * k + 1]) / LENGTH;
    }

    private static double power(double[] spectrum, double from, double to) {
        double sum = 0;
        for (int k = (int) (from * LENGTH / RATE); k < (int) (to * LENGTH / RATE); k++) {
            sum += spectrum[2 * k] * spectrum[2 * k] + spectrum[2 * k + 1] * spectrum[2 * k + 1];
        }
        return sum / LENGTH / LENGTH;
    }
}
