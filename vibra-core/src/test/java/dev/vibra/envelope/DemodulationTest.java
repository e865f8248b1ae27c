package dev.vibra.envelope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class DemodulationTest {
    /** Closed form: amplitude A(1 + m·cos), phase β·sin, frequency f + β·fm·cos, as they were put in. */
    @Test
    void amplitudeAndPhaseModulationComeBack() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 10_000, 10_000).modulatedTone(2, 1500, 20, 0.4, 0.3)
                .tone(5, 300, 1).waveform();
        Demodulation demodulation = Demodulation.of(wave, 1500, 400);
        double[] amplitude = demodulation.amplitude();
        double[] phase = demodulation.phaseRadians();
        double[] hertz = demodulation.frequencyHertz();
        for (int i = 0; i < 10_000; i++) {
            double slow = 2 * Math.PI * 20 * i / 10_000;
            assertEquals(2 * (1 + 0.4 * Math.cos(slow)), amplitude[i], 1e-6);
            assertEquals(0.3 * Math.sin(slow), phase[i], 1e-6);
            assertEquals(1500 + 0.3 * 20 * Math.cos(slow), hertz[i], i == 0 || i == 9999 ? 0.2 : 0.01);
        }
    }

    /** A carrier 0.5 Hz beside the one asked for turns steadily: the phase grows without jumps. */
    @Test
    void phaseIsFollowedOverManyTurns() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 10_000, 100_000).tone(1, 1500.5, 0).waveform();
        double[] phase = Demodulation.of(wave, 1500, 100).phaseRadians();
        assertEquals(2 * Math.PI * 0.5 * 9, phase[90_000] - phase[0], 1e-3);
    }

    @Test
    void badArgumentsAreNamed() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 100, 100).tone(1, 10, 0).waveform();
        assertMessage("carrierHertz must be above 0 and below half the sample rate, 50.0 Hz: 50.0",
                () -> Demodulation.of(wave, 50, 10));
        assertMessage("halfBandHertz must be above 0 and below the carrier, 10.0 Hz: 10.0",
                () -> Demodulation.of(wave, 10, 10));
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
