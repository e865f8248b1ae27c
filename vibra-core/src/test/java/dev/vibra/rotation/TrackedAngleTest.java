package dev.vibra.rotation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The angle by the lines against the closed form of the angle that was put in. */
class TrackedAngleTest {
    private static final double RATE = 5120;

    private static SpeedProfile ramp(double hertz, double share, double revolutions) {
        return new SpeedProfile(RotationSpeed.ofHertz(hertz * (1 - 0.5 * share)),
                RotationSpeed.ofHertz(hertz * (1 + 0.5 * share)), revolutions / hertz);
    }

    private static SpeedProfile wander(double hertz, double revolutions) {
        return ramp(hertz, 0, revolutions).withWander(0.02, 2 * hertz / revolutions);
    }

    private static Synthesis noise(SpeedProfile profile, double rms, long seed) {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, (int) (profile.seconds() * RATE)).noise(rms, seed);
    }

    /** Largest distance from the true angle in revolutions, wherever the zero lies. */
    private static double error(ShaftAngle angle, SpeedProfile profile) {
        double lowest = Double.MAX_VALUE;
        double highest = -Double.MAX_VALUE;
        for (double r = 0; r <= angle.revolutions(); r += 0.37) {
            double off = profile.revolutionsAt(angle.secondsAt(r)) - r;
            lowest = Math.min(lowest, off);
            highest = Math.max(highest, off);
        }
        return 0.5 * (highest - lowest);
    }

    @ParameterizedTest
    @ValueSource(doubles = {100, 200, 300})
    void followsRampAndWander(double revolutions) {
        for (SpeedProfile profile : List.of(ramp(24.7, 0.05, revolutions), wander(24.7, revolutions),
                ramp(24.7, 0, revolutions), ramp(7.3, -0.05, revolutions))) {
            Waveform wave = noise(profile, 0.5, (long) revolutions).order(1, 1, profile, 0.4)
                    .order(0.5, 2, profile, 2).order(0.2, 3, profile, 1).waveform();
            for (double known : new double[] {0.98, 1, 1.02}) {
                RotationSpeed given = RotationSpeed.ofHertz(known * profile.meanSpeed().hertz());
                TrackedAngle tracked = TrackedAngle.of(wave, given);
                ShaftAngle angle = tracked.angle().orElseThrow(() -> new AssertionError(tracked.toString()));
                assertEquals(List.of(1, 2, 3), tracked.multiples());
                double u = tracked.uncertaintyRevolutions().orElseThrow();
                assertTrue(u > 0 && u < 0.01, tracked::toString);
                // Largest of some dozen independent blocks, and what two rounds of correction leave of the course.
                assertTrue(error(angle, profile) < 4 * u + 0.002, () -> tracked + ": " + error(angle, profile));
                assertTrue(angle.revolutions() > revolutions - 12);
            }
        }
    }

    /** The mesh tells the angle as much better as it has teeth. */
    @Test
    void aMeshTellsTheAngleFinely() {
        SpeedProfile profile = ramp(24.7, 0.05, 150);
        Waveform wave = noise(profile, 0.5, 1).order(1, 1, profile, 0.4).order(2, 23, profile, 0)
                .order(0.8, 24, profile, 1).order(0.8, 22.6, profile, 1).waveform();
        TrackedAngle coarse = TrackedAngle.of(wave, profile.meanSpeed());
        TrackedAngle fine = TrackedAngle.of(wave, profile.meanSpeed(), 1, 2, 3, 23, 46, 200);
        assertEquals(List.of(1), coarse.multiples());
        assertEquals(List.of(1, 23), fine.multiples());
        assertTrue(error(fine.angle().orElseThrow(), profile) < 0.0005);
        assertTrue(error(coarse.angle().orElseThrow(), profile) > 0.0005);
    }

    /** Hum stands still while the shaft wanders about half its frequency; it must not pull the angle. */
    @Test
    void humIsLeftOut() {
        SpeedProfile profile = wander(25, 200);
        Waveform wave = noise(profile, 0.2, 1).order(1, 1, profile, 0.4).order(0.5, 3, profile, 0)
                .tone(3, 50, 0).waveform();
        TrackedAngle tracked = TrackedAngle.of(wave, profile.meanSpeed());
        assertEquals(List.of(1, 3), tracked.multiples());
        assertTrue(error(tracked.angle().orElseThrow(), profile) < 0.01);
    }

    @Test
    void noiseTellsNoAngle() {
        for (int seed = 0; seed < 20; seed++) {
            SpeedProfile profile = ramp(25, 0, 100);
            TrackedAngle tracked = TrackedAngle.of(noise(profile, 1, seed).waveform(), profile.meanSpeed());
            assertFalse(tracked.angle().isPresent(), tracked::toString);
            assertTrue(tracked.uncertaintyRevolutions().isEmpty());
            assertTrue(tracked.multiples().isEmpty());
            assertFalse(tracked.reason().isEmpty());
        }
    }

    @Test
    void saysWhyItDoesNotKnow() {
        SpeedProfile profile = ramp(25, 0.02, 100);
        Waveform wave = noise(profile, 0.1, 1).order(1, 1, profile, 0).order(1, 2, profile, 0).waveform();
        assertTrue(TrackedAngle.of(wave, RotationSpeed.ofHertz(25 / 1.2)).angle().isEmpty());
        assertTrue(TrackedAngle.of(wave, RotationSpeed.ofHertz(25 / 1.06)).reason().contains("more than 4 %"),
                TrackedAngle.of(wave, RotationSpeed.ofHertz(25 / 1.06)).toString());
        assertEquals("angle not determined: the recording holds 19.0 revolutions, 20 are needed",
                TrackedAngle.of(noise(ramp(25, 0, 19), 1, 1).waveform(), profile.meanSpeed()).toString());
        assertEquals("the sample rate leaves no multiple of the speed",
                TrackedAngle.of(wave, RotationSpeed.ofHertz(2000)).reason());
        assertThrows(IllegalArgumentException.class, () -> TrackedAngle.of(wave, profile.meanSpeed(), new int[0]));
        assertThrows(IllegalArgumentException.class, () -> TrackedAngle.of(wave, profile.meanSpeed(), 0, 1));
        Waveform silent = Waveform.ofSi(Quantity.ACCELERATION, RATE, new double[20_480]);
        assertTrue(TrackedAngle.of(silent, profile.meanSpeed()).angle().isEmpty());
    }
}
