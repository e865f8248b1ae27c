package dev.vibra.quality;

/**
 * Clipping: the samples that lie within 0.5 % of the swing from an extreme (or one step of the converter, if that is more)
 * against those in the next slice of the same width.
 *
 * <p>A sine, the extreme case of a sound signal, has 2.4 times as many at its top; noise has fewer. A signal that leaves most
 * slices empty (a tone of a few samples a period) has clipped only if its top holds twice as many as any slice between.
 */
final class Rails {
    static final double LIMIT = 4;
    private static final double SLICE = 0.005;
    private static final int FEWEST = 10;
    private static final double FEW_VALUES = 0.25;

    private int samples;
    private double ratio;

    Rails(double[] x, double step, HeldRuns held) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < x.length; i++) {
            if (!held.contain(i)) {
                low = Math.min(low, x[i]);
                high = Math.max(high, x[i]);
            }
        }
        double width = Math.max(SLICE * (high - low), 1.01 * step);
        int slices = (int) Math.max(1, Math.ceil((high - low) / width));
        int[] count = new int[slices];
        for (int i = 0; i < x.length; i++) {
            if (!held.contain(i)) {
                count[Math.min(slices - 1, (int) ((high - x[i]) / width))]++;
            }
        }
        int[] fromBelow = new int[slices];
        for (int i = 0; i < x.length; i++) {
            if (!held.contain(i)) {
                fromBelow[Math.min(slices - 1, (int) ((x[i] - low) / width))]++;
            }
        }
        judge(count);
        judge(fromBelow);
    }

    private void judge(int[] count) {
        if (count.length < 8 || count[0] < FEWEST) {
            return;
        }
        int densest = 0;
        int occupied = 0;
        for (int s = 2; s < count.length - 2; s++) {
            densest = Math.max(densest, count[s]);
            occupied += count[s] > 0 ? 1 : 0;
        }
        boolean fewValues = occupied < FEW_VALUES * count.length;
        double over = (double) count[0] / Math.max(1, count[1]);
        if (over > LIMIT && (!fewValues || count[0] > 2 * densest)) {
            samples += count[0];
            ratio = Math.max(ratio, over);
        }
    }

    int samples() {
        return samples;
    }

    double ratio() {
        return ratio;
    }
}
