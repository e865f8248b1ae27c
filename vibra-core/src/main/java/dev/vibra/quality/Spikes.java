package dev.vibra.quality;

import dev.vibra.internal.Sorted;

/**
 * Single samples that stand off the middle of their neighbours by more than eight times what 95 % of the samples keep,
 * both neighbours lying close to each other in comparison, amid a quiet neighbourhood: 3 to 30 samples away none stands
 * off a quarter as far. An impact rings on, and one sample of its ringing may well stand off its neighbours; limits:
 * common practice, no source.
 */
final class Spikes {
    private static final double USUAL = 8;
    private static final double CLOSE = 0.25;
    private static final double QUIET = 0.25;
    private static final int NEAR = 3;
    private static final int FAR = 30;

    private Spikes() {}

    static int count(double[] x) {
        if (x.length < 16) {
            return 0;
        }
        double[] distance = new double[x.length - 4];
        for (int i = 2; i < x.length - 2; i++) {
            distance[i - 2] = Math.abs(x[i] - 0.5 * (x[i - 1] + x[i + 1]));
        }
        double usual = Sorted.percentile(distance, 95);
        if (usual == 0) {
            return 0;
        }
        int count = 0;
        double limit = USUAL * usual;
        for (int i = 2; i < x.length - 2; i++) {
            double off = distance[i - 2];
            count += off > limit && around(x, i) < CLOSE * off && isAlone(distance, i - 2) ? 1 : 0;
        }
        return count;
    }

    private static double around(double[] x, int i) {
        return Math.max(Math.abs(x[i + 1] - x[i - 1]), Math.max(Math.abs(x[i - 1] - x[i - 2]),
                Math.abs(x[i + 2] - x[i + 1])));
    }

    private static boolean isAlone(double[] distance, int at) {
        double limit = QUIET * distance[at];
        for (int away = NEAR; away <= FAR; away++) {
            if (at - away >= 0 && distance[at - away] >= limit
                    || at + away < distance.length && distance[at + away] >= limit) {
                return false;
            }
        }
        return true;
    }
}
