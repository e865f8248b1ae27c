package dev.vibra.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * Worked examples of JCGM 100:2008, annex H. Inputs and results are quoted from memory; that the printed results follow
 * from the inputs to all printed digits is the check of both.
 */
class GuideExamplesTest {
    /** H.1, end gauge: u_c 32 nm, effective degrees of freedom 16.7, t(0.99; 16) = 2.92, U = 93 nm. */
    @Test
    void endGauge() {
        double length = 50_000_838;
        UncertaintyBudget budget = UncertaintyBudget.empty()
                .with(new Contribution("standard", 25 / length, 18))
                .with(new Contribution("comparison", 9.7 / length, 25.6))
                .with(new Contribution("expansion", 2.9 / length, 50))
                .with(new Contribution("temperature", 16.6 / length, 2));
        // The inputs are printed to three digits: half a unit of the last one of 16.6 nm alone moves this by 0.13.
        assertEquals(16.7, budget.effectiveDegreesOfFreedom(), 0.13);
        assertEquals(2.92, budget.coverageFactor(0.99), 0.005);
        assertEquals(93, budget.coverageFactor(0.99) * budget.relativeStandard() * length, 0.5);
    }

    /** H.2, resistance, reactance and impedance from means of correlated readings: 127.732, 219.847, 254.260 ohm. */
    @Test
    void simultaneousResistanceAndReactance() {
        Propagation inputs = Propagation.of(new double[] {4.9990, 19.6610e-3, 1.04446},
                new double[] {0.0032, 0.0095e-3, 0.00075})
                .withCorrelation(0, 1, -0.36).withCorrelation(0, 2, 0.86).withCorrelation(1, 2, -0.65);
        assertEquals(127.732, inputs.valueOf(x -> x[0] / x[1] * Math.cos(x[2])), 0.001);
        assertEquals(219.847, inputs.valueOf(x -> x[0] / x[1] * Math.sin(x[2])), 0.001);
        assertEquals(254.260, inputs.valueOf(x -> x[0] / x[1]), 0.001);
        // The guide computes from unrounded inputs; those printed give its uncertainties to about 2 %.
        assertEquals(0.071, inputs.standardUncertaintyOf(x -> x[0] / x[1] * Math.cos(x[2])), 0.0015);
        assertEquals(0.295, inputs.standardUncertaintyOf(x -> x[0] / x[1] * Math.sin(x[2])), 0.004);
        assertEquals(0.236, inputs.standardUncertaintyOf(x -> x[0] / x[1]), 0.003);
        assertEquals("3 inputs, the first 4.999 ± 0.0032", inputs.toString());
    }

    /** 5.2.2, note 1: ten resistors of 1000 ohm calibrated against one standard of 100 mohm add up to 1 ohm. */
    @Test
    void fullCorrelationAddsUp() {
        double[] ohms = new double[10];
        double[] uncertainties = new double[10];
        Arrays.fill(ohms, 1000);
        Arrays.fill(uncertainties, 0.1);
        Propagation independent = Propagation.of(ohms, uncertainties);
        Propagation correlated = independent;
        for (int i = 0; i < 10; i++) {
            for (int j = 0; j < i; j++) {
                correlated = correlated.withCorrelation(i, j, 1);
            }
        }
        assertEquals(1, correlated.standardUncertaintyOf(x -> Arrays.stream(x).sum()), 1e-10);
        assertEquals(0.32, independent.standardUncertaintyOf(x -> Arrays.stream(x).sum()), 0.005);
    }

    /** Student's table of JCGM 100:2008, G.2: 95 % at 10 degrees of freedom 2.23, at 1 12.71; normal 1.960. */
    @Test
    void coverageFactorsOfTheTable() {
        assertEquals(2.23, withFreedom(10).coverageFactor(0.95), 0.005);
        assertEquals(12.71, withFreedom(1).coverageFactor(0.95), 0.005);
        assertEquals(2.23, withFreedom(10.9).coverageFactor(0.95), 0.005, "cut to a whole number");
        assertEquals(1.960, withFreedom(Double.POSITIVE_INFINITY).coverageFactor(0.95), 5e-4);
        assertEquals(Double.POSITIVE_INFINITY, UncertaintyBudget.empty().effectiveDegreesOfFreedom());
        assertEquals("probability must be above 0 and below 1: 1.0", assertThrows(IllegalArgumentException.class,
                () -> withFreedom(4).coverageFactor(1)).getMessage());
        assertEquals("degrees of freedom (a) must be at least 1: 0.5",
                assertThrows(IllegalArgumentException.class, () -> withFreedom(0.5)).getMessage());
    }

    private static UncertaintyBudget withFreedom(double freedom) {
        return UncertaintyBudget.empty().with(new Contribution("a", 0.02, freedom));
    }

    /** Mean 4, sum of squares 2, so s² = 1 and u = 1/√3 of 4, with 2 degrees of freedom. */
    @Test
    void repetitionOfReadings() {
        Contribution repetition = LevelUncertainty.repetition(3, 4, 5);
        assertEquals(1 / Math.sqrt(3) / 4, repetition.relativeStandard(), 1e-15);
        assertEquals(2, repetition.degreesOfFreedom());
        assertEquals("number of readings must be at least 2: 1", assertThrows(IllegalArgumentException.class,
                () -> LevelUncertainty.repetition(3)).getMessage());
        assertEquals("mean of the readings must be finite and > 0: 0.0", assertThrows(IllegalArgumentException.class,
                () -> LevelUncertainty.repetition(0, 0)).getMessage());
    }

    @Test
    void propagationNamesBadInput() {
        double[] one = {1};
        assertEquals("estimates and standardUncertainties must be of one length: 1, 2", assertThrows(
                IllegalArgumentException.class, () -> Propagation.of(one, new double[2])).getMessage());
        assertEquals("number of estimates must be at least 1: 0", assertThrows(
                IllegalArgumentException.class, () -> Propagation.of(new double[0], new double[0])).getMessage());
        assertEquals("standard uncertainty must be finite and >= 0: -1.0", assertThrows(
                IllegalArgumentException.class, () -> Propagation.of(one, new double[] {-1})).getMessage());
        assertEquals("estimates[0] must be finite: NaN", assertThrows(IllegalArgumentException.class,
                () -> Propagation.of(new double[] {Double.NaN}, one)).getMessage());
        Propagation two = Propagation.of(new double[] {1, 1}, new double[] {1, 1});
        assertEquals("first and second must be different inputs: 1", assertThrows(IllegalArgumentException.class,
                () -> two.withCorrelation(1, 1, 0)).getMessage());
        assertThrows(IndexOutOfBoundsException.class, () -> two.withCorrelation(0, 2, 0));
        assertEquals("result must be finite: NaN", assertThrows(IllegalArgumentException.class,
                () -> two.standardUncertaintyOf(x -> Double.NaN)).getMessage());
        Propagation three = Propagation.of(new double[3], new double[] {1, 1, 1}).withCorrelation(0, 1, -1)
                .withCorrelation(0, 2, -1).withCorrelation(1, 2, -1);
        assertEquals("correlations must not contradict each other: variance -3.0", assertThrows(
                IllegalArgumentException.class, () -> three.standardUncertaintyOf(x -> x[0] + x[1] + x[2]))
                .getMessage());
        assertEquals("degrees of freedom (a) must be at least 1: NaN", assertThrows(IllegalArgumentException.class,
                () -> new Contribution("a", 0.1, Double.NaN)).getMessage());
    }
}
