package dev.vibra.internal;

import dev.vibra.state.Arrival;
import dev.vibra.state.Continuity;

/**
 * Overlapping blocks of one size out of pieces of a stream that are told where they belong: no block lies across a gap,
 * and what came already is left out. Give it a piece, then ask for blocks until there is none.
 *
 * <p>Holds state: not thread-safe, one per stream; allocates nothing while pieces come.
 */
public final class OrderedBlocks {
    private final BlockCutter cutter;
    private final StreamOrder order = new StreamOrder();
    private double[] piece;
    private int place;
    private int end;

    /**
     * Makes one that has seen nothing.
     *
     * @param length number of samples of a block, at least 1
     * @param step number of samples from the start of one block to that of the next, 1 to the length
     * @throws IllegalArgumentException if length or step is out of range
     */
    public OrderedBlocks(int length, int step) {
        cutter = new BlockCutter(length, step);
    }

    /**
     * Takes a piece that follows the last one.
     *
     * @param samples samples; left alone
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if the range leaves the array or a sample is out of range; nothing is taken in
     */
    public void take(double[] samples, int offset, int length) {
        Require.samples(samples, offset, length);
        order.follow(length);
        begin(samples, offset, length);
    }

    /**
     * Takes a piece of which it is known where it belongs.
     *
     * @param first number of its first sample, from 0
     * @param samples samples; left alone
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @return how it came
     * @throws IllegalArgumentException if the range leaves the array, or the number or a sample is out of range;
     *     nothing is taken in
     */
    public Arrival take(long first, double[] samples, int offset, int length) {
        Require.samples(samples, offset, length);
        Arrival arrival = order.accept(first, length);
        if (arrival == Arrival.GAP) {
            cutter.reset();
        }
        begin(samples, offset + order.skipped(), length - order.skipped());
        return arrival;
    }

    private void begin(double[] samples, int offset, int length) {
        piece = samples;
        place = offset;
        end = offset + length;
    }

    /** {@return true if another block is full: {@link #block()}; false once the piece is used up, which is let go} */
    public boolean next() {
        while (place < end) {
            place += cutter.fill(piece, place, end - place);
            if (cutter.isFull()) {
                return true;
            }
        }
        piece = null;
        return false;
    }

    /** {@return the block, the same array each time; to be left alone} */
    public double[] block() {
        return cutter.block();
    }

    /** {@return what came of the order so far; allocates it} */
    public Continuity continuity() {
        return order.soFar();
    }

    /** Throws the block in progress away; the numbers of samples go on. */
    public void restart() {
        cutter.reset();
    }

    /** Forgets everything. */
    public void reset() {
        cutter.reset();
        order.reset();
    }

    /** {@return numbers of its state} */
    public int stateLength() {
        return StreamOrder.STATE + cutter.stateLength();
    }

    /**
     * Writes the state.
     *
     * @param out receives the numbers
     * @param at index of the first
     * @return index behind the last
     */
    public int put(double[] out, int at) {
        return cutter.put(out, order.put(out, at));
    }

    /**
     * Takes up a state.
     *
     * @param in holds the numbers, all finite
     * @param at index of the first
     * @return index behind the last
     * @throws IllegalArgumentException if they are no such state
     */
    public int resume(double[] in, int at) {
        return cutter.take(in, order.take(in, at));
    }
}
