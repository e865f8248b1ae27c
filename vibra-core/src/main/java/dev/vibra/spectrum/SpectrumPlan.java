package dev.vibra.spectrum;

import dev.vibra.internal.Means;
import dev.vibra.internal.Require;
import dev.vibra.transform.PlanCache;
import dev.vibra.transform.PowerPair;
import dev.vibra.transform.RealTransform;
import dev.vibra.window.Window;
import java.util.List;
import java.util.Objects;

/**
 * How one block of samples becomes the mean squares of its spectral lines; shared by threads, each with a worker.
 *
 * <p>Scaling: a sine of amplitude A on a line reads A²/2 there, whatever the window; the lines of 0 Hz and of half the
 * sample rate are not doubled. Divide by the noise bandwidth in Hz for a density.
 */
public final class SpectrumPlan {
    private final int length;
    private final Window window;
    /**
     * Weights that make the square of a line its mean square, with its counterpart at negative frequency; the lines of
     * 0 Hz and of half the sample rate have none.
     */
    private final double[] scaledWeights;
    private final double sumOfWeights;
    private final double sumOfSquares;

    private SpectrumPlan(int length, Window window) {
        this.length = Require.atLeast("block length", length, 2);
        this.window = Objects.requireNonNull(window, "window");
        scaledWeights = window.samples(length);
        double sum = 0;
        double squares = 0;
        for (double w : scaledWeights) {
            sum += w;
            squares += w * w;
        }
        sumOfWeights = sum;
        sumOfSquares = squares;
        double scale = Math.sqrt(2) / Math.abs(sum);
        for (int i = 0; i < length; i++) {
            scaledWeights[i] *= scale;
        }
    }

    /**
     * Makes a plan.
     *
     * @param length number of samples of a block, at least 2; any length, see {@link RealTransform}
     * @param window window function
     * @return the plan
     * @throws IllegalArgumentException if the length is below 2
     */
    public static SpectrumPlan of(int length, Window window) {
        return new SpectrumPlan(length, window);
    }

    /** The plan that a thread keeps. */
    static SpectrumPlan of(int length, Window window, PlanCache plans) {
        return plans.get(SpectrumPlan.class, List.of(length, window), () -> of(length, window));
    }

    /** The worker that a thread keeps. */
    Worker worker(PlanCache plans) {
        return plans.get(Worker.class, List.of(length, window), this::newWorker);
    }

    /**
     * Returns the number of samples of a block.
     *
     * @return block length, at least 2
     */
    public int length() {
        return length;
    }

    /**
     * Returns the number of lines, {@code length / 2 + 1}.
     *
     * @return number of lines from 0 Hz to half the sample rate
     */
    public int lines() {
        return length / 2 + 1;
    }

    /**
     * Returns the window.
     *
     * @return window function
     */
    public Window window() {
        return window;
    }

    /**
     * Returns the noise bandwidth of one line in bins, {@code N·Σw²/(Σw)²} for this very length.
     *
     * @return noise bandwidth in bins, at least 1
     */
    public double noiseBandwidth() {
        return length * sumOfSquares / (sumOfWeights * sumOfWeights);
    }

    /**
     * Makes a worker with its own workspace.
     *
     * @return a worker for one thread
     */
    public Worker newWorker() {
        return new Worker();
    }

    /** Workspace of one thread; allocates nothing once made. */
    public final class Worker {
        private final RealTransform transform = RealTransform.of(length);
        private final double[] weighted = new double[length];
        private PowerPair pair;
        private double[] secondWeighted;

        private Worker() {}

        /**
         * Returns the window.
         *
         * @return window function of the plan
         */
        public Window window() {
            return window;
        }

