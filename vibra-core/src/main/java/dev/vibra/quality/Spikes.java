package dev.vibra.quality;

import dev.vibra.level.Percentiles;

/**
 * Single samples that stand off the middle of their neighbours by more than eight times what 95 % of the samples keep,
 * both neighbours lying close to each other in comparison. A ringing impact lasts longer.
 */
final class Spikes {
    private static final double USUAL = 8;
    private static final double CLOSE = 0.25;

    private Spikes() {}

    static int count(double[] x) {
        if (x.length < 16) {
            return 0;
        }
        double[] distance = new double[x.length - 4];
        for (int i = 2; i < x.length - 2; i++) {
            distance[i - 2] = Math.abs(x[i] - 0.5 * (x[i - 1] + x[i + 1]));
        }
        double usual = Percentiles.of(distance).at(95);
        if (usual == 0) {
            return 0;
        }
        int count = 0;
        for (int i = 2; i < x.length - 2; i++) {
            double off = distance[i - 2];
            double around = Math.max(Math.abs(x[i + 1] - x[i - 1]), Math.max(Math.abs(x[i - 1] - x[i - 2]),
                    Math.abs(x[i + 2] - x[i + 1])));
            count += off > USUAL * usual && around < CLOSE * off ? 1 : 0;
        }
        return count;
    }
}
