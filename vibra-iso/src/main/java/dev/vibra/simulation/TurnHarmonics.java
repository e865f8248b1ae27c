package dev.vibra.simulation;

/**
 * Integrates an equation of motion over turns of a shaft by the classical Runge-Kutta method and takes forces apart
 * into multiples of a part of the speed: twelve turns hold halves, thirds and quarters exactly.
 */
final class TurnHarmonics {
    /** Turns that are taken apart together. */
    static final int TURNS = 12;
    /** Highest multiple of the speed. */
    static final int HIGHEST = 12;
    private static final int SAMPLES = 64;

    /** An equation of motion of first order in its state. */
    interface Motion {
        /** Writes the derivative of the state by the dimensionless time. */
        void derive(double time, double[] state, double[] derivative);

        /** Writes the forces that are asked for. */
        void forces(double time, double[] state, double[] forces);
    }

    private final double[][] re;
    private final double[][] im;

    private TurnHarmonics(double[][] samples) {
        re = new double[samples.length][TURNS * HIGHEST + 1];
        im = new double[samples.length][TURNS * HIGHEST + 1];
        for (int channel = 0; channel < samples.length; channel++) {
            for (int k = 0; k <= TURNS * HIGHEST; k++) {
                take(samples[channel], channel, k);
            }
        }
    }

    /** Twice the mean of {@code x·exp(-2πik·n/N)}: amplitude of a cosine. */
    private void take(double[] x, int channel, int k) {
        double stepRe = StrictMath.cos(2 * Math.PI * k / x.length);
        double stepIm = -StrictMath.sin(2 * Math.PI * k / x.length);
        double c = 1;
        double s = 0;
        for (double value : x) {
            re[channel][k] += value * c * 2 / x.length;
            im[channel][k] += value * s * 2 / x.length;
            double kept = c;
            c = c * stepRe - s * stepIm;
            s = kept * stepIm + s * stepRe;
        }
    }

    /**
     * Integrates.
     *
     * @param motion equation
     * @param state state at the beginning; holds the state at the end
     * @param turn dimensionless time of a turn
     * @param settle turns before the first that counts
     * @param fastest highest natural rate of the equation by the dimensionless time, which sets the step
     * @param channels number of forces
     * @return the forces over twelve turns, taken apart
     */
    static TurnHarmonics of(Motion motion, double[] state, double turn, int settle, double fastest, int channels) {
        int steps = SAMPLES * (int) Math.ceil(Math.max(1, turn * fastest / (0.35 * SAMPLES)));
        double h = turn / steps;
        double[][] k = new double[4][state.length];
        double[] trial = new double[state.length];
        double[][] samples = new double[channels][TURNS * SAMPLES];
        double[] forces = new double[channels];
        for (int t = 0; t < settle + TURNS; t++) {
            for (int i = 0; i < steps; i++) {
                double time = (double) i / steps * turn;
                if (t >= settle && i % (steps / SAMPLES) == 0) {
                    motion.forces(time, state, forces);
                    for (int c = 0; c < channels; c++) {
                        samples[c][(t - settle) * SAMPLES + i / (steps / SAMPLES)] = forces[c];
                    }
                }
                step(motion, state, time, h, k, trial);
            }
        }
        return new TurnHarmonics(samples);
    }

    private static void step(Motion motion, double[] x, double time, double h, double[][] k, double[] trial) {
        motion.derive(time, x, k[0]);
        shift(x, k[0], h / 2, trial);
        motion.derive(time + h / 2, trial, k[1]);
        shift(x, k[1], h / 2, trial);
        motion.derive(time + h / 2, trial, k[2]);
        shift(x, k[2], h, trial);
        motion.derive(time + h, trial, k[3]);
        for (int i = 0; i < x.length; i++) {
            x[i] += h / 6 * (k[0][i] + 2 * k[1][i] + 2 * k[2][i] + k[3][i]);
        }
    }

    private static void shift(double[] x, double[] slope, double h, double[] trial) {
        for (int i = 0; i < x.length; i++) {
            trial[i] = x[i] + h * slope[i];
        }
    }

    /** Takes forces apart that were sampled evenly over twelve turns. */
    static TurnHarmonics taken(double[][] samples) {
        return new TurnHarmonics(samples);
    }

    /** {@return amplitude at twelfths of the speed} */
    double amplitude(int channel, int twelfths) {
        return Math.hypot(re[channel][twelfths], im[channel][twelfths]);
    }

    double phase(int channel, int twelfths) {
        return StrictMath.atan2(im[channel][twelfths], re[channel][twelfths]);
    }

    /** The largest of a channel in velocity-like weight {@code 1/order}, multiples and parts alike. */
    double largest(int channel) {
        double largest = 0;
        for (int k = 1; k <= TURNS * HIGHEST; k++) {
            largest = Math.max(largest, amplitude(channel, k));
        }
        return largest;
    }

    /** A line that stays: a multiple of a half or a third of the speed, or another part that is large. */
    private static boolean isKept(int k) {
        return k % (TURNS / 2) == 0 || k % (TURNS / 3) == 0;
    }

    /** {@return share of the amplitude that isn't at multiples of halves and thirds: what never repeats} */
    double restlessness(int channel) {
        double kept = 0;
        double rest = 0;
        for (int k = 1; k <= TURNS * HIGHEST; k++) {
            double square = amplitude(channel, k) * amplitude(channel, k);
            kept += isKept(k) ? square : 0;
            rest += isKept(k) ? 0 : square;
        }
        return kept + rest == 0 ? 0 : Math.sqrt(rest / (kept + rest));
    }

    /** {@return true for a multiple of a half or a third of the speed that reaches a share of the largest} */
    boolean stands(int channel, int twelfths, double share) {
        return isKept(twelfths) && amplitude(channel, twelfths) >= share * largest(channel);
    }
}
