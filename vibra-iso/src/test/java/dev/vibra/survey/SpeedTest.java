package dev.vibra.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.MeasuringPoint;
import dev.vibra.survey.machine.Tachometer;
import dev.vibra.synthesis.Synthesis;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Where the speed comes from; expected values are those that the signals were made with. */
class SpeedTest {
    private static final int RATE = 6400;

    private static Synthesis noise(double rms) {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, 4 * RATE).noise(rms, 3);
    }

    private static PointSurvey survey(Waveform wave, Waveform tachometer, Double givenHertz) {
        MeasuringPoint.Builder point = MeasuringPoint.of("P", "p.wav", Unit.M_PER_S2);
        if (tachometer != null) {
            point.tachometer(new Tachometer("t.wav", 1));
        }
        MachineDescription.Builder machine = MachineDescription.named("m").lineFrequencyHertz(50).point(point.build());
        if (givenHertz != null) {
            machine.speed(RotationSpeed.ofHertz(givenHertz));
        }
        return Survey.of(machine.build(), Map.of("P", wave), tachometer == null ? Map.of() : Map.of("P", tachometer))
                .points().get(0);
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
        assertEquals("recording", point.speed().source());
        assertEquals(24.6, point.speed().speed().orElseThrow().hertz(), 0.01);
        assertTrue(point.speed().confidence().orElseThrow() >= 0.5);
    }

    @Test
    void aGivenSpeedStandsWhereTheRecordingShowsNone() {
        PointSurvey point = survey(noise(0.5).waveform(), null, 25.0);
        assertEquals("25", String.valueOf((int) point.speed().speed().orElseThrow().hertz()));
        assertEquals("given", point.speed().source());
    }

    @Test
    void humOfTheMainsRefinesNoSpeed() {
        PointSurvey point = survey(noise(0.02).tone(1, 50, 0).waveform(), null, 49.3);
        assertEquals("given", point.speed().source());
    }

    @Test
    void withoutNominalSpeedThreeMultiplesAreNeeded() {
        Synthesis one = noise(0.02).tone(1, 24.6, 0);
        assertEquals("not determined", survey(one.waveform(), null, null).speed().source());
        PointSurvey three = survey(one.tone(0.6, 49.2, 1).tone(0.4, 73.8, 2).waveform(), null, null);
        assertEquals("recording", three.speed().source(), three.speed().remark());
        assertEquals(24.6, three.speed().speed().orElseThrow().hertz(), 0.02);
    }

    @Test
    void withoutNominalSpeedLinesBetweenTheMultiplesForbidAGuess() {
        // Multiples 2, 4 and 6 of 9 Hz look like 18 Hz; the third gives them away.
        PointSurvey point = survey(noise(0.02).tone(1, 18, 0).tone(1, 36, 0).tone(1, 54, 0).tone(0.3, 27, 0)
                .waveform(), null, null);
        assertEquals("not determined", point.speed().source());
        assertTrue(point.omissions().toString().contains("speed: not determined, speedRevolutionsPerMinute is not"
                + " given, and the recording doesn't tell: "), point.omissions().toString());
    }

    @Test
    void tachometerGivesSpeedAndVector() {
        // Acceleration a·cos(2πf(t - 0.01) - 40°): its velocity is a/ω and lags another 90°.
        double hertz = 24.6;
        double phase = -2 * Math.PI * hertz * 0.01 - Math.toRadians(40);
        Waveform wave = wave(hertz, phase);
        PointSurvey point = survey(wave, pulses(hertz, -1), 25.0);
        assertEquals("tachometer", point.speed().source());
        assertEquals(hertz, point.speed().speed().orElseThrow().hertz(), 0.002);
        assertEquals(1e3 / (2 * Math.PI * hertz), point.descriptor("velocity-1x-amplitude").orElseThrow(), 0.02);
        // The trigger sees the edge up to one sample late: 1.4° at this speed.
        assertEquals(130, point.descriptor("velocity-1x-lag").orElseThrow(), 1.5);
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
        assertEquals("tachometer", point.speed().source());
        assertEquals(25, point.speed().speed().orElseThrow().hertz(), 0.01);
        assertEquals("pulses of the tachometer were repaired: 0 doubled, 1 gap", point.speed().remark());
    }

    @Test
    void aSignalWithoutPulsesIsSaidAndTheGivenSpeedStands() {
        PointSurvey point = survey(noise(0.5).waveform(), Waveform.of(Unit.M_PER_S2, RATE, new double[4 * RATE]), 25.0);
        assertEquals("given", point.speed().source());
        assertTrue(point.omissions().contains(new Omission("tachometer",
                "signal of a tachometer must not be constant: 0.0")), point.omissions().toString());
    }
}
