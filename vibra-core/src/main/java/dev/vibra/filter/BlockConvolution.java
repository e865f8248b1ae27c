package dev.vibra.filter;

import dev.vibra.transform.RealTransform;
import java.util.Arrays;

/**
 * Convolution of a whole signal by transforms over blocks that overlap by the length of the response (overlap-save).
 *
 * @see "Oppenheim and Schafer, Discrete-Time Signal Processing, 3rd ed. 2010, section 8.7.3"
 */
final class BlockConvolution {
    private static final int SHORTEST = 4096;

    private BlockConvolution() {}

    /** {@return as many outputs as there are samples, starting at rest} */
    static double[] of(double[] taps, double[] samples) {
        int overlap = taps.length - 1;
        int length = Math.max(SHORTEST, 4 * Integer.highestOneBit(taps.length));
        RealTransform transform = RealTransform.of(length);
        double[] lines = transform.forward(Arrays.copyOf(taps, length), 0, new double[2 * transform.lines()]);
        double[] spectrum = new double[lines.length];
        double[] block = new double[length];
        double[] out = new double[samples.length];
        for (int done = 0; done < out.length; done += length - overlap) {
            int first = done - overlap;
            int from = Math.max(0, first);
            int end = Math.min(samples.length, first + length);
            Arrays.fill(block, 0);
            System.arraycopy(samples, from, block, from - first, end - from);
            multiply(transform.forward(block, 0, spectrum), lines);
            transform.inverse(spectrum, block, 0);
            System.arraycopy(block, overlap, out, done, Math.min(length - overlap, out.length - done));
        }
        return out;
    }

    private static void multiply(double[] spectrum, double[] lines) {
        for (int i = 0; i < lines.length; i += 2) {
            double re = spectrum[i] * lines[i] - spectrum[i + 1] * lines[i + 1];
            spectrum[i + 1] = spectrum[i] * lines[i + 1] + spectrum[i + 1] * lines[i];
            spectrum[i] = re;
        }
    }
}
