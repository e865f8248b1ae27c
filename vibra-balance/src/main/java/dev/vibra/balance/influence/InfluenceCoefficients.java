package dev.vibra.balance.influence;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Influence coefficients {@code α} of a rotor in its bearings: {@code V = V₀ + α·U}, one row a reading, one column a
 * plane.
 *
 * <p>Unit of each element: zero-to-peak SI amplitude per kg·m of unbalance, or per kg in planes whose radius was left
 * open. They can be stored and used again for trim balancing as long as speed, load, bearings and support are the same.
 */
public final class InfluenceCoefficients implements Serializable {
    private static final long serialVersionUID = 1;

    private final Layout layout;
    private final Phasor[][] alpha;

    /** Copies the rows and checks the copy. */
    private InfluenceCoefficients(Layout layout, Phasor[][] alpha) {
        this.layout = Objects.requireNonNull(layout, "layout");
        this.alpha = Arrays.stream(Objects.requireNonNull(alpha, "alpha"))
                .map(row -> Objects.requireNonNull(row, "row of alpha").clone()).toArray(Phasor[][]::new);
        requireShape("coefficients", layout, this.alpha.length, Arrays.stream(this.alpha).mapToInt(row -> row.length));
        for (Phasor[] row : this.alpha) {
            for (Phasor element : row) {
                Objects.requireNonNull(element, "coefficient");
            }
        }
    }

    private Object readResolve() {
        return new InfluenceCoefficients(layout, alpha);
    }

    /**
     * Makes coefficients of known numbers.
     *
     * @param layout what rows and columns stand for
     * @param alpha coefficients, {@code layout.rows()} rows of one element per plane; copied
     * @return the coefficients
     * @throws IllegalArgumentException if the shape does not fit the layout
     */
    public static InfluenceCoefficients of(Layout layout, Phasor[][] alpha) {
        return new InfluenceCoefficients(layout, alpha);
    }

    /**
     * Makes coefficients of the numbers on a sheet, as {@link #perGram} and {@link #phaseDegrees} tell them.
     *
     * @param layout what rows and columns stand for, with unit and detector of each sensor, radii and convention
     * @param perGram {@code layout.rows()} rows of one magnitude per plane, in the unit and detector of the sensor per
     *     gram at the radius of the plane, finite, zero or more; not kept
     * @param phaseDegrees phases in degrees in the sense of the convention, same shape, finite; not kept
     * @return the coefficients
     * @throws IllegalArgumentException if a shape does not fit the layout or a number is out of range
     */
    public static InfluenceCoefficients ofSheet(Layout layout, double[][] perGram, double[][] phaseDegrees) {
        Objects.requireNonNull(layout, "layout");
        Objects.requireNonNull(perGram, "perGram");
        Objects.requireNonNull(phaseDegrees, "phaseDegrees");
        requireShape("magnitudes", layout, perGram.length, Arrays.stream(perGram)
                .mapToInt(row -> Objects.requireNonNull(row, "perGram").length));
        requireShape("phases", layout, phaseDegrees.length, Arrays.stream(phaseDegrees)
                .mapToInt(row -> Objects.requireNonNull(row, "phaseDegrees").length));
        Phasor[][] alpha = new Phasor[layout.rows()][layout.planes().size()];
        for (int i = 0; i < alpha.length; i++) {
            for (int j = 0; j < alpha[i].length; j++) {
                double magnitude = Require.notNegative("magnitude of a coefficient", perGram[i][j], "");
                double phase = Require.finite("phase of a coefficient in degrees", phaseDegrees[i][j]);
                alpha[i][j] = Phasor.polar(magnitude / ofOnePerGram(layout, i, j),
                        layout.convention().phase().toLead(Math.toRadians(phase)));
            }
        }
        return new InfluenceCoefficients(layout, alpha);
    }

    static void requireShape(String what, Layout layout, int rows, IntStream columns) {
        int planes = layout.planes().size();
        List<Integer> counts = columns.distinct().boxed().toList();
        if (rows != layout.rows() || !counts.equals(List.of(planes))) {
            throw new IllegalArgumentException(what + " must have " + layout.rows() + " rows of " + planes
                    + " elements: " + rows + " rows of " + counts);
        }
    }

    /**
     * Returns what rows and columns stand for.
     *
     * @return planes, sensors, speeds and convention
     */
    public Layout layout() {
        return layout;
    }

    /**
     * Returns one coefficient.
     *
     * @param row index of the reading within a run
     * @param plane index of the plane
     * @return zero-to-peak SI amplitude per kg·m, or per kg if the radius of the plane was left open; argument is a
     *     lead
     * @throws IndexOutOfBoundsException if there is no such reading or plane
     */
    public Phasor at(int row, int plane) {
        return alpha[Objects.checkIndex(row, alpha.length)][Objects.checkIndex(plane, alpha[row].length)];
    }

