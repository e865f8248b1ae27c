package dev.vibra.transform;

import java.util.Arrays;

/**
 * Any other length, as a convolution with a chirp in a power of two (L. I. Bluestein, IEEE Trans. Audio Electroacoust.
 * 18 (1970) 451-455; Van Loan, section 4.2).
 */
final class ChirpKernel extends Kernel {
    private final int length;
    private final int padded;
    private final Kernel ofPadded;
    private final double[] chirp;
    private final double[] filter;
    private final double[] scratch;

    ChirpKernel(int length) {
        this.length = length;
        padded = Integer.highestOneBit(2 * length - 2) << 1;
        ofPadded = Kernel.of(padded);
        chirp = new double[2 * length];
        for (int k = 0; k < length; k++) {
            setRoot(chirp, k, (long) k * k, 2L * length);
        }
        filter = transformedFilter();
        scratch = new double[2 * padded];
    }

    private double[] transformedFilter() {
        double[] taps = new double[2 * padded];
        for (int k = 0; k < length; k++) {
            int mirrored = k == 0 ? 0 : padded - k;
            taps[2 * k] = taps[2 * mirrored] = chirp[2 * k] / padded;
            taps[2 * k + 1] = taps[2 * mirrored + 1] = -chirp[2 * k + 1] / padded;
        }
        ofPadded.forward(taps, 0);
        return taps;
    }

    @Override
    void forward(double[] data, int offset) {
        System.arraycopy(data, offset, scratch, 0, 2 * length);
        Complex.multiply(scratch, 0, chirp, 0, length);
        Arrays.fill(scratch, 2 * length, 2 * padded, 0);
        ofPadded.forward(scratch, 0);
        Complex.multiply(scratch, 0, filter, 0, padded);
        Complex.conjugate(scratch, 0, padded, 1);
        ofPadded.forward(scratch, 0);
        Complex.conjugate(scratch, 0, length, 1);
        Complex.multiply(scratch, 0, chirp, 0, length);
        System.arraycopy(scratch, 0, data, offset, 2 * length);
    }
}
