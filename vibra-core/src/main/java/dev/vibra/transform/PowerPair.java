package dev.vibra.transform;

import dev.vibra.internal.Require;
import java.util.Objects;

/**
 * The squared magnitudes of the lines of two blocks of real samples, added up: one complex transform of the first block
 * as real and the second as imaginary parts. With Z its lines, {@code |A[k]|² + |B[k]|² = (|Z[k]|² + |Z[-k]|²)/2}, so
 * that the two needn't be told apart; it takes less time than two transforms.
 *
 * <p>An instance holds workspace: it is not thread-safe, one per thread. Nothing is allocated after it was made.
 */
public final class PowerPair {
    private final int length;
    /** Null for lengths that aren't split: those blocks are transformed one by one. */
    private final SplitKernel kernel;
    private final RealTransform single;

    private PowerPair(int length) {
        this.length = Require.count("length", length, 1, Require.MOST_SAMPLES);
        kernel = Kernel.of(length) instanceof SplitKernel split ? split : null;
        single = kernel == null ? RealTransform.of(length) : null;
    }

    /**
     * Makes the pair of a length.
     *
     * @param length number of samples of a block, 1 to 2²⁶
     * @return a pair with its workspace
     * @throws IllegalArgumentException if the length is out of range
     */
    public static PowerPair of(int length) {
        return new PowerPair(length);
    }

    /**
     * Transforms two blocks and adds the squared magnitudes of their lines to sums, unscaled as {@link
     * RealTransform#addPower} does.
     *
     * @param a {@code length} real samples; left alone
     * @param b as many of another block; left alone
     * @param sums {@code length / 2 + 1} sums, added to
     * @return the array of the sums
     * @throws IllegalArgumentException if an array is too short
     */
    public double[] add(double[] a, double[] b, double[] sums) {
        Require.range("a", Objects.requireNonNull(a, "a"), 0, length);
        Require.range("b", Objects.requireNonNull(b, "b"), 0, length);
        Require.range("sums", Objects.requireNonNull(sums, "sums"), 0, length / 2 + 1);
        if (kernel == null) {
            single.addPower(a, 0, sums);
            return single.addPower(b, 0, sums);
        }
        double[][] re = kernel.in().re();
        double[][] im = kernel.in().im();
        for (int row = 0, at = 0; row < re.length; row++, at += re[0].length) {
            System.arraycopy(a, at, re[row], 0, re[row].length);
            System.arraycopy(b, at, im[row], 0, im[row].length);
        }
        kernel.run();
        addFolded(kernel.out().re(), kernel.out().im(), sums);
        return sums;
    }

    /** Row r and column c hold line {@code r·columns + c}; line -l stands in the mirrored row and column. */
    private void addFolded(double[][] re, double[][] im, double[] sums) {
        for (int row = 0; row < re.length; row++) {
            square(re[row], im[row]);
        }
        int columns = re[0].length;
        sums[0] += re[0][0];
        for (int row = 0; row * columns <= length / 2; row++) {
            int line = row * columns;
            if (row > 0) {
                sums[line] += 0.5 * (re[row][0] + re[re.length - row][0]);
            }
            double[] mirrored = re[re.length - 1 - row];
            int last = Math.min(columns - 1, length / 2 - line);
            for (int c = 1; c <= last; c++) {
                sums[line + c] += 0.5 * (re[row][c] + mirrored[columns - c]);
            }
        }
    }

    private static void square(double[] re, double[] im) {
        for (int i = 0; i < re.length; i++) {
            re[i] = re[i] * re[i] + im[i] * im[i];
        }
    }

    /** Returns the length. */
    @Override
    public String toString() {
        return "power of two blocks of " + length + " samples";
    }
}
