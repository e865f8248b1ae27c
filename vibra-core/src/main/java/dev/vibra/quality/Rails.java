package dev.vibra.quality;

import java.util.Arrays;

/**
 * Clipping: samples crowd at an extreme. They are counted in slices of about 0.5 % of the swing from the extreme
 * inwards (at least one step of the converter), and in narrow ones of a sixteenth of that.
 *
 * <p>A recording has clipped at an extreme
 * <ul>
 * <li>if the outermost narrow slice holds more than 1.25 times the rest of the wide one (a sine, the extreme case of a
 * sound signal, has a third, up to once where the step of the converter is all that is left of a narrow slice), and
 * more than four times what narrow slices usually hold (median of those that hold any);
 * <li>or, as noise behind the rail smears it, if the outermost wide slice holds more than four times what the next one
 * holds (a sine has 2.4 times as many there, noise fewer), more than six times what wide slices usually hold and more
 * than twice what any other holds. Where the converter's step leaves no narrow slices, four times the next slice is
 * enough.
 * </ul>
 *
 * <p>The comparison with slices farther in is for tones whose period is a whole number of samples: they crowd at a few
 * values, their extreme among them. A signal that leaves most slices empty has clipped only if its top holds more than
 * twice what any slice between holds.
 */
final class Rails {
    static final double LIMIT = 4;
    private static final double SLICE = 0.005;
    private static final int NARROWER = 16;
    private static final int FEWEST_SLICES = 8;
    private static final int FEWEST = 10;
    private static final double PILE = 1.25;
    /** Up to five values of a tone of whole samples a period fall into its outermost slice while the next holds one. */
    private static final double SMEARED = 6;
    private static final double FEW_VALUES = 0.25;
    /** With fewer narrow slices to a wide one more than half of a sine's samples lie in the outermost. */
    private static final double APART = 4;

    private int samples;
    private double ratio;

    /** Takes the samples that aren't held, in rising order. */
    Rails(double[] sorted, double step) {
        if (sorted.length > 0) {
            judge(new Depths(sorted, step, true));
            judge(new Depths(sorted, step, false));
        }
    }

    private void judge(Depths depths) {
        double width = Math.max(1, Math.rint(SLICE * depths.swing()));
        int[] wide = depths.slices(width);
        if (wide.length < FEWEST_SLICES || wide[0] < FEWEST || fewValues(wide) && wide[0] <= 2 * densest(wide)) {
            return;
        }
        double over = (double) wide[0] / Math.max(1, wide[1]);
        double narrowWidth = Math.max(1, Math.rint(width / NARROWER));
        if (width < APART * narrowWidth) {
            if (over > LIMIT) {
                found(wide[0], over);
            }
            return;
        }
        int[] narrow = depths.slices(narrowWidth);
        int rest = wide[0] - narrow[0];
        if (narrow[0] >= FEWEST && narrow[0] > PILE * rest && narrow[0] > LIMIT * usual(narrow)) {
            found(narrow[0], narrow[0] / Math.max(1, rest * narrowWidth / (width - narrowWidth)));
        } else if (over > LIMIT && wide[0] > Math.max(SMEARED * usual(wide), 2 * densest(wide))) {
            found(wide[0], over);
        }
    }

    private void found(int count, double over) {
        samples += count;
        ratio = Math.max(ratio, over);
    }

    /** How far samples lie below their highest value or above their lowest, in steps of the converter. */
    private record Depths(double[] sorted, double step, boolean fromHighest) {
        double swing() {
            return (sorted[sorted.length - 1] - sorted[0]) / step;
        }

        /** Counts in slices of whole steps, their borders half-way between two values of the converter. */
        int[] slices(double width) {
            int[] count = new int[(int) ((swing() + 0.5) / width) + 1];
            for (int from = 0; from < sorted.length; ) {
                int slice = slice(from, width);
                int end = end(from, slice, width);
                count[slice] = end - from;
                from = end;
            }
            return count;
        }

        private int slice(int i, double width) {
            double depth = fromHighest ? sorted[sorted.length - 1] - sorted[sorted.length - 1 - i]
                    : sorted[i] - sorted[0];
            return (int) ((depth / step + 0.5) / width);
        }

        /** First place behind those of a slice: in doubled strides past it, then by halves. */
        private int end(int from, int slice, double width) {
            int inside = from;
            int beyond = from + 1;
            for (int stride = 2; beyond < sorted.length && slice(beyond, width) == slice; stride *= 2) {
                inside = beyond;
                beyond = (int) Math.min(sorted.length, (long) beyond + stride);
            }
            while (beyond - inside > 1) {
                int middle = (inside + beyond) >>> 1;
                boolean still = slice(middle, width) == slice;
                inside = still ? middle : inside;
                beyond = still ? beyond : middle;
            }
            return beyond;
        }
    }

    private static boolean fewValues(int[] count) {
        return Arrays.stream(count, 2, count.length - 2).filter(c -> c > 0).count() < FEW_VALUES * count.length;
    }

    private static int densest(int[] count) {
        return Arrays.stream(count, 2, count.length - 2).max().orElse(0);
    }

    private static double usual(int[] count) {
        int[] occupied = Arrays.stream(count, 1, count.length - 1).filter(c -> c > 0).sorted().toArray();
        return occupied.length == 0 ? 0 : occupied[occupied.length / 2];
    }

    int samples() {
        return samples;
    }

    double ratio() {
        return ratio;
    }
}
