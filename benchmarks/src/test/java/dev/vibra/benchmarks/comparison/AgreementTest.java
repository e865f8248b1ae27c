package dev.vibra.benchmarks.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class AgreementTest {
    @Test
    void eachFigureIsHeldAgainstItself() {
        assertEquals(0, Agreement.distance(new double[] {0, 2, 1e6}, new double[] {0, 2, 1e6}));
        assertEquals(0.01, Agreement.distance(new double[] {2, 1e6}, new double[] {2.02, 1e6}), 1e-12);
    }

    @Test
    void whatCantBeComparedIsInfinitelyFar() {
        double[] two = {1, 2};
        assertEquals(Double.POSITIVE_INFINITY, Agreement.distance(two, new double[] {1}));
        assertEquals(Double.POSITIVE_INFINITY, Agreement.distance(two, new double[] {1, Double.NaN}));
        assertEquals(Double.POSITIVE_INFINITY, Agreement.distance(new double[] {0, 0}, new double[] {0, 1}));
    }
}
