package dev.vibra.simulation;

/**
 * A mass on a joint that opens: {@code y'' + 2ζ·y' + κ(y) = r²·cos(r·τ) - P} with the time {@code τ = ω_n·t} and the
 * length in units of unbalance. {@code κ = y} while the joint is closed ({@code y < 0}); open it is {@code α·y}, or
 * nothing within a gap and a stop behind it.
 *
 * @param r speed over natural frequency of the closed joint
 * @param damping damping ratio
 * @param open stiffness of the open joint over that of the closed one
 * @param gap way to the stop; infinite without one
 * @param stop stiffness of the stop over that of the closed joint
 * @param preload weight and bolts that press the joint together
 * @see "H. Ma et al., pedestal looseness, 2013: three pieces of stiffness (abstract read); F. F. Ehrich, J. Vib.
 *     Acoust. 110 (1988): bilinear support (from memory)"
 */
record Joint(double r, double damping, double open, double gap, double stop, double preload)
        implements TurnHarmonics.Motion {
    /** A joint that is softer where it opens. */
    static Joint bilinear(double r, double damping, double open, double preload) {
        return new Joint(r, damping, open, Double.POSITIVE_INFINITY, 0, preload);
    }

    /** A joint with a gap, and a stop behind it. */
    static Joint withGap(double r, double damping, double gap, double stop, double preload) {
        return new Joint(r, damping, 0, gap, stop, preload);
    }

    /**
     * Natural frequency over that of the closed joint if nothing presses it: half a period on each side gives {@code
     * 2·√α/(1 + √α)}.
     */
    static double meanNatural(double open) {
        return 2 * Math.sqrt(open) / (1 + Math.sqrt(open));
    }

    double stiffness(double y) {
        return y < 0 ? y : open * y + (y > gap ? stop * (y - gap) : 0);
    }

    @Override
    public void derive(double time, double[] state, double[] derivative) {
        derivative[0] = state[1];
        derivative[1] = r * r * StrictMath.cos(r * time) - preload - 2 * damping * state[1] - stiffness(state[0]);
    }

    /** Force on what the joint stands on, and velocity of the mass. */
    @Override
    public void forces(double time, double[] state, double[] forces) {
        forces[0] = stiffness(state[0]) + 2 * damping * state[1];
        forces[1] = state[1];
    }

    TurnHarmonics harmonics(int settle) {
        double fastest = Math.sqrt(1 + stop);
        return TurnHarmonics.of(this, new double[] {0, 0}, 2 * Math.PI / r, settle, fastest, 2);
    }
}
