package dev.vibra.docs.survey.chart;

/**
 * The points that are enough to draw a long line: smallest and largest value of each of a number of equal groups, in
 * the order in which they occur, so that no peak is lost.
 */
final class Decimation {
    /** Pixels to a group: the strokes of a trace are as wide, so that closer points would only blacken it. */
    private static final double GROUP = 1.5;

    private final double[] x;
    private final double[] y;

    private Decimation(double[] x, double[] y) {
        this.x = x;
        this.y = y;
    }

    /**
     * Thins values at equal distances.
     *
     * @param values values to draw, two or more; not kept
     * @param from index of the first value to draw
     * @param to index behind the last value to draw
     * @param step distance of two values on the x axis
     * @param groups largest number of groups, two points each
     */
    static Decimation of(double[] values, int from, int to, double step, int groups) {
        int length = to - from;
        if (length <= 2 * groups) {
            return whole(values, from, to, step);
        }
        double[] x = new double[2 * groups];
        double[] y = new double[2 * groups];
        for (int group = 0; group < groups; group++) {
            int begin = from + (int) ((long) group * length / groups);
            int end = from + (int) ((group + 1L) * length / groups);
            int low = begin;
            int high = begin;
            for (int i = begin + 1; i < end; i++) {
                low = values[i] < values[low] ? i : low;
                high = values[i] > values[high] ? i : high;
            }
            set(x, y, 2 * group, Math.min(low, high), values, step);
            set(x, y, 2 * group + 1, Math.max(low, high), values, step);
        }
        return new Decimation(x, y);
    }

    /** Thins values to what a plot of some pixels can show. */
    static Decimation ofPixels(double[] values, int from, int to, double step, double pixels) {
        return of(values, from, to, step, (int) Math.ceil(pixels / GROUP));
    }

    private static Decimation whole(double[] values, int from, int to, double step) {
        double[] x = new double[to - from];
        double[] y = new double[to - from];
        for (int i = from; i < to; i++) {
            set(x, y, i - from, i, values, step);
        }
        return new Decimation(x, y);
    }

    private static void set(double[] x, double[] y, int at, int index, double[] values, double step) {
        x[at] = index * step;
        y[at] = values[index];
    }

    /** Returns the largest value; 0 if none is above it. */
    double highest() {
        double highest = 0;
        for (double level : y) {
            highest = Math.max(highest, level);
        }
        return highest;
    }

    double[] x() {
        return x;
    }

    double[] y() {
        return y;
    }
}
