package dev.vibra.bearing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.rotation.Tachometer;
import dev.vibra.rotation.TrackedAngle;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.SpeedProfile;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A shaft whose speed varies, brought to its mean speed, is judged as one that turns steadily. */
class VaryingSpeedDiagnosisTest {
    private static final BearingGeometry GEOMETRY = BearingGeometry.of(9, 7.94, 39.04, 0);
    private static final double RATE = 12_800;
    private static final RotationSpeed SPEED = RotationSpeed.ofHertz(24.7);
    private static final SpeedProfile STEADY = new SpeedProfile(SPEED, SPEED, 200 / 24.7);
    private static final SpeedProfile RAMP = new SpeedProfile(RotationSpeed.ofHertz(0.975 * 24.7),
            RotationSpeed.ofHertz(1.025 * 24.7), 200 / 24.7);
    private static final SpeedProfile WANDER = STEADY.withWander(0.02, 2 * 24.7 / 200);

    private static BearingDiagnosis diagnosis(Waveform wave, RotationSpeed speed) {
        return BearingDiagnosis.of(wave, GEOMETRY.frequencies(RotatingRing.INNER, speed));
    }

    private static Waveform recording(SpeedProfile profile, BearingElement element, long seed) {
        return BearingSignal.of(GEOMETRY.frequencies(RotatingRing.INNER, profile.meanSpeed()))
                .withDefect(element, 10).withSlip(-0.005, 0.01).withShaftTones(1).withResonance(3200, 0.05)
                .waveform(RATE, profile, seed);
    }

    private static ShaftAngle byTachometer(SpeedProfile profile) {
        Waveform pulses = profile.tachometer(RATE, 1);
        return ShaftAngle.of(Tachometer.fitting(pulses).pulses(pulses), 1);
    }

    private static void assertAlike(BearingDiagnosis steady, BearingDiagnosis even, BearingElement element) {
        for (BearingElement one : BearingElement.values()) {
            boolean present = steady.of(one).verdict() == ElementVerdict.PRESENT;
            assertEquals(present, even.of(one).verdict() == ElementVerdict.PRESENT, () -> steady + " and " + even);
        }
        assertEquals(steady.of(element).verdict(), even.of(element).verdict(), () -> steady + " and " + even);
        double order = steady.of(element).foundHertz().orElseThrow() / SPEED.hertz();
        double mean = even.kinematics().shaftHertz();
        assertEquals(order, even.of(element).foundHertz().orElseThrow() / mean, 2e-3 * order);
    }

    @ParameterizedTest
    @EnumSource
    void aVaryingSpeedIsJudgedAsASteadyOne(BearingElement element) {
        for (SpeedProfile profile : new SpeedProfile[] {RAMP, WANDER}) {
            for (long seed = 1; seed <= 2; seed++) {
                BearingDiagnosis steady = diagnosis(recording(STEADY, element, seed), SPEED);
                Waveform wave = recording(profile, element, seed);
                ShaftAngle pulses = byTachometer(profile);
                assertAlike(steady, diagnosis(pulses.atMeanSpeed(wave), pulses.meanSpeed()), element);
                ShaftAngle lines = TrackedAngle.of(wave, SPEED).angle().orElseThrow();
                assertAlike(steady, diagnosis(lines.atMeanSpeed(wave), lines.meanSpeed()), element);
            }
        }
    }

    /** Without that, a speed that wanders by 2 % smears the rates of the elements. */
    @ParameterizedTest
    @EnumSource(names = {"OUTER_RACE", "INNER_RACE", "ROLLING_ELEMENT"})
    void aSpeedThatWandersHidesTheDefect(BearingElement element) {
        assertEquals(ElementVerdict.PRESENT, diagnosis(recording(STEADY, element, 1), SPEED).of(element).verdict());
        assertNotEquals(ElementVerdict.PRESENT,
                diagnosis(recording(WANDER, element, 1), WANDER.meanSpeed()).of(element).verdict());
    }
}
