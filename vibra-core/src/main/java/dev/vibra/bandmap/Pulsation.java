package dev.vibra.bandmap;

import dev.vibra.transform.RealTransform;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/** Arithmetic of the criteria on a squared envelope scaled to mean 1; workspace, not thread-safe. */
final class Pulsation {
    /** Inverse widths that a jump takes to fade: after four, its envelope is down to 1/(4π) of what it was. */
    private static final double ENDS = 4;

    private final Map<Integer, RealTransform> transforms = new HashMap<>();
    private double[] squares = {};
    private double[] lines = {};
    private int length;
    private int from;
    private int to;
    private int lastLine;

    /**
     * Takes an envelope, which is overwritten.
     *
     * @return whether its mean is above the least one
     */
    boolean take(double[] owned, int count, double rateHertz, double widthHertz, double least) {
        squares = owned;
        length = count;
        from = (int) Math.min(count / 8, Math.ceil(ENDS * rateHertz / widthHertz));
        to = count - from;
        lastLine = (int) Math.max(1, Math.min((count - 1) / 2, Math.round(widthHertz * count / rateHertz)));
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += squares[i];
        }
        double mean = sum / (to - from);
        if (!(mean > least)) {
            return false;
        }
        for (int i = from; i < to; i++) {
            squares[i] /= mean;
        }
        return true;
    }

    double measured(BandCriterion criterion) {
        return switch (criterion) {
            case SPECTRAL_KURTOSIS -> kurtosis();
            case ENVELOPE_NEGENTROPY -> negentropy(squares, from, to, 1);
            case ENVELOPE_SPECTRUM_NEGENTROPY -> spectrumNegentropy();
            case MEAN_NEGENTROPY -> 0.5 * (negentropy(squares, from, to, 1) + spectrumNegentropy());
        };
    }

    private double kurtosis() {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += squares[i] * squares[i];
        }
        return sum / (to - from) - 2;
    }

    /** The ends that don't count are given the mean, so that they add nothing to the lines above 0 Hz. */
    private double spectrumNegentropy() {
        Arrays.fill(squares, 0, from, 1);
        Arrays.fill(squares, to, length, 1);
        RealTransform transform = transforms.computeIfAbsent(length, RealTransform::of);
        if (lines.length < 2 * transform.lines()) {
            lines = new double[2 * transform.lines()];
        }
        transform.forward(squares, 0, lines);
        double sum = 0;
        for (int k = 1; k <= lastLine; k++) {
            double power = lines[2 * k] * lines[2 * k] + lines[2 * k + 1] * lines[2 * k + 1];
            lines[k - 1] = power;
            sum += power;
        }
        return negentropy(lines, 0, lastLine, sum / lastLine);
    }

    /** An envelope that doesn't swing at all has no lines, hence no negentropy. */
    private static double negentropy(double[] values, int from, int to, double mean) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            double share = values[i] / mean;
            sum += share > 0 ? share * Math.log(share) : 0;
        }
        return sum / (to - from);
    }
}
