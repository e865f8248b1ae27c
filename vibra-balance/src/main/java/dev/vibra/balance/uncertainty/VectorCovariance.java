package dev.vibra.balance.uncertainty;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.UnaryOperator;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.random.SobolSequenceGenerator;

/**
 * Covariance of the real and imaginary parts of several vectors, normal errors assumed.
 *
 * @see "JCGM 102:2011, propagation of uncertainty to several output quantities"
 */
public final class VectorCovariance implements Serializable {
    private static final long serialVersionUID = 1;
    private static final int POINTS = 1 << 13;
    private static final int MOST_VECTORS = 2000;
    /** Part of the largest element that adds nothing to it, and whose square is no number. */
    private static final double NOTHING = 1e-40;
    private static final int MOST_IN_SEQUENCE = 500; // the Sobol sequence has a thousand dimensions, two for each

    private final double[][] matrix; // order re, im of vector 0, re, im of vector 1, ...

    /** Copies the rows and checks the copy. */
    private VectorCovariance(double[][] matrix) {
        this.matrix = Arrays.stream(matrix).map(double[]::clone).toArray(double[][]::new);
        requireCount(matrix.length / 2);
        for (int i = 0; i < matrix.length; i++) {
            for (int j = 0; j < matrix.length; j++) {
                if (Require.finite("covariance", this.matrix[i][j]) != this.matrix[j][i]) {
                    throw Require.failure("covariance", "alike in both orders, " + this.matrix[j][i],
                            this.matrix[i][j]);
                }
            }
            Require.notNegative("variance", this.matrix[i][i], "");
        }
    }

    private static void requireCount(int vectors) {
        if (Require.atLeast("vectors", vectors, 1) > MOST_VECTORS) {
            throw new IllegalArgumentException("vectors must be at most " + MOST_VECTORS + ": " + vectors);
        }
    }

    private Object readResolve() {
        return new VectorCovariance(matrix);
    }

    /**
     * Makes the covariance that independent deviations cause.
     *
     * @param vectors number of vectors, from 1 to 2000
     * @param effects what a deviation of one standard deviation of each independent source does to the vectors, one
     *     array of {@code vectors} elements per source; copied
     * @return sum over the sources of effect times effect
     * @throws IllegalArgumentException if the number is out of range, an array has the wrong length, or a square is
     *     too large for a double
     */
    public static VectorCovariance ofEffects(int vectors, List<Phasor[]> effects) {
        requireCount(vectors);
        double[][] sum = new double[2 * vectors][2 * vectors];
        for (Phasor[] effect : Objects.requireNonNull(effects, "effects")) {
            if (Objects.requireNonNull(effect, "effect").length != vectors) {
                throw new IllegalArgumentException("effects must have one element per vector, " + vectors + ": "
                        + effect.length);
            }
            double[] parts = new double[2 * vectors];
            for (int i = 0; i < vectors; i++) {
                Objects.requireNonNull(effect[i], "effect[" + i + "]");
                parts[2 * i] = effect[i].re();
                parts[2 * i + 1] = effect[i].im();
            }
            for (int i = 0; i < parts.length; i++) {
                for (int j = 0; j < parts.length; j++) {
                    sum[i][j] += parts[i] * parts[j];
                }
            }
        }
        return new VectorCovariance(sum);
    }

    /**
     * Counts the vectors.
     *
     * @return number of vectors
     */
    public int vectors() {
        return matrix.length / 2;
    }

    /**
     * Returns one element.
     *
     * @param row twice the index of a vector, plus one for its imaginary part
     * @param column likewise
     * @return covariance in the square of the unit
     * @throws IndexOutOfBoundsException if there is no such row or column
     */
    public double at(int row, int column) {
        return matrix[Objects.checkIndex(row, matrix.length)][Objects.checkIndex(column, matrix.length)];
    }

    /**
     * Adds the covariance of independent errors.
     *
     * @param other covariance of as many vectors
     * @return the sum
     * @throws IllegalArgumentException if the counts differ
     */
    public VectorCovariance plus(VectorCovariance other) {
        if (Objects.requireNonNull(other, "other").matrix.length != matrix.length) {
            throw new IllegalArgumentException("covariances must be of as many vectors: " + vectors() + " and "
                    + other.vectors());
        }
        double[][] sum = new double[matrix.length][matrix.length];
        for (int i = 0; i < sum.length; i++) {
            for (int j = 0; j < sum.length; j++) {
                sum[i][j] = matrix[i][j] + other.matrix[i][j];
            }
        }
        return new VectorCovariance(sum);
    }

    /**
     * Multiplies, for example by 1/n for the mean of n readings.
     *
     * @param factor factor, finite, zero or more
     * @return the product
     * @throws IllegalArgumentException if the factor is out of range
     */
    public VectorCovariance times(double factor) {
        Require.notNegative("factor", factor, "");
        double[][] product = new double[matrix.length][matrix.length];
        for (int i = 0; i < product.length; i++) {
            for (int j = 0; j < product.length; j++) {
                product[i][j] = matrix[i][j] * factor;
            }
        }
        return new VectorCovariance(product);
    }

    /**
     * Returns independent deviations that cause this covariance, one standard deviation each.
     *
     * @return effects as {@link #ofEffects} takes them, twice as many as vectors
     */
    public List<Phasor[]> effects() {
        double[][] root = root();
        List<Phasor[]> out = new ArrayList<>();
        for (int k = 0; k < matrix.length; k++) {
            Phasor[] effect = new Phasor[vectors()];
            for (int v = 0; v < effect.length; v++) {
                effect[v] = new Phasor(root[2 * v][k], root[2 * v + 1][k]);
            }
            out.add(effect);
        }
        return out;
    }

