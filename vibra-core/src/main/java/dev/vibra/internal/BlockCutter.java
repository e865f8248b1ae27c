package dev.vibra.internal;

import java.util.Arrays;

/**
 * Cuts a stream of pieces of any size into overlapping blocks of one size: fill, and use the block whenever it is full.
 *
 * <p>Holds state: not thread-safe, one per stream; allocates nothing while filling.
 */
public final class BlockCutter {
    private final double[] block;
    private final int step;
    private int filled;

    /**
     * Makes a cutter that has seen nothing.
     *
     * @param length number of samples of a block, at least 1
     * @param step number of samples from the start of one block to that of the next, 1 to the length
     * @throws IllegalArgumentException if length or step is out of range
     */
    public BlockCutter(int length, int step) {
        block = new double[Require.atLeast("block length", length, 1)];
        this.step = (int) Require.within("step", step, 1, length, "");
    }

    /**
     * Takes in samples up to the end of the block; after a full block the next one begins.
     *
     * @param samples samples, checked by the caller; left alone
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @return number of samples taken in, at least one unless the length is zero
     */
    public int fill(double[] samples, int offset, int length) {
        if (isFull() && length > 0) {
            System.arraycopy(block, step, block, 0, block.length - step);
            filled -= step;
        }
        int taken = Math.min(length, block.length - filled);
        System.arraycopy(samples, offset, block, filled, taken);
        filled += taken;
        return taken;
    }

    /** {@return true if the block has just become full} */
    public boolean isFull() {
        return filled == block.length;
    }

    /** {@return the block, the same array each time; to be left alone} */
    public double[] block() {
        return block;
    }

    /** Forgets what was taken in. */
    public void reset() {
        filled = 0;
    }

    /** {@return numbers of its state} */
    public int stateLength() {
        return 1 + block.length;
    }

    /**
     * Writes the state; what lies behind the samples taken in is written as zeros.
     *
     * @param out receives the numbers
     * @param at index of the first
     * @return index behind the last
     */
    public int put(double[] out, int at) {
        out[at] = filled;
        System.arraycopy(block, 0, out, at + 1, filled);
        Arrays.fill(out, at + 1 + filled, at + stateLength(), 0);
        return at + stateLength();
    }

    /**
     * Takes up a state.
     *
     * @param in holds the numbers, all finite
     * @param at index of the first
     * @return index behind the last
     * @throws IllegalArgumentException if they are no such state
     */
    public int take(double[] in, int at) {
        filled = (int) StateFormat.count(in, at, block.length);
        return StateFormat.take(in, at + 1, block);
    }
}
