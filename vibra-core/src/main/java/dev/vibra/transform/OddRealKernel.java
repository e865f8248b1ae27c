package dev.vibra.transform;

/** An odd length: a complex transform of samples without imaginary parts. */
final class OddRealKernel extends RealKernel {
    private final int length;
    private final Kernel kernel;
    private final double[] work;

    OddRealKernel(int length) {
        this.length = length;
        kernel = Kernel.of(length);
        work = new double[2 * length];
    }

    private void run(double[] samples, int offset, double level) {
        for (int i = 0; i < length; i++) {
            work[2 * i] = samples[offset + i] - level;
            work[2 * i + 1] = 0;
        }
        kernel.forward(work, 0);
    }

    @Override
    void forward(double[] samples, int offset, double level, double[] spectrum) {
        run(samples, offset, level);
        System.arraycopy(work, 0, spectrum, 0, length + 1);
    }

    @Override
    void addPower(double[] samples, int offset, double[] sums) {
        run(samples, offset, 0);
        addSquares(work, length / 2 + 1, sums);
    }

    @Override
    void inverse(double[] spectrum, double[] samples, int offset) {
        mirror(spectrum);
        kernel.inverse(work, 0);
        for (int i = 0; i < length; i++) {
            samples[offset + i] = work[2 * i];
        }
    }

    private void mirror(double[] spectrum) {
        work[0] = spectrum[0];
        work[1] = 0;
        for (int k = 1; k <= length / 2; k++) {
            int m = length - k;
            work[2 * k] = work[2 * m] = spectrum[2 * k];
            work[2 * k + 1] = spectrum[2 * k + 1];
            work[2 * m + 1] = -spectrum[2 * k + 1];
        }
    }
}