    /**
     * Returns one coefficient as a sheet shows it: in the unit and detector of the sensor per gram at the radius of the
     * plane.
     *
     * @param row index of the reading within a run
     * @param plane index of the plane
     * @return magnitude per gram, zero or more
     * @throws IndexOutOfBoundsException if there is no such reading or plane
     */
    public double perGram(int row, int plane) {
        return at(row, plane).magnitude() * ofOnePerGram(layout, row, plane);
    }

    /** What a coefficient of 1 is on the sheet. */
    static double ofOnePerGram(Layout layout, int row, int plane) {
        return layout.lever(plane) / 1000 / layout.peakPerUnit(row);
    }

    /**
     * Changes one coefficient.
     *
     * @param row index of the reading within a run
     * @param plane index of the plane
     * @param coefficient zero-to-peak SI amplitude per kg·m, or per kg if the radius of the plane was left open
     * @return a changed copy
     * @throws IndexOutOfBoundsException if there is no such reading or plane
     */
    public InfluenceCoefficients with(int row, int plane, Phasor coefficient) {
        at(row, plane);
        Phasor[][] changed = Arrays.stream(alpha).map(Phasor[]::clone).toArray(Phasor[][]::new);
        changed[row][plane] = Objects.requireNonNull(coefficient, "coefficient");
        return new InfluenceCoefficients(layout, changed);
    }

    /**
     * Returns the phase of one coefficient in the sense of the convention: the lag, or lead, of the vibration to the
     * place of a mass at angle zero.
     *
     * @param row index of the reading within a run
     * @param plane index of the plane
     * @return phase in degrees, from 0 up to, not including, 360
     * @throws IndexOutOfBoundsException if there is no such reading or plane
     */
    public double phaseDegrees(int row, int plane) {
        return layout.convention().phase().degreesOf(at(row, plane));
    }

    /**
     * Shows the same coefficients in the units, detectors and convention of another layout.
     *
     * @param other layout of the same planes, radii, sensors and speeds
     * @return the same coefficients with that layout
     * @throws IllegalArgumentException if it is not a layout of the same rotor
     */
    public InfluenceCoefficients shownAs(Layout other) {
        if (!layout.describesSameRotorAs(other)) {
            throw new IllegalArgumentException("layout must have the same planes, radii, sensors and speeds: "
                    + layout.differenceFrom(other));
        }
        return new InfluenceCoefficients(other, alpha);
    }

    /**
     * Returns the vibration that unbalances cause.
     *
     * @param unbalances one element per plane, in kg·m, or kg where the radius was left open
     * @return one element per row, zero-to-peak SI
     * @throws IllegalArgumentException if the count is wrong
     */
    public Phasor[] response(Phasor... unbalances) {
        Objects.requireNonNull(unbalances, "unbalances");
        int planes = layout.planes().size();
        if (unbalances.length != planes) {
            throw new IllegalArgumentException("unbalances must be one per plane, " + planes + ": "
                    + unbalances.length);
        }
        Phasor[] out = new Phasor[alpha.length];
        for (int i = 0; i < out.length; i++) {
            Phasor sum = Phasor.ZERO;
            for (int j = 0; j < planes; j++) {
                sum = sum.plus(alpha[i][j].times(unbalances[j]));
            }
            out[i] = sum;
        }
        return out;
    }

    /**
     * Makes a solver that counts all rows alike.
     *
     * @return solver with equal weights
     * @throws IllegalArgumentException if there are fewer readings than planes
     */
    public CorrectionSolver solver() {
        double[] ones = new double[alpha.length];
        Arrays.fill(ones, 1);
        return solver(ones);
    }

    /**
     * Makes a solver that counts each row by a weight.
     *
     * @param weights one factor per row by which its residual is multiplied, finite, zero or more, not all zero
     * @return the solver
     * @throws IllegalArgumentException if a weight is out of range or there is an {@link #obstacle}
     */
    public CorrectionSolver solver(double... weights) {
        Objects.requireNonNull(weights, "weights");
        return new CorrectionSolver(this, weights);
    }

    /**
     * Says why a solver can't be made that counts each row by a weight.
     *
     * @param weights one factor per row, finite, zero or more
     * @return the reason as a sentence; empty if enough readings count
     * @throws IllegalArgumentException if a weight is out of range or their count wrong
     */
    public Optional<String> obstacle(double... weights) {
        Objects.requireNonNull(weights, "weights");
        return CorrectionSolver.tooFewReadings(layout, weights);
    }

    /** Returns shape and condition number in one line. */
    @Override
    public String toString() {
        String shape = alpha.length + " reading(s) by " + layout.planes().size() + " plane(s)";
        return alpha.length < layout.planes().size() ? "influence coefficients, " + shape
                : "influence coefficients, " + shape + ", condition number "
                        + CorrectionSolver.inWords(solver().conditionNumber());
    }
}
