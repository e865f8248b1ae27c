package dev.vibra.bearing.synthesis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.testing.Serial;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class BearingSignalTest {
    private static final KinematicFrequencies RATES = BearingGeometry.of(9, 7.94, 39.04, 0)
            .frequencies(RotatingRing.INNER, RotationSpeed.ofHertz(25));
    private static final BearingSignal SOUND = BearingSignal.of(RATES);

    @Test
    void sameSeedSameSamples() {
        BearingSignal signal = SOUND.withDefect(BearingElement.INNER_RACE, 5).withShaftTones(1);
        assertEquals(signal.waveform(12_800, 1000, 1), signal.waveform(12_800, 1000, 1));
        assertNotEquals(signal.waveform(12_800, 1000, 1), signal.waveform(12_800, 1000, 2));
        assertEquals(signal.waveform(12_800, 1000, 1), Serial.copy(signal).waveform(12_800, 1000, 1));
    }

    @Test
    @DisplayName("mean square of a train: rate · peak² · τ/4 · (1 - ζ²), the energy of a decaying sine in closed form")
    void energyOfTheTrain() {
        double damping = 0.05;
        double resonance = 3000;
        Waveform wave = SOUND.withNoise(0).withSlip(0, 0).withResonance(resonance, damping)
                .withDefect(BearingElement.OUTER_RACE, 10).waveform(51_200, 512_000, 1);
        double decay = 2 * Math.PI * damping * resonance;
        double damped = 2 * Math.PI * resonance * Math.sqrt(1 - damping * damping);
        // ∫ e^(-2at)·sin²(bt) dt = b²/(4a(a² + b²))
        double energy = 100 * damped * damped / (4 * decay * (decay * decay + damped * damped));
        assertEquals(Math.sqrt(RATES.outerRaceHertz() * energy), wave.rms().si(), 0.01 * wave.rms().si());
    }

    @Test
    @DisplayName("an inner-race defect loses (1 + m²/2)/(1 + m)² of its power in the load zone, m = 0.9")
    void loadZone() {
        Waveform inner = SOUND.withNoise(0).withDefect(BearingElement.INNER_RACE, 10).waveform(51_200, 512_000, 1);
        Waveform outer = SOUND.withNoise(0).withDefect(BearingElement.OUTER_RACE, 10).waveform(51_200, 512_000, 1);
        double share = (1 + 0.9 * 0.9 / 2) / (1.9 * 1.9);
        double expected = Math.sqrt(share * RATES.innerRaceHertz() / RATES.outerRaceHertz());
        assertEquals(expected, inner.rms().si() / outer.rms().si(), 0.02 * expected);
    }

    @Test
    void noiseAndTonesHaveTheStatedLevels() {
        assertEquals(0.7, SOUND.withNoise(0.7).waveform(12_800, 200_000, 1).rms().si(), 0.01);
        double tones = Math.sqrt(0.5 * (1 + 1 / 4.0 + 1 / 9.0 + 1 / 16.0));
        assertEquals(3 * tones, SOUND.withNoise(0).withShaftTones(3).waveform(12_800, 128_000, 1).rms().si(), 1e-3);
    }

    @Test
    void slipShiftsTheRate() {
        assertEquals(0.99 * RATES.outerRaceHertz(), SOUND.withSlip(-0.01, 0).rateOf(BearingElement.OUTER_RACE), 1e-12);
    }

    @Test
    void badValuesAreNamed() {
        assertEquals("peak must be finite and > 0 m/s²: NaN", assertThrows(IllegalArgumentException.class,
                () -> SOUND.withDefect(BearingElement.CAGE, Double.NaN)).getMessage());
        assertEquals("slip must be within -0.05 to 0.05: 0.06", assertThrows(IllegalArgumentException.class,
                () -> SOUND.withSlip(0.06, 0)).getMessage());
        assertEquals("jitter must be within 0.0 to 0.2: 0.3", assertThrows(IllegalArgumentException.class,
                () -> SOUND.withSlip(0, 0.3)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> SOUND.withResonance(3000, 1));
        assertThrows(IllegalArgumentException.class, () -> SOUND.withNoise(-1));
        assertThrows(IllegalArgumentException.class, () -> SOUND.withShaftTones(-1));
        assertThrows(IllegalArgumentException.class,
                () -> SOUND.withDefect(BearingElement.CAGE, 1).waveform(5000, 100, 1));
    }

    @Test
    void printsAsOneWritesIt() {
        assertEquals("sound bearing, ringing at 3000 Hz, noise 1 m/s² rms", SOUND.toString());
        assertEquals("outer race 12 m/s², ringing at 4500 Hz, noise 0.5 m/s² rms", SOUND.withNoise(0.5)
                .withDefect(BearingElement.OUTER_RACE, 12).withResonance(4500, 0.04).toString());
    }
}
