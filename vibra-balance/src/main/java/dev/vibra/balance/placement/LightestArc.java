package dev.vibra.balance.placement;

import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Phasor;
import java.util.Arrays;

/**
 * Lightest masses on the positions of a circle that make a given unbalance, none above a limit.
 *
 * <p>By duality of linear programs they stand on an arc of less than half a turn: full in its inside, and as much as is
 * needed on its two ends. All arcs are tried.
 */
final class LightestArc {
    /** Masses below this part of the largest are rounding. */
    private static final double NOTHING = 1e-9;

    /** Sine of the smallest angle between two positions, or to half a turn, that is still told apart. */
    private static final double SMALLEST_AREA = 1e-9;

    private final Phasor[] direction;
    private final double counted; // 1 if the positions follow each other with rotation, else -1
    private final double limit;
    private final Phasor wanted;
    private final double scale;
    private double[] best;
    private double bestMiss;

    private LightestArc(PlaneFitting plane, double[] grams, double scale) {
        int n = grams.length;
        this.scale = scale;
        limit = plane.eachGrams() / scale;
        counted = plane.positions().sense() == AngleSense.WITH_ROTATION ? 1 : -1;
        direction = new Phasor[n];
        Phasor sum = Phasor.ZERO;
        for (int i = 0; i < n; i++) {
            direction[i] = plane.positions().direction(plane.positions().free().get(i));
            sum = sum.plus(direction[i].times(grams[i] / scale));
        }
        wanted = sum;
        best = Arrays.stream(grams).map(g -> g / scale).toArray();
        bestMiss = NOTHING;
    }

    /** Returns masses with the unbalance of the given ones, which have to be within the limits. */
    static double[] of(PlaneFitting plane, double[] grams) {
        double scale = Arrays.stream(grams).max().orElse(0);
        if (scale == 0) {
            return grams;
        }
        LightestArc search = new LightestArc(plane, grams, scale);
        for (int first = 0; first < grams.length; first++) {
            for (int steps = 1; steps < grams.length; steps++) {
                search.tryArc(first, steps);
            }
        }
        return search.result();
    }

    private void tryArc(int first, int steps) {
        int n = direction.length;
        if (steps > 1 && limit == Double.POSITIVE_INFINITY) {
            return;
        }
        double[] masses = new double[n];
        Phasor rest = wanted;
        for (int k = 1; k < steps; k++) {
            int inside = (first + k) % n;
            masses[inside] = limit;
            rest = rest.minus(direction[inside].times(limit));
        }
        int last = (first + steps) % n;
        Phasor a = direction[first];
        Phasor b = direction[last];
        double area = counted * (a.re() * b.im() - a.im() * b.re());
        if (!(area > SMALLEST_AREA)) {
            return; // half a turn or more
        }
        masses[first] = within(counted * (rest.re() * b.im() - rest.im() * b.re()) / area);
        masses[last] = within(counted * (a.re() * rest.im() - a.im() * rest.re()) / area);
        double miss = rest.minus(a.times(masses[first])).minus(b.times(masses[last])).magnitude();
        // All arcs that fit are equally light but for rounding; the one that fits best is kept.
        if (miss < bestMiss) {
            best = masses;
            bestMiss = miss;
        }
    }

    private double within(double mass) {
        return mass < NOTHING ? 0 : Math.min(limit, mass);
    }

    private double[] result() {
        return Arrays.stream(best).map(m -> m < NOTHING ? 0 : m * scale).toArray();
    }
}
