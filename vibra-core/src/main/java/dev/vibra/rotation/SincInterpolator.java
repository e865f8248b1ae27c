package dev.vibra.rotation;

import dev.vibra.window.Window;

/**
 * Value of a sampled signal between its samples, limited to a fraction of its bandwidth: convolution with a sinc under
 * a Kaiser window of β = 9 over 16 zero crossings on each side.
 */
final class SincInterpolator {
    private static final int CROSSINGS = 16;
    private static final int STEPS = 512;
    private static final double[] KERNEL = kernel();

    private SincInterpolator() {}

    /** Half of the kernel in steps of 1/512 zero crossing; read with linear interpolation, error below 2e-6. */
    private static double[] kernel() {
        double[] window = Window.kaiser(9).closedSamples(2 * CROSSINGS * STEPS + 1);
        double[] half = new double[CROSSINGS * STEPS + 2];
        for (int i = 0; i <= CROSSINGS * STEPS; i++) {
            double x = Math.PI * i / STEPS;
            half[i] = (i == 0 ? 1 : Math.sin(x) / x) * window[CROSSINGS * STEPS + i];
        }
        return half;
    }

    /** Returns how many samples on each side are needed. */
    static int reach(double bandwidth) {
        return (int) Math.ceil(CROSSINGS / bandwidth);
    }

    /**
     * Interpolates.
     *
     * @param x samples, zero outside
     * @param place place in samples from 0
     * @param bandwidth fraction of half the sample rate to keep, above 0, at most 1
     */
    static double at(double[] x, double place, double bandwidth) {
        int first = (int) Math.max(0, Math.ceil(place - CROSSINGS / bandwidth));
        int last = (int) Math.min(x.length - 1, Math.floor(place + CROSSINGS / bandwidth));
        double sum = 0;
        for (int i = first; i <= last; i++) {
            double at = Math.abs(place - i) * bandwidth * STEPS;
            int below = (int) at;
            double fraction = at - below;
            sum += x[i] * (KERNEL[below] + fraction * (KERNEL[below + 1] - KERNEL[below]));
        }
        return bandwidth * sum;
    }
}
