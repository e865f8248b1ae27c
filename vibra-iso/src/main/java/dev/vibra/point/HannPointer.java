package dev.vibra.point;

import org.apache.commons.math3.complex.Complex;

/** Correlates samples with a turning pointer. */
final class HannPointer {
    private HannPointer() {}

    /**
     * Mean of samples times a pointer that turns back, under a Hann window: of {@code A·cos(step·(i - anchor) + φ)} it is
     * {@code A/2·exp(jφ)}. The pointer and that of the window are turned on by multiplication.
     *
     * @param samples samples
     * @param from first of them
     * @param to behind the last of them
     * @param step angle from one sample to the next in rad
     * @param anchor number of the sample at which the angle is zero
     */
    static Complex mean(double[] samples, int from, int to, double step, double anchor) {
        double turnRe = Math.cos(step);
        double turnIm = -Math.sin(step);
        double pointerRe = Math.cos(step * (from - anchor));
        double pointerIm = -Math.sin(step * (from - anchor));
        double bend = 2 * Math.PI / (to - from);
        double bendRe = Math.cos(bend);
        double bendIm = Math.sin(bend);
        double windowRe = Math.cos(0.5 * bend);
        double windowIm = Math.sin(0.5 * bend);
        double re = 0;
        double im = 0;
        for (int i = from; i < to; i++) {
            double weighted = samples[i] * (1 - windowRe);
            re += weighted * pointerRe;
            im += weighted * pointerIm;
            double nextRe = pointerRe * turnRe - pointerIm * turnIm;
            pointerIm = pointerRe * turnIm + pointerIm * turnRe;
            pointerRe = nextRe;
            double nextWindow = windowRe * bendRe - windowIm * bendIm;
            windowIm = windowRe * bendIm + windowIm * bendRe;
            windowRe = nextWindow;
        }
        return new Complex(re / (to - from), im / (to - from));
    }
}
