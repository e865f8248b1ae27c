package dev.vibra.balance.influence;

import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * How far each influence coefficient may be off, one standard deviation along and across it, independent of the others.
 *
 * <p>Coefficients from runs have about the same error in all planes of a row, which is small beside a large coefficient
 * and large beside a small one; so it is told for each.
 */
public final class CoefficientErrors implements Serializable {
    private static final long serialVersionUID = 1;

    private final Layout layout;
    private final double[][] along; // in the unit of the coefficients
    private final double[][] across;

    private CoefficientErrors(Layout layout, double[][] along, double[][] across) {
        this.layout = Objects.requireNonNull(layout, "layout");
        this.along = checked(layout, along);
        this.across = checked(layout, across);
    }

    private Object readResolve() {
        return new CoefficientErrors(layout, along, across);
    }

    /** Copies the rows and checks the copy. */
    private static double[][] checked(Layout layout, double[][] deviations) {
        double[][] copy = Arrays.stream(deviations)
                .map(row -> Objects.requireNonNull(row, "row").clone()).toArray(double[][]::new);
        InfluenceCoefficients.requireShape("standard deviations", layout, copy.length,
                Arrays.stream(copy).mapToInt(row -> row.length));
        for (double[] row : copy) {
            for (double deviation : row) {
                Require.notNegative("standard deviation of a coefficient", deviation, "");
            }
        }
        return copy;
    }

    /**
     * Makes errors that are the same share of every coefficient, for those that have aged alike.
     *
     * @param coefficients the coefficients
     * @param scatter one standard deviation of magnitude and phase of each, without a floor
     * @return the errors
     * @throws IllegalArgumentException if the scatter has a floor
     */
    public static CoefficientErrors of(InfluenceCoefficients coefficients, ReadingScatter scatter) {
        Objects.requireNonNull(scatter, "scatter");
        Objects.requireNonNull(coefficients, "coefficients");
        if (scatter.floor() != 0) {
            throw Require.failure("floor of the scatter of coefficients", "zero", scatter.floor());
        }
        Layout layout = coefficients.layout();
        double[][] along = empty(layout);
        double[][] across = empty(layout);
        for (int i = 0; i < along.length; i++) {
            for (int j = 0; j < along[i].length; j++) {
                along[i][j] = scatter.along(coefficients.at(i, j), 0).magnitude();
                across[i][j] = scatter.across(coefficients.at(i, j), 0).magnitude();
            }
        }
        return new CoefficientErrors(layout, along, across);
    }

    /**
     * Makes errors of the numbers on a sheet.
     *
     * @param layout what rows and columns stand for, with unit and detector of each sensor and radii
     * @param perGram {@code layout.rows()} rows of one standard deviation in any direction per plane, in the unit and
     *     detector of the sensor per gram at the radius of the plane, finite, zero or more; not kept
     * @return the errors
     * @throws IllegalArgumentException if the shape does not fit the layout or a number is out of range
     */
    public static CoefficientErrors ofSheet(Layout layout, double[][] perGram) {
        Objects.requireNonNull(perGram, "perGram");
        double[][] round = checked(Objects.requireNonNull(layout, "layout"), perGram);
        for (int i = 0; i < round.length; i++) {
            for (int j = 0; j < round[i].length; j++) {
                round[i][j] /= InfluenceCoefficients.ofOnePerGram(layout, i, j);
            }
        }
        return new CoefficientErrors(layout, round, round);
    }

    /**
     * Makes errors of standard deviations along and across each coefficient.
     *
     * @param layout what rows and columns stand for
     * @param along one row per reading, one element per plane, in the unit of the coefficients; copied
     * @param across likewise
     * @return the errors
     * @throws IllegalArgumentException if a shape does not fit the layout
     */
    public static CoefficientErrors of(Layout layout, double[][] along, double[][] across) {
        Objects.requireNonNull(along, "along");
        Objects.requireNonNull(across, "across");
        return new CoefficientErrors(layout, along, across);
    }

    private static double[][] empty(Layout layout) {
        return new double[layout.rows()][layout.planes().size()];
    }

    /**
     * Returns one standard deviation in any direction as a sheet shows it: the root of the mean of the squares along
     * and across.
     *
     * @param row index of the reading within a run
     * @param plane index of the plane
     * @return standard deviation in the unit and detector of the sensor per gram at the radius of the plane
     * @throws IndexOutOfBoundsException if there is no such reading or plane
     */
    public double perGram(int row, int plane) {
        return Math.hypot(at(along, row, plane), at(across, row, plane)) / Math.sqrt(2)
                * InfluenceCoefficients.ofOnePerGram(layout, row, plane);
    }

    /**
     * Returns the two deviations of a coefficient.
     *
     * @param row index of the reading within a run
     * @param plane index of the plane
     * @param coefficient the coefficient
     * @return one standard deviation along it and one across it
     * @throws IndexOutOfBoundsException if there is no such reading or plane
     */
    public List<Phasor> deviations(int row, int plane, Phasor coefficient) {
        Objects.requireNonNull(coefficient, "coefficient");
        double direction = coefficient.argument();
        return List.of(Phasor.polar(at(along, row, plane), direction),
                Phasor.polar(at(across, row, plane), direction + Math.PI / 2));
    }

    /** {@return what rows and columns stand for} */
    public Layout layout() {
        return layout;
    }

    private static double at(double[][] deviations, int row, int plane) {
        double[] ofRow = deviations[Objects.checkIndex(row, deviations.length)];
        return ofRow[Objects.checkIndex(plane, ofRow.length)];
    }

    /** Returns the count of coefficients. */
    @Override
    public String toString() {
        return "errors of " + layout.rows() + " x " + layout.planes().size() + " coefficients";
    }
}
