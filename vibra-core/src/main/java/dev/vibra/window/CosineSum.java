package dev.vibra.window;

import dev.vibra.internal.Require;
import java.util.Arrays;

/** {@code a0 - a1·cos(x) + a2·cos(2x) - a3·cos(3x) + a4·cos(4x)}, x from 0 to 2π. */
record CosineSum(double a0, double a1, double a2, double a3, double a4) implements WindowShape {
    CosineSum {
        Require.positive("a0", a0, "");
        for (double a : new double[] {a1, a2, a3, a4}) {
            Require.notNegative("coefficient", a, "");
        }
    }

    static CosineSum of(double... a) {
        double[] all = Arrays.copyOf(a, 5);
        return new CosineSum(all[0], all[1], all[2], all[3], all[4]);
    }

    @Override
    public double at(double place) {
        double x = 2 * Math.PI * place;
        return a0 - a1 * Math.cos(x) + a2 * Math.cos(2 * x) - a3 * Math.cos(3 * x) + a4 * Math.cos(4 * x);
    }

    @Override
    public double mainLobeHalfWidth() {
        return a4 != 0 ? 5 : a3 != 0 ? 4 : a2 != 0 ? 3 : a1 != 0 ? 2 : 1;
    }

    @Override
    public double mean() {
        return a0;
    }

    @Override
    public double meanSquare() {
        return a0 * a0 + 0.5 * (a1 * a1 + a2 * a2 + a3 * a3 + a4 * a4);
    }

    /**
     * Shifted by a whole k, the phase factor exp(-iπx) of the rectangle leaves a sign (-1)^k, which meets the same sign
     * in the definition of the window: all terms add up.
     */
    @Override
    public double response(double bins) {
        double sum = a0 * rectangle(bins) + shifted(a1, 1, bins) + shifted(a2, 2, bins) + shifted(a3, 3, bins)
                + shifted(a4, 4, bins);
        return Math.abs(sum) / a0;
    }

    private static double shifted(double a, int k, double bins) {
        return 0.5 * a * (rectangle(bins - k) + rectangle(bins + k));
    }

    private static double rectangle(double bins) {
        return Math.abs(bins) < 1e-9 ? 1 : Math.sin(Math.PI * bins) / (Math.PI * bins);
    }
}
