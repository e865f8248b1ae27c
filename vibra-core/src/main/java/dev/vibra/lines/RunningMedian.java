package dev.vibra.lines;

import java.util.Arrays;

/** Running median about each value, over what the window holds of the array; robust against lines that stand out. */
final class RunningMedian {
    private RunningMedian() {}

    /**
     * Computes the running median.
     *
     * @param values values, all finite
     * @param first first value to use; the medians before it are those of its window
     * @param reach values on either side
     */
    static double[] of(double[] values, int first, int reach) {
        double[] window = new double[2 * Math.min(reach, values.length) + 1];
        double[] out = new double[values.length];
        int held = 0;
        for (int next = first; next < Math.min(values.length, (long) first + reach); next++) {
            held = insert(window, held, values[next]);
        }
        for (int i = first; i < values.length; i++) {
            if (i - reach - 1 >= first) {
                held = remove(window, held, values[i - reach - 1]);
            }
            if ((long) i + reach < values.length) {
                held = insert(window, held, values[i + reach]);
            }
            out[i] = held % 2 == 1 ? window[held / 2] : 0.5 * (window[held / 2 - 1] + window[held / 2]);
        }
        Arrays.fill(out, 0, Math.min(first, values.length), first < values.length ? out[first] : 0);
        return out;
    }

    private static int insert(double[] sorted, int held, double value) {
        int found = Arrays.binarySearch(sorted, 0, held, value);
        int at = found >= 0 ? found : -found - 1;
        System.arraycopy(sorted, at, sorted, at + 1, held - at);
        sorted[at] = value;
        return held + 1;
    }

    private static int remove(double[] sorted, int held, double value) {
        int at = Arrays.binarySearch(sorted, 0, held, value);
        System.arraycopy(sorted, at + 1, sorted, at, held - at - 1);
        return held - 1;
    }
}
