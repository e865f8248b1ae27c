package dev.vibra.bearing.proportion;

import dev.vibra.bearing.lines.SearchLines;
import dev.vibra.bearing.lines.RankProbability;
import dev.vibra.bearing.lines.SearchField;
import java.util.Arrays;
import java.util.Optional;

/** Sidebands about the harmonics of a family at a distance: how improbable in noise, how strong. */
final class Sidebands {
    private static final int HARMONICS = 3;
    private static final double LOG_SEEN = Math.log(0.01);

    private final double spacing;
    private final double logProbability;
    private final double share;

    private Sidebands(double spacing, double logProbability, double share) {
        this.spacing = spacing;
        this.logProbability = logProbability;
        this.share = share;
    }

    /**
     * Reads the lines at a distance from each of the first harmonics.
     *
     * @param field lines of the band; those of the family itself explained
     * @param hertz fundamental
     * @param spacing distance in Hz
     */
    static Sidebands of(SearchField field, double hertz, double spacing) {
        SearchLines lines = field.lines();
        double[] logs = new double[2 * HARMONICS];
        Arrays.fill(logs, Double.NaN); // What isn't counted is NaN and sorts behind the rest.
        int counted = 0;
        double share = 0;
        for (int h = 1; h <= HARMONICS; h++) {
            double low = h * hertz - spacing;
            double high = h * hertz + spacing;
            double carrier = depth(lines, h * hertz);
            if (field.holds(low) && field.holds(high) && carrier > 0) {
                logs[counted++] = lines.logProbability(lines.lineAt(low));
                logs[counted++] = lines.logProbability(lines.lineAt(high));
                if (Math.max(logs[counted - 1], logs[counted - 2]) < LOG_SEEN) {
                    share = Math.max(share, Math.min(depth(lines, low), depth(lines, high)) / carrier);
                }
            }
        }
        Arrays.sort(logs);
        return new Sidebands(spacing, RankProbability.log(logs, counted), share);
    }

    private static double depth(SearchLines lines, double hertz) {
        return lines.holds(hertz) ? lines.depthAround(lines.lineAt(hertz)) : 0;
    }

    /** The least probable distance between two; its probability is corrected for the number tried. */
    static Optional<Sidebands> best(SearchField field, double hertz, double from, double to) {
        double step = 0.25 * field.lines().resolutionHertz();
        Sidebands best = null;
        for (int i = 0; from + i * step <= to; i++) {
            Sidebands next = of(field, hertz, from + i * step);
            best = best == null || next.logProbability < best.logProbability ? next : best;
        }
        double trials = Math.log(Math.max(1, (to - from) / field.lines().resolutionHertz()));
        return Optional.ofNullable(best)
                .map(one -> new Sidebands(one.spacing, Math.min(0, one.logProbability + trials), one.share));
    }

    double spacing() {
        return spacing;
    }

    double logProbability() {
        return logProbability;
    }

    /** The weaker sideband of the strongest pair over its carrier, in depth. */
    double share() {
        return share;
    }
}
