package dev.vibra.bearing.synthesis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.SpeedProfile;
import org.junit.jupiter.api.Test;

/** The forward model of a varying speed, at a steady one, is the forward model. */
class VaryingBearingSignalTest {
    private static final RotationSpeed SPEED = RotationSpeed.ofHertz(24.7);
    private static final BearingSignal SIGNAL = BearingSignal.of(BearingGeometry.of(9, 7.94, 39.04, 0)
            .frequencies(RotatingRing.INNER, SPEED)).withDefect(BearingElement.INNER_RACE, 10)
            .withDefect(BearingElement.ROLLING_ELEMENT, 8).withSlip(-0.005, 0.01)
            .withSurroundings(Surroundings.ofNoise(0.5).withShaftTones(2).withGear(new GearMesh(568.1, 3, 24.7, 0.5)));

    @Test
    void aSteadyProfileGivesTheSteadySamples() {
        Waveform steady = SIGNAL.waveform(12_800, 25_600, 4);
        Waveform followed = SIGNAL.waveform(12_800, new SpeedProfile(SPEED, SPEED, 2), 4);
        assertEquals(steady.length(), followed.length());
        for (int i = 0; i < steady.length(); i++) {
            assertEquals(steady.at(i), followed.at(i), 1e-6);
        }
    }

    @Test
    void theRatesMustBeThoseAtTheMeanSpeed() {
        SpeedProfile faster = new SpeedProfile(SPEED, RotationSpeed.ofHertz(25), 2);
        assertThrows(IllegalArgumentException.class, () -> SIGNAL.waveform(12_800, faster, 4));
    }
}
