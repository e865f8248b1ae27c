package dev.vibra.quality;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Stretches of 64 samples and more that stand in the recording twice, as a buffer that was delivered again leaves them.
 * Only places whose value happens to hash to a multiple of 16 are compared, which finds longer stretches at a sixteenth
 * of the cost. A signal that repeats in many places (a computed tone) is periodic, not broken.
 */
final class RepeatedBlocks {
    private static final int STRETCH = 64;
    private static final int FEWEST_VALUES = 16;
    private static final int MOST_EVENTS = 5;
    private static final double PERIODIC = 0.3;

    private RepeatedBlocks() {}

    static int samples(double[] x) {
        Map<Long, Integer> seen = new HashMap<>();
        int anchors = 0;
        int repeated = 0;
        int events = 0;
        int distance = 0;
        int covered = 0;
        int coveredTo = 0;
        for (int i = 0; i + STRETCH <= x.length; i++) {
            long bits = Double.doubleToLongBits(x[i]) * 0x9E3779B97F4A7C15L;
            if (bits >>> 60 != 0 ) {
                continue;
            }
            anchors++;
            Integer before = seen.putIfAbsent(hash(x, i), i);
            if (before != null && same(x, before, i) && values(x, i) >= FEWEST_VALUES) {
                repeated++;
                events += i - before == distance ? 0 : 1;
                distance = i - before;
                covered += i + STRETCH - Math.max(i, coveredTo);
                coveredTo = i + STRETCH;
            }
        }
        return events <= MOST_EVENTS && repeated < PERIODIC * anchors ? covered : 0;
    }

    /** Counts the different values: a few steps around the top of a slow sine may well come again. */
    private static long values(double[] x, int from) {
        return Arrays.stream(x, from, from + STRETCH).distinct().count();
    }

    private static long hash(double[] x, int from) {
        long hash = 17;
        for (int i = from; i < from + STRETCH; i++) {
            hash = hash * 0x100000001B3L ^ Double.doubleToLongBits(x[i]);
        }
        return hash;
    }

    private static boolean same(double[] x, int a, int b) {
        for (int i = 0; i < STRETCH; i++) {
            if (x[a + i] != x[b + i]) {
                return false;
            }
        }
        return true;
    }
}
