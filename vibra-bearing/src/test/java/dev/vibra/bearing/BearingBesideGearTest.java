package dev.vibra.bearing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.rotation.SynchronousResidual;
import dev.vibra.rotation.Tachometer;
import dev.vibra.rotation.TrackedAngle;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A bearing beside a strong mesh of gears of 23 and 57 teeth: masked in the recording, judged in what is left. */
class BearingBesideGearTest {
    private static final double RATE = 25_600;
    private static final double RATIO = 23.0 / 57;
    private static final RotationSpeed SPEED = RotationSpeed.ofHertz(24.7);
    private static final SpeedProfile STEADY = new SpeedProfile(SPEED, SPEED, 150 / 24.7);
    private static final SpeedProfile RAMP = new SpeedProfile(RotationSpeed.ofHertz(24.2),
            RotationSpeed.ofHertz(25.2), 150 / 24.7);
    private static final BearingGeometry GEOMETRY = BearingGeometry.of(9, 7.94, 39.04, 0);
    private static final KinematicFrequencies RATES = GEOMETRY.frequencies(RotatingRing.INNER, SPEED);

    /** Eight harmonics of the mesh, 6 m/s² each, with sidebands of both shafts. */
    private static Waveform withGear(BearingSignal bearing, SpeedProfile profile, long seed) {
        Waveform wave = bearing.withSlip(-0.002, 0.01).withShaftTones(1).withResonance(3200, 0.05)
                .waveform(RATE, profile, seed);
        Synthesis sum = Synthesis.silence(Quantity.ACCELERATION, RATE, wave.length()).plus(wave);
        for (int n = 1; n <= 8; n++) {
            for (int side = -2; side <= 2; side++) {
                sum = sum.order(6 * Math.pow(0.6, Math.abs(side)), 23 * n + side, profile, 1.7 * n + 2.3 * side);
            }
            sum = sum.order(2.4, 23 * n - RATIO, profile, n).order(2.4, 23 * n + RATIO, profile, 2.0 * n);
        }
        return sum.waveform();
    }

    private static BearingDiagnosis ofResidual(Waveform wave, ShaftAngle angle) {
        Waveform left = SynchronousResidual.of(wave, angle, RATIO).waveform().orElseThrow();
        return diagnosis(left, angle);
    }

    private static BearingDiagnosis diagnosis(Waveform wave, ShaftAngle angle) {
        RotationSpeed mean = angle.meanSpeed();
        return BearingDiagnosis.of(angle.atMeanSpeed(wave), GEOMETRY.frequencies(RotatingRing.INNER, mean),
                DiagnosisSettings.withDefaults().withOtherRates(23 * mean.hertz(), RATIO * mean.hertz()));
    }

    private static ShaftAngle byTachometer(SpeedProfile profile) {
        Waveform pulses = profile.tachometer(RATE, 1);
        return ShaftAngle.of(Tachometer.fitting(pulses).pulses(pulses), 1);
    }

    private static ShaftAngle byMesh(Waveform wave) {
        return TrackedAngle.of(wave, SPEED, 1, 2, 3, 23, 46, 69).angle().orElseThrow();
    }

    @ParameterizedTest
    @EnumSource(names = {"OUTER_RACE", "INNER_RACE", "ROLLING_ELEMENT"})
    void theResidualShowsWhatTheMeshMasks(BearingElement element) {
        for (SpeedProfile profile : new SpeedProfile[] {STEADY, RAMP}) {
            Waveform wave = withGear(BearingSignal.of(RATES).withDefect(element, 12), profile, 3);
            ShaftAngle pulses = byTachometer(profile);
            assertNotEquals(ElementVerdict.PRESENT, diagnosis(wave, pulses).of(element).verdict());
            for (ShaftAngle angle : new ShaftAngle[] {pulses, byMesh(wave)}) {
                BearingDiagnosis diagnosis = ofResidual(wave, angle);
                for (BearingElement one : BearingElement.values()) {
                    assertEquals(one == element, diagnosis.of(one).verdict() == ElementVerdict.PRESENT,
                            () -> profile + ", " + angle + "\n" + diagnosis.describe());
                }
            }
        }
    }

    @Test
    void aSoundBearingBesideAGearShowsNothing() {
        for (SpeedProfile profile : new SpeedProfile[] {STEADY, RAMP}) {
            for (long seed = 1; seed <= 3; seed++) {
                Waveform wave = withGear(BearingSignal.of(RATES), profile, seed);
                for (ShaftAngle angle : new ShaftAngle[] {byTachometer(profile), byMesh(wave)}) {
                    BearingDiagnosis diagnosis = ofResidual(wave, angle);
                    assertTrue(diagnosis.findings().stream().noneMatch(f -> f.verdict() == ElementVerdict.PRESENT),
                            diagnosis::describe);
                }
            }
        }
    }
}
