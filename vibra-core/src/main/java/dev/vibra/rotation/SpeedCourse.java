package dev.vibra.rotation;

import dev.vibra.internal.Sorted;
import dev.vibra.transform.RealTransform;
import dev.vibra.window.Window;
import java.util.Arrays;

/**
 * Course of a speed through a recording: in overlapping blocks each speed of a grid is weighed by the lines at its
 * multiples over the noise around, and the best course of all that change little from block to block is found by
 * dynamic programming.
 */
final class SpeedCourse {
    /** Distance of the speeds over the given one. */
    private static final double STEP = 0.001;
    private static final double HOP_REVOLUTIONS = 2;
    /** How much the speed is expected to change from block to block, standard deviation over the speed. */
    private static final double CHANGE = 0.002;
    private static final int MOST_STEPS = 10;
    /** A line 30 dB over the noise tells no more than one at 30 dB. */
    private static final double LARGEST_SCORE = Math.log(1000);
    private static final double MEDIAN_OF_POWER = Math.log(2);
    private static final int FINER = 8;

    private final LowRate low;
    private final double hertz;
    private final int[] multiples;
    private final int states;
    private final int block;
    private final int blocks;
    private final double hop;
    private final int[] best;

    private SpeedCourse(LowRate low, double hertz, int[] multiples) {
        this.low = low;
        this.hertz = hertz;
        this.multiples = multiples;
        states = 2 * (int) Math.round(0.01 * TrackedAngle.REACH_PERCENT / STEP) + 1;
        block = (int) Math.round(TrackedAngle.BLOCK * low.rateHertz / hertz);
        hop = HOP_REVOLUTIONS * low.rateHertz / hertz;
        blocks = 1 + (int) ((low.samples.length - block) / hop);
        best = path(scores());
    }

    static SpeedCourse of(LowRate low, double hertz, int[] multiples) {
        return new SpeedCourse(low, hertz, multiples);
    }

    private double hertz(double state) {
        return hertz * (1 + STEP * (state - states / 2));
    }

    private double[][] scores() {
        int length = Integer.highestOneBit(FINER * block - 1) << 1;
        RealTransform transform = RealTransform.of(length);
        double[] weights = Window.hann().samples(block);
        double[] padded = new double[length];
        double[] spectrum = new double[2 * transform.lines()];
        double[] power = new double[transform.lines()];
        double[][] scores = new double[blocks][states];
        for (int b = 0; b < blocks; b++) {
            int from = (int) Math.round(b * hop);
            for (int i = 0; i < block; i++) {
                padded[i] = weights[i] * low.samples[Math.min(from + i, low.samples.length - 1)];
            }
            transform.forward(padded, 0, spectrum);
            for (int k = 0; k < power.length; k++) {
                power[k] = spectrum[2 * k] * spectrum[2 * k] + spectrum[2 * k + 1] * spectrum[2 * k + 1];
            }
            score(power, length / low.rateHertz, scores[b]);
        }
        return scores;
    }

    private void score(double[] power, double linesPerHertz, double[] scores) {
        for (int multiple : multiples) {
            double noise = noise(power, linesPerHertz, multiple);
            int before = -1;
            double score = 0;
            for (int s = 0; s < states && noise > 0; s++) {
                int line = (int) Math.rint(multiple * hertz(s) * linesPerHertz);
                if (line != before) {
                    double over = line < power.length ? power[line] / noise : 0;
                    score = Math.min(LARGEST_SCORE, Math.log(1 + over));
                    before = line;
                }
                scores[s] += score;
            }
        }
    }

    /** The median of an order's width at the multiple; lines take less than half of it. */
    private double noise(double[] power, double linesPerHertz, int multiple) {
        int from = Math.max(0, (int) Math.rint((multiple - 0.6) * hertz * linesPerHertz));
        int to = Math.min(power.length, (int) Math.rint((multiple + 0.6) * hertz * linesPerHertz) + 1);
        return Sorted.percentile(Arrays.copyOfRange(power, from, to), 50) / MEDIAN_OF_POWER;
    }

    private int[] path(double[][] scores) {
        int[][] from = new int[blocks][states];
        double[] total = scores[0].clone();
        double[] change = new double[MOST_STEPS + 1];
        for (int steps = 0; steps <= MOST_STEPS; steps++) {
            change[steps] = 0.5 * (steps * STEP / CHANGE) * (steps * STEP / CHANGE);
        }
        for (int b = 1; b < blocks; b++) {
            double[] next = new double[states];
            for (int s = 0; s < states; s++) {
                int chosen = s;
                double most = total[s];
                for (int p = Math.max(0, s - MOST_STEPS); p <= Math.min(states - 1, s + MOST_STEPS); p++) {
                    double value = total[p] - change[Math.abs(p - s)];
                    chosen = value > most ? p : chosen;
                    most = value > most ? value : most;
                }
                from[b][s] = chosen;
                next[s] = most + scores[b][s];
            }
            total = next;
        }
        int[] path = new int[blocks];
        for (int s = 0; s < states; s++) {
            path[blocks - 1] = total[s] > total[path[blocks - 1]] ? s : path[blocks - 1];
        }
        for (int b = blocks - 1; b > 0; b--) {
            path[b - 1] = from[b][path[b]];
        }
        return path;
    }

    /** A course along the edge of the grid is no course. */
    boolean touchesEdge() {
        for (int state : best) {
            if (state == 0 || state == states - 1) {
                return true;
            }
        }
        return false;
    }

    /** The angle from the middle of the first block to that of the last, the steps of the grid smoothed. */
    ShaftAngle angle() {
        double[] seconds = new double[blocks];
        double[] revolutions = new double[blocks];
        double before = 0;
        for (int b = 0; b < blocks; b++) {
            seconds[b] = low.startSeconds + (Math.round(b * hop) + 0.5 * block) / low.rateHertz;
            double speed = smoothed(b);
            revolutions[b] = b == 0 ? 0
                    : revolutions[b - 1] + 0.5 * (before + speed) * (seconds[b] - seconds[b - 1]);
            before = speed;
        }
        return ShaftAngle.through(revolutions, seconds);
    }

    private double smoothed(int block) {
        int reach = Math.min(2, Math.min(block, blocks - 1 - block));
        double sum = 0;
        for (int b = block - reach; b <= block + reach; b++) {
            sum += best[b];
        }
        return hertz(sum / (2 * reach + 1));
    }
}
