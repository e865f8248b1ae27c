package dev.vibra.balance.rotor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.ReferenceValues;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.quantity.RotationSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RigidRotorTest {
    private static final double M = 20;
    private static final double ID = 0.9;
    private static final double IP = 0.6;
    private static final double K = 2e6;
    private static final double C = 900;
    private static final double B = 0.3;

    private static RigidRotor symmetric() {
        return RigidRotor.of(M, ID, IP).with(Bearing.of(-B, K, C)).with(Bearing.of(B, K, C))
                .withPlane(0).withPlane(0.2).withPlane(-0.2).with(Probe.of(B, 0)).with(Probe.of(B, 90));
    }

    private static void assertClose(Phasor expected, Phasor actual, double relative) {
        assertEquals(0, expected.minus(actual).magnitude(), relative * expected.magnitude());
    }

    // Static unbalance: one degree of freedom, x/U = ω²/(2k − mω² + 2icω); couple unbalance U at ±a: slope
    // 2aU·ω²/(2kb² − (Id − Ip)ω² + 2icωb²), the gyroscopic moment as in Genta, Dynamics of Rotating Systems.
    @ParameterizedTest
    @ValueSource(doubles = {5, 60, 71.2, 100, 250})
    void symmetricRotorFollowsTheClosedForms(double hertz) {
        RotationSpeed speed = RotationSpeed.ofHertz(hertz);
        double w = speed.radiansPerSecond();
        RigidRotor rotor = symmetric();
        Phasor translation = new Phasor(w * w, 0).dividedBy(new Phasor(2 * K - M * w * w, 2 * C * w));
        assertClose(translation, rotor.displacementPerUnbalance(0, 0, speed), 1e-12);
        Phasor slope = new Phasor(2 * 0.2 * w * w, 0)
                .dividedBy(new Phasor(2 * K * B * B - (ID - IP) * w * w, 2 * C * w * B * B));
        Phasor couple = rotor.displacementPerUnbalance(0, 1, speed).minus(rotor.displacementPerUnbalance(0, 2, speed));
        assertClose(slope.times(B), couple, 1e-12);
        // Alike in all directions: a sensor 90° on with rotation reads the same a quarter turn later.
        assertClose(translation.times(new Phasor(0, -1)), rotor.displacementPerUnbalance(1, 0, speed), 1e-12);
    }

    @Test
    void unlikeBearingsAgreeWithTimeIntegration() {
        ReferenceValues ode = ReferenceValues.read("rigid-rotor.txt");
        RigidRotor rotor = RigidRotor.of(M, ID, IP).with(new Bearing(-0.25, 2.0e6, 3.5e6, 900, 1200))
                .with(new Bearing(0.35, 1.5e6, 2.5e6, 800, 1000)).withPlane(0.2)
                .with(Probe.of(-0.25, 0)).with(Probe.of(-0.25, 90)).with(Probe.of(0.35, 30));
        Phasor unbalance = Phasor.polar(1e-3, Math.toRadians(35));
        for (int k = 0; k < 3; k++) {
            double[] expected = ode.all("probe-" + k);
            Phasor actual = rotor.displacementPerUnbalance(k, 0, RotationSpeed.ofHertz(45)).times(unbalance);
            assertClose(new Phasor(expected[0], expected[1]), actual, 1e-6);
        }
    }

    @Test
    void wordsAndBadInput() {
        assertEquals("rigid rotor of 20 kg, 2 bearing(s), 3 plane(s), 2 sensor(s)", symmetric().toString());
        assertEquals(3, symmetric().planes());
        assertEquals(2, symmetric().sensors());
        assertEquals("bearing at 0.25 m, 2.12e+07 N/m across, 3123000 N/m up".replace("3123000", "3120000"),
                new Bearing(0.25, 2.1234e7, 3.123e6, 0, 0).toString());
        assertEquals("sensor at 0.25 m, 90°", Probe.of(0.25, 90).toString());
        assertEquals("mass must be finite and > 0 kg: NaN", message(() -> RigidRotor.of(Double.NaN, 1, 1)));
        assertEquals("diametral moment of inertia must be finite and > 0 kg·m²: 0.0",
                message(() -> RigidRotor.of(1, 0, 0)));
        assertEquals("polar moment of inertia must be finite and >= 0 kg·m²: -1.0",
                message(() -> RigidRotor.of(1, 1, -1)));
        assertEquals("polar moment of inertia must be at most twice the diametral one, 1.0 kg·m²: 2.1",
                message(() -> RigidRotor.of(1, 1, 2.1)));
        assertEquals(0, RigidRotor.of(1, 3, 6).planes());
        assertEquals("polar moment of inertia must be at most twice the diametral one, 3.0 kg·m²: 6.1",
                message(() -> RigidRotor.of(1, 3, 6.1)));
        assertEquals("position of plane must be finite: NaN", message(() -> symmetric().withPlane(Double.NaN)));
        assertEquals("position of bearing must be finite: NaN", message(() -> Bearing.of(Double.NaN, 1, 1)));
        assertEquals("horizontal stiffness must be finite and > 0 N/m: 0.0", message(() -> Bearing.of(0, 0, 1)));
        assertEquals("vertical stiffness must be finite and > 0 N/m: 0.0", message(() -> new Bearing(0, 1, 0, 1, 1)));
        assertEquals("horizontal damping must be finite and >= 0 N·s/m: -1.0", message(() -> Bearing.of(0, 1, -1)));
        assertEquals("vertical damping must be finite and >= 0 N·s/m: NaN",
                message(() -> new Bearing(0, 1, 1, 1, Double.NaN)));
        assertEquals("position of sensor must be finite: NaN", message(() -> Probe.of(Double.NaN, 0)));
        assertEquals("direction of sensor in degrees must be finite: NaN", message(() -> Probe.of(0, Double.NaN)));
        RigidRotor one = RigidRotor.of(1, 1, 1).with(Bearing.of(0, 1, 1)).withPlane(0).with(Probe.of(0, 0));
        assertTrue(assertThrows(IllegalStateException.class,
                () -> one.displacementPerUnbalance(0, 0, RotationSpeed.ofHertz(1))).getMessage()
                .equals("a rigid rotor must have at least two bearings: 1"));
    }

    private static String message(Executable code) {
        return assertThrows(IllegalArgumentException.class, code).getMessage();
    }

    /** Undamped at its critical speed √(2k/m), and bearings in one place that let a rotor with Id = Ip tumble. */
    @Test
    void whereNoFiniteResponseIsItIsSaid() {
        RotationSpeed critical = RotationSpeed.ofHertz(20);
        double w = critical.radiansPerSecond();
        RigidRotor undamped = RigidRotor.of(16, 1, 0.5).with(Bearing.of(-1, 8 * w * w, 0))
                .with(Bearing.of(1, 8 * w * w, 0)).withPlane(0).with(Probe.of(0, 0));
        RigidRotor tumbling = RigidRotor.of(16, 1, 1).with(Bearing.of(0, 1e6, 10)).with(Bearing.of(0, 1e6, 10))
                .withPlane(0).with(Probe.of(0, 0));
        for (RigidRotor rotor : new RigidRotor[] {undamped, tumbling}) {
            assertTrue(assertThrows(IllegalStateException.class, () -> rotor.displacementPerUnbalance(0, 0, critical))
                    .getMessage().startsWith("the rotor must be held by bearings in two places and must not turn at an"
                    + " undamped critical speed: there is no finite response at 125.66"));
        }
        assertEquals("sensor must be from 0 to 0: 1", assertThrows(IllegalArgumentException.class,
                () -> undamped.displacementPerUnbalance(1, 0, critical)).getMessage());
        assertEquals("plane must be from 0 to 0: -1", assertThrows(IllegalArgumentException.class,
                () -> undamped.displacementPerUnbalance(0, -1, critical)).getMessage());
    }
}
