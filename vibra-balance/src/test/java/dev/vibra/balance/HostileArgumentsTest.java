package dev.vibra.balance;

import static dev.vibra.balance.Balancing.mass;
import static dev.vibra.balance.Balancing.v;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.influence.CoefficientErrors;
import dev.vibra.balance.influence.CorrectionSolver;
import dev.vibra.balance.influence.Layout;
import dev.vibra.balance.placement.FittedMasses;
import dev.vibra.balance.placement.Positions;
import dev.vibra.balance.tolerance.Allocation;
import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.uncertainty.VectorCovariance;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.evidence.Remark;
import dev.vibra.quantity.RotationSpeed;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Numbers that no machine has: an answer, or an exception that names argument, value and what is allowed. */
class HostileArgumentsTest {
    private static String message(Runnable call) {
        return assertThrows(IllegalArgumentException.class, call::run).getMessage();
    }

    private static String index(Runnable call) {
        return assertThrows(IndexOutOfBoundsException.class, call::run).getMessage();
    }

    /** The covariance of one effect is its square, so its effect is that one again, at any size. */
    @Test
    void covariancesOfAnySize() {
        for (double size : new double[] {1e-150, 1, 1e76, 1e150}) {
            VectorCovariance covariance = VectorCovariance.ofEffects(1, List.of(new Phasor[] {new Phasor(3 * size, 0)},
                    new Phasor[] {new Phasor(0, 4 * size)}));
            double longest = covariance.effects().stream().mapToDouble(e -> e[0].magnitude()).max().orElseThrow();
            assertEquals(1, longest / (4 * size), 1e-12);
            assertEquals(9 * size * size, covariance.mapped(1, e -> e).at(0, 0), 1e-9 * size * size);
            double[] limit = {100 * size};
            assertEquals(1, covariance.probabilityWithin(new Phasor[] {Phasor.ZERO}, limit));
        }
        assertEquals("covariance must be finite: Infinity", message(
                () -> VectorCovariance.ofEffects(1, List.<Phasor[]>of(new Phasor[] {new Phasor(1e200, 0)}))));
        assertEquals("vectors must be at most 2000: 2147483647",
                message(() -> VectorCovariance.ofEffects(Integer.MAX_VALUE, List.of())));
    }

    @Test
    void indicesAndCountsAreNamed() {
        Layout layout = Layout.ofPlanes(List.of("fan"));
        assertEquals("Index 0 out of bounds for length 0", index(() -> layout.rowName(0)));
        assertEquals("Index -1 out of bounds for length 1", index(() -> layout.lever(-1)));
        BalanceTolerance tolerance = BalanceTolerance.of(BalanceGrade.of(6.3), 60, RotationSpeed.ofHertz(25));
        assertEquals("Index 1 out of bounds for length 1", index(() -> tolerance.gramMillimetresOf(1)));
        assertEquals("planes must be at most 1000: 2147483647",
                message(() -> Allocation.equalShares(Integer.MAX_VALUE)));
        assertEquals("count of positions must be at most 10000: 2147483647",
                message(() -> Positions.of(Integer.MAX_VALUE, AngleSense.WITH_ROTATION)));
        assertEquals("masses and sums must be one per plane, 1: 0 and 0", message(() -> new FittedMasses(
                List.of("fan"), List.of(), List.of(), List.of(), false, true)));
    }

    @Test
    void jobsBeyondAnyMachineAreRefused() {
        BalancingJob job = Balancing.inPlanes("fan").measuredAt("DE-H");
        assertTrue(message(() -> job.initial(v(1e200, 0))).startsWith(
                "magnitude of the reading of the initial run must be at most 1.0E30 in SI units: 1.4"));
        BalancingJob read = job.initial(v(5, 60));
        assertEquals("mass in plane fan must be zero or within 1.0E-30 to 1.0E30 kg: 1.0E-203",
                message(() -> read.trial("fan", mass(1e-200, 0), v(4, 120))));
        assertEquals("weight of sensor DE-H must be zero or within 1.0E-30 to 1.0E30: 1.0E300",
                message(() -> job.weight("DE-H", 1e300)));
        BalancingJob two = Balancing.inPlanes("L", "R").measuredAt("A", "B").initial(v(5, 60), v(4, 50))
                .trial("L", mass(10, 0), v(4, 120), v(3, 100)).trial("R", mass(10, 0), v(6, 20), v(3, 10));
        CoefficientErrors ofOne = CoefficientErrors.ofSheet(Layout.ofPlanes(List.of("L"))
                .withSensors(two.layout().sensors()), new double[][] {{0.1}, {0.1}});
        assertEquals("errors must be of the coefficients: planes [L, R] and [L]",
                message(() -> two.withCoefficients(two.coefficients(), ofOne)));
        assertEquals("permissible residual unbalance must be finite and > 0 g·mm: Infinity",
                message(() -> BalanceTolerance.of(BalanceGrade.of(6.3), 1e308, RotationSpeed.ofHertz(25))));
        assertEquals("radians must be finite: NaN", message(() -> AngleSense.WITH_ROTATION.toWithRotation(Double.NaN)));
        assertEquals("real part must be at most 1.0E250 in size: 1.0E300", message(() -> new Phasor(1e300, 0)));
    }

    /** A unit typed wrong: the readings change, but no scales could have weighed the mass. */
    @Test
    void aMassThatNobodyCouldWeighIsDoubted() {
        BalancingJob job = Balancing.inPlanes("fan").measuredAt("DE-H").initial(v(5, 60));
        List<Remark> light = job.trial("fan", mass(1e-12, 0), v(4, 120)).corrections().remarks();
        Remark doubt = light.stream().filter(r -> r.code().equals("trial-mass-light")).findFirst().orElseThrow();
        assertEquals(1e-12, doubt.value(), 1e-20);
        assertEquals(1e-4, doubt.limit());
        assertTrue(job.trial("fan", mass(1e-3, 0), v(4, 120)).corrections().remarks().stream()
                .noneMatch(r -> r.code().equals("trial-mass-light")));
    }

    @Test
    void noSentenceSaysInfinity() {
        assertEquals("above 1e16", CorrectionSolver.inWords(Double.POSITIVE_INFINITY));
        assertEquals("12.3", CorrectionSolver.inWords(12.34));
        BalancingJob alike = Balancing.inPlanes("L", "R").measuredAt("A", "B").regularised(0.01)
                .initial(v(5, 60), v(4, 50)).trial("L", mass(10, 0), v(4, 120), v(3, 100))
                .trial("R", mass(10, 0), v(4, 120), v(3, 100));
        assertFalse(alike.corrections().page().contains("Infinity"), alike.corrections().page());
    }
}
