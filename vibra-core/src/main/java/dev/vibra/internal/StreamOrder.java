package dev.vibra.internal;

import dev.vibra.state.Arrival;
import dev.vibra.state.Continuity;

/**
 * Keeps watch over the order of a stream's blocks. Holds state: one per stream; allocates nothing while watching.
 */
public final class StreamOrder {
    /** Numbers of its state. */
    public static final int STATE = 6;

    private boolean begun;
    private long next;
    private long gaps;
    private long missing;
    private long repeats;
    private long repeated;
    /** Samples at the beginning of the last block that had come already. */
    private int skipped;

    /** Makes a watch that has seen nothing. */
    public StreamOrder() {}

    /**
     * Takes note of a block that follows the last one.
     *
     * @param length its samples, zero or more
     */
    public void follow(int length) {
        begun = true;
        next += length;
    }

    /**
     * Takes note of a block.
     *
     * @param first number of its first sample, from 0
     * @param length its samples, zero or more
     * @return how it came; what to leave out is {@link #skipped()}
     * @throws IllegalArgumentException if the number is negative or above 2⁵²
     */
    public Arrival accept(long first, int length) {
        Require.within("firstSample", first, 0, 1L << 52, "");
        if (!begun) {
            next = first;
        }
        begun = true;
        long ahead = first - next;
        skipped = (int) Math.max(0, Math.min(length, -ahead));
        next = Math.max(next, first + length);
        if (ahead > 0) {
            gaps++;
            missing += ahead;
            return Arrival.GAP;
        }
        if (ahead < 0) {
            repeats++;
            repeated += skipped;
            return skipped == length ? Arrival.LATE : Arrival.OVERLAP;
        }
        return Arrival.IN_ORDER;
    }

    /** {@return samples at the beginning of the block accepted last that had come already} */
    public int skipped() {
        return skipped;
    }

    /** {@return number of the sample that should come next} */
    public long next() {
        return next;
    }

    /** {@return what came of the order so far; allocates it} */
    public Continuity soFar() {
        return new Continuity(next, gaps, missing, repeats, repeated);
    }

    /** Forgets everything. */
    public void reset() {
        begun = false;
        next = 0;
        gaps = 0;
        missing = 0;
        repeats = 0;
        repeated = 0;
    }

    /**
     * Writes the state.
     *
     * @param out receives {@link #STATE} numbers
     * @param at index of the first
     * @return index behind the last
     */
    public int put(double[] out, int at) {
        out[at] = begun ? 1 : 0;
        out[at + 1] = next;
        out[at + 2] = gaps;
        out[at + 3] = missing;
        out[at + 4] = repeats;
        out[at + 5] = repeated;
        return at + STATE;
    }

    /**
     * Takes up a state.
     *
     * @param in holds {@link #STATE} numbers
     * @param at index of the first
     * @return index behind the last
     * @throws IllegalArgumentException if they are no counts
     */
    public int take(double[] in, int at) {
        begun = StateFormat.flag(in, at);
        next = StateFormat.count(in, at + 1, StateFormat.LARGEST_COUNT);
        missing = StateFormat.count(in, at + 3, StateFormat.LARGEST_COUNT);
        gaps = StateFormat.count(in, at + 2, missing);
        repeats = StateFormat.count(in, at + 4, StateFormat.LARGEST_COUNT);
        repeated = StateFormat.count(in, at + 5, StateFormat.LARGEST_COUNT);
        return at + STATE;
    }
}
