package dev.vibra.filter;

import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;
import java.util.Arrays;

/**
 * A running {@link SectionCascade}: blocks of any size, an empty one included, give the same output as one pass over
 * the whole signal.
 *
 * <p>Holds state: not thread-safe, one per signal. Allocates nothing. Direct form II transposed, which keeps the state
 * small where the poles are close to the unit circle.
 */
public final class CascadeFilter implements Resumable<CascadeFilter> {
    private static final StateFormat FORMAT = new StateFormat("cascade", 1);
    /** Samples that stay in the nearest cache while several groups of sections run over them. */
    private static final int PIECE = 2048;

    private final SectionCascade cascade;
    private final double[] coefficients;
    private final double[] state;
    private final int settings;

    CascadeFilter(SectionCascade cascade, double[] coefficients) {
        this.cascade = cascade;
        this.coefficients = coefficients;
        settings = StateFormat.settings(StateFormat.rounded(coefficients));
        this.state = new double[coefficients.length / 5 * 2];
    }

    /**
     * Filters a block and remembers the state for the next one.
     *
     * @param in input samples; left alone unless it is also the output
     * @param inOffset index of the first input sample
     * @param out receives the output; may be the input array at the same offset
     * @param outOffset index of the first output sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if a range leaves its array
     */
    public void process(double[] in, int inOffset, double[] out, int outOffset, int length) {
        Require.range("in", in, inOffset, length);
        Require.range("out", out, outOffset, length);
        int from = inOffset;
        if (in == out && outOffset > inOffset) {
            System.arraycopy(in, inOffset, out, outOffset, length);
            from = outOffset;
        }
        for (int done = 0; done < length; done += PIECE) {
            SectionKernels.run(coefficients, state, in, from + done, out, outOffset + done,
                    Math.min(PIECE, length - done));
        }
        for (int k = 0; k < state.length; k++) {
            state[k] = settled(state[k]);
        }
    }

    /** In silence the state decays into numbers so small that processors take a hundred times as long over them. */
    private static double settled(double value) {
        return Math.abs(value) < 1e-200 ? 0 : value;
    }

    /**
     * Puts the filter into the state in which it is when it has seen a value for ever.
     *
     * @param value value in the unit of the samples, finite
     * @throws IllegalArgumentException if the value is not finite
     */
    public void settleAt(double value) {
        double input = Require.finite("value", value);
        for (int s = 0; s < state.length / 2; s++) {
            double b0 = coefficients[5 * s];
            double b1 = coefficients[5 * s + 1];
            double b2 = coefficients[5 * s + 2];
            double a1 = coefficients[5 * s + 3];
            double a2 = coefficients[5 * s + 4];
            double output = input * (b0 + b1 + b2) / (1 + a1 + a2);
            state[2 * s + 1] = b2 * input - a2 * output;
            state[2 * s] = b1 * input - a1 * output + state[2 * s + 1];
            input = output;
        }
    }

    /** Puts the filter at rest, as if it had seen zeros for ever. */
    public void reset() {
        Arrays.fill(state, 0);
    }

    @Override
    public Recipe<CascadeFilter> recipe() {
        return new Made(cascade);
    }

    /** What makes such a filter. */
    private record Made(SectionCascade cascade) implements Recipe<CascadeFilter> {
        @Override
        public CascadeFilter make() {
            return cascade.newFilter();
        }

        @Override
        public String toString() {
            return "filter of " + cascade;
        }
    }

    @Override
    public int stateLength() {
        return StateFormat.HEADER + state.length;
    }

    @Override
    public int snapshotTo(double[] out, int offset) {
        return StateFormat.put(state, out, FORMAT.write(out, offset, stateLength(), settings));
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        reset();
        return StateFormat.take(in, FORMAT.check(in, offset, stateLength(), settings), state);
    }

    /** Returns the number of sections. */
    @Override
    public String toString() {
        return "filter of " + state.length / 2 + " second-order section(s)";
    }
}
