package dev.vibra.spectrum;

import dev.vibra.internal.Require;
import dev.vibra.transform.RealTransform;
import dev.vibra.window.Window;
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
    private final double[] weights;
    private final double sumOfWeights;
    private final double sumOfSquares;

    private SpectrumPlan(int length, Window window) {
        this.length = Require.atLeast("block length", length, 2);
        this.window = Objects.requireNonNull(window, "window");
        weights = window.samples(length);
        double sum = 0;
        double squares = 0;
        for (double w : weights) {
            sum += w;
            squares += w * w;
        }
        sumOfWeights = sum;
        sumOfSquares = squares;
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
        private final double[] spectrum = new double[2 * transform.lines()];

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
            transform(Objects.requireNonNull(block, "block"), offset);
            double single = 1 / (sumOfWeights * sumOfWeights);
            for (int k = 0; k < lines(); k++) {
                double re = spectrum[2 * k];
                double im = spectrum[2 * k + 1];
                sums[k] += (single(k) ? single : 2 * single) * (re * re + im * im);
            }
            return sums;
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
            transform(Objects.requireNonNull(block, "block"), offset);
            double scale = 1 / Math.abs(sumOfWeights);
            double doubled = Math.sqrt(2) * scale;
            for (int k = 0; k < lines(); k++) {
                double factor = single(k) ? scale : doubled;
                out[2 * k] = factor * spectrum[2 * k];
                out[2 * k + 1] = factor * spectrum[2 * k + 1];
            }
            return out;
        }

        private void transform(double[] block, int offset) {
            Require.range("block", block, offset, length);
            double mean = 0;
            for (int i = offset; i < offset + length; i++) {
                mean += block[i];
            }
            mean /= length;
            for (int i = 0; i < length; i++) {
                weighted[i] = (block[offset + i] - mean) * weights[i];
            }
            transform.forward(weighted, 0, spectrum);
        }

        /** The lines of 0 Hz and of half the sample rate have no counterpart at negative frequency. */
        private boolean single(int k) {
            return k == 0 || 2 * k == length;
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
