package dev.vibra.balance.influence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.ReferenceValues;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.complex.ComplexField;
import org.apache.commons.math3.linear.Array2DRowFieldMatrix;
import org.apache.commons.math3.linear.ArrayFieldVector;
import org.apache.commons.math3.linear.FieldLUDecomposition;
import org.apache.commons.math3.linear.FieldVector;
import org.junit.jupiter.api.Test;

class CorrectionSolverTest {
    private static final ReferenceValues SCIPY = ReferenceValues.read("least-squares.txt");

    static Layout layout(int planes, int sensors) {
        List<String> planeNames = new ArrayList<>();
        for (int j = 0; j < planes; j++) {
            planeNames.add("P" + j);
        }
        List<Sensor> list = new ArrayList<>();
        for (int i = 0; i < sensors; i++) {
            list.add(new Sensor("S" + i, Unit.MM_PER_S, Detector.RMS));
        }
        return Layout.ofPlanes(planeNames).withSensors(list);
    }

    private static Phasor[] pairs(double[] values) {
        Phasor[] out = new Phasor[values.length / 2];
        for (int i = 0; i < out.length; i++) {
            out[i] = new Phasor(values[2 * i], values[2 * i + 1]);
        }
        return out;
    }

    private static InfluenceCoefficients matrix() {
        Phasor[] flat = pairs(SCIPY.all("matrix"));
        Phasor[][] alpha = new Phasor[6][3];
        for (int i = 0; i < 18; i++) {
            alpha[i / 3][i % 3] = flat[i];
        }
        return InfluenceCoefficients.of(layout(3, 6), alpha);
    }

    private static void assertClose(Phasor[] expected, Phasor[] actual) {
        assertEquals(expected.length, actual.length);
        for (int i = 0; i < expected.length; i++) {
            assertEquals(0, expected[i].minus(actual[i]).magnitude(), 1e-10 * expected[i].magnitude());
        }
    }

    @Test
    void agreesWithSciPyLeastSquares() {
        CorrectionSolver solver = matrix().solver(SCIPY.all("weights"));
        assertClose(pairs(SCIPY.all("solution")), solver.cancelling(pairs(SCIPY.all("vibration"))));
        assertEquals(SCIPY.one("condition"), solver.conditionNumber(), 1e-10 * SCIPY.one("condition"));
        assertEquals(SCIPY.one("conflict"), solver.planeConflict(), 1e-10 * SCIPY.one("conflict"));
    }

    @Test
    void agreesWithSciPyRidge() {
        CorrectionSolver solver = matrix().solver(SCIPY.all("weights"));
        assertClose(pairs(SCIPY.all("ridge-solution")),
                solver.cancellingWithRidge(SCIPY.one("ridge"), pairs(SCIPY.all("vibration"))));
    }

    @Test
    void squareSystemAgreesWithCommonsMathComplex() {
        InfluenceCoefficients all = matrix();
        Complex[][] a = new Complex[3][3];
        Phasor[][] alpha = new Phasor[3][3];
        Complex[] b = new Complex[3];
        Phasor[] vibration = {new Phasor(1, 2), new Phasor(-0.5, 0.25), new Phasor(3, -1)};
        for (int i = 0; i < 3; i++) {
            b[i] = new Complex(-vibration[i].re(), -vibration[i].im());
            for (int j = 0; j < 3; j++) {
                alpha[i][j] = all.at(i, j);
                a[i][j] = new Complex(alpha[i][j].re(), alpha[i][j].im());
            }
        }
        FieldVector<Complex> expected =
                new FieldLUDecomposition<>(new Array2DRowFieldMatrix<>(ComplexField.getInstance(), a))
                .getSolver().solve(new ArrayFieldVector<>(ComplexField.getInstance(), b));
        Phasor[] actual = InfluenceCoefficients.of(layout(3, 3), alpha).solver().cancelling(vibration);
        for (int j = 0; j < 3; j++) {
            assertEquals(expected.getEntry(j).getReal(), actual[j].re(), 1e-12);
            assertEquals(expected.getEntry(j).getImaginary(), actual[j].im(), 1e-12);
        }
    }

