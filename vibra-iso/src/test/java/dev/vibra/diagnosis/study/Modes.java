package dev.vibra.diagnosis.study;

import org.apache.commons.math3.complex.Complex;

/** Modes of a structure: circular natural frequencies, damping ratios, shapes by mode and degree for a modal mass of 1. */
record Modes(double[] omegas, double[] ratios, double[][] shapes) {
    int count() {
        return omegas.length;
    }

    double hertz(int mode) {
        return omegas[mode] / (2 * Math.PI);
    }

    /** How far a motion takes part in each mode. */
    double[] gains(Tap tap) {
        double[] gains = new double[count()];
        for (int mode = 0; mode < gains.length; mode++) {
            gains[mode] = tap.in(shapes[mode]);
        }
        return gains;
    }

    /** Velocity along one motion for a force of 1 along another. */
    Complex mobility(Tap force, Tap motion, double hertz) {
        double omega = 2 * Math.PI * hertz;
        double[] from = gains(force);
        double[] to = gains(motion);
        Complex sum = Complex.ZERO;
        for (int mode = 0; mode < count(); mode++) {
            Complex stiffness = new Complex(omegas[mode] * omegas[mode] - omega * omega,
                    2 * ratios[mode] * omegas[mode] * omega);
            sum = sum.add(new Complex(0, omega * from[mode] * to[mode]).divide(stiffness));
        }
        return sum;
    }
}
