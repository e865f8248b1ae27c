package dev.vibra.simulation;

/**
 * A rotor of one mass that touches a wall at one side: {@code z'' + 2ζ·z' + z = r²·e^(irτ) - F}, and beyond the
 * clearance {@code F = kc·(x - g)·(1 + iμ)} with the friction against the sense of rotation.
 *
 * @param r speed over natural frequency of the free rotor
 * @param damping damping ratio
 * @param clearance way to the wall in units of unbalance
 * @param wall stiffness of the wall over that of the shaft
 * @param friction coefficient of friction
 * @see "S. Prabith, I. R. Praveen Krishna, Nonlinear Dyn. 101 (2020), review of rotor-stator rub (list read); A.
 *     Muszynska, Rotordynamics (2005) (from memory)"
 */
record Rub(double r, double damping, double clearance, double wall, double friction) implements TurnHarmonics.Motion {
    /** Orbit of the free rotor in units of unbalance: {@code r²/|1 - r² + 2iζr|}. */
    static double freeOrbit(double r, double damping) {
        return r * r / Math.hypot(1 - r * r, 2 * damping * r);
    }

    private double press(double x) {
        return x > clearance ? wall * (x - clearance) : 0;
    }

    @Override
    public void derive(double time, double[] state, double[] derivative) {
        double press = press(state[0]);
        derivative[0] = state[2];
        derivative[1] = state[3];
        derivative[2] = r * r * StrictMath.cos(r * time) - 2 * damping * state[2] - state[0] - press;
        derivative[3] = r * r * StrictMath.sin(r * time) - 2 * damping * state[3] - state[1] + friction * press;
    }

    /**
     * Force of the shaft on its bearings across and along the wall, force on the wall, and velocities across and
     * along it.
     */
    @Override
    public void forces(double time, double[] state, double[] forces) {
        forces[0] = state[0];
        forces[1] = state[1];
        forces[2] = press(state[0]);
        forces[3] = state[2];
        forces[4] = state[3];
    }

    TurnHarmonics harmonics(int settle) {
        return TurnHarmonics.of(this, new double[4], 2 * Math.PI / r, settle, Math.sqrt(1 + wall), 5);
    }
}
