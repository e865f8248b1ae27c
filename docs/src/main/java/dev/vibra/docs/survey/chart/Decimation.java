package dev.vibra.docs.survey.chart;

/**
 * The points that are enough to draw a long line: smallest and largest value of each of a number of equal groups, in
 * the order in which they occur, so that no peak is lost.
 */
final class Decimation {
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

    /**
     * Takes every value, and one more point on the straight line between the first two: the charting library would use
     * equally spaced values as ticks as they are, however odd.
     */
    private static Decimation whole(double[] values, int from, int to, double step) {
        double[] x = new double[to - from + 1];
        double[] y = new double[to - from + 1];
        set(x, y, 0, from, values, step);
        x[1] = (from + 1.0 / 3) * step;
        y[1] = values[from] + (values[from + 1] - values[from]) / 3;
        for (int i = from + 1; i < to; i++) {
            set(x, y, i - from + 1, i, values, step);
        }
        return new Decimation(x, y);
    }

    private static void set(double[] x, double[] y, int at, int index, double[] values, double step) {
        x[at] = index * step;
        y[at] = values[index];
    }

    double[] x() {
        return x;
    }

    double[] y() {
        return y;
    }
}
