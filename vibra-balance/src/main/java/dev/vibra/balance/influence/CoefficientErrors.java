package dev.vibra.balance.influence;

import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

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
        this.layout = layout;
        this.along = along;
        this.across = across;
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
        InfluenceCoefficients.requireShape("standard deviations", layout, perGram.length,
                Arrays.stream(perGram).mapToInt(row -> row.length));
        double[][] round = empty(layout);
        for (int i = 0; i < round.length; i++) {
            for (int j = 0; j < round[i].length; j++) {
                round[i][j] = Require.notNegative("standard deviation of a coefficient", perGram[i][j], "")
                        / InfluenceCoefficients.ofOnePerGram(layout, i, j);
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
        for (double[][] part : List.of(along, across)) {
            InfluenceCoefficients.requireShape("standard deviations", layout, part.length,
                    Arrays.stream(part).mapToInt(row -> row.length));
        }
        return new CoefficientErrors(layout, copy(along), copy(across));
    }

    private static double[][] empty(Layout layout) {
        return new double[layout.rows()][layout.planes().size()];
    }

    private static double[][] copy(double[][] values) {
        return IntStream.range(0, values.length).mapToObj(i -> values[i].clone()).toArray(double[][]::new);
    }

    /**
     * Returns one standard deviation in any direction as a sheet shows it: the root of the mean of the squares along
     * and across.
     *
     * @param row index of the reading within a run
     * @param plane index of the plane
     * @return standard deviation in the unit and detector of the sensor per gram at the radius of the plane
     */
    public double perGram(int row, int plane) {
        return Math.hypot(along[row][plane], across[row][plane]) / Math.sqrt(2)
                * InfluenceCoefficients.ofOnePerGram(layout, row, plane);
    }

    /**
     * Returns the two deviations of a coefficient.
     *
     * @param row index of the reading within a run
     * @param plane index of the plane
     * @param coefficient the coefficient
     * @return one standard deviation along it and one across it
     */
    public List<Phasor> deviations(int row, int plane, Phasor coefficient) {
        double direction = coefficient.argument();
        return List.of(Phasor.polar(along[row][plane], direction),
                Phasor.polar(across[row][plane], direction + Math.PI / 2));
    }

    /** Returns the count of coefficients. */
    @Override
    public String toString() {
        return "errors of " + layout.rows() + " x " + layout.planes().size() + " coefficients";
    }
}
