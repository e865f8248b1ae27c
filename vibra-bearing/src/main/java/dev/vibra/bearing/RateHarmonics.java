package dev.vibra.bearing;

import java.util.Arrays;

/**
 * A fundamental with its harmonics in one envelope spectrum, and how improbable they are together in noise.
 *
 * <p>A {@link dev.vibra.lines.HarmonicFamily} lists the lines that stand out near multiples of a known fundamental,
 * each interpolated and judged by itself. This one is tried at thousands of fundamentals and so reads bins, leaves out
 * what has another explanation, and is judged as a whole.
 */
final class RateHarmonics {
    /** A line that noise passes more often than this isn't counted as seen. */
    private static final double LOG_SEEN = Math.log(0.01);

    private final BandLines lines;
    private final double hertz;
    private final double[] logs;
    private final int counted;
    private final double logProbability;

    private RateHarmonics(BandLines lines, double hertz, double[] logs, int counted) {
        this.lines = lines;
        this.hertz = hertz;
        this.logs = logs;
        this.counted = counted;
        double[] sorted = logs.clone();
        Arrays.sort(sorted); // What isn't counted is NaN and sorts behind the rest.
        logProbability = RankProbability.log(sorted, counted);
    }

    static RateHarmonics at(BandLines lines, double hertz, int harmonics, LineMask mask) {
        double[] logs = new double[harmonics];
        int counted = 0;
        for (int h = 1; h <= harmonics; h++) {
            boolean usable = lines.holds(h * hertz) && !mask.covers(h * hertz);
            logs[h - 1] = usable ? lines.logProbability(lines.lineAt(h * hertz)) : Double.NaN;
            counted += usable ? 1 : 0;
        }
        return new RateHarmonics(lines, hertz, logs, counted);
    }

    /**
     * The least probable family whose fundamental lies between two frequencies; the grid moves no harmonic by half a
     * bin.
     */
    static RateHarmonics best(BandLines lines, double from, double to, int harmonics, LineMask mask) {
        double step = lines.resolution() / (2 * harmonics);
        RateHarmonics best = at(lines, from, harmonics, mask);
        for (int i = 1; from + i * step <= to; i++) {
            RateHarmonics next = at(lines, from + i * step, harmonics, mask);
            best = next.logProbability < best.logProbability ? next : best;
        }
        return best;
    }

    BandLines lines() {
        return lines;
    }

    /** Natural logarithm of the probability of the family at this one fundamental. */
    double logProbability() {
        return logProbability;
    }

    int counted() {
        return counted;
    }

    /** Places of the fundamental within a reach on either side, between which the highest harmonic moves by one bin. */
    double places(double reach) {
        return Math.max(1, 2 * reach * logs.length / lines.resolution());
    }

    int harmonics() {
        return logs.length;
    }

    boolean seen(int harmonic) {
        return logs[harmonic - 1] < LOG_SEEN;
    }

    double logLineProbability(int harmonic) {
        return logs[harmonic - 1];
    }

    int line(int harmonic) {
        return lines.lineAt(harmonic * hertz);
    }

    /** The fundamental that fits the seen harmonics best: least squares, each weighted with its power. */
    double refinedHertz() {
        double sum = 0;
        double weights = 0;
        for (int h = 1; h <= logs.length; h++) {
            if (seen(h)) {
                double depth = lines.depthAround(line(h));
                sum += depth * depth * h * lines.interpolated(line(h));
                weights += depth * depth * h * h;
            }
        }
        return weights > 0 ? sum / weights : hertz;
    }

    /** Depth that the fundamental and at least one other harmonic reach; zero if either isn't seen. */
    double depth() {
        double others = 0;
        for (int h = 2; h <= logs.length; h++) {
            others = Math.max(others, seen(h) ? lines.depthAround(line(h)) : 0);
        }
        return seen(1) ? Math.min(lines.depthAround(line(1)), others) : 0;
    }
}
