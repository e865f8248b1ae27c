package dev.vibra.internal;

import java.util.function.Consumer;

/**
 * Cuts a stream of pieces of any size into overlapping blocks of one size and passes each on as soon as it is full.
 *
 * <p>Holds state: not thread-safe, one per stream; allocates nothing while pushing.
 */
public final class BlockCutter {
    private final double[] block;
    private final int step;
    private final Consumer<double[]> receiver;
    private int filled;

    /**
     * Makes a cutter that has seen nothing.
     *
     * @param length number of samples of a block, at least 1
     * @param step number of samples from the start of one block to that of the next, 1 to the length
     * @param receiver is given each full block, the same array each time; it must leave the array alone
     * @throws IllegalArgumentException if length or step is out of range
     */
    public BlockCutter(int length, int step, Consumer<double[]> receiver) {
        block = new double[Require.atLeast("block length", length, 1)];
        this.step = (int) Require.within("step", step, 1, length, "");
        this.receiver = receiver;
    }

    /**
     * Takes in a piece of the stream.
     *
     * @param samples samples, all finite; left alone
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if the range leaves the array or a sample is not finite; samples before it count
     */
    public void push(double[] samples, int offset, int length) {
        Require.range("samples", offset, length, samples.length);
        for (int i = offset; i < offset + length; i++) {
            if (!(Math.abs(samples[i]) < Double.POSITIVE_INFINITY)) {
                throw Require.failure("samples[" + i + "]", "finite", samples[i]);
            }
            if (filled == block.length) {
                System.arraycopy(block, step, block, 0, block.length - step);
                filled -= step;
            }
            block[filled++] = samples[i];
            if (filled == block.length) {
                receiver.accept(block);
            }
        }
    }

    /** Forgets what was taken in. */
    public void reset() {
        filled = 0;
    }
}
