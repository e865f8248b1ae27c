package dev.vibra.simulation;

/**
 * A ring loose on a shaft: seen from the shaft it is thrown outwards and falls with the weight, which turns: {@code
 * u'' = u - cos τ} with the time {@code τ = ω·t} and lengths in units of {@code g/ω²}; at the clearance {@code ±c} it
 * strikes and comes back with a part of its speed.
 *
 * @param clearance half the play in units of {@code g/ω²}
 * @param restitution speed after a strike over that before
 * @param unrest standard deviation of the speed that each strike adds by chance, over the speed before
 * @see "closed form between strikes; the restitution of 0.3 to 0.8 is common practice, no source"
 */
record LoosePart(double clearance, double restitution, double unrest) {
    private static final int STEPS = 384;
    private static final int SETTLE = 40;
    private static final int SAMPLES = 64;

    /** Force on the shaft in the direction of gravity and across it, over {@code m·g}, taken apart. */
    TurnHarmonics harmonics(Draws draws) {
        double[] state = {0, 0};
        double h = 2 * Math.PI / STEPS;
        double[][] samples = new double[2][TurnHarmonics.TURNS * SAMPLES];
        for (int t = 0; t < SETTLE + TurnHarmonics.TURNS; t++) {
            for (int i = 0; i < STEPS; i++) {
                double force = step(state, i * h, h, draws);
                if (t >= SETTLE) {
                    int at = ((t - SETTLE) * STEPS + i) / (STEPS / SAMPLES);
                    samples[0][at] += force * StrictMath.cos(i * h) * SAMPLES / STEPS;
                    samples[1][at] += force * StrictMath.sin(i * h) * SAMPLES / STEPS;
                }
            }
        }
        return TurnHarmonics.taken(samples);
    }

    /** Force on the shaft during the step, outwards positive. */
    private double step(double[] state, double time, double h, Draws draws) {
        double pull = state[0] - StrictMath.cos(time);
        state[1] += h * pull;
        state[0] += h * state[1];
        if (Math.abs(state[0]) < clearance || state[0] * state[1] < 0) {
            return 0;
        }
        double before = state[1];
        double after = -restitution * before * (1 + unrest * draws.normal(0, 1));
        state[1] = after;
        state[0] = Math.signum(state[0]) * clearance;
        return (before - after) / h;
    }
}
