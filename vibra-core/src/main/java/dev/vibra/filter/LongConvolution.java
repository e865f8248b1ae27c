package dev.vibra.filter;

import dev.vibra.internal.Convolution;
import dev.vibra.internal.Convolver;
import dev.vibra.internal.StateFormat;
import dev.vibra.transform.RealTransform;
import java.util.Arrays;

/**
 * A running convolution with a long impulse response that hands out each sample at once. The response is cut into parts
 * of one block each. The first acts by itself; what the others make of the blocks before the present one is known when
 * it begins, and is computed by transforms over two blocks (overlap-save), of which the lines of the parts add up.
 *
 * <p>Blocks are counted from the first sample on, so that the numbers don't depend on how the stream is cut. The price
 * is that the first part, 128 taps or 512, can't be done by transforms.
 *
 * @see "W. G. Gardner, Efficient convolution without input-output delay, J. Audio Eng. Soc. 43 (1995) 127-136"
 */
final class LongConvolution implements Convolution {
    private static final int BLOCK = 128;
    private static final int LONG_BLOCK = 512;
    private static final int LONG = 8192;

    private final int block;
    /** Parts behind the first. */
    private final int parts;
    private final Convolver head;
    private final RealTransform transform;
    /** Lines of the parts of the response, and of the last blocks: real and imaginary ones apart, newest block first. */
    private final double[][] partRe;
    private final double[][] partIm;
    private final double[][] re;
    private final double[][] im;
    private final double[] sumRe;
    private final double[] sumIm;
    private final double[] lines;
    private final double[] samples;
    /** As many whole blocks as there are parts and one more, oldest first, and behind them the present one. */
    private final double[] line;
    private final double[] tail;
    private int place;

    LongConvolution(double[] taps) {
        block = taps.length > LONG ? LONG_BLOCK : BLOCK;
        parts = (taps.length - 1) / block;
        head = new Convolver(Arrays.copyOf(taps, block));
        transform = RealTransform.of(2 * block);
        partRe = new double[parts][block + 1];
        partIm = new double[parts][block + 1];
        re = new double[parts][block + 1];
        im = new double[parts][block + 1];
        sumRe = new double[block + 1];
        sumIm = new double[block + 1];
        lines = new double[2 * (block + 1)];
        samples = new double[2 * block];
        line = new double[(parts + 2) * block];
        tail = new double[block];
        for (int p = 0; p < parts; p++) {
            int from = (p + 1) * block;
            Arrays.fill(samples, 0);
            System.arraycopy(taps, from, samples, 0, Math.min(block, taps.length - from));
            transform(samples, 0, partRe[p], partIm[p]);
        }
    }

    private void transform(double[] from, int offset, double[] intoRe, double[] intoIm) {
        transform.forward(from, offset, lines);
        for (int k = 0; k <= block; k++) {
            intoRe[k] = lines[2 * k];
            intoIm[k] = lines[2 * k + 1];
        }
    }

    @Override
    public void process(double[] in, int inOffset, double[] out, int outOffset, int length) {
        int from = inOffset;
        if (in == out && outOffset > inOffset) {
            System.arraycopy(in, inOffset, out, outOffset, length);
            from = outOffset;
        }
        for (int done = 0; done < length;) {
            int piece = Math.min(block - place, length - done);
            System.arraycopy(in, from + done, line, line.length - block + place, piece);
            head.process(in, from + done, out, outOffset + done, piece);
            for (int i = 0; i < piece; i++) {
                out[outOffset + done + i] += tail[place + i];
            }
            place += piece;
            done += piece;
            if (place == block) {
                System.arraycopy(line, block, line, 0, line.length - block);
                place = 0;
                turn();
                add(line.length - 3 * block);
                prepare();
            }
        }
    }

    /** The oldest block gives its place to the next. */
    private void turn() {
        double[] oldRe = re[parts - 1];
        double[] oldIm = im[parts - 1];
        System.arraycopy(re, 0, re, 1, parts - 1);
        System.arraycopy(im, 0, im, 1, parts - 1);
        re[0] = oldRe;
        im[0] = oldIm;
    }

    private void add(int offset) {
        transform(line, offset, re[0], im[0]);
    }

    /** What the blocks so far make of the present one. */
    private void prepare() {
        Arrays.fill(sumRe, 0);
        Arrays.fill(sumIm, 0);
        for (int p = 0; p < parts; p++) {
            addProduct(partRe[p], partIm[p], re[p], im[p], sumRe, sumIm);
        }
        for (int k = 0; k <= block; k++) {
            lines[2 * k] = sumRe[k];
            lines[2 * k + 1] = sumIm[k];
        }
        transform.inverse(lines, samples, 0);
        System.arraycopy(samples, block, tail, 0, block);
    }

    private static void addProduct(double[] aRe, double[] aIm, double[] bRe, double[] bIm, double[] re, double[] im) {
        for (int k = 0; k < re.length; k++) {
            re[k] += aRe[k] * bRe[k] - aIm[k] * bIm[k];
        }
        for (int k = 0; k < re.length; k++) {
            im[k] += aRe[k] * bIm[k] + aIm[k] * bRe[k];
        }
    }

    @Override
    public void reset() {
        head.reset();
        for (int p = 0; p < parts; p++) {
            Arrays.fill(re[p], 0);
            Arrays.fill(im[p], 0);
        }
        Arrays.fill(line, 0);
        Arrays.fill(tail, 0);
        place = 0;
    }

    @Override
    public int stateLength() {
        return 1 + line.length - block + head.stateLength();
    }

    /** The place in the present block, the whole blocks, and the newest samples as the first part knows them. */
    @Override
    public int put(double[] out, int at) {
        out[at] = place;
        for (int i = 0; i < line.length - block; i++) {
            out[at + 1 + i] = StateFormat.sound(line[i]);
        }
        return head.put(out, at + 1 + line.length - block);
    }

    @Override
    public int take(double[] in, int at) {
        int newest = (int) StateFormat.count(in, at, block - 1);
        System.arraycopy(in, at + 1, line, 0, line.length - block);
        int behind = head.take(in, at + 1 + line.length - block);
        place = newest;
        for (int i = 0; i < place; i++) {
            line[line.length - block + place - 1 - i] = in[behind - block + i];
        }
        for (int p = parts - 1; p >= 0; p--) {
            turn();
            add(line.length - (3 + p) * block);
        }
        prepare();
        return behind;
    }
}
