package dev.vibra.envelope;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import dev.vibra.transform.ComplexTransform;
import java.util.Arrays;

/**
 * The lines of a band of a recording, doubled, moved down to 0 Hz and transformed back: the analytic signal of the band
 * at a lower rate. The move doesn't change its magnitude. The band is a brick wall at line resolution.
 */
final class AnalyticBand {
    private final int length;
    private final int first;
    private final int last;

    AnalyticBand(int length, double sampleRateHertz, Band band) {
        this.length = Require.atLeast("length", length, 4);
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        band.requireBelowNyquist(sampleRateHertz);
        double resolution = sampleRateHertz / length;
        first = (int) Math.ceil(band.lowestHertz() / resolution - 1e-9);
        last = Math.min(length / 2, (int) Math.floor(band.highestHertz() / resolution + 1e-9));
        if (last <= first) {
            throw new IllegalArgumentException("band must hold at least two lines, " + resolution + " Hz apart: "
                    + band);
        }
    }

    /** Width of the band in lines. */
    int width() {
        return last - first;
    }

    /** A power of two at least twice as many times the lines of the band, at most the length of the recording. */
    int samples(int finer) {
        long least = 2L * finer * (width() + 1);
        return (int) Math.min(length, Long.highestOneBit(least - 1) << 1);
    }

    /** Writes the analytic signal at as many samples as the transform has; those with no mirror aren't doubled. */
    void fill(double[] spectrum, ComplexTransform back, double[] analytic) {
        Arrays.fill(analytic, 0, 2 * back.length(), 0);
        double scale = (double) back.length() / length;
        for (int k = first; k <= last; k++) {
            double factor = k == 0 || 2 * k == length ? scale : 2 * scale;
            analytic[2 * (k - first)] = factor * spectrum[2 * k];
            analytic[2 * (k - first) + 1] = factor * spectrum[2 * k + 1];
        }
        back.inverse(analytic, 0);
    }
}
