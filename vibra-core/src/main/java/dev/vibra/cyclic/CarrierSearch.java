package dev.vibra.cyclic;

import java.util.Arrays;
import java.util.Optional;

/** Search for the run of carriers in which the coherences at a rate and its multiples stand out most. */
final class CarrierSearch {
    /** Impacts that ring for less than a third of their interval have three multiples alike; more add noise. */
    private static final int MULTIPLES = 3;
    /** Lines on either side of a multiple whose median tells what stands there without the rate. */
    private static final int BESIDE = 50;

    private final double[] coherences;
    private final int carriers;
    private final int lines;
    private final double line;
    private final double tolerance;
    private final int multiples;
    private final double[] floors;

    /** A run of carriers, both included, with its line (not whole) and its excess. */
    record Run(int first, int last, double line, double excess) {}

    CarrierSearch(double[] coherences, int carriers, int lines, double line, double tolerance) {
        this.coherences = coherences;
        this.carriers = carriers;
        this.lines = lines;
        this.line = line;
        this.tolerance = tolerance;
        multiples = (int) Math.min(MULTIPLES, Math.floor((lines - 0.5) / (line + tolerance)));
        floors = new double[carriers * MULTIPLES];
    }

    /** Empty where not even the rate itself is among the lines, or it can't be told from 0 Hz. */
    Optional<Run> best() {
        if (multiples < 1 || line - tolerance < 1) {
            return Optional.empty();
        }
        for (int c = 0; c < carriers; c++) {
            for (int m = 1; m <= multiples; m++) {
                floors[c * MULTIPLES + m - 1] = floor(c, m);
            }
        }
        // By thirds of a line, which are whole lines of the third multiple.
        int steps = (int) Math.floor(tolerance * MULTIPLES);
        Run best = null;
        for (int i = -steps; i <= steps; i++) {
            Run run = bestRun(line + (double) i / MULTIPLES);
            best = best == null || run.excess() > best.excess() ? run : best;
        }
        return Optional.ofNullable(best);
    }

    /** Mean of the exponential distribution whose median is that of the lines beside a multiple. */
    private double floor(int carrier, int multiple) {
        double centre = multiple * line;
        double guard = multiple * tolerance + 2;
        int from = (int) Math.max(1, Math.floor(centre - guard) - BESIDE);
        int to = (int) Math.min(lines - 1, Math.ceil(centre + guard) + BESIDE);
        double[] beside = new double[to - from + 1];
        int count = 0;
        for (int a = from; a <= to; a++) {
            if (Math.abs(a - centre) > guard) {
                beside[count++] = coherences[carrier * lines + a];
            }
        }
        Arrays.sort(beside, 0, count);
        return count == 0 ? 0 : beside[count / 2] / Math.log(2);
    }

    /** Each carrier scatters by its floor, so that after division all scatter by 1 and a sum over J by √J. */
    private Run bestRun(double fundamental) {
        double[] sums = new double[carriers + 1];
        for (int c = 0; c < carriers; c++) {
            sums[c + 1] = sums[c] + excess(c, fundamental);
        }
        Run best = new Run(0, 0, fundamental, Double.NEGATIVE_INFINITY);
        for (int first = 0; first < carriers; first++) {
            for (int last = first; last < carriers; last++) {
                double excess = (sums[last + 1] - sums[first]) / Math.sqrt((last - first + 1.0) * multiples);
                if (excess > best.excess()) {
                    best = new Run(first, last, fundamental, excess);
                }
            }
        }
        return best;
    }

    private double excess(int carrier, double fundamental) {
        double sum = 0;
        for (int m = 1; m <= multiples; m++) {
            double floor = floors[carrier * MULTIPLES + m - 1];
            int at = (int) Math.min(lines - 1, Math.round(m * fundamental));
            sum += floor > 0 ? coherences[carrier * lines + at] / floor - 1 : 0;
        }
        return sum;
    }
}
