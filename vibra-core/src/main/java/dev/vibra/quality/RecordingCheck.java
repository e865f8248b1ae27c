package dev.vibra.quality;

import dev.vibra.internal.Digits;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Checks a recording before anything is concluded from it.
 *
 * <ul>
 * <li>{@code constant}: all samples are equal.
 * <li>{@code coarse-quantisation}: the whole swing is less than 32 steps of the converter, so that rounding adds more than
 * about 3 % of noise to the rms value.
 * <li>{@code clipping}: at the largest or smallest value, three or more samples in a row are equal and the signal arrives
 * there or leaves by more than one step of the converter. (The rounded top of a slow sine is flat too, but reached in single
 * steps.)
 * <li>{@code drop-out}: sixteen or more samples in a row are equal and the signal leaves them by more than one step,
 * elsewhere than at its extremes.
 * </ul>
 *
 * <p>The step of the converter is taken as the smallest difference of neighbours that is not zero.
 *
 * @see "J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section 10.4.1; the limits are common practice, no source"
 */
public final class RecordingCheck {
    private static final int CLIPPED_RUN = 3;
    private static final int HELD_RUN = 16;
    private static final double FEWEST_STEPS = 32;

    private RecordingCheck() {}

    /**
     * Checks a recording.
     *
     * @param wave recording
     * @return what was found
     */
    public static RecordingQuality of(Waveform wave) {
        double[] x = wave.samples();
        double step = smallestStep(x);
        if (step == 0) {
            return new RecordingQuality(List.of(new Remark("constant", "all samples are equal", 0, 0)));
        }
        Runs runs = new Runs(x, step);
        List<Remark> remarks = new ArrayList<>();
        double steps = (runs.highest - runs.lowest) / step;
        if (steps < FEWEST_STEPS) {
            remarks.add(new Remark("coarse-quantisation", "the whole swing is only " + Digits.significant(steps, 2)
                    + " steps of the converter", steps, FEWEST_STEPS));
        }
        if (runs.clipped > 0) {
            remarks.add(new Remark("clipping", String.format(Locale.ROOT, "%d samples lie flat on the largest or smallest"
                    + " value, first at %.4f s", runs.clipped, runs.firstClipped / wave.sampleRateHertz()),
                    runs.clipped, 0));
        }
        if (runs.held > 0) {
            remarks.add(new Remark("drop-out", String.format(Locale.ROOT, "%d samples in runs of %d or more equal ones,"
                    + " first at %.4f s", runs.held, HELD_RUN, runs.firstHeld / wave.sampleRateHertz()), runs.held, 0));
        }
        return new RecordingQuality(remarks);
    }

    private static double smallestStep(double[] x) {
        double smallest = Double.POSITIVE_INFINITY;
        for (int i = 1; i < x.length; i++) {
            double difference = Math.abs(x[i] - x[i - 1]);
            if (difference > 0 && difference < smallest) {
                smallest = difference;
            }
        }
        return smallest == Double.POSITIVE_INFINITY ? 0 : smallest;
    }

    /** Counts the samples in suspicious runs of equal values. */
    private static final class Runs {
        private double lowest = Double.POSITIVE_INFINITY;
        private double highest = Double.NEGATIVE_INFINITY;
        private int clipped;
        private int firstClipped;
        private int held;
        private int firstHeld;

        Runs(double[] x, double step) {
            for (double value : x) {
                lowest = Math.min(lowest, value);
                highest = Math.max(highest, value);
            }
            int start = 0;
            for (int i = 1; i <= x.length; i++) {
                if (i == x.length || x[i] != x[start]) {
                    count(x, start, i, step);
                    start = i;
                }
            }
        }

        private void count(double[] x, int start, int end, double step) {
            int length = end - start;
            double before = start == 0 ? 0 : Math.abs(x[start] - x[start - 1]);
            double after = end == x.length ? 0 : Math.abs(x[end] - x[end - 1]);
            if (length < CLIPPED_RUN || !(Math.max(before, after) > 1.5 * step)) {
                return;
            }
            if (x[start] == highest || x[start] == lowest) {
                firstClipped = clipped == 0 ? start : firstClipped;
                clipped += length;
            } else if (length >= HELD_RUN) {
                firstHeld = held == 0 ? start : firstHeld;
                held += length;
            }
        }
    }
}
