package dev.vibra.internal;

import java.util.Arrays;

/**
 * A running convolution of a stream with an impulse response: {@code y[n] = Σ h[k]·x[n-k]}. The products of each output
 * are added in the same order, however the stream is cut, so that blocks of any size give the same numbers.
 *
 * <p>Works on many outputs at a time, four taps in one pass over them. So that the compiler makes vector instructions of
 * the passes, all arrays of a pass are read at the same index or at one a whole number of vectors apart: the stream
 * lies there eight times, each a sample later.
 *
 * <p>Holds state: not thread-safe, one per stream; allocates nothing once made.
 */
public final class Convolver implements Convolution {
    private static final int PIECE = 256;
    private static final int LANES = 8;
    private static final int GROUP = 4 * LANES;
    /** Fewer outputs than these are computed one by one. */
    private static final int FEW = 16;

    /** The impulse response backwards, as it meets the samples, oldest first. */
    private final double[] turned;
    /** As many samples as there are taps, oldest first; behind them those that come in. */
    private final double[] line;
    private final double[][] shifted = new double[LANES][PIECE + GROUP];
    private final double[] sums = new double[PIECE];

    /**
     * Makes one at rest.
     *
     * @param taps impulse response, at least one value; copied
     */
    public Convolver(double[] taps) {
        turned = new double[taps.length];
        for (int k = 0; k < taps.length; k++) {
            turned[taps.length - 1 - k] = taps[k];
        }
        line = new double[taps.length + PIECE + GROUP];
    }

    @Override
    public void process(double[] in, int inOffset, double[] out, int outOffset, int length) {
        int from = inOffset;
        if (in == out && outOffset > inOffset) {
            System.arraycopy(in, inOffset, out, outOffset, length);
            from = outOffset;
        }
        for (int done = 0; done < length; done += PIECE) {
            int piece = Math.min(PIECE, length - done);
            System.arraycopy(in, from + done, line, turned.length, piece);
            if (piece < FEW) {
                for (int i = 0; i < piece; i++) {
                    sums[i] = sum(i + 1);
                }
            } else {
                sums(piece);
            }
            System.arraycopy(sums, 0, out, outOffset + done, piece);
            System.arraycopy(line, piece, line, 0, turned.length);
        }
    }

    private double sum(int from) {
        double sum = 0;
        int k = 0;
        for (; k + 4 <= turned.length; k += 4) {
            sum += turned[k] * line[from + k] + turned[k + 1] * line[from + k + 1]
                    + (turned[k + 2] * line[from + k + 2] + turned[k + 3] * line[from + k + 3]);
        }
        for (; k < turned.length; k++) {
            sum += turned[k] * line[from + k];
        }
        return sum;
    }

    private void sums(int length) {
        Arrays.fill(sums, 0, length, 0);
        int byFour = turned.length / 4 * 4;
        for (int k = 0; k < byFour; k += GROUP) {
            int taps = Math.min(GROUP, byFour - k);
            for (int lane = 0; lane < Math.min(LANES, taps); lane++) {
                System.arraycopy(line, k + 1 + lane, shifted[lane], 0, length + GROUP - LANES);
            }
            addGroup(shifted, turned, k, taps, sums, length);
        }
        for (int k = byFour; k < turned.length; k++) {
            System.arraycopy(line, k + 1, shifted[0], 0, length);
            addTap(shifted[0], turned[k], sums, length);
        }
    }

    private static void addTap(double[] x, double tap, double[] y, int length) {
        for (int i = 0; i < length; i++) {
            y[i] += tap * x[i];
        }
    }

    /** Up to eight passes of four taps. One method of more than 325 bytes, else it isn't compiled alone and stays slow. */
    private static void addGroup(double[][] shifted, double[] h, int at, int taps, double[] y, int length) {
        double[] x0 = shifted[0];
        double[] x1 = shifted[1];
        double[] x2 = shifted[2];
        double[] x3 = shifted[3];
        double[] x4 = shifted[4];
        double[] x5 = shifted[5];
        double[] x6 = shifted[6];
        double[] x7 = shifted[7];
        double a = h[at];
        double b = h[at + 1];
        double c = h[at + 2];
        double d = h[at + 3];
        for (int i = 0; i < length; i++) {
            y[i] += a * x0[i] + b * x1[i] + (c * x2[i] + d * x3[i]);
        }
        if (taps <= 4) {
            return;
        }
        a = h[at + 4];
        b = h[at + 5];
        c = h[at + 6];
        d = h[at + 7];
        for (int i = 0; i < length; i++) {
            y[i] += a * x4[i] + b * x5[i] + (c * x6[i] + d * x7[i]);
        }
        if (taps <= 8) {
            return;
        }
        a = h[at + 8];
        b = h[at + 9];
        c = h[at + 10];
        d = h[at + 11];
        for (int i = 0; i < length; i++) {
            y[i] += a * x0[i + 8] + b * x1[i + 8] + (c * x2[i + 8] + d * x3[i + 8]);
        }
        if (taps <= 12) {
            return;
        }
        a = h[at + 12];
        b = h[at + 13];
        c = h[at + 14];
        d = h[at + 15];
        for (int i = 0; i < length; i++) {
            y[i] += a * x4[i + 8] + b * x5[i + 8] + (c * x6[i + 8] + d * x7[i + 8]);
        }
        if (taps <= 16) {
            return;
        }
        a = h[at + 16];
        b = h[at + 17];
        c = h[at + 18];
        d = h[at + 19];
        for (int i = 0; i < length; i++) {
            y[i] += a * x0[i + 16] + b * x1[i + 16] + (c * x2[i + 16] + d * x3[i + 16]);
        }
        if (taps <= 20) {
            return;
        }
        a = h[at + 20];
        b = h[at + 21];
        c = h[at + 22];
        d = h[at + 23];
        for (int i = 0; i < length; i++) {
            y[i] += a * x4[i + 16] + b * x5[i + 16] + (c * x6[i + 16] + d * x7[i + 16]);
        }
        if (taps <= 24) {
            return;
        }
        a = h[at + 24];
        b = h[at + 25];
        c = h[at + 26];
        d = h[at + 27];
        for (int i = 0; i < length; i++) {
            y[i] += a * x0[i + 24] + b * x1[i + 24] + (c * x2[i + 24] + d * x3[i + 24]);
        }
        if (taps <= 28) {
            return;
        }
        a = h[at + 28];
        b = h[at + 29];
        c = h[at + 30];
        d = h[at + 31];
        for (int i = 0; i < length; i++) {
            y[i] += a * x4[i + 24] + b * x5[i + 24] + (c * x6[i + 24] + d * x7[i + 24]);
        }
    }

    @Override
    public int stateLength() {
        return turned.length;
    }

    /** The newest sample first. */
    @Override
    public int put(double[] out, int at) {
        for (int k = 0; k < turned.length; k++) {
            out[at + k] = StateFormat.sound(line[turned.length - 1 - k]);
        }
        return at + turned.length;
    }

    @Override
    public int take(double[] in, int at) {
        for (int k = 0; k < turned.length; k++) {
            line[turned.length - 1 - k] = in[at + k];
        }
        return at + turned.length;
    }

    @Override
    public void reset() {
        Arrays.fill(line, 0);
    }
}
