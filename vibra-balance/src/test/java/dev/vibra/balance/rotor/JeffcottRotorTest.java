package dev.vibra.balance.rotor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.Layout;
import dev.vibra.balance.influence.Sensor;
import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JeffcottRotorTest {
    private static final JeffcottRotor ROTOR = JeffcottRotor.of(12, 40, 0.05);

    /**
     * Rao, Mechanical Vibrations, rotating unbalance: MX/(me) = r²/√((1−r²)²+(2ζr)²), tan φ = 2ζr/(1−r²), φ the lag.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.5, 0.9, 1.0, 1.1, 2, 10})
    void followsTheClosedForm(double r) {
        Phasor x = ROTOR.displacementPerUnbalance(0, 0, RotationSpeed.ofHertz(40 * r));
        double magnitude = r * r / Math.sqrt(Math.pow(1 - r * r, 2) + Math.pow(2 * 0.05 * r, 2));
        double lag = Math.toDegrees(Math.atan2(2 * 0.05 * r, 1 - r * r));
        assertEquals(magnitude, x.magnitude() * 12, 1e-12 * magnitude);
        assertEquals(lag, PhaseSense.LAG.degreesOf(x), 1e-9);
    }

    @Test
    void lagsByAQuarterTurnAtTheUndampedCritical() {
        assertEquals(90, PhaseSense.LAG.degreesOf(ROTOR.displacementPerUnbalance(0, 0, RotationSpeed.ofHertz(40))),
                1e-12);
        assertTrue(PhaseSense.LAG.degreesOf(ROTOR.displacementPerUnbalance(0, 0, RotationSpeed.ofHertz(0.1))) < 0.1);
        assertEquals(180, PhaseSense.LAG.degreesOf(ROTOR.displacementPerUnbalance(0, 0, RotationSpeed.ofHertz(1e5))),
                0.01);
    }

    @Test
    void velocityLeadsDisplacementByAQuarterTurn() {
        Layout layout = Layout.ofPlanes(List.of("disc")).withRadius("disc", 100)
                .withSpeeds(List.of(RotationSpeed.ofHertz(20), RotationSpeed.ofHertz(30)));
        Unit[] units = {Unit.UM, Unit.MM_PER_S, Unit.G};
        for (int k = 0; k < 3; k++) {
            InfluenceCoefficients alpha = ROTOR.coefficients(
                    layout.withSensors(List.of(new Sensor("disc", units[k], Detector.RMS))));
            for (int row = 0; row < 2; row++) {
                double omega = 2 * Math.PI * (row == 0 ? 20 : 30);
                Phasor x = ROTOR.displacementPerUnbalance(0, 0, RotationSpeed.ofHertz(row == 0 ? 20 : 30));
                Phasor expected = x.times(Phasor.polar(Math.pow(omega, k), k * Math.PI / 2));
                assertEquals(0, expected.minus(alpha.at(row, 0)).magnitude(), 1e-12 * expected.magnitude());
            }
        }
    }

    @Test
    void wordsAndBadInput() {
        assertEquals("12 kg disc, critical at 40 Hz, damping ratio 0.05", ROTOR.toString());
        assertEquals("mass must be finite and > 0 kg: 0.0", message(() -> JeffcottRotor.of(0, 1, 1)));
        assertEquals("natural frequency must be finite and > 0 Hz: NaN", message(() -> JeffcottRotor.of(1, Double.NaN,
                1)));
        assertEquals("damping ratio must be finite and > 0: 0.0", message(() -> JeffcottRotor.of(1, 1, 0)));
        assertEquals("plane must be from 0 to 0: 1",
                message(() -> ROTOR.displacementPerUnbalance(0, 1, RotationSpeed.ofHertz(1))));
        assertEquals("sensor must be from 0 to 0: 1",
                message(() -> ROTOR.displacementPerUnbalance(1, 0, RotationSpeed.ofHertz(1))));
        Layout open = Layout.ofPlanes(List.of("disc")).withSensors(List.of(new Sensor("a", Unit.UM, Detector.RMS)));
        assertTrue(message(() -> ROTOR.coefficients(open))
                .startsWith("layout must have 1 planes, 1 sensors and at least one speed: 1 plane(s), 1 sensor(s)"));
        assertEquals("radius of plane disc must be known",
                message(() -> ROTOR.coefficients(open.withSpeeds(List.of(RotationSpeed.ofHertz(1))))));
    }

    private static String message(org.junit.jupiter.api.function.Executable code) {
        return assertThrows(IllegalArgumentException.class, code).getMessage();
    }
}
