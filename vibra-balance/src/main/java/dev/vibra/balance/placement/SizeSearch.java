package dev.vibra.balance.placement;

import dev.vibra.balance.vector.Phasor;
import java.util.ArrayList;
import java.util.List;

/** Chooses masses of given sizes by exchanges of one, then of two positions, until no exchange leaves less. */
final class SizeSearch {
    private static final double BETTER = 1 - 1e-12;

    private final Phasor[][] effects;
    private final Phasor[] vibration;
    private final boolean minimax;
    private final int columns;
    private final int[] planeOf;
    private final double[][] choices; // what may stand on each position, nothing first
    private final double[] allGrams;

    SizeSearch(Phasor[][] effects, Phasor[] vibration, List<PlaneFitting> planes, boolean minimax) {
        this.effects = effects;
        this.vibration = vibration;
        this.minimax = minimax;
        columns = effects[0].length;
        planeOf = new int[columns];
        choices = new double[columns][];
        allGrams = planes.stream().mapToDouble(PlaneFitting::allGrams).toArray();
        int column = 0;
        for (int p = 0; p < planes.size(); p++) {
            for (int i = 0; i < planes.get(p).positions().free().size(); i++, column++) {
                planeOf[column] = p;
                choices[column] = choices(planes.get(p));
            }
        }
    }

    /** Sizes within the limit; an empty array where any mass can be made. */
    private static double[] choices(PlaneFitting plane) {
        List<Double> out = new ArrayList<>();
        if (!plane.sizesGrams().isEmpty()) {
            out.add(0.0);
            plane.sizesGrams().stream().filter(s -> s <= plane.eachGrams()).forEach(out::add);
        }
        return out.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Starts from the rounded masses and from nothing, and keeps the better end. */
    double[] from(double[] grams) {
        double[] rounded = grams.clone();
        double[] nothing = grams.clone();
        for (int j = 0; j < columns; j++) {
            if (choices[j].length > 0) {
                rounded[j] = nearest(choices[j], grams[j]);
                nothing[j] = 0;
            }
        }
        double[] a = withinLimits(rounded) ? improved(rounded) : improved(nothing.clone());
        double[] b = improved(nothing);
        return left(a) <= left(b) ? a : b;
    }

    private static double nearest(double[] sizes, double wanted) {
        double best = sizes[0];
        for (double size : sizes) {
            if (Math.abs(size - wanted) < Math.abs(best - wanted)) {
                best = size;
            }
        }
        return best;
    }

    private double[] improved(double[] grams) {
        double now = left(grams);
        while (true) {
            double after = exchangeOne(grams, now);
            if (!(after < now * BETTER)) {
                after = exchangeTwo(grams, now);
            }
            if (!(after < now * BETTER)) {
                return grams;
            }
            now = after;
        }
    }

    /** Makes the best exchange of one position, if it leaves less. */
    private double exchangeOne(double[] grams, double now) {
        double best = now;
        int where = -1;
        double what = 0;
        for (int j = 0; j < columns; j++) {
            double kept = grams[j];
            for (double choice : choices[j]) {
                grams[j] = choice;
                double after = withinLimits(grams) ? left(grams) : Double.POSITIVE_INFINITY;
                if (after < best * BETTER) {
                    best = after;
                    where = j;
                    what = choice;
                }
            }
            grams[j] = kept;
        }
        if (where >= 0) {
            grams[where] = what;
        }
        return best;
    }

    /** Makes the first exchange of two positions that leaves less. */
    private double exchangeTwo(double[] grams, double now) {
        for (int i = 0; i < columns; i++) {
            double kept = grams[i];
            for (double choice : choices[i]) {
                grams[i] = choice;
                double after = exchangeOne(grams, now);
                if (after < now * BETTER) {
                    return after;
                }
            }
            grams[i] = kept;
        }
        return now;
    }

    private boolean withinLimits(double[] grams) {
        double[] sums = new double[allGrams.length];
        for (int j = 0; j < columns; j++) {
            sums[planeOf[j]] += grams[j];
        }
        for (int p = 0; p < sums.length; p++) {
            if (sums[p] > allGrams[p] * (1 + 1e-9)) {
                return false;
            }
        }
        return true;
    }

    private double left(double[] grams) {
        double square = 0;
        double largest = 0;
        for (int i = 0; i < vibration.length; i++) {
            double re = vibration[i].re();
            double im = vibration[i].im();
            for (int j = 0; j < columns; j++) {
                re += effects[i][j].re() * grams[j];
                im += effects[i][j].im() * grams[j];
            }
            square += re * re + im * im;
            largest = Math.max(largest, re * re + im * im);
        }
        return minimax ? largest : square;
    }
}
