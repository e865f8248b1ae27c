package dev.vibra.record;

import dev.vibra.internal.Means;
import dev.vibra.internal.Require;
import dev.vibra.transform.RealTransform;
import java.util.Arrays;

/** The lines of a recording about its mean. */
final class RecordTransform {
    /** Mean square over the squared mean below which samples leave their mean by rounding only. */
    private static final double ROUNDING = 1e-20;

    private final int length;
    private final RealTransform transform;

    RecordTransform(int length) {
        this.length = Require.count("number of samples", length, 16, Require.MOST_SAMPLES);
        transform = RealTransform.of(length);
    }

    int length() {
        return length;
    }

    int spectrumLength() {
        return 2 * transform.lines();
    }

    /** The lines may take the place of the samples. */
    void forward(double[] samples, int offset, double[] lines) {
        Require.range("samples", samples, offset, length);
        double mean = Means.sumOfDistances(samples, offset, length, 0) / length;
        double meanSquare = squares(samples, offset, mean) / length;
        if (!(meanSquare <= Require.LARGEST_SAMPLE * Require.LARGEST_SAMPLE)) {
            Require.samples(samples, offset, length);
        }
        if (!(meanSquare > ROUNDING * mean * mean)) {
            Arrays.fill(lines, 0);
            return;
        }
        transform.forward(samples, offset, mean, lines);
        lines[0] = 0;
    }

    private double squares(double[] x, int offset, double mean) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int i = offset;
        for (; i < offset + length - 3; i += 4) {
            a += (x[i] - mean) * (x[i] - mean);
            b += (x[i + 1] - mean) * (x[i + 1] - mean);
            c += (x[i + 2] - mean) * (x[i + 2] - mean);
            d += (x[i + 3] - mean) * (x[i + 3] - mean);
        }
        for (; i < offset + length; i++) {
            a += (x[i] - mean) * (x[i] - mean);
        }
        return a + b + (c + d);
    }
}
