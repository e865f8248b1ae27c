package dev.vibra.transform;

/** Any even length: even and odd samples as real and imaginary parts of half as many values. */
final class PairedRealKernel extends RealKernel {
    private final int length;
    private final Kernel kernel;
    private final double[] work;
    private final double[] roots;
    /** Of {@link #addPower} only. */
    private final double[] lines;

    PairedRealKernel(int length) {
        this.length = length;
        kernel = Kernel.of(length / 2);
        work = new double[length];
        lines = new double[length + 2];
        roots = new double[2 * (length / 4 + 1)];
        for (int k = 0; k <= length / 4; k++) {
            double angle = 2 * Math.PI * k / length;
            roots[2 * k] = Math.cos(angle);
            roots[2 * k + 1] = -Math.sin(angle);
        }
    }

    @Override
    void forward(double[] samples, int offset, double level, double[] spectrum) {
        for (int i = 0; i < length; i++) {
            work[i] = samples[offset + i] - level;
        }
        kernel.forward(work, 0);
        separate(spectrum);
    }

    @Override
    void addPower(double[] samples, int offset, double[] sums) {
        forward(samples, offset, 0, lines);
        addSquares(lines, length / 2 + 1, sums);
    }

    @Override
    void inverse(double[] spectrum, double[] samples, int offset) {
        merge(spectrum);
        kernel.inverse(work, 0);
        System.arraycopy(work, 0, samples, offset, length);
    }

    /**
     * Even and odd samples were transformed as real and imaginary parts: tells the two spectra apart and joins them.
     */
    private void separate(double[] spectrum) {
        int half = length / 2;
        double re0 = work[0];
        double im0 = work[1];
        spectrum[0] = re0 + im0;
        spectrum[1] = 0;
        spectrum[2 * half] = re0 - im0;
        spectrum[2 * half + 1] = 0;
        for (int k = 1; k <= half / 2; k++) {
            int m = half - k;
            double evenRe = 0.5 * (work[2 * k] + work[2 * m]);
            double evenIm = 0.5 * (work[2 * k + 1] - work[2 * m + 1]);
            double oddRe = 0.5 * (work[2 * k + 1] + work[2 * m + 1]);
            double oddIm = -0.5 * (work[2 * k] - work[2 * m]);
            double turnedRe = oddRe * roots[2 * k] - oddIm * roots[2 * k + 1];
            double turnedIm = oddRe * roots[2 * k + 1] + oddIm * roots[2 * k];
            spectrum[2 * k] = evenRe + turnedRe;
            spectrum[2 * k + 1] = evenIm + turnedIm;
            spectrum[2 * m] = evenRe - turnedRe;
            spectrum[2 * m + 1] = turnedIm - evenIm;
        }
    }

    /** Undoes {@link #separate}. */
    private void merge(double[] spectrum) {
        int half = length / 2;
        work[0] = 0.5 * (spectrum[0] + spectrum[2 * half]);
        work[1] = 0.5 * (spectrum[0] - spectrum[2 * half]);
        for (int k = 1; k <= half / 2; k++) {
            int m = half - k;
            double evenRe = 0.5 * (spectrum[2 * k] + spectrum[2 * m]);
            double evenIm = 0.5 * (spectrum[2 * k + 1] - spectrum[2 * m + 1]);
            double turnedRe = 0.5 * (spectrum[2 * k] - spectrum[2 * m]);
            double turnedIm = 0.5 * (spectrum[2 * k + 1] + spectrum[2 * m + 1]);
            double oddRe = turnedRe * roots[2 * k] + turnedIm * roots[2 * k + 1];
            double oddIm = turnedIm * roots[2 * k] - turnedRe * roots[2 * k + 1];
            work[2 * k] = evenRe - oddIm;
            work[2 * k + 1] = evenIm + oddRe;
            work[2 * m] = evenRe + oddIm;
            work[2 * m + 1] = oddRe - evenIm;
        }
    }
}
