package dev.vibra.balance.placement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.Layout;
import dev.vibra.balance.influence.Sensor;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

class FittingProperties {
    private static final class Problem {
        final InfluenceCoefficients alpha;
        final Phasor[] vibration;
        final double[] weights;

        Problem(Random random, int planes, int rows) {
            List<Sensor> sensors = new ArrayList<>();
            for (int i = 0; i < rows; i++) {
                sensors.add(new Sensor("S" + i, Unit.MM_PER_S, Detector.RMS));
            }
            Layout layout = Layout.ofPlanes(List.of("a", "b").subList(0, planes)).withSensors(sensors);
            Phasor[][] a = new Phasor[rows][planes];
            vibration = new Phasor[rows];
            for (int i = 0; i < rows; i++) {
                vibration[i] = new Phasor(random.nextGaussian() * 1e-3, random.nextGaussian() * 1e-3);
                for (int j = 0; j < planes; j++) {
                    a[i][j] = new Phasor(random.nextGaussian(), random.nextGaussian());
                }
            }
            alpha = InfluenceCoefficients.of(layout, a);
            weights = random.doubles(rows, 0.5, 2).toArray();
        }

        double squares(List<Phasor> left) {
            double sum = 0;
            for (int i = 0; i < left.size(); i++) {
                sum += Math.pow(weights[i] * left.get(i).magnitude(), 2);
            }
            return Math.sqrt(sum);
        }

        double largest(List<Phasor> left) {
            double largest = 0;
            for (int i = 0; i < left.size(); i++) {
                largest = Math.max(largest, weights[i] * left.get(i).magnitude());
            }
            return largest;
        }
    }

    @Property(tries = 150)
    void eachWayIsBestAtItsOwnAimAndWithinLimits(@ForAll long seed, @ForAll @IntRange(min = 1, max = 2) int planes,
            @ForAll @IntRange(min = 3, max = 12) int count, @ForAll @DoubleRange(min = 0.2, max = 3) double each,
            @ForAll @DoubleRange(min = 0.5, max = 6) double all, @ForAll AngleSense sense) {
        Problem p = new Problem(new Random(seed), planes, 4);
        Assume.that(p.alpha.solver().planeConflict() < 20);
        PlaneFitting plane = PlaneFitting.on(Positions.of(count, sense)).atMostEach(each).atMostInAll(all);
        PlaneFitting[] fittings = new PlaneFitting[planes];
        Arrays.fill(fittings, plane);
        Fitting fitting = Fitting.of(p.alpha, p.vibration, p.weights, List.of(fittings));
        FittedMasses squares = fitting.leastSquares();
        FittedMasses largest = fitting.minimax();
        double scale = p.squares(List.of(p.vibration));
        assertTrue(p.squares(squares.left()) <= p.squares(largest.left()) + 1e-6 * scale);
        assertTrue(p.largest(largest.left()) <= p.largest(squares.left()) + 1e-6 * scale);
        assertTrue(p.squares(squares.left()) <= scale * (1 + 1e-12));
        for (FittedMasses fitted : List.of(squares, largest)) {
            for (String name : fitted.planes()) {
                assertTrue(fitted.gramsIn(name) <= all * (1 + 1e-6), fitted.toString());
                fitted.in(name).forEach(m -> assertTrue(m.grams() > 0 && m.grams() <= each * (1 + 1e-6), m.toString()));
            }
        }
    }

    @Property(tries = 150)
    void withoutLimitsLeastSquaresAreTheFreeCorrections(@ForAll long seed, @ForAll @IntRange(min = 1, max =
            2) int planes,
            @ForAll @IntRange(min = 3, max = 24) int count) {
        Problem p = new Problem(new Random(seed), planes, 4);
        Assume.that(p.alpha.solver().planeConflict() < 20);
        Positions positions = Positions.of(count, AngleSense.AGAINST_ROTATION);
        PlaneFitting[] fittings = new PlaneFitting[planes];
        Arrays.fill(fittings, PlaneFitting.on(positions));
        FittedMasses fitted = Fitting.of(p.alpha, p.vibration, p.weights, List.of(fittings)).leastSquares();
        Phasor[] free = p.alpha.solver(p.weights).cancelling(p.vibration);
        for (int j = 0; j < planes; j++) {
            Phasor found = positions.combined(fitted.masses().get(j)).kilograms();
            assertEquals(0, found.minus(free[j]).magnitude(), 1e-6 * free[j].magnitude());
        }
    }

    @Property(tries = 100)
    void onUnevenCirclesToo(@ForAll long seed, @ForAll @IntRange(min = 5, max = 14) int count,
            @ForAll @DoubleRange(min = 0, max = 360) double start, @ForAll @IntRange(min = 1, max = 5) int taken,
            @ForAll AngleSense sense) {
        Problem p = new Problem(new Random(seed), 1, 3);
        double[] angles = new double[count];
        for (int i = 0; i < count; i++) {
            angles[i] = 360.0 * (i + 0.3 * (i % 2)) / count;
        }
        Positions positions = Positions.at(sense, angles).startingAt(start).without(taken);
        FittedMasses fitted = Fitting.of(p.alpha, p.vibration, p.weights, List.of(PlaneFitting.on(positions)))
                .leastSquares();
        Phasor free = p.alpha.solver(p.weights).cancelling(p.vibration)[0];
        assertEquals(0, fitted.sums().get(0).kilograms().minus(free).magnitude(), 1e-6 * free.magnitude());
        // Without limits the lightest masses stand on the two free positions beside the angle: the split.
        List<PositionedMass> split = positions.split(fitted.sums().get(0));
        double lightest = split.stream().mapToDouble(PositionedMass::grams).sum();
        assertEquals(lightest, fitted.gramsIn("a"), 1e-6 * lightest);
        assertTrue(fitted.in("a").stream().noneMatch(m -> m.position() == taken));
    }

    @Property(tries = 150)
    void sizesAtHandLeaveNoMoreThanWasThere(@ForAll long seed, @ForAll @IntRange(min = 3, max = 8) int count) {
        Problem p = new Problem(new Random(seed), 1, 3);
        FittedMasses fitted = Fitting.of(p.alpha, p.vibration, p.weights,
                List.of(PlaneFitting.on(Positions.of(count, AngleSense.WITH_ROTATION)).withSizes(0.2, 0.5, 1)))
                        .leastSquares();
        assertTrue(p.squares(fitted.left()) <= p.squares(List.of(p.vibration)) * (1 + 1e-12));
        fitted.in("a").forEach(m -> assertTrue(List.of(0.2, 0.5, 1.0).contains(m.grams())));
    }
}
