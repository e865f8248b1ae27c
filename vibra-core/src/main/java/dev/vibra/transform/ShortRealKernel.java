package dev.vibra.transform;

import org.jtransforms.fft.DoubleFFT_1D;

/** A short power of two, transformed by JTransforms in the calling thread. */
final class ShortRealKernel extends RealKernel {
    private final int length;
    private final DoubleFFT_1D fft;
    /** Of {@link #addPower} only. */
    private final double[] packed;

    ShortRealKernel(int length) {
        this.length = length;
        fft = new DoubleFFT_1D(length);
        packed = new double[length];
    }

    /** Real parts of the first and of the last line, then the lines between, interleaved. */
    private void pack(double[] samples, int offset, double level, double[] out) {
        System.arraycopy(samples, offset, out, 0, length);
        if (level != 0) {
            for (int i = 0; i < length; i++) {
                out[i] -= level;
            }
        }
        fft.realForward(out);
    }

    @Override
    void forward(double[] samples, int offset, double level, double[] spectrum) {
        pack(samples, offset, level, spectrum);
        spectrum[length] = spectrum[1];
        spectrum[length + 1] = 0;
        spectrum[1] = 0;
    }

    @Override
    void addPower(double[] samples, int offset, double[] sums) {
        pack(samples, offset, 0, packed);
        sums[0] += packed[0] * packed[0];
        sums[length / 2] += packed[1] * packed[1];
        for (int k = 1; k < length / 2; k++) {
            sums[k] += packed[2 * k] * packed[2 * k] + packed[2 * k + 1] * packed[2 * k + 1];
        }
    }

    @Override
    void inverse(double[] spectrum, double[] samples, int offset) {
        double last = spectrum[length];
        System.arraycopy(spectrum, 0, samples, offset, length);
        samples[offset + 1] = last;
        fft.realInverse(samples, offset, true);
    }
}
