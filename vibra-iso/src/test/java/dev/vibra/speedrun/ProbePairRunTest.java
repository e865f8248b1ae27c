package dev.vibra.speedrun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.SpeedProfile;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A shaft that whirls on a known ellipse and lifts to a known place is looked at by two probes; what comes out must be
 * that path, however the probes stand.
 */
class ProbePairRunTest {
    private static final double RATE = 4000;
    private static final SpeedProfile DOWN = new SpeedProfile(RotationSpeed.ofHertz(50), RotationSpeed.ofHertz(5), 40);
    private static final SpeedSweep SWEEP = SpeedSweep.read(DOWN.tachometer(10_000, 1), 1).sweep().orElseThrow();

    /** Along a probe at an angle: 30 µm right and 10 µm up, counter-clockwise, and a lift that grows with speed. */
    private static Waveform along(double degrees, int turning, boolean growsAway) {
        double[] metres = new double[(int) (RATE * DOWN.seconds())];
        for (int i = 0; i < metres.length; i++) {
            double time = i / RATE;
            double speed = DOWN.speedAt(time).hertz() / 50;
            double angle = turning * 2 * Math.PI * DOWN.revolutionsAt(time);
            double right = speed * speed * 30e-6 * Math.cos(angle) + speed * 20e-6;
            double up = speed * speed * 10e-6 * Math.sin(angle) + speed * 60e-6;
            double towards = right * Math.cos(Math.toRadians(degrees)) + up * Math.sin(Math.toRadians(degrees));
            metres[i] = growsAway ? 1e-3 - towards : 1e-3 + towards;
        }
        return Waveform.ofSi(Quantity.DISPLACEMENT, RATE, metres);
    }

    private static ProbePairRun run(double xDegrees, double yDegrees, int turning, TurningSense told,
            boolean growsAway) {
        Waveform x = along(xDegrees, turning, growsAway);
        Waveform y = along(yDegrees, turning, growsAway);
        return ProbePairRun.of("drive end", x, y, PointRun.of("X", x, SWEEP), PointRun.of("Y", y, SWEEP),
                new ProbePair(xDegrees, yDegrees, told, growsAway));
    }

    @ParameterizedTest
    @CsvSource({"45, 135, true", "45, 135, false", "135, 45, true", "0, 90, true", "30, 300, false", "-45, 45, true"})
    void pathIsThatOfTheShaftHoweverTheProbesStand(double xDegrees, double yDegrees, boolean growsAway) {
        for (TurningSense told : TurningSense.values()) {
            ProbePairRun run = run(xDegrees, yDegrees, 1, told, growsAway);
            OrbitAt fastest = run.orbits().get(run.orbits().size() - 1);
            double grown = Math.pow(fastest.speed().hertz() / 50, 2);
            boolean forward = told == TurningSense.COUNTER_CLOCKWISE;
            assertEquals(forward, fastest.ellipse().isForward(), run::toString);
            assertEquals(30e-6 * grown, fastest.ellipse().longHalfAxis(), 0.7e-6);
            assertEquals(10e-6 * grown, fastest.ellipse().shortHalfAxis(), 0.5e-6);
            assertEquals(30e-6 * grown, fastest.right().amplitude(), 0.7e-6);
            assertEquals(10e-6 * grown, fastest.up().amplitude(), 0.5e-6);
            assertEquals(90, fastest.up().lagDegrees(), 1.5);
            assertEquals(30e-6 * grown, fastest.rights()[0], 2e-6);
            assertEquals(0, fastest.ups()[0], 2e-6);
            assertEquals(10e-6 * grown, fastest.ups()[fastest.samplesPerTurn() / 4], 2e-6);
            int line = (int) Math.rint(fastest.speed().hertz() / run.fullSpectrum().frequencyHertz(1));
            assertEquals(forward, run.fullSpectrum().radius(line) > run.fullSpectrum().radius(-line));
        }
    }

    @Test
    void centreLineGoesFromTheSlowestSpeedToTheFastest() {
        for (boolean growsAway : new boolean[] {true, false}) {
            List<CentrePoint> line = run(45, 135, 1, TurningSense.COUNTER_CLOCKWISE, growsAway).centreLine();
            CentrePoint first = line.get(0);
            CentrePoint last = line.get(line.size() - 1);
            assertEquals(0, Math.hypot(last.right(), last.up()), 1e-12);
            double gained = (first.speed().hertz() - last.speed().hertz()) / 50;
            assertEquals(20e-6 * gained, first.right(), 1.5e-6);
            assertEquals(60e-6 * gained, first.up(), 1.5e-6);
        }
    }

    @Test
    void obstacles() {
        Waveform x = along(45, 1, true);
        ProbePair square = new ProbePair(45, 135, TurningSense.CLOCKWISE, true);
        assertTrue(ProbePairRun.obstacle(x, x, square).isEmpty());
        assertEquals("the probes stand 60 degrees apart; an orbit is made of two at right angles, to within 5 degrees",
                ProbePairRun.obstacle(x, x, new ProbePair(45, 105, TurningSense.CLOCKWISE, true)).orElseThrow());
        assertTrue(ProbePairRun.obstacle(x, x.part(0, 100), square).isPresent());
        assertTrue(ProbePairRun.obstacle(x, Waveform.ofSi(Quantity.VELOCITY, RATE, x.samples()), square).isPresent());
        PointRun run = PointRun.of("X", x, SWEEP);
        assertThrows(IllegalArgumentException.class, () -> ProbePairRun.of("A", x, x.part(0, 100), run, run, square));
        assertFalse(new ProbePair(0, 270, TurningSense.CLOCKWISE, true).obstacle().isPresent());
    }
}
