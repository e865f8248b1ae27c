package dev.vibra.balance.reading;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class SynchronousSignalTest {
    private static final VibrationVector V = VibrationVector.of(3, 60, Unit.UM, Detector.ZERO_TO_PEAK, PhaseSense.LAG);
    private static final RotationSpeed SPEED = RotationSpeed.ofHertz(25);

    // x(t) = A·cos(ω(t − t₀) − φ): the definition of a lag.
    @Test
    void recordingFollowsTheDefinition() {
        Waveform w = new SynchronousSignal(V, SPEED, 0.01).recording(1000, 100);
        assertEquals(Quantity.DISPLACEMENT, w.quantity());
        for (int n = 0; n < 100; n++) {
            double expected = 3e-6 * Math.cos(2 * Math.PI * 25 * (n / 1000.0 - 0.01) - Math.PI / 3);
            assertEquals(expected, w.at(n), 1e-18);
        }
        assertArrayEquals(new double[] {0.01, 0.05, 0.09}, new SynchronousSignal(V, SPEED, 0.01).marks(0.1), 1e-15);
        assertArrayEquals(new double[] {0, 0.04, 0.08}, SynchronousSignal.of(V, SPEED).marks(0.1), 1e-15);
        assertEquals(0, new SynchronousSignal(V, SPEED, 0.03).marks(0.01).length);
        assertEquals(V + " at " + SPEED, SynchronousSignal.of(V, SPEED).toString());
    }

    @Test
    void badInputIsNamed() {
        for (double bad : new double[] {-0.001, 0.04, Double.NaN}) {
            assertEquals("time of the first mark must be zero or more and below one revolution, 0.04 s: " + bad,
                    message(() -> new SynchronousSignal(V, SPEED, bad)));
        }
        SynchronousSignal s = SynchronousSignal.of(V, SPEED);
        for (double bad : new double[] {50, Double.POSITIVE_INFINITY, Double.NaN}) {
            assertEquals("sampleRateHertz must be finite and above twice the rotation frequency, 50.0 Hz: " + bad,
                    message(() -> s.recording(bad, 10)));
        }
        assertEquals("samples must be at least 1: 0", message(() -> s.recording(1000, 0)));
        assertEquals("duration must be finite and >= 0 s: -1.0", message(() -> s.marks(-1)));
    }

    private static String message(Executable code) {
        return assertThrows(IllegalArgumentException.class, code).getMessage();
    }
}
