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
    private static final int TAPS = 2 * CROSSINGS;
    private static final double[] TAPS_BY_STEP = tapsByStep();

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

    /** The kernel at full bandwidth, tap by tap for each of the places 0, 1/512, … 1 behind a sample. */
    private static double[] tapsByStep() {
        double[] taps = new double[(STEPS + 1) * TAPS];
        for (int step = 0; step <= STEPS; step++) {
            for (int tap = 0; tap < TAPS; tap++) {
                taps[step * TAPS + tap] = KERNEL[Math.abs((CROSSINGS - 1 - tap) * STEPS + step)];
            }
        }
        return taps;
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
        int base = (int) Math.floor(place);
        if (bandwidth == 1 && base >= CROSSINGS - 1 && base < x.length - CROSSINGS) {
            return inside(x, base - CROSSINGS + 1, (place - base) * STEPS);
        }
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

    /** The sum of both rows of taps at once, by two sums each, which the processor does beside each other. */
    private static double inside(double[] x, int first, double step) {
        int row = Math.min((int) step, STEPS - 1) * TAPS;
        double even = 0;
        double odd = 0;
        double evenNext = 0;
        double oddNext = 0;
        for (int tap = 0; tap < TAPS; tap += 2) {
            double a = x[first + tap];
            double b = x[first + tap + 1];
            even += a * TAPS_BY_STEP[row + tap];
            odd += b * TAPS_BY_STEP[row + tap + 1];
            evenNext += a * TAPS_BY_STEP[row + TAPS + tap];
            oddNext += b * TAPS_BY_STEP[row + TAPS + tap + 1];
        }
        double here = even + odd;
        return here + (step - row / TAPS) * (evenNext + oddNext - here);
    }
}
