package dev.vibra.quality;

import java.util.Arrays;

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
    private static final long GOLDEN = 0x9E3779B97F4A7C15L;
    private static final long FACTOR = 0x100000001B3L;

    private final double[] x;
    /** Sums of all samples before each place, those farther back with higher powers of a factor. */
    private final long[] sums;
    /** Places looked at, and the hash of the stretch from there on, in slots by hash; -1 where there is none. */
    private final int[] places;
    private final long[] hashes;

    private RepeatedBlocks(double[] x, long[] sums, int anchors) {
        this.x = x;
        this.sums = sums;
        hashes = new long[Math.max(2, Integer.highestOneBit(anchors) * 4)];
        places = new int[hashes.length];
        Arrays.fill(places, -1);
    }

    static int samples(double[] x) {
        long[] sums = new long[x.length + 1];
        int[] anchors = new int[x.length / 8 + 1];
        int count = 0;
        for (int i = 0; i < x.length; i++) {
            long mixed = mixed(x[i]);
            sums[i + 1] = sums[i] * FACTOR + mixed;
            if (mixed >>> 60 == 0 && i + STRETCH <= x.length) {
                anchors = count < anchors.length ? anchors : Arrays.copyOf(anchors, 2 * count);
                anchors[count++] = i;
            }
        }
        return count == 0 ? 0 : new RepeatedBlocks(x, sums, count).samples(anchors, count);
    }

    private int samples(int[] anchors, int count) {
        int repeated = 0;
        int events = 0;
        int distance = 0;
        int covered = 0;
        int coveredTo = 0;
        long gone = power(STRETCH);
        for (int anchor = 0; anchor < count; anchor++) {
            int i = anchors[anchor];
            int before = earlier(sums[i + STRETCH] - gone * sums[i], i);
            if (before >= 0 && same(before, i) && values(i) >= FEWEST_VALUES) {
                repeated++;
                events += i - before == distance ? 0 : 1;
                distance = i - before;
                covered += i + STRETCH - Math.max(i, coveredTo);
                coveredTo = i + STRETCH;
            }
        }
        return events <= MOST_EVENTS && repeated < PERIODIC * count ? covered : 0;
    }

    /** Samples of a converter have few bits set, the highest ones: they are brought down to where sums keep them. */
    private static long mixed(double value) {
        long mixed = Double.doubleToLongBits(value) * GOLDEN;
        return mixed ^ mixed >>> 29;
    }

    private static long power(int exponent) {
        long power = 1;
        for (int i = 0; i < exponent; i++) {
            power *= FACTOR;
        }
        return power;
    }

    /** Returns the first place of a hash, or notes this one as the first and returns -1. */
    private int earlier(long hash, int place) {
        int slot = (int) (hash * GOLDEN >>> 33) & places.length - 1;
        while (places[slot] >= 0 && hashes[slot] != hash) {
            slot = slot + 1 & places.length - 1;
        }
        if (places[slot] >= 0) {
            return places[slot];
        }
        places[slot] = place;
        hashes[slot] = hash;
        return -1;
    }

    /** Counts the different values: a few steps around the top of a slow sine may well come again. */
    private long values(int from) {
        return Arrays.stream(x, from, from + STRETCH).distinct().count();
    }

    private boolean same(int a, int b) {
        for (int i = 0; i < STRETCH; i++) {
            if (x[a + i] != x[b + i]) {
                return false;
            }
        }
        return true;
    }
}
