package dev.vibra.internal;

import java.util.Arrays;

/**
 * Many values in rising order, and single places of that order. Values are dealt out twice by the place that they take
 * between lowest and highest, to a part in four million; that leaves little to be put right, in a tenth of the time
 * that a plain sort takes.
 */
public final class Sorted {
    private static final int FEW = 256;
    private static final int BITS = 11;
    private static final int SLOTS = 1 << BITS;
    private static final int MOST_MOVES = 4;

    private Sorted() {}

    /**
     * Sorts.
     *
     * @param values values, all finite; left alone
     * @return a new array in rising order
     */
    public static double[] copy(double[] values) {
        double low = lowest(values, 0);
        double scale = (SLOTS * SLOTS - 1) / (highest(values) - low);
        if (values.length < FEW || !(scale > 0 && scale < Double.POSITIVE_INFINITY)) {
            double[] sorted = values.clone();
            Arrays.sort(sorted);
            return sorted;
        }
        int[] fine = new int[SLOTS];
        int[] coarse = new int[SLOTS];
        for (double value : values) {
            int place = (int) ((value - low) * scale);
            fine[place & SLOTS - 1]++;
            coarse[place >>> BITS]++;
        }
        starts(fine);
        starts(coarse);
        double[] dealt = new double[values.length];
        for (double value : values) {
            dealt[fine[(int) ((value - low) * scale) & SLOTS - 1]++] = value;
        }
        double[] sorted = new double[values.length];
        for (double value : dealt) {
            sorted[coarse[(int) ((value - low) * scale) >>> BITS]++] = value;
        }
        return putRight(sorted);
    }

    private static void starts(int[] counts) {
        int start = 0;
        for (int slot = 0; slot < counts.length; slot++) {
            int count = counts[slot];
            counts[slot] = start;
            start += count;
        }
    }

    /** Values of one place are few, but where nearly all lie close together beside a far one. */
    private static double[] putRight(double[] sorted) {
        long moves = (long) MOST_MOVES * sorted.length;
        for (int i = 1; i < sorted.length && moves >= 0; i++) {
            double value = sorted[i];
            int at = i;
            while (at > 0 && sorted[at - 1] > value) {
                sorted[at] = sorted[at - 1];
                at--;
            }
            sorted[at] = value;
            moves -= i - at;
        }
        if (moves < 0) {
            Arrays.sort(sorted);
        }
        return sorted;
    }

    /**
     * Returns a percentile without sorting what lies far from it.
     *
     * @param values values, all finite, at least one; left alone
     * @param percent share of the values below, 0 to 100
     * @return the value, as {@link dev.vibra.level.Percentiles} has it
     */
    public static double percentile(double[] values, double percent) {
        double place = percent / 100 * (values.length - 1);
        int below = (int) Math.floor(place);
        double[] near = values;
        int skipped = 0;
        for (Slots slots = Slots.of(near); slots != null; slots = Slots.of(near)) {
            int first = slots.holding(below - skipped);
            int before = slots.before(first);
            int last = slots.holding(Math.min(below + 1, values.length - 1) - skipped);
            int count = slots.before(last + 1) - before;
            if (count == near.length) {
                break;
            }
            near = slots.between(near, count, first, last);
            skipped += before;
        }
        double[] parted = near.clone();
        double here = select(parted, below - skipped);
        double next = below + 1 < values.length ? lowest(parted, below + 1 - skipped) : here;
        return here + (place - below) * (next - here);
    }

    /** Parts values so that none before a place is above the value there and none behind it is below it. */
    private static double select(double[] values, int place) {
        int low = 0;
        int high = values.length - 1;
        while (low < high) {
            double pivot = values[(low + high) >>> 1];
            int i = low;
            int j = high;
            while (i <= j) {
                while (values[i] < pivot) {
                    i++;
                }
                while (values[j] > pivot) {
                    j--;
                }
                if (i <= j) {
                    double swapped = values[i];
                    values[i++] = values[j];
                    values[j--] = swapped;
                }
            }
            if (place > j && place < i) {
                return values[place];
            }
            low = place > j ? i : low;
            high = place > j ? high : j;
        }
        return values[place];
    }

    /** Values counted in slots of equal width. */
    private record Slots(double low, double scale, int[] counts) {
        /** Null where values are few or all equal. */
        static Slots of(double[] values) {
            double low = lowest(values, 0);
            double scale = (SLOTS - 1) / (highest(values) - low);
            if (values.length < FEW || !(scale > 0 && scale < Double.POSITIVE_INFINITY)) {
                return null;
            }
            int[] counts = new int[SLOTS];
            for (double value : values) {
                counts[(int) ((value - low) * scale)]++;
            }
            return new Slots(low, scale, counts);
        }

        int holding(int place) {
            int slot = 0;
            for (int end = counts[0]; end <= place; end += counts[slot]) {
                slot++;
            }
            return slot;
        }

        int before(int slot) {
            int sum = 0;
            for (int i = 0; i < slot; i++) {
                sum += counts[i];
            }
            return sum;
        }

        double[] between(double[] values, int count, int first, int last) {
            double[] chosen = new double[count];
            int at = 0;
            for (double value : values) {
                int slot = (int) ((value - low) * scale);
                if (slot >= first && slot <= last) {
                    chosen[at++] = value;
                }
            }
            return chosen;
        }
    }

    private static double lowest(double[] values, int from) {
        double low = Double.POSITIVE_INFINITY;
        for (int i = from; i < values.length; i++) {
            low = values[i] < low ? values[i] : low;
        }
        return low;
    }

    private static double highest(double[] values) {
        double high = Double.NEGATIVE_INFINITY;
        for (double value : values) {
            high = value > high ? value : high;
        }
        return high;
    }
}
