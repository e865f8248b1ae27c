package dev.vibra.diagnosis.study;

import java.util.SplittableRandom;

/** Forces and moments of a misaligned coupling at the driving side; the driven side feels the opposite forces. */
record Reactions(double forceX, double forceY, double momentX, double momentY, double axial) {
    /**
     * Works them out.
     *
     * @param length length of the coupling
     * @param torque torque
     * @param bending bending stiffness per radian
     * @param x offsets of both ends, level
     * @param y offsets of both ends, upright
     * @see "C. B. Gibbons, Coupling misalignment forces, Turbomachinery Symp. (1976) (from memory, unverified)"
     */
    static Reactions of(double length, double torque, double bending, double[] x, double[] y) {
        double t1 = Math.asin(x[0] / length);
        double t2 = Math.asin(x[1] / length);
        double p1 = Math.asin(y[0] / length);
        double p2 = Math.asin(y[1] / length);
        double mx1 = torque * Math.sin(t1) + bending * p1;
        double mx2 = torque * Math.sin(t2) - bending * p2;
        double my1 = torque * Math.sin(p1) - bending * t1;
        double my2 = torque * Math.sin(p2) + bending * t2;
        return new Reactions(-(my1 + my2) / length, (mx1 + mx2) / length, mx1, my1, 0);
    }

    /** Parallel: offsets of both ends are equal; angular: one of them leads away, and the discs pull along the shaft. */
    static Reactions draw(boolean angular, SplittableRandom random) {
        double length = 0.1;
        double x = random.nextDouble(-1, 1) * 0.002;
        double y = random.nextDouble(-1, 1) * 0.002;
        double[] atX = angular ? new double[] {x, x * random.nextDouble(-0.3, 0.3)}
                : new double[] {x, x * random.nextDouble(-1.1, -0.9)};
        double[] atY = angular ? new double[] {y, y * random.nextDouble(-0.3, 0.3)}
                : new double[] {y, y * random.nextDouble(-1.1, -0.9)};
        Reactions bare = of(length, 300, 3000 * random.nextDouble(0.5, 2), atX, atY);
        double radial = Math.hypot(bare.forceX, bare.forceY);
        double axial = angular ? radial * Draw.logarithmic(random, 0.3, 3) : radial * Draw.logarithmic(random, 0.02, 0.4);
        return new Reactions(bare.forceX, bare.forceY, bare.momentX, bare.momentY, axial);
    }
}
