package dev.vibra.balance.rotor;

import dev.vibra.balance.vector.Phasor;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;

/**
 * Rotor-bearing system in two planes of motion at one speed, {@code D = K − ω²M + iω(C + ωG)}.
 *
 * <p>Node n has the deflections x, y and the slopes α = dx/dz, β = dy/dz. With these slopes the shaft is the same beam
 * in both planes, and the gyroscopic moments are {@code Iₚω·dβ/dt} on α and {@code −Iₚω·dα/dt} on β.
 */
final class DynamicStiffness {
    private final double omega;
    private final int nodes;
    private final double[][] re;
    private final double[][] im;

    DynamicStiffness(int nodes, double omega) {
        this.nodes = nodes;
        this.omega = omega;
        re = new double[4 * nodes][4 * nodes];
        im = new double[4 * nodes][4 * nodes];
    }

    static int x(int node) {
        return 4 * node;
    }

    static int slopeX(int node) {
        return 4 * node + 1;
    }

    static int y(int node) {
        return 4 * node + 2;
    }

    static int slopeY(int node) {
        return 4 * node + 3;
    }

    void addDisc(int node, double mass, double diametral, double polar) {
        double square = omega * omega;
        re[x(node)][x(node)] -= square * mass;
        re[y(node)][y(node)] -= square * mass;
        re[slopeX(node)][slopeX(node)] -= square * diametral;
        re[slopeY(node)][slopeY(node)] -= square * diametral;
        im[slopeX(node)][slopeY(node)] += square * polar;
        im[slopeY(node)][slopeX(node)] -= square * polar;
    }

    /** Adds a spring-damper at a distance from the node along a rigid axis. */
    void addBearing(int node, double lever, Bearing b) {
        addSpring(x(node), slopeX(node), lever, b.stiffnessHorizontal(), omega * b.dampingHorizontal());
        addSpring(y(node), slopeY(node), lever, b.stiffnessVertical(), omega * b.dampingVertical());
    }

    private void addSpring(int shift, int slope, double lever, double stiffness, double damping) {
        add(re, shift, slope, lever, stiffness);
        add(im, shift, slope, lever, damping);
    }

    private static void add(double[][] matrix, int shift, int slope, double lever, double value) {
        matrix[shift][shift] += value;
        matrix[shift][slope] += value * lever;
        matrix[slope][shift] += value * lever;
        matrix[slope][slope] += value * lever * lever;
    }

    /** Adds an Euler-Bernoulli beam between two neighbouring nodes. */
    void addShaft(int node, double length, double bendingStiffness) {
        double k = bendingStiffness / (length * length * length);
        double[][] beam = {
            {12 * k, 6 * k * length, -12 * k, 6 * k * length},
            {6 * k * length, 4 * k * length * length, -6 * k * length, 2 * k * length * length},
            {-12 * k, -6 * k * length, 12 * k, -6 * k * length},
            {6 * k * length, 2 * k * length * length, -6 * k * length, 4 * k * length * length}};
        int[] inX = {x(node), slopeX(node), x(node + 1), slopeX(node + 1)};
        int[] inY = {y(node), slopeY(node), y(node + 1), slopeY(node + 1)};
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                re[inX[i]][inX[j]] += beam[i][j];
                re[inY[i]][inY[j]] += beam[i][j];
            }
        }
    }

    /** Solves for the response to a unit unbalance at angle 0, at a distance from a node along a rigid axis. */
    Phasor[] responseToUnitUnbalance(int node, double lever) {
        int n = 4 * nodes;
        // Force ω²·(cos ωt, sin ωt): real parts of (1, −i)·exp(iωt).
        double force = omega * omega;
        RealVector right = new ArrayRealVector(2 * n);
        right.setEntry(x(node), force);
        right.setEntry(slopeX(node), force * lever);
        right.setEntry(n + y(node), -force);
        right.setEntry(n + slopeY(node), -force * lever);
        double[][] real = new double[2 * n][2 * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                real[i][j] = re[i][j];
                real[i][n + j] = -im[i][j];
                real[n + i][j] = im[i][j];
                real[n + i][n + j] = re[i][j];
            }
        }
        RealVector q = new LUDecomposition(new Array2DRowRealMatrix(real, false), 0).getSolver().solve(right);
        Phasor[] out = new Phasor[n];
        for (int i = 0; i < n; i++) {
            if (!(Math.abs(q.getEntry(i)) + Math.abs(q.getEntry(n + i)) < Double.POSITIVE_INFINITY)) {
                throw new IllegalStateException("the rotor must be held by bearings in two places and must not turn at"
                        + " an undamped critical speed: there is no finite response at " + omega + " rad/s");
            }
            out[i] = new Phasor(q.getEntry(i), q.getEntry(n + i));
        }
        return out;
    }
}
