package dev.vibra.quality;

import dev.vibra.internal.Means;
import dev.vibra.level.Moments;

/**
 * How far the mean moves: from the first eighth, in which a sensor's bias settles, to the last half. A move that isn't
 * larger than the means of the last eighths differ among themselves is a slow vibration.
 */
final class Drift {
    static final double LIMIT = 0.2;
    private static final double BEYOND_SWING = 1.5;

    private Drift() {}

    static double ofMeanOverRms(double[] x) {
        if (x.length < 16) {
            return 0;
        }
        double move = Math.abs(Means.of(x, 0, x.length / 8) - Means.of(x, x.length / 2, x.length - x.length / 2));
        double rms = move < BEYOND_SWING * swing(x) ? 0 : Moments.of(x).rms();
        return rms == 0 ? 0 : move / rms;
    }

    private static double swing(double[] x) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int part = 4; part < 8; part++) {
            double mean = Means.of(x, part * (x.length / 8), x.length / 8);
            low = Math.min(low, mean);
            high = Math.max(high, mean);
        }
        return high - low;
    }
}
