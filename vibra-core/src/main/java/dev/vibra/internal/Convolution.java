package dev.vibra.internal;

/** A running convolution of a stream with an impulse response; holds state, allocates nothing once made. */
public interface Convolution {
    /**
     * Takes in a block and gives as many outputs.
     *
     * @param in input, its range checked by the caller
     * @param inOffset index of the first input sample
     * @param out receives the output; may be the input array, at any offset
     * @param outOffset index of the first output sample
     * @param length number of samples
     */
    void process(double[] in, int inOffset, double[] out, int outOffset, int length);

    /** Puts it at rest. */
    void reset();

    /** {@return numbers of the state} */
    int stateLength();

    /**
     * Writes the state.
     *
     * @param out receives the numbers
     * @param at index of the first
     * @return index behind the last
     * @throws IllegalStateException if a sample is not finite
     */
    int put(double[] out, int at);

    /**
     * Takes up a state.
     *
     * @param in holds the numbers, all finite
     * @param at index of the first
     * @return index behind the last
     * @throws IllegalArgumentException if they are no such state
     */
    int take(double[] in, int at);
}
