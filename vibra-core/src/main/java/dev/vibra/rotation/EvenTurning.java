package dev.vibra.rotation;

/**
 * Places of a sampled signal at equal steps of the angle of a shaft, as many to the second at its mean speed as the
 * signal has samples.
 */
final class EvenTurning {
    private static final int FEWEST = 4;
    private static final double NEARLY_ALL = 0.9;

    private final double firstSeconds;
    /** Places in samples, rising. */
    private final double[] places;
    /**
     * Share of half the sample rate that the steps can show; below 1 where the shaft is clearly slower than its mean.
     * The last tenth, which anti-alias filters leave empty, may fold.
     */
    private final double[] bandwidths;

    private EvenTurning(double firstSeconds, double[] places, double[] bandwidths) {
        this.firstSeconds = firstSeconds;
        this.places = places;
        this.bandwidths = bandwidths;
    }

    static EvenTurning of(ShaftAngle angle, double startSeconds, double rate, int length) {
        double mean = angle.meanSpeed().hertz();
        double from = Math.max(angle.firstSeconds(), startSeconds);
        double to = Math.min(angle.lastSeconds(), startSeconds + (length - 1) / rate);
        double first = to > from ? angle.revolutionsAt(from) : 0;
        double step = mean / rate;
        int count = to > from ? (int) Math.floor((angle.revolutionsAt(to) - first) / step + 1e-9) + 1 : 0;
        if (count < FEWEST) {
            throw new IllegalArgumentException("at least " + FEWEST + " samples must lie inside the signal, "
                    + startSeconds + " to " + (startSeconds + (length - 1) / rate) + " s, and the angle, "
                    + angle.firstSeconds() + " to " + angle.lastSeconds() + " s: " + count);
        }
        double[] times = angle.secondsAt(first, step, count);
        double[] bandwidths = new double[count];
        for (int j = 0; j < count; j++) {
            int before = Math.max(0, j - 1);
            int after = Math.min(count - 1, j + 1);
            double share = (after - before) / ((times[after] - times[before]) * rate);
            bandwidths[j] = share >= NEARLY_ALL ? 1 : share;
        }
        for (int j = 0; j < count; j++) {
            times[j] = (times[j] - startSeconds) * rate;
        }
        return new EvenTurning(angle.firstSeconds() + first / mean, times, bandwidths);
    }

    /** Time of the first step for a shaft that turns at mean speed from the first pulse on. */
    double firstSeconds() {
        return firstSeconds;
    }

    double[] resample(double[] samples) {
        double[] out = new double[places.length];
        for (int j = 0; j < out.length; j++) {
            out[j] = SincInterpolator.at(samples, places[j], bandwidths[j]);
        }
        return out;
    }
}
