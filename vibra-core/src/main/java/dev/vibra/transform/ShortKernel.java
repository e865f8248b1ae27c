package dev.vibra.transform;

import org.jtransforms.fft.DoubleFFT_1D;

/** A short power of two, transformed by JTransforms in the calling thread. */
final class ShortKernel extends Kernel {
    private final int length;
    private final DoubleFFT_1D fft;

    ShortKernel(int length) {
        this.length = length;
        this.fft = new DoubleFFT_1D(length);
    }

    @Override
    void forward(double[] data, int offset) {
        if (length > 1) {
            fft.complexForward(data, offset);
        }
    }

    @Override
    void inverse(double[] data, int offset) {
        if (length > 1) {
            fft.complexInverse(data, offset, true);
        }
    }
}
