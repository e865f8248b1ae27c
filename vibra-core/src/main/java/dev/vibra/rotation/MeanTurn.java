package dev.vibra.rotation;

/** Mean revolution of a shaft at equal steps of its angle, from samples at equal steps of time and back to them. */
final class MeanTurn {
    /** Samples at an end between which nothing can be interpolated. */
    private static final int MARGIN = SincInterpolator.reach(1);

    /** Angle of the shaft at each sample, rising. */
    private final double[] turned;
    private final int steps;
    private final int turns;
    /** Place in samples of each step of each turn averaged. */
    private final double[] places;
    /** The mean, continued at both ends as far as interpolation needs. */
    private final double[] continued;

    MeanTurn(double[] angles, double ratio) {
        turned = new double[angles.length];
        double widest = Double.MAX_VALUE;
        for (int i = 0; i < turned.length; i++) {
            turned[i] = ratio * angles[i];
            widest = i == 0 ? widest : Math.min(widest, turned[i] - turned[i - 1]);
        }
        // As many steps as the slowest turn has samples; rounding must not add one.
        steps = (int) Math.ceil(1 / widest - 1e-6);
        turns = turns(turned, 1);
        places = places();
        continued = new double[steps + 2 * MARGIN];
    }

    /** Whole turns of a shaft that lie inside a recording, its ends left out. */
    static int turns(double[] angles, double ratio) {
        int last = angles.length - 1 - MARGIN;
        return last <= MARGIN ? 0 : (int) Math.floor(ratio * (angles[last] - angles[MARGIN]) + 1e-9);
    }

    /** True if some turn of a shaft has no sample: no mean turn can be told. */
    static boolean passesSamples(double[] angles, double ratio) {
        for (int i = 1; i < angles.length; i++) {
            if (!(ratio * (angles[i] - angles[i - 1]) < 1)) {
                return true;
            }
        }
        return false;
    }

    /** Between two samples the shaft turns evenly enough. */
    private double[] places() {
        double[] out = new double[turns * steps];
        int at = MARGIN;
        for (int j = 0; j < out.length; j++) {
            double angle = turned[MARGIN] + (double) j / steps;
            while (at < turned.length - 2 && turned[at + 1] <= angle) {
                at++;
            }
            out[j] = at + (angle - turned[at]) / (turned[at + 1] - turned[at]);
        }
        return out;
    }

    void average(double[] samples) {
        double[] mean = new double[steps];
        for (int j = 0; j < places.length; j++) {
            mean[j % steps] += SincInterpolator.at(samples, places[j], 1) / turns;
        }
        for (int i = 0; i < continued.length; i++) {
            continued[i] = mean[Math.floorMod(i - MARGIN, steps)];
        }
    }

    /** Adds the mean times a factor to samples at equal steps of time. */
    void addTo(double[] samples, double factor) {
        for (int i = 0; i < samples.length; i++) {
            double angle = turned[i] - turned[MARGIN];
            double place = (angle - Math.floor(angle)) * steps + MARGIN;
            samples[i] += factor * SincInterpolator.at(continued, place, 1);
        }
    }
}
