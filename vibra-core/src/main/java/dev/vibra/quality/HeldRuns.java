package dev.vibra.quality;

import java.util.BitSet;
import java.util.stream.IntStream;

/**
 * Runs of equal samples that a sound converter doesn't make: at least eight long, so long that chance makes one in a
 * million recordings (by the share of equal neighbours elsewhere), and entered or left by a jump of more than four
 * steps. The rounded top of a slow sine is a long run too, but is entered and left in single steps.
 */
final class HeldRuns {
    private static final int SHORTEST = 8;
    private static final double JUMP_STEPS = 4;
    private static final double CHANCE = 1e-6;
    /** A limiter holds as long as the signal is beyond it, again and again; a drop-out happens a few times. */
    private static final double CLIFF = 0.5;

    private final BitSet samples = new BitSet();

    HeldRuns(double[] x, double lowest, double highest, double step) {
        double equal = shareOfEqualNeighbours(x);
        int longest = SHORTEST;
        while (x.length * Math.pow(equal, longest - 1) > CHANCE && longest < x.length) {
            longest++;
        }
        Extremes extremes = new Extremes(lowest, highest);
        int start = 0;
        for (int i = 1; i <= x.length; i++) {
            if (i == x.length || x[i] != x[start]) {
                if (i - start >= longest && isDropOut(x, start, i, step, extremes)) {
                    samples.set(start, i);
                }
                start = i;
            }
        }
    }

    private static boolean isDropOut(double[] x, int start, int end, double step, Extremes extremes) {
        double before = start == 0 ? 0 : Math.abs(x[start] - x[start - 1]);
        double after = end == x.length ? 0 : Math.abs(x[end] - x[end - 1]);
        if (!(Math.max(before, after) > JUMP_STEPS * step)) {
            return false;
        }
        // At an extreme a run may be clipping: a signal glides into its rail, but falls off a cliff into a drop-out.
        return !extremes.contain(x[start]) || Math.min(before, after) > CLIFF * (extremes.highest() - extremes.lowest());
    }

    /** Share among neighbours that are equal, pairs within runs of eight and more left out. */
    private static double shareOfEqualNeighbours(double[] x) {
        int pairs = 1;
        int equal = 0;
        int run = 0;
        for (int i = 1; i < x.length; i++) {
            run = x[i] == x[i - 1] ? run + 1 : 0;
            if (run < SHORTEST) {
                pairs++;
                equal += run > 0 ? 1 : 0;
            }
        }
        return (double) equal / pairs;
    }

    int samples() {
        return samples.cardinality();
    }

    int first() {
        return samples.nextSetBit(0);
    }

    /** The samples that are in no run. */
    double[] others(double[] x) {
        return IntStream.range(0, x.length).filter(i -> !samples.get(i)).mapToDouble(i -> x[i]).toArray();
    }

    /** Largest and smallest value. */
    private record Extremes(double lowest, double highest) {
        boolean contain(double value) {
            return value == lowest || value == highest;
        }
    }
}
