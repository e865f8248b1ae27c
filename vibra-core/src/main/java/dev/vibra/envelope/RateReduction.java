package dev.vibra.envelope;

import dev.vibra.transform.RealTransform;
import java.util.Arrays;

/** Cuts a periodic signal off above a line and samples it at a lower rate. */
final class RateReduction {
    private final RealTransform from;
    private final RealTransform to;
    private final int lastLine;
    private final double[] input;
    private final double[] spectrum;
    private final double[] kept;

    RateReduction(int fine, int coarse, int lastLine) {
        from = RealTransform.of(fine);
        to = RealTransform.of(coarse);
        this.lastLine = Math.min(lastLine, (coarse - 1) / 2);
        input = new double[fine];
        spectrum = new double[2 * from.lines()];
        kept = new double[2 * to.lines()];
    }

    /** Returns the array to fill before {@link #reduce}. */
    double[] input() {
        return input;
    }

    void reduce(double[] out) {
        from.forward(input, 0, spectrum);
        double scale = (double) to.length() / from.length();
        int count = 2 * (lastLine + 1);
        for (int i = 0; i < count; i++) {
            kept[i] = scale * spectrum[i];
        }
        Arrays.fill(kept, count, kept.length, 0);
        to.inverse(kept, out, 0);
    }
}
