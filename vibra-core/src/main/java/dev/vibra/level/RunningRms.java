package dev.vibra.level;

import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;
import java.util.Arrays;

/**
 * Root mean square of the most recent part of a stream, about zero: over a window that slides (linear) or with weights
 * that fall by 1/e each time constant (exponential).
 *
 * <p>Holds state: not thread-safe, one per signal; allocates nothing once made.
 *
 * @see "ISO 2041:2018, running mean square; IEC 61672-1:2013, 3.8 (exponential time weighting)"
 */
public final class RunningRms implements Resumable<RunningRms> {
    private static final StateFormat FORMAT = new StateFormat("rms", 1);

    private final Made made;
    /**
     * The window in two parts: from the place on, sums of the squares from there to the end of the previous turn;
     * before it, the squares of this turn. Nothing is ever taken away from a sum, so that no large sample spoils it for
     * small ones.
     */
    private final double[] squares;
    private final double newestWeight;
    private int place;
    private long count;
    /** Sum of the squares of this turn, or the exponential mean. */
    private double sum;

    private RunningRms(Made made, double[] squares, double newestWeight) {
        this.made = made;
        this.squares = squares;
        this.newestWeight = newestWeight;
    }

    /**
     * Makes a meter over a sliding window.
     *
     * @param windowSeconds length of the window in s, one sample to 2²⁶
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @return a meter that has seen nothing
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static RunningRms linear(double windowSeconds, double sampleRateHertz) {
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        double length = Math.rint(Require.positive("windowSeconds", windowSeconds, "s") * sampleRateHertz);
        Require.within("samples of the window", length, 1, Require.MOST_SAMPLES, "");
        return new RunningRms(new Made(false, windowSeconds, sampleRateHertz), new double[(int) length], 0);
    }

    /**
     * Makes a meter with an exponential time constant.
     *
     * @param timeConstantSeconds time constant in s, finite, above zero
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @return a meter that has seen silence for ever
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static RunningRms exponential(double timeConstantSeconds, double sampleRateHertz) {
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        Require.positive("timeConstantSeconds", timeConstantSeconds, "s");
        double newestWeight = -Math.expm1(-1 / (timeConstantSeconds * sampleRateHertz));
        return new RunningRms(new Made(true, timeConstantSeconds, sampleRateHertz), new double[0], newestWeight);
    }

    /**
     * Takes in a block.
     *
     * @param samples samples, all finite and within ±1e70
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if the range leaves the array or a sample is out of range; nothing is taken in
     */
    public void push(double[] samples, int offset, int length) {
        Require.samples(samples, offset, length);
        count += length;
        if (squares.length == 0) {
            addWeighted(samples, offset, offset + length);
            return;
        }
        for (int done = 0; done < length;) {
            int piece = Math.min(squares.length - place, length - done);
            add(samples, offset + done, piece);
            done += piece;
            if (place == squares.length) {
                turn();
            }
        }
    }

    private void addWeighted(double[] x, int from, int end) {
        double mean = sum;
        for (int i = from; i < end; i++) {
            mean += newestWeight * (x[i] * x[i] - mean);
        }
        sum = mean;
    }

    private void add(double[] x, int offset, int length) {
        double total = sum;
        for (int i = 0; i < length; i++) {
            double square = x[offset + i] * x[offset + i];
            total += square;
            squares[place + i] = square;
        }
        sum = total;
        place += length;
    }

    private void turn() {
        for (int i = place - 2; i >= 0; i--) {
            squares[i] += squares[i + 1];
        }
        place = 0;
        sum = 0;
    }

    /**
     * Returns the reading.
     *
     * @return rms; over fewer samples while the window fills
     * @throws IllegalStateException if nothing was pushed
     */
    public double rms() {
        if (count == 0) {
            throw new IllegalStateException("no sample was pushed yet");
        }
        return Math.sqrt(squares.length == 0 ? sum : (sum + squares[place]) / Math.min(count, squares.length));
    }

    /** Forgets everything. */
    public void reset() {
        Arrays.fill(squares, 0);
        place = 0;
        count = 0;
        sum = 0;
    }

    @Override
    public Recipe<RunningRms> recipe() {
        return made;
    }

    /** What makes such a meter. */
    private record Made(boolean exponential, double seconds, double sampleRateHertz) implements Recipe<RunningRms> {
        @Override
        public RunningRms make() {
            return exponential ? RunningRms.exponential(seconds, sampleRateHertz)
                    : RunningRms.linear(seconds, sampleRateHertz);
        }

        int code() {
            return StateFormat.settings(exponential ? 1 : 0, seconds, sampleRateHertz);
        }

        @Override
        public String toString() {
            return (exponential ? "exponential running rms, time constant " : "running rms over ") + seconds + " s at "
                    + sampleRateHertz + " Hz";
        }
    }

    @Override
    public int stateLength() {
        return StateFormat.HEADER + 3 + squares.length;
    }

    @Override
    public int snapshotTo(double[] out, int offset) {
        int at = FORMAT.write(out, offset, stateLength(), made.code());
        out[at++] = count;
        out[at++] = place;
        out[at++] = sum;
        return StateFormat.put(squares, out, at);
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        reset();
        int at = FORMAT.check(in, offset, stateLength(), made.code());
        StateFormat.notNegative(in, at, stateLength() - StateFormat.HEADER);
        long samples = StateFormat.count(in, at, StateFormat.LARGEST_COUNT);
        place = (int) StateFormat.count(in, at + 1, Math.max(0, squares.length - 1));
        count = samples;
        sum = in[at + 2];
        return StateFormat.take(in, at + 3, squares);
    }

    /** Returns the kind of mean. */
    @Override
    public String toString() {
        return squares.length == 0 ? "exponential running rms" : "running rms over " + squares.length + " samples";
    }
}
