package dev.vibra.point;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.point.SpeedFound.Source;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.Machine;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Where the speed comes from; expected values are those that the signals were made with. */
class SpeedReadingTest {
    private static final int RATE = 6400;

    private static Synthesis noise(double rms) {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, 4 * RATE).noise(rms, 3);
    }

    private static PointSurvey survey(Waveform wave, Waveform tachometer, Double givenHertz) {
        MeasuringPoint point = tachometer == null ? MeasuringPoint.of("P") : MeasuringPoint.of("P").withTachometer(1);
        Machine known = givenHertz == null ? Machine.unknown()
                : Machine.unknown().withSpeed(RotationSpeed.ofHertz(givenHertz));
        MachineDescription machine = MachineDescription.of("m").withMachine(known)
                .withTrain(DriveTrain.plain().withLineHertz(50)).withPoint(point);
        return PointExamination.of(machine).examine(point, wave, Optional.ofNullable(tachometer));
    }

    /** One pulse of 1 ms a revolution, the first at 0.01 s; pulse number {@code left} is left out. */
    private static Waveform pulses(double hertz, int left) {
        double[] x = new double[4 * RATE];
        for (int n = 0; 0.01 + n / hertz < 3.99; n++) {
            int first = (int) Math.round((0.01 + n / hertz) * RATE);
            for (int i = first; i < first + 6 && n != left; i++) {
                x[i] = 5;
            }
        }
        return Waveform.of(Unit.M_PER_S2, RATE, x);
    }

    @Test
    void aGivenSpeedIsRefinedByTheRecording() {
        PointSurvey point = survey(noise(0.02).tone(1, 24.6, 0).waveform(), null, 25.0);
        assertEquals(Source.RECORDING, point.speed().source());
        assertEquals(24.6, point.speed().speed().orElseThrow().hertz(), 0.01);
        assertTrue(point.speed().confidence().orElseThrow() >= 0.5);
    }

    @Test
    void aGivenSpeedStandsWhereTheRecordingShowsNone() {
        PointSurvey point = survey(noise(0.5).waveform(), null, 25.0);
        assertEquals("25", String.valueOf((int) point.speed().speed().orElseThrow().hertz()));
        assertEquals(Source.GIVEN, point.speed().source());
    }

    @Test
    void aPlateThatIsWrongByHalfOrATwiceIsNotFollowed() {
        Synthesis lines = noise(0.02).tone(1, 24.7, 0).tone(0.3, 49.4, 1).tone(0.2, 74.1, 2);
        PointSurvey twice = survey(lines.waveform(), null, 49.4);
        assertEquals(Source.GIVEN, twice.speed().source(), twice.speed().toString());
        PointSurvey off = survey(lines.waveform(), null, 17.0);
        assertEquals(Source.GIVEN, off.speed().source());
        assertTrue(off.speed().remark().contains("the lines fit 1482 r/min"), off.speed().remark());
    }

    @Test
    void aSlowMachineIsLookedForWhereItIsSaidToTurn() {
        Synthesis slow = Synthesis.silence(Quantity.ACCELERATION, 640, 60 * 640).noise(0.001, 5)
                .tone(0.05, 1.5, 0).tone(0.02, 3, 1).tone(0.02, 4.5, 2);
        assertEquals(Source.RECORDING, survey(slow.waveform(), null, 1.52).speed().source());
    }

    @Test
    void humOfTheMainsRefinesNoSpeed() {
        PointSurvey point = survey(noise(0.02).tone(1, 50, 0).waveform(), null, 49.3);
        assertEquals(Source.GIVEN, point.speed().source());
    }

    @Test
    void withoutGivenSpeedALoneLineIsNoSpeedAndAFamilyIsOne() {
        Synthesis one = noise(0.02).tone(1, 24.6, 0);
        PointSurvey lone = survey(one.waveform(), null, null);
        assertEquals(Source.NOT_DETERMINED, lone.speed().source());
        assertTrue(lone.omissions().stream().anyMatch(omission -> omission.subject() == Omission.Subject.SPEED));
        PointSurvey family = survey(one.tone(0.6, 49.2, 1).tone(0.4, 73.8, 2).waveform(), null, null);
        assertEquals(Source.RECORDING, family.speed().source(), family.speed().remark());
        assertEquals(24.6, family.speed().speed().orElseThrow().hertz(), 0.02);
    }

    @Test
    void tachometerGivesSpeedAndVector() {
        // Acceleration a·cos(2πf(t - 0.01) - 40°): its velocity is a/ω and lags another 90°.
        double hertz = 24.6;
        double phase = -2 * Math.PI * hertz * 0.01 - Math.toRadians(40);
        Waveform wave = wave(hertz, phase);
        PointSurvey point = survey(wave, pulses(hertz, -1), 25.0);
        assertEquals(Source.TACHOMETER, point.speed().source());
        assertEquals(hertz, point.speed().speed().orElseThrow().hertz(), 0.002);
        assertEquals(1e3 / (2 * Math.PI * hertz),
                point.description().value("velocity-1x-amplitude").orElseThrow(), 0.02);
        // The trigger sees the edge up to one sample late: 1.4° at this speed.
        assertEquals(130, point.description().value("velocity-1x-lag").orElseThrow(), 1.5);
    }

    private static Waveform wave(double hertz, double phase) {
        double[] x = noise(0.02).waveform().samples();
        for (int i = 0; i < x.length; i++) {
            x[i] += Math.cos(2 * Math.PI * hertz * i / RATE + phase);
        }
        return Waveform.of(Unit.M_PER_S2, RATE, x);
    }

    @Test
    void repairedPulsesAreSaid() {
        PointSurvey point = survey(wave(25, 0), pulses(25, 20), null);
        assertEquals(Source.TACHOMETER, point.speed().source());
        assertEquals(25, point.speed().speed().orElseThrow().hertz(), 0.01);
        assertEquals("pulses of the tachometer were repaired: 0 doubled, 1 gap", point.speed().remark());
    }

    @Test
    void aSignalWithoutPulsesIsSaidAndTheGivenSpeedStands() {
        PointSurvey point = survey(noise(0.5).waveform(), Waveform.of(Unit.M_PER_S2, RATE, new double[4 * RATE]), 25.0);
        assertEquals(Source.GIVEN, point.speed().source());
        assertTrue(point.omissions().contains(Omission.of(Omission.Subject.TACHOMETER,
                "its recording is constant")), point.omissions().toString());
    }
}