    /**
     * Carries this covariance through a linear map of the vectors.
     *
     * @param count number of vectors that the map gives, at least 1
     * @param map linear map; it gets and gives one element per vector
     * @return covariance of what the map gives
     * @throws IllegalArgumentException if the count is below 1 or not that of the map, or the map gives null
     */
    public VectorCovariance mapped(int count, UnaryOperator<Phasor[]> map) {
        List<Phasor[]> mapped = effects().stream().map(Objects.requireNonNull(map, "map")).toList();
        if (mapped.stream().anyMatch(one -> one == null || Arrays.asList(one).contains(null))) {
            throw new IllegalArgumentException("map must give vectors, and gives null");
        }
        return ofEffects(count, mapped);
    }

    /**
     * Returns the ellipse of one vector: {@code d·C⁻¹·d = −2·ln(1 − p)}, the quantile of χ² with two degrees of
     * freedom.
     *
     * @param vector index of the vector
     * @param centre the vector found
     * @param coverage probability, above 0 and below 1
     * @return the ellipse
     * @throws IllegalArgumentException if the coverage is out of range, or the axes are too long for a double
     * @throws IndexOutOfBoundsException if there is no such vector
     */
    public Ellipse ellipse(int vector, Phasor centre, double coverage) {
        if (!(coverage > 0 && coverage < 1)) {
            throw Require.failure("coverage", "above 0 and below 1", coverage);
        }
        Objects.checkIndex(vector, vectors());
        double xx = matrix[2 * vector][2 * vector];
        double yy = matrix[2 * vector + 1][2 * vector + 1];
        double xy = matrix[2 * vector][2 * vector + 1];
        double middle = xx / 2 + yy / 2;
        double radius = Math.hypot(xx / 2 - yy / 2, xy);
        double quantile = -2 * Math.log1p(-coverage);
        double major = Math.sqrt(quantile * (middle + radius));
        double minor = Math.min(major, Math.sqrt(quantile * Math.max(0, middle - radius)));
        return new Ellipse(centre, major, minor, Math.atan2(xy, xx / 2 - yy / 2) / 2, coverage);
    }

    /**
     * Returns the probability that every vector is at most as long as its limit, by 8192 points of a Sobol sequence;
     * good to about 0.002; at most 500 vectors.
     *
     * @param found the vectors found, one each
     * @param limits limit of the length of each, finite, zero or more
     * @return probability from 0 to 1
     * @throws IllegalArgumentException if a count is wrong or a limit out of range
     */
    public double probabilityWithin(Phasor[] found, double[] limits) {
        Objects.requireNonNull(found, "found");
        Objects.requireNonNull(limits, "limits");
        if (found.length != vectors() || limits.length != vectors()) {
            throw new IllegalArgumentException("vectors and limits must be one each, " + vectors() + ": " + found.length
                    + " and " + limits.length);
        }
        if (found.length > MOST_IN_SEQUENCE) {
            throw new IllegalArgumentException("vectors must be at most " + MOST_IN_SEQUENCE + ": " + found.length);
        }
        for (double limit : limits) {
            Require.notNegative("limit", limit, "");
        }
        for (Phasor vector : found) {
            Objects.requireNonNull(vector, "vector");
        }
        double[][] root = root();
        SobolSequenceGenerator sobol = new SobolSequenceGenerator(matrix.length);
        sobol.skipTo(1); // the first point is 0, which no normal deviate belongs to
        NormalDistribution standard = new NormalDistribution(null, 0, 1); // no random generator: it is not sampled
        int inside = 0;
        for (int n = 0; n < POINTS; n++) {
            if (within(found, limits, root, deviates(standard, sobol.nextVector()))) {
                inside++;
            }
        }
        return (double) inside / POINTS;
    }

    private static double[] deviates(NormalDistribution standard, double[] uniform) {
        double[] out = new double[uniform.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = standard.inverseCumulativeProbability(uniform[i]);
        }
        return out;
    }

    private static boolean within(Phasor[] found, double[] limits, double[][] root, double[] normal) {
        for (int v = 0; v < found.length; v++) {
            double re = found[v].re();
            double im = found[v].im();
            for (int k = 0; k < normal.length; k++) {
                re += root[2 * v][k] * normal[k];
                im += root[2 * v + 1][k] * normal[k];
            }
            if (!(Math.hypot(re, im) <= limits[v])) {
                return false;
            }
        }
        return true;
    }

    /**
     * A matrix whose product with its transpose is the covariance; works where a Cholesky factor would not exist. The
     * decomposition is made of numbers up to 1, for it squares them.
     */
    private double[][] root() {
        double scale = Arrays.stream(matrix).flatMapToDouble(Arrays::stream).map(Math::abs).max().orElse(0);
        if (scale == 0) {
            return new double[matrix.length][matrix.length];
        }
        double[][] scaled = Arrays.stream(matrix).map(row -> Arrays.stream(row).map(value -> value / scale)
                .map(value -> Math.abs(value) < NOTHING ? 0 : value).toArray()).toArray(double[][]::new);
        EigenDecomposition eigen = new EigenDecomposition(new Array2DRowRealMatrix(scaled, false));
        double[][] root = eigen.getV().getData();
        double[] values = eigen.getRealEigenvalues();
        for (double[] row : root) {
            for (int k = 0; k < values.length; k++) {
                row[k] *= Math.sqrt(Math.max(0, values[k])) * Math.sqrt(scale);
            }
        }
        return root;
    }

    /** Returns the count of vectors. */
    @Override
    public String toString() {
        return "covariance of " + vectors() + " vector(s)";
    }
}
