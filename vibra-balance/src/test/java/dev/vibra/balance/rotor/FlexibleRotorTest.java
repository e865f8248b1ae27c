package dev.vibra.balance.rotor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.quantity.RotationSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FlexibleRotorTest {
    private static final double EI = 4000;
    private static final double L = 0.8;
    private static final double M = 3;
    private static final double KB = 5e7;

    private static FlexibleRotor shaft() {
        return FlexibleRotor.ofBendingStiffness(EI).with(Bearing.of(0, KB, 0)).with(Bearing.of(L, KB, 0));
    }

    /** Deflection at x of a simply supported beam under a unit force at a ≥ x, strength-of-materials tables. */
    private static double flexibility(double x, double a) {
        double b = L - a;
        return b * x * (L * L - b * b - x * x) / (6 * L * EI);
    }

    // One point mass in the middle: stiffness 48·EI/L³ of the shaft in series with two bearings (Jeffcott).
    @ParameterizedTest
    @ValueSource(doubles = {10, 40, 100, 300})
    void discInTheMiddleIsTheJeffcottRotor(double hertz) {
        double stiffness = 1 / (L * L * L / (48 * EI) + 1 / (2 * KB));
        RotationSpeed speed = RotationSpeed.ofHertz(hertz);
        double w2 = Math.pow(speed.radiansPerSecond(), 2);
        Phasor x = shaft().with(Disc.pointMass(L / 2, M)).with(Probe.of(L / 2, 0))
                .displacementPerUnbalance(0, 0, speed);
        assertEquals(w2 / (stiffness - M * w2), x.re(), 1e-9 * x.magnitude());
        assertEquals(0, x.im(), 1e-9 * x.magnitude());
    }

    @Test
    void discOffTheMiddleFollowsTheBeamTables() {
        double a = 0.3;
        double b = L - a;
        double flexibility = a * a * b * b / (3 * EI * L) + (Math.pow(b / L, 2) + Math.pow(a / L, 2)) / KB;
        RotationSpeed speed = RotationSpeed.ofHertz(25);
        double w2 = Math.pow(speed.radiansPerSecond(), 2);
        Phasor x = shaft().with(Disc.pointMass(a, M)).with(Probe.of(a, 0)).displacementPerUnbalance(0, 0, speed);
        assertEquals(w2 / (1 / flexibility - M * w2), x.re(), 1e-9 * x.magnitude());
    }

    // Two equal discs at L/3 and 2L/3: the in-phase and the opposite mode each answer as one degree of freedom.
    @ParameterizedTest
    @ValueSource(doubles = {10, 60, 200, 400})
    void twoDiscsAnswerInTwoModes(double hertz) {
        double a11 = flexibility(L / 3, L / 3) + (4.0 / 9 + 1.0 / 9) / KB;
        double a12 = flexibility(L / 3, 2 * L / 3) + (2.0 / 9 + 2.0 / 9) / KB;
        RotationSpeed speed = RotationSpeed.ofHertz(hertz);
        double w2 = Math.pow(speed.radiansPerSecond(), 2);
        double together = w2 / (1 / (a11 + a12) - M * w2) / 2;
        double opposite = w2 / (1 / (a11 - a12) - M * w2) / 2;
        FlexibleRotor rotor = shaft().with(Disc.pointMass(L / 3, M)).with(Disc.pointMass(2 * L / 3, M))
                .with(Probe.of(L / 3, 0)).with(Probe.of(2 * L / 3, 0));
        double scale = Math.abs(together) + Math.abs(opposite);
        assertEquals(together + opposite, rotor.displacementPerUnbalance(0, 0, speed).re(), 1e-8 * scale);
        assertEquals(together - opposite, rotor.displacementPerUnbalance(1, 0, speed).re(), 1e-8 * scale);
        assertEquals(together - opposite, rotor.displacementPerUnbalance(0, 1, speed).re(), 1e-8 * scale);
    }

    // A stiff shaft moves as the rigid rotor does, gyroscopic moments, unlike bearings and slanted sensors included.
    @Test
    void stiffShaftIsARigidRotor() {
        Bearing left = new Bearing(-0.25, 2.0e6, 3.5e6, 900, 1200);
        Bearing right = new Bearing(0.35, 1.5e6, 2.5e6, 800, 1000);
        FlexibleRotor stiff = FlexibleRotor.ofBendingStiffness(1e10).with(left).with(right)
                .with(new Disc(0, 20, 0.9, 0.6)).with(new Disc(0.5, 1e-9, 0, 0)).with(Probe.of(-0.25, 20))
                .with(Probe.of(0.5, 90));
        RigidRotor rigid = RigidRotor.of(20, 0.9, 0.6).with(left).with(right).withPlane(0).withPlane(0.5)
                .with(Probe.of(-0.25, 20)).with(Probe.of(0.5, 90));
        for (int sensor = 0; sensor < 2; sensor++) {
            for (int plane = 0; plane < 2; plane++) {
                Phasor expected = rigid.displacementPerUnbalance(sensor, plane, RotationSpeed.ofHertz(45));
                Phasor actual = stiff.displacementPerUnbalance(sensor, plane, RotationSpeed.ofHertz(45));
                assertEquals(0, expected.minus(actual).magnitude(), 1e-4 * expected.magnitude());
            }
        }
    }

    @Test
    void lagsByAQuarterTurnAtTheUndampedCriticalAndByHalfATurnAbove() {
        double flexibility = L * L * L / (48 * EI) + 1 / (2 * KB);
        double critical = Math.sqrt(1 / flexibility / M) / (2 * Math.PI);
        FlexibleRotor damped = FlexibleRotor.ofBendingStiffness(EI).with(Bearing.of(0, KB, 200))
                .with(Bearing.of(L, KB, 200)).with(Disc.pointMass(L / 2, M)).with(Probe.of(L / 2, 0));
        assertEquals(90, lag(damped, critical), 1);
        assertTrue(lag(damped, critical / 2) < 1);
        assertTrue(lag(damped, critical * 2) > 179);
    }

    private static double lag(Rotor rotor, double hertz) {
        return PhaseSense.LAG.degreesOf(rotor.displacementPerUnbalance(0, 0, RotationSpeed.ofHertz(hertz)));
    }

    @Test
    void wordsAndBadInput() {
        FlexibleRotor rotor = shaft().with(Disc.pointMass(0.4, M)).with(Probe.of(0.4, 0));
        assertEquals(1, rotor.planes());
        assertEquals(1, rotor.sensors());
        assertEquals("flexible rotor of 4123 N·m², 0 disc(s), 0 bearing(s), 0 sensor(s)".replace("4123", "4120"),
                FlexibleRotor.ofBendingStiffness(4123).toString());
        assertEquals("3 kg disc at 0.4 m", Disc.pointMass(0.4, 3).toString());
        // E·I of a round shaft: 2.1e11·π·0.02⁴/64 = 1649.3 N·m².
        assertEquals("flexible rotor of 1650 N·m², 0 disc(s), 0 bearing(s), 0 sensor(s)",
                FlexibleRotor.ofShaft(0.02, 2.1e11).toString());
        // Solid cylinder, tables of moments of inertia: m·r²/2 and m·(3r² + h²)/12.
        Disc cylinder = Disc.cylinder(0.1, 12, 0.2, 0.06);
        assertEquals(0.24, cylinder.polarInertia(), 1e-12);
        assertEquals(0.1236, cylinder.diametralInertia(), 1e-12);
        assertEquals(cylinder.polarInertia() / 2, Disc.cylinder(0.1, 12, 0.2, 0).diametralInertia(), 1e-12);
        assertEquals("bending stiffness must be finite and > 0 N·m²: NaN",
                message(() -> FlexibleRotor.ofBendingStiffness(Double.NaN)));
        assertEquals("diameter must be finite and > 0 m: 0.0", message(() -> FlexibleRotor.ofShaft(0, 1)));
        assertEquals("modulus of elasticity must be finite and > 0 Pa: 0.0", message(() -> FlexibleRotor.ofShaft(1,
                0)));
        assertEquals("mass of disc must be finite and > 0 kg: 0.0", message(() -> Disc.pointMass(0, 0)));
        assertEquals("position of disc must be finite: NaN", message(() -> Disc.pointMass(Double.NaN, 1)));
        assertEquals("diametral moment of inertia must be finite and >= 0 kg·m²: -1.0",
                message(() -> new Disc(0, 1, -1, 0)));
        assertEquals("polar moment of inertia must be zero up to twice the diametral one, 1.0 kg·m²: 2.5",
                message(() -> new Disc(0, 1, 1, 2.5)));
        assertEquals("polar moment of inertia must be zero up to twice the diametral one, 1.0 kg·m²: -1.0",
                message(() -> new Disc(0, 1, 1, -1)));
        assertEquals("radius of disc must be finite and > 0 m: 0.0", message(() -> Disc.cylinder(0, 1, 0, 1)));
        assertEquals("thickness of disc must be finite and >= 0 m: -1.0", message(() -> Disc.cylinder(0, 1, 1, -1)));
        FlexibleRotor one = FlexibleRotor.ofBendingStiffness(1).with(Bearing.of(0, 1, 1)).with(Disc.pointMass(1, 1))
                .with(Probe.of(0, 0));
        assertEquals("a flexible rotor must have at least two bearings: 1", assertThrows(IllegalStateException.class,
                () -> one.displacementPerUnbalance(0, 0, RotationSpeed.ofHertz(1))).getMessage());
    }

    private static String message(Executable code) {
        return assertThrows(IllegalArgumentException.class, code).getMessage();
    }
}