        /**
         * Adds the mean squares of the lines of one block to an accumulator; the mean of the block is taken out first.
         *
         * @param block samples; left alone
         * @param offset index of the first sample
         * @param sums receives the mean squares added to what it holds, {@link #lines()} values in the unit squared
         * @return the accumulator
         * @throws IllegalArgumentException if a range leaves its array
         */
        public double[] addMeanSquares(double[] block, int offset, double[] sums) {
            Require.range("sums", sums, 0, lines());
            weigh(Objects.requireNonNull(block, "block"), offset, weighted);
            double low = sums[0];
            double high = sums[length / 2];
            transform.addPower(weighted, 0, sums);
            halveSingle(sums, low, high);
            return sums;
        }

        /**
         * Adds the mean squares of the lines of several blocks, two at a time, which takes less time than one by one.
         * The first call makes the workspace for it.
         *
         * @param samples samples; left alone
         * @param offset index of the first sample of the first block
         * @param step samples from the start of a block to that of the next, at least 1
         * @param blocks number of blocks, zero or more
         * @param sums receives the mean squares added to what it holds, {@link #lines()} values in the unit squared
         * @return the accumulator
         * @throws IllegalArgumentException if an argument is out of range or a range leaves its array
         */
        public double[] addMeanSquares(double[] samples, int offset, int step, int blocks, double[] sums) {
            Objects.requireNonNull(samples, "samples");
            Require.atLeast("step", step, 1);
            Require.atLeast("blocks", blocks, 0);
            Require.range("sums", sums, 0, lines());
            if (blocks > 0 && offset + (blocks - 1L) * step > samples.length - length) {
                throw new IllegalArgumentException("blocks must lie inside the samples: " + blocks + " of " + length
                        + " samples, " + step + " apart, from " + offset + " on in " + samples.length);
            }
            int next = offset;
            for (int block = 0; block + 2 <= blocks; block += 2, next += 2 * step) {
                addPair(samples, next, next + step, sums);
            }
            return blocks % 2 == 0 ? sums : addMeanSquares(samples, next, sums);
        }

        private void addPair(double[] samples, int first, int second, double[] sums) {
            if (pair == null) {
                pair = PowerPair.of(length);
                secondWeighted = new double[length];
            }
            weigh(samples, first, weighted);
            weigh(samples, second, secondWeighted);
            double low = sums[0];
            double high = sums[length / 2];
            pair.add(weighted, secondWeighted, sums);
            halveSingle(sums, low, high);
        }

        /** The lines without a counterpart, of what was added to their sums. */
        private void halveSingle(double[] sums, double low, double high) {
            sums[0] = low + 0.5 * (sums[0] - low);
            if (length % 2 == 0) {
                sums[length / 2] = high + 0.5 * (sums[length / 2] - high);
            }
        }

        /**
         * Writes the complex lines of one block, scaled so that their squared magnitudes are the mean squares; the mean
         * of the block is taken out first. Phase is that of a cosine at the first sample of the block.
         *
         * @param block samples; left alone
         * @param offset index of the first sample
         * @param out receives {@code 2·lines()} interleaved values in the unit
         * @return the output array
         * @throws IllegalArgumentException if a range leaves its array
         */
        public double[] complexLines(double[] block, int offset, double[] out) {
            Require.range("out", out, 0, 2 * lines());
            weigh(Objects.requireNonNull(block, "block"), offset, weighted);
            transform.forward(weighted, 0, out);
            out[0] *= Math.sqrt(0.5);
            if (length % 2 == 0) {
                out[length] *= Math.sqrt(0.5);
            }
            return out;
        }

        private void weigh(double[] block, int offset, double[] out) {
            Require.range("block", block, offset, length);
            double mean = Means.sumOfDistances(block, offset, length, 0) / length;
            System.arraycopy(block, offset, out, 0, length);
            for (int i = 0; i < out.length; i++) {
                out[i] = (out[i] - mean) * scaledWeights[i];
            }
        }

        /** Returns the plan. */
        @Override
        public String toString() {
            return "worker of " + SpectrumPlan.this;
        }
    }

    /** Returns block length and window. */
    @Override
    public String toString() {
        return length + " samples, " + window;
    }
}
