package dev.vibra.balance.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.ReferenceValues;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Phasor;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class VectorCovarianceTest {
    private static final ReferenceValues SCIPY = ReferenceValues.read("within-limits.txt");

    private static VectorCovariance of(Phasor... effects) {
        return VectorCovariance.ofEffects(1, java.util.Arrays.stream(effects).map(e -> new Phasor[] {e}).toList());
    }

    @Test
    void effectsAddAsSquares() {
        VectorCovariance c = of(new Phasor(3, 0), new Phasor(0, 2), new Phasor(1, 1));
        assertEquals(10, c.at(0, 0), 1e-12);
        assertEquals(5, c.at(1, 1), 1e-12);
        assertEquals(1, c.at(0, 1), 1e-12);
        assertEquals(1, c.at(1, 0), 1e-12);
        assertEquals(20, c.plus(c).at(0, 0), 1e-12);
        assertEquals(2.5, c.times(0.25).at(0, 0), 1e-12);
        assertEquals(1, c.vectors());
        assertEquals("covariance of 1 vector(s)", c.toString());
        assertEquals(0, VectorCovariance.ofEffects(2, List.of()).at(3, 3));
    }

    // Independent parts 3 and 2: half axes 3·√5.9915 and 2·√5.9915, the tabled 95 % quantile of χ² with 2 degrees.
    @Test
    void ellipseOfIndependentParts() {
        Ellipse e = of(new Phasor(3, 0), new Phasor(0, 2)).ellipse(0, new Phasor(10, 20), 0.95);
        assertEquals(3 * Math.sqrt(5.9915), e.major(), 1e-4);
        assertEquals(2 * Math.sqrt(5.9915), e.minor(), 1e-4);
        assertEquals(0, e.majorRadians(), 1e-12);
        assertTrue(e.contains(new Phasor(10, 20)));
        assertTrue(e.contains(new Phasor(10 + 3 * 2.447, 20)));
        assertFalse(e.contains(new Phasor(10 + 3 * 2.449, 20)));
        assertTrue(e.contains(new Phasor(10, 20 - 2 * 2.447)));
        assertFalse(e.contains(new Phasor(10, 20 - 2 * 2.449)));
        Ellipse upright = of(new Phasor(2, 0), new Phasor(0, 3)).ellipse(0, Phasor.ZERO, 0.95);
        assertEquals(Math.PI / 2, upright.majorRadians(), 1e-12);
        assertTrue(upright.contains(new Phasor(0, 7.3)));
        assertFalse(upright.contains(new Phasor(7.3, 0)));
    }

    @Test
    void turnedEllipse() {
        Phasor turn = Phasor.polar(1, 0.5);
        Ellipse e = of(new Phasor(3, 0).times(turn), new Phasor(0, 2).times(turn)).ellipse(0, Phasor.ZERO, 0.5);
        assertEquals(0.5, e.majorRadians(), 1e-12);
        assertEquals(3 * Math.sqrt(2 * Math.log(2)), e.major(), 1e-12);
        assertEquals(2 * Math.sqrt(2 * Math.log(2)), e.minor(), 1e-12);
        assertTrue(e.contains(Phasor.polar(3.5, 0.5)));
        assertFalse(e.contains(Phasor.polar(3.6, 0.5)));
        assertFalse(e.contains(Phasor.polar(3.5, -0.5)));
        assertTrue(e.contains(Phasor.polar(2.3, 0.5 + Math.PI / 2)));
        assertFalse(e.contains(Phasor.polar(2.4, 0.5 + Math.PI / 2)));
        Ellipse line = of(new Phasor(3, 0)).ellipse(0, Phasor.ZERO, 0.5);
        assertEquals(0, line.minor());
        assertTrue(line.contains(new Phasor(1, 0)));
        assertFalse(line.contains(new Phasor(1, 1e-9)));
        assertEquals("ellipse of half axes 3.53 and 2.35 about 0 at 0.0°, coverage 50 %", e.toString());
    }

    @Test
    void linearMapsCarryTheCovariance() {
        VectorCovariance c = VectorCovariance.ofEffects(2, List.of(new Phasor[] {new Phasor(1, 2), new Phasor(0, 1)},
                new Phasor[] {new Phasor(-1, 0.5), new Phasor(2, 2)}));
        VectorCovariance sum = c.mapped(1, v -> new Phasor[] {v[0].plus(v[1])});
        // Effects of the sum: (1, 3) and (1, 2.5).
        assertEquals(2, sum.at(0, 0), 1e-12);
        assertEquals(9 + 6.25, sum.at(1, 1), 1e-12);
        assertEquals(5.5, sum.at(0, 1), 1e-12);
        VectorCovariance same = VectorCovariance.ofEffects(2, c.effects());
        for (int i = 0; i < 16; i++) {
            assertEquals(c.at(i / 4, i % 4), same.at(i / 4, i % 4), 1e-12);
        }
    }

    @Test
    void probabilities() {
        // Isotropic about zero: 1 − exp(−R²/2σ²), Rayleigh.
        VectorCovariance round = of(new Phasor(0.7, 0), new Phasor(0, 0.7));
        assertEquals(1 - Math.exp(-1.5 * 1.5 / (2 * 0.49)),
                round.probabilityWithin(new Phasor[] {Phasor.ZERO}, new double[] {1.5}), 0.003);
        assertEquals(SCIPY.one("offset-circle"),
                round.probabilityWithin(new Phasor[] {Phasor.polar(1, 2)}, new double[] {1.5}), 0.003);
        // Covariance 0.9, 0.4, 0.5 out of two effects (its Cholesky factor).
        double a = Math.sqrt(0.9);
        VectorCovariance slanted = of(new Phasor(a, 0.4 / a), new Phasor(0, Math.sqrt(0.5 - 0.16 / 0.9)));
        assertEquals(SCIPY.one("ellipse"),
                slanted.probabilityWithin(new Phasor[] {new Phasor(0.8, -0.3)}, new double[] {1.2}), 0.003);
        // Two independent planes multiply; two that move together don't.
        Phasor[] zero = {Phasor.ZERO, Phasor.ZERO};
        double single = 1 - Math.exp(-0.5);
        VectorCovariance apart = VectorCovariance.ofEffects(2, List.of(
                new Phasor[] {Phasor.ONE, Phasor.ZERO}, new Phasor[] {new Phasor(0, 1), Phasor.ZERO},
                new Phasor[] {Phasor.ZERO, Phasor.ONE}, new Phasor[] {Phasor.ZERO, new Phasor(0, 1)}));
        assertEquals(single * single, apart.probabilityWithin(zero, new double[] {1, 1}), 0.004);
        VectorCovariance together = VectorCovariance.ofEffects(2, List.of(
                new Phasor[] {Phasor.ONE, Phasor.ONE}, new Phasor[] {new Phasor(0, 1), new Phasor(0, 1)}));
        assertEquals(single, together.probabilityWithin(zero, new double[] {1, 1}), 0.003);
        // Without any error the answer is sure.
        VectorCovariance none = VectorCovariance.ofEffects(1, List.of());
        assertEquals(1, none.probabilityWithin(new Phasor[] {Phasor.ONE}, new double[] {1}));
        assertEquals(0, none.probabilityWithin(new Phasor[] {Phasor.ONE}, new double[] {0.99}));
    }

    @Test
    void scatterOfAReading() {
        ReadingScatter s = ReadingScatter.of(0.03, 2);
        Phasor v = Phasor.polar(5, 1);
        assertEquals(0, s.along(v, 1).minus(Phasor.polar(0.15, 1)).magnitude(), 1e-15);
        assertEquals(0, s.across(v, 1).minus(Phasor.polar(5 * Math.PI / 90, 1 + Math.PI / 2)).magnitude(), 1e-15);
        assertEquals("scatter 3 %, 2° (one standard deviation)", s.toString());
        // 3 % of 5 are 0.15; a floor of 0.4 of a unit that is 0.5 makes it √(0.15² + 0.2²) = 0.25.
        ReadingScatter floored = s.withFloor(0.4);
        assertEquals(0, floored.along(v, 0.5).minus(Phasor.polar(0.25, 1)).magnitude(), 1e-15);
        assertEquals(Math.hypot(5 * Math.PI / 90, 0.2), floored.across(v, 0.5).magnitude(), 1e-15);
        assertEquals(0, floored.along(Phasor.ZERO, 0.5).minus(new Phasor(0.2, 0)).magnitude(), 1e-15);
        assertEquals(0, floored.across(Phasor.ZERO, 0.5).minus(new Phasor(0, 0.2)).magnitude(), 1e-15);
        assertEquals("scatter 3 %, 2°, floor 0.4 (one standard deviation)", floored.toString());
        assertEquals("floor of the scatter must be finite and >= 0: NaN", message(() -> s.withFloor(Double.NaN)));
        assertEquals("scatter of the amplitude must be within 0.0 to 1.0: NaN", message(() ->
                ReadingScatter.of(Double.NaN, 1)));
        assertEquals("scatter of the phase must be within 0.0 to 180.0 °: -1.0", message(
                () -> ReadingScatter.of(0, -1)));
    }

    // By hand: an axis 30° with rotation is at 330° against it, and an axis has no head: 150°.
    @Test
    void directionOfTheLongAxisAsASheetCountsIt() {
        Ellipse e = new Ellipse(Phasor.ZERO, 2, 1, Math.toRadians(30), 0.95);
        assertEquals(30, e.majorDegrees(AngleSense.WITH_ROTATION), 1e-12);
        assertEquals(150, e.majorDegrees(AngleSense.AGAINST_ROTATION), 1e-12);
        assertEquals(0, new Ellipse(Phasor.ZERO, 2, 1, Math.PI, 0.95).majorDegrees(AngleSense.WITH_ROTATION), 1e-12);
    }

    @Test
    void badInputIsNamed() {
        VectorCovariance c = of(Phasor.ONE);
        assertEquals("vectors must be at least 1: 0", message(() -> VectorCovariance.ofEffects(0, List.of())));
        assertEquals("effects must have one element per vector, 2: 1",
                message(() -> VectorCovariance.ofEffects(2, List.<Phasor[]>of(new Phasor[] {Phasor.ONE}))));
        assertEquals("covariances must be of as many vectors: 1 and 2",
                message(() -> c.plus(VectorCovariance.ofEffects(2, List.of()))));
        assertEquals("factor must be finite and >= 0: -1.0", message(() -> c.times(-1)));
        for (double bad : new double[] {0, 1, Double.NaN}) {
            assertEquals("coverage must be above 0 and below 1: " + bad, message(() -> c.ellipse(0, Phasor.ZERO, bad)));
            assertEquals("coverage must be above 0 and below 1: " + bad,
                    message(() -> new Ellipse(Phasor.ZERO, 1, 1, 0, bad)));
        }
        assertEquals("vectors and limits must be one each, 1: 2 and 1",
                message(() -> c.probabilityWithin(new Phasor[2], new double[1])));
        assertEquals("vectors and limits must be one each, 1: 1 and 0",
                message(() -> c.probabilityWithin(new Phasor[1], new double[0])));
        assertEquals("limit must be finite and >= 0: NaN",
                message(() -> c.probabilityWithin(new Phasor[1], new double[] {Double.NaN})));
        assertEquals("short half axis must be within 0.0 to 1.0: 2.0", message(() -> new Ellipse(Phasor.ZERO, 1, 2, 0,
                0.5)));
        assertEquals("long half axis must be finite and >= 0: NaN",
                message(() -> new Ellipse(Phasor.ZERO, Double.NaN, 2, 0, 0.5)));
        assertEquals("argument of the long axis must be finite: NaN",
                message(() -> new Ellipse(Phasor.ZERO, 1, 1, Double.NaN, 0.5)));
    }

    private static String message(Executable code) {
        return assertThrows(IllegalArgumentException.class, code).getMessage();
    }
}
