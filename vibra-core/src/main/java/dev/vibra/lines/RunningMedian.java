package dev.vibra.lines;

import java.util.Arrays;

/**
 * Running median about each value, over what the window holds of the array; robust against lines that stand out. The
 * window holds the bits of its values in rising order: those of numbers from zero on rise as the numbers do, and tell
 * without a branch, which no one could foretell, which of two is less.
 */
final class RunningMedian {
    private final long[] window;
    private int held;

    private RunningMedian(int room) {
        window = new long[room];
    }

    /**
     * Computes the running median.
     *
     * @param values values, all finite, zero or more
     * @param first first value to use; the medians before it are those of its window
     * @param reach values on either side
     */
    static double[] of(double[] values, int first, int reach) {
        RunningMedian running = new RunningMedian(2 * Math.min(reach, values.length) + 1);
        double[] out = new double[values.length];
        for (int next = first; next < Math.min(values.length, (long) first + reach); next++) {
            running.insert(values[next]);
        }
        for (int i = first; i < values.length; i++) {
            boolean leaves = i - reach - 1 >= first;
            boolean comes = (long) i + reach < values.length;
            if (leaves && comes) {
                running.replace(values[i - reach - 1], values[i + reach]);
            } else if (leaves) {
                running.remove(values[i - reach - 1]);
            } else if (comes) {
                running.insert(values[i + reach]);
            }
            out[i] = running.median();
        }
        Arrays.fill(out, 0, Math.min(first, values.length), first < values.length ? out[first] : 0);
        return out;
    }

    private double median() {
        double upper = Double.longBitsToDouble(window[held / 2]);
        return held % 2 == 1 ? upper : 0.5 * (Double.longBitsToDouble(window[held / 2 - 1]) + upper);
    }

    /** The sum makes a negative zero, whose bits come last, a zero. */
    private static long bits(double value) {
        return Double.doubleToRawLongBits(value + 0.0);
    }

    /** All bits where one is less than another, else none. */
    private static int less(long one, long other) {
        return (int) (one - other >> 63);
    }

    /** Number of values below another. */
    private int below(long value) {
        int from = 0;
        int rest = held;
        while (rest > 1) {
            int half = rest >>> 1;
            from += half & less(window[from + half - 1], value);
            rest -= half;
        }
        return rest == 0 ? 0 : from + (1 & less(window[from], value));
    }

    private void insert(double value) {
        long bits = bits(value);
        int at = below(bits);
        System.arraycopy(window, at, window, at + 1, held - at);
        window[at] = bits;
        held++;
    }

    private void remove(double value) {
        int at = below(bits(value));
        System.arraycopy(window, at + 1, window, at, held - at - 1);
        held--;
    }

    /** Looks for both places at once, and moves only what lies between them. */
    private void replace(double old, double value) {
        long leaving = bits(old);
        long coming = bits(value);
        int from = 0;
        int to = 0;
        int rest = held;
        while (rest > 1) {
            int half = rest >>> 1;
            from += half & less(window[from + half - 1], leaving);
            to += half & less(window[to + half - 1], coming);
            rest -= half;
        }
        from += 1 & less(window[from], leaving);
        to += 1 & less(window[to], coming);
        if (to > from) {
            to--;
            System.arraycopy(window, from + 1, window, from, to - from);
        } else {
            System.arraycopy(window, to, window, to + 1, from - to);
        }
        window[to] = coming;
    }
}
