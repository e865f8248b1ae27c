package dev.vibra.transform;

/** Even numbers with no prime factor but 2, 3 and 5. */
final class FastLengths {
    private static final int LARGEST_ODD = 729;

    private FastLengths() {}

    /** With an odd part of at most 729, which leaves out a sixteenth at most from 1000 on. */
    static long upTo(long longest) {
        long best = 2;
        for (long fives = 2; fives <= Math.min(longest, 2 * LARGEST_ODD); fives *= 5) {
            for (long step = fives; step <= Math.min(longest, 2 * LARGEST_ODD); step *= 3) {
                best = Math.max(best, step * Long.highestOneBit(longest / step));
            }
        }
        return best;
    }

    static long from(long shortest) {
        long best = Long.MAX_VALUE;
        for (long fives = 2; fives < best; fives *= 5) {
            for (long step = fives; step < best; step *= 3) {
                long least = (shortest + step - 1) / step;
                best = Math.min(best, step * (Long.highestOneBit(2 * least - 1)));
            }
        }
        return best;
    }
}
