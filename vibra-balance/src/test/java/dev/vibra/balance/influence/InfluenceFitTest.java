package dev.vibra.balance.influence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.quantity.RotationSpeed;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

class InfluenceFitTest {
    private static Run run(String name, double added, double re, double im) {
        return new Run(name, List.of(new Phasor(added, 0)), List.of(new Phasor(re, im)));
    }

    // With real masses, real and imaginary part are two straight lines: the regression of Commons Math.
    @Test
    void moreRunsThanNeededAreFittedAsARegression() {
        double[] masses = {0, 1, 2, 3.5};
        double[] re = {1, 2.2, 2.9, 4.6};
        double[] im = {-1, 0.1, 0.8, 2.6};
        SimpleRegression real = new SimpleRegression();
        SimpleRegression imaginary = new SimpleRegression();
        List<Run> runs = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            real.addData(masses[i], re[i]);
            imaginary.addData(masses[i], im[i]);
            runs.add(run("run " + i, masses[i], re[i], im[i]));
        }
        InfluenceFit fit = InfluenceFit.of(CorrectionSolverTest.layout(1, 1), runs);
        assertEquals(real.getSlope(), fit.coefficients().at(0, 0).re(), 1e-12);
        assertEquals(imaginary.getSlope(), fit.coefficients().at(0, 0).im(), 1e-12);
        assertEquals(real.getIntercept(), fit.initial().get(0).re(), 1e-12);
        assertEquals(imaginary.getIntercept(), fit.initial().get(0).im(), 1e-12);
        assertEquals(4, fit.runs());
        assertTrue(fit.toString().matches("influence coefficients, 1 reading\\(s\\) by 1 plane\\(s\\), condition number"
                + " 1(\\.00)?, from 4 runs"), fit.toString());
    }

    @Test
    void wrongShapesAreNamed() {
        Layout layout = CorrectionSolverTest.layout(1, 1);
        Run twoReadings = new Run("trial run", List.of(Phasor.ONE), List.of(Phasor.ONE, Phasor.ONE));
        assertEquals("trial run must have 1 masses and 1 readings: 1 and 2",
                assertThrows(IllegalArgumentException.class,
                () -> InfluenceFit.of(layout, List.of(run("a", 0, 1, 1), twoReadings))).getMessage());
        assertEquals("runs[1]", assertThrows(NullPointerException.class,
                () -> InfluenceFit.of(layout, Arrays.asList(run("a", 0, 1, 1), null))).getMessage());
        Run twoMasses = new Run("trial run", List.of(Phasor.ONE, Phasor.ONE), List.of(Phasor.ONE));
        assertEquals("trial run must have 1 masses and 1 readings: 2 and 1",
                assertThrows(IllegalArgumentException.class,
                () -> InfluenceFit.of(layout, List.of(run("a", 0, 1, 1), twoMasses))).getMessage());
        assertEquals("speeds must all be different: 600 r/min (10 Hz) comes twice".replaceAll(" \\(.*\\)", ""),
                assertThrows(IllegalArgumentException.class, () -> layout.withSpeeds(
                        List.of(RotationSpeed.ofHertz(10), RotationSpeed.ofHertz(10)))).getMessage()
                        .replaceAll(" \\(.*\\)", ""));
        assertEquals("speeds must not be empty", assertThrows(IllegalArgumentException.class,
                () -> layout.withSpeeds(List.of())).getMessage());
    }
}
