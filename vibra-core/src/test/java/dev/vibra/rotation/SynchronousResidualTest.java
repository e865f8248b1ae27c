package dev.vibra.rotation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.testing.Reference;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What is left beside the mean turn, by NumPy and by closed forms. */
class SynchronousResidualTest {
    private static final double RATE = 12_800;
    private static final SpeedProfile STEADY = new SpeedProfile(RotationSpeed.ofHertz(24.7),
            RotationSpeed.ofHertz(24.7), 8);
    private static final SpeedProfile RAMP = new SpeedProfile(RotationSpeed.ofHertz(24.1),
            RotationSpeed.ofHertz(25.3), 8);
    private static final SpeedProfile WANDER = STEADY.withWander(0.02, 0.25);

    private static ShaftAngle angle(SpeedProfile profile) {
        Waveform pulses = profile.tachometer(51_200, 1);
        return ShaftAngle.of(Tachometer.fitting(pulses).pulses(pulses), 1);
    }

    private static Synthesis silence() {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, 102_400);
    }

    private static double power(Waveform wave) {
        return wave.rms().si() * wave.rms().si();
    }

    /** Power of the residual over that of the recording, both over what the residual covers. */
    private static double left(Waveform wave, SynchronousResidual residual) {
        return 1 - residual.repeatingShare().orElseThrow();
    }

    /** Mesh and two harmonics with sidebands of both shafts, gears of 23 and 57 teeth. */
    private static Synthesis mesh(Synthesis signal, SpeedProfile profile) {
        Synthesis sum = signal;
        for (int n = 1; n <= 3; n++) {
            for (double side : new double[] {-1, -23.0 / 57, 0, 23.0 / 57, 1}) {
                sum = sum.order(side == 0 ? 5 : 2, 23 * n + side, profile, 0.7 * n + side);
            }
        }
        return sum;
    }

    /** NumPy: turns of a whole number of samples, averaged as rows of a matrix. */
    @Test
    void agreesWithNumpyWhereATurnIsAWholeNumberOfSamples() {
        Reference reference = Reference.of("scipy-synchronous.txt");
        Waveform wave = Waveform.ofSi(Quantity.ACCELERATION, 32, reference.row("samples"));
        ShaftAngle angle = ShaftAngle.of(PulseTrain.of(IntStream.rangeClosed(0, 26).mapToDouble(i -> i).toArray()), 1);
        SynchronousResidual residual = SynchronousResidual.of(wave, angle);
        assertEquals(24, residual.turns());
        reference.assertRow("residual", residual.waveform().orElseThrow().samples(), 1e-9);
        assertEquals(reference.value("share"), residual.repeatingShare().orElseThrow(), 1e-9);
    }

    /** White noise keeps 1 - 1/M; its scatter over 2e5 samples is far below the tolerance. */
    @Test
    void noiseKeepsItsPowerButForOneTurn() {
        for (SpeedProfile profile : List.of(STEADY, RAMP, WANDER)) {
            Waveform noise = silence().noise(1, 4).waveform();
            SynchronousResidual residual = SynchronousResidual.of(noise, angle(profile));
            // The last fifth of the bandwidth lies beyond what interpolation passes fully.
            assertEquals(1.0 / residual.turns(), residual.repeatingShare().orElseThrow(), 0.2 / residual.turns());
        }
    }

    /** Jittered impacts at no order of the shaft pass as noise does. */
    @Test
    void slippingImpactsStay() {
        for (SpeedProfile profile : List.of(STEADY, RAMP)) {
            Waveform impacts = silence().impacts(ImpactTrain.of(88.1, 5, 3000, 0.05).withJitter(0.01), profile, 2)
                    .waveform();
            SynchronousResidual residual = SynchronousResidual.of(impacts, angle(profile));
            assertEquals(1.0 / residual.turns(), residual.repeatingShare().orElseThrow(), 1.0 / residual.turns());
        }
    }

    /** A mesh of 61.5 m²/s⁴ with its sidebands falls by 40 dB and more, at any speed; noise beside it stays. */
    @Test
    void gearTonesGo() {
        for (SpeedProfile profile : List.of(STEADY, RAMP, WANDER)) {
            Waveform gear = mesh(silence(), profile).waveform();
            SynchronousResidual alone = SynchronousResidual.of(gear, angle(profile), 23.0 / 57);
            assertTrue(left(gear, alone) < 1e-4, alone::toString);
            Waveform noisy = mesh(silence().noise(1, 5), profile).waveform();
            SynchronousResidual beside = SynchronousResidual.of(noisy, angle(profile), 23.0 / 57);
            assertEquals(1, power(beside.waveform().orElseThrow()), 0.03);
            // One shaft alone leaves the sidebands of the other.
            SynchronousResidual one = SynchronousResidual.of(gear, angle(profile));
            assertEquals(3 * 2 * 2.0 / power(gear), left(gear, one), 0.02);
        }
    }

    /** Without tachometer the mesh itself tells the angle finely enough. */
    @Test
    void aTrackedMeshIsTakenAway() {
        for (SpeedProfile profile : List.of(STEADY, RAMP, WANDER)) {
            Waveform wave = mesh(silence().noise(1, 5).order(1, 1, profile, 0), profile).waveform();
            ShaftAngle tracked = TrackedAngle.of(wave, profile.meanSpeed(), 1, 2, 3, 23, 46, 69).angle()
                    .orElseThrow();
            Waveform left = SynchronousResidual.of(wave, tracked, 23.0 / 57).waveform().orElseThrow();
            assertEquals(1, power(left), 0.05);
        }
    }

    @Test
    void tooFewTurnsAreRefused() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, RATE, 12_800).noise(1, 1).waveform();
        SynchronousResidual few = SynchronousResidual.of(wave, angle(STEADY), 0.5);
        assertTrue(few.waveform().isEmpty() && few.repeatingShare().isEmpty());
        assertEquals("no residual: the recording and the angle share " + few.turns()
                + " whole turns of the slowest shaft, 20 are needed", few.toString());
        assertTrue(few.turns() >= 11 && few.turns() <= 12);
        assertTrue(SynchronousResidual.of(wave, angle(STEADY)).waveform().isPresent());
        assertEquals(0, SynchronousResidual.of(wave.startingAt(100), angle(STEADY)).turns());
        assertThrows(IllegalArgumentException.class, () -> SynchronousResidual.of(wave, angle(STEADY), 0));
    }

    /** At 24.7 Hz and 12,800 samples a second a shaft of 1000 times the speed turns twice between two samples. */
    @Test
    void aShaftThatPassesSamplesHasNoMeanTurn() {
        Waveform wave = silence().noise(1, 1).waveform();
        SynchronousResidual none = SynchronousResidual.of(wave, angle(STEADY), 1000);
        assertTrue(none.waveform().isEmpty());
        assertEquals("no residual: a shaft turns more than once between two samples", none.toString());
        assertTrue(SynchronousResidual.of(wave, angle(STEADY), 100).waveform().isPresent());
    }
}
