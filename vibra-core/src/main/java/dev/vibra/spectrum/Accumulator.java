package dev.vibra.spectrum;

import dev.vibra.internal.StateFormat;
import java.util.Arrays;

/** Takes in block after block and holds their average; allocates nothing once made. */
final class Accumulator {
    private final Averaging averaging;
    private final SpectrumPlan.Worker worker;
    /** Mean squares, or interleaved complex sums under vector averaging. */
    private final double[] held;
    private final double[] block;
    private long count;

    /** With a worker that others of the same thread use in between. */
    Accumulator(SpectrumPlan plan, Averaging averaging, SpectrumPlan.Worker worker) {
        this.averaging = averaging;
        this.worker = worker;
        boolean vector = averaging.kind() == Averaging.Kind.VECTOR;
        held = new double[vector ? 2 * plan.lines() : plan.lines()];
        block = new double[averaging.kind() == Averaging.Kind.RMS ? 0 : held.length];
    }

    void add(double[] samples, int offset) {
        count++;
        switch (averaging.kind()) {
            case RMS -> worker.addMeanSquares(samples, offset, held);
            case VECTOR -> addLines(samples, offset);
            case PEAK_HOLD -> {
                meanSquares(samples, offset);
                for (int k = 0; k < held.length; k++) {
                    held[k] = Math.max(held[k], block[k]);
                }
            }
            case EXPONENTIAL -> {
                meanSquares(samples, offset);
                double weight = count == 1 ? 1 : averaging.newestWeight();
                for (int k = 0; k < held.length; k++) {
                    held[k] += weight * (block[k] - held[k]);
                }
            }
        }
    }

    /** Two blocks that stand one after the other. */
    void addTwo(double[] samples) {
        int length = samples.length / 2;
        if (averaging.kind() == Averaging.Kind.RMS) {
            worker.addMeanSquares(samples, 0, length, 2, held);
            count += 2;
        } else {
            add(samples, 0);
            add(samples, length);
        }
    }

    private void meanSquares(double[] samples, int offset) {
        Arrays.fill(block, 0);
        worker.addMeanSquares(samples, offset, block);
    }

    private void addLines(double[] samples, int offset) {
        worker.complexLines(samples, offset, block);
        for (int i = 0; i < held.length; i++) {
            held[i] += block[i];
        }
    }

    long count() {
        return count;
    }

    /** Writes the averaged mean squares. */
    void meanSquares(double[] out) {
        for (int k = 0; k < out.length; k++) {
            out[k] = switch (averaging.kind()) {
                case RMS -> held[k] / count;
                case VECTOR -> (held[2 * k] * held[2 * k] + held[2 * k + 1] * held[2 * k + 1])
                        / ((double) count * count);
                case PEAK_HOLD, EXPONENTIAL -> held[k];
            };
        }
    }

    void reset() {
        Arrays.fill(held, 0);
        count = 0;
    }

    int stateLength() {
        return 1 + held.length;
    }

    int put(double[] out, int at) {
        out[at] = count;
        return StateFormat.put(held, out, at + 1);
    }

    int take(double[] in, int at) {
        if (averaging.kind() != Averaging.Kind.VECTOR) {
            StateFormat.notNegative(in, at + 1, held.length);
        }
        count = StateFormat.count(in, at, StateFormat.LARGEST_COUNT);
        return StateFormat.take(in, at + 1, held);
    }
}
