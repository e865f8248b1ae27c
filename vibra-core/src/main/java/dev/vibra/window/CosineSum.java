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
        return ofCosine(Math.cos(2 * Math.PI * place));
    }

    /**
     * The cosine of a sum of two angles, of which there are twice the root of the length; cosines of multiples are
     * polynomials of it. Agrees with {@link #at} to 1e-15.
     */
    @Override
    public double[] samples(int length) {
        int stride = (int) Math.ceil(Math.sqrt(length));
        double[] cosine = new double[stride];
        double[] sine = new double[stride];
        for (int i = 0; i < stride; i++) {
            cosine[i] = Math.cos(2 * Math.PI * i / length);
            sine[i] = Math.sin(2 * Math.PI * i / length);
        }
        double[] weights = new double[length];
        for (int from = 0; from < length; from += stride) {
            double turnedCosine = Math.cos(2 * Math.PI * from / length);
            double turnedSine = Math.sin(2 * Math.PI * from / length);
            int count = Math.min(stride, length - from);
            for (int i = 0; i < count; i++) {
                weights[from + i] = ofCosine(cosine[i] * turnedCosine - sine[i] * turnedSine);
            }
        }
        return weights;
    }

    /** Cosines of multiples by their recursion: one cosine costs more than all else. */
    private double ofCosine(double once) {
        double twice = 2 * once * once - 1;
        double thrice = 2 * once * twice - once;
        double fourfold = 2 * twice * twice - 1;
        return a0 - a1 * once + a2 * twice - a3 * thrice + a4 * fourfold;
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
     * in the definition of the window: all terms add up. Their sines are one, but for that sign.
     */
    @Override
    public double response(double bins) {
        double beside = bins - Math.rint(bins);
        if (Math.abs(beside) < 1e-9) {
            double sum = a0 * rectangle(bins) + shifted(a1, 1, bins) + shifted(a2, 2, bins) + shifted(a3, 3, bins)
                    + shifted(a4, 4, bins);
            return Math.abs(sum) / a0;
        }
        double sum = a0 / bins - shared(a1, 1, bins) + shared(a2, 2, bins);
        if (a3 != 0) {
            sum += shared(a4, 4, bins) - shared(a3, 3, bins);
        }
        return Math.abs(Math.sin(Math.PI * beside) / Math.PI * sum) / a0;
    }

    /** Half of {@code a/(x-k) + a/(x+k)}. */
    private static double shared(double a, int k, double bins) {
        return a * bins / ((bins - k) * (bins + k));
    }

    private static double shifted(double a, int k, double bins) {
        return 0.5 * a * (rectangle(bins - k) + rectangle(bins + k));
    }

    private static double rectangle(double bins) {
        return Math.abs(bins) < 1e-9 ? 1 : Math.sin(Math.PI * bins) / (Math.PI * bins);
    }
}
