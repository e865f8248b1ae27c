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
        this.length = Require.count("length", length, 4, Require.MOST_SAMPLES);
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
        int count = 2 * (width() + 1);
        System.arraycopy(spectrum, 2 * first, analytic, 0, count);
        Arrays.fill(analytic, count, 2 * back.length(), 0);
        double scale = 2.0 * back.length() / length;
        for (int i = 0; i < count; i++) {
            analytic[i] *= scale;
        }
        if (first == 0) {
            halve(analytic, 0);
        }
        if (2 * last == length) {
            halve(analytic, width());
        }
        back.inverse(analytic, 0);
    }

    private static void halve(double[] lines, int line) {
        lines[2 * line] *= 0.5;
        lines[2 * line + 1] *= 0.5;
    }
}
