package dev.vibra.meter;

import dev.vibra.internal.Require;

/** Cuts a stream of blocks of any size into overlapping blocks of one size. */
final class BlockCutter {
    private final double[] block;
    private final int step;
    private int filled;

    BlockCutter(int length, int step) {
        this.block = new double[length];
        this.step = step;
    }

    /** Takes in what fits; returns how many samples were taken. A full block must be passed on before more fits. */
    int fill(double[] samples, int offset, int length) {
        int count = Math.min(length, block.length - filled);
        for (int i = offset; i < offset + count; i++) {
            if (!(Math.abs(samples[i]) < Double.POSITIVE_INFINITY)) {
                throw Require.failure("samples[" + i + "]", "finite", samples[i]);
            }
        }
        System.arraycopy(samples, offset, block, filled, count);
        filled += count;
        return count;
    }

    boolean isFull() {
        return filled == block.length;
    }

    double[] block() {
        return block;
    }

    void advance() {
        System.arraycopy(block, step, block, 0, block.length - step);
        filled -= step;
    }

    void reset() {
        filled = 0;
    }
}