    @Test
    void planesThatActAlikeAreRefused() {
        Phasor a = new Phasor(1, 1);
        Phasor b = new Phasor(0, 2);
        CorrectionSolver solver = InfluenceCoefficients.of(layout(2, 2),
                new Phasor[][] {{a, a.times(2)}, {b, b.times(2)}}).solver();
        assertTrue(solver.planeConflict() > 1e12);
        IllegalStateException e = assertThrows(IllegalStateException.class, () -> solver.cancelling(a, b));
        assertTrue(e.getMessage().startsWith("planes must act differently at the sensors to be balanced together: the"
                + " condition number is "), e.getMessage());
        Phasor[] held = solver.cancellingWithRidge(1e-6, a, b);
        // Both planes share the work in proportion to their influence: 1 : 2 after 1 + 4 parts.
        assertEquals(0, held[0].plus(new Phasor(0.5, 0)).magnitude(), 1e-6);
        assertEquals(0, held[1].plus(new Phasor(0.25, 0)).magnitude(), 1e-6);
    }

    @Test
    void weightZeroLeavesAReadingOut() {
        InfluenceCoefficients alpha = InfluenceCoefficients.of(layout(1, 2),
                new Phasor[][] {{new Phasor(2, 0)}, {new Phasor(0, 1)}});
        Phasor[] vibration = {new Phasor(4, 0), new Phasor(100, 0)};
        assertEquals(0, alpha.solver(1, 0).cancelling(vibration)[0].plus(new Phasor(2, 0)).magnitude(), 1e-12);
        assertEquals(5, alpha.solver(1, 0).norm(new Phasor(3, 4), new Phasor(7, 0)), 0);
        assertEquals(15, alpha.solver(3, 0).norm(new Phasor(3, 4), new Phasor(7, 0)), 1e-14);
    }

    @Test
    void badInputIsNamed() {
        InfluenceCoefficients two = InfluenceCoefficients.of(layout(2, 2),
                new Phasor[][] {{Phasor.ONE, Phasor.ZERO}, {Phasor.ZERO, Phasor.ONE}});
        message("weights must be one per reading, 2: 1", () -> two.solver(1.0));
        message("readings that count must be at least as many as planes, 2: 1; add a sensor or a speed, or balance"
                + " fewer planes", () -> two.solver(1.0, 0.0));
        message("weight of S1 must be finite and >= 0: NaN", () -> two.solver(1.0, Double.NaN));
        message("vibration must be one per reading, 2: 1", () -> two.solver().cancelling(Phasor.ONE));
        message("ridge must be above 0 and at most 1: 0.0", () -> two.solver().cancellingWithRidge(0, Phasor.ONE));
        message("ridge must be above 0 and at most 1: 1.5", () -> two.solver().cancellingWithRidge(1.5, Phasor.ONE));
        message("ridge must be above 0 and at most 1: NaN", () -> two.solver().cancellingWithRidge(Double.NaN,
                Phasor.ONE));
        message("unbalances must be one per plane, 2: 1", () -> two.response(Phasor.ONE));
        message("coefficients must have 2 rows of 2 elements: 1 rows of [2]",
                () -> InfluenceCoefficients.of(layout(2, 2), new Phasor[][] {{Phasor.ONE, Phasor.ZERO}}));
        message("coefficients must have 2 rows of 2 elements: 2 rows of [2, 1]",
                () -> InfluenceCoefficients.of(layout(2, 2), new Phasor[][] {{Phasor.ONE, Phasor.ZERO}, {Phasor.ONE}}));
        assertEquals(1, two.solver(1.0, 1.0).cancellingWithRidge(1, Phasor.ONE, Phasor.ZERO).length - 1);
    }

    @Test
    void linesForTheNotebook() {
        InfluenceCoefficients two = InfluenceCoefficients.of(layout(2, 2),
                new Phasor[][] {{new Phasor(4.123, 0), Phasor.ZERO}, {Phasor.ZERO, Phasor.ONE}});
        assertEquals("influence coefficients, 2 reading(s) by 2 plane(s), condition number 4.12", two.toString());
        assertEquals("least squares for " + two, two.solver().toString());
        InfluenceCoefficients thin = InfluenceCoefficients.of(layout(2, 1), new Phasor[][] {{Phasor.ONE, Phasor.ONE}});
        assertEquals("influence coefficients, 1 reading(s) by 2 plane(s)", thin.toString());
    }

    private static void message(String expected, org.junit.jupiter.api.function.Executable code) {
        assertEquals(expected, assertThrows(IllegalArgumentException.class, code).getMessage());
    }
}
