package dev.vibra.simulation;

/**
 * How the vector of a line wanders in time: {@code 1 + depth·Σ (a_i·cos + i·b_i·cos)(2π·f_i·t + φ_i)}, a few slow
 * cosines of random rate, scaled so that the standard deviation of the vector is the depth.
 *
 * @param depth standard deviation of the vector over its mean, 0 to 1
 * @param hertz rates of the cosines
 * @param phases their phases; first half of the vector's real part, second half of its imaginary part
 */
record Wander(double depth, double[] hertz, double[] phases) {
    static final Wander NONE = new Wander(0, new double[0], new double[0]);
    private static final int TERMS = 4;

    static Wander of(double depth, double fastestHertz, Draws draws) {
        double[] hertz = new double[2 * TERMS];
        double[] phases = new double[2 * TERMS];
        for (int i = 0; i < hertz.length; i++) {
            hertz[i] = draws.logUniform(0.05 * fastestHertz, fastestHertz);
            phases[i] = draws.angle();
        }
        return new Wander(depth, hertz, phases);
    }

    boolean isSteady() {
        return depth == 0;
    }

    double re(double seconds) {
        return 1 + sum(seconds, 0);
    }

    double im(double seconds) {
        return sum(seconds, hertz.length / 2);
    }

    /** Four cosines have the variance 2, and real and imaginary part add up to twice that. */
    private double sum(double seconds, int from) {
        double sum = 0;
        for (int i = from; i < from + hertz.length / 2; i++) {
            sum += StrictMath.cos(2 * Math.PI * hertz[i] * seconds + phases[i]);
        }
        return 0.5 * depth * sum;
    }
}
