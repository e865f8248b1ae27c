package dev.vibra.balance.placement;

import dev.vibra.balance.vector.Phasor;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Chooses masses of given sizes: all choices are tried where they are few; else exchanges of one, then of two positions
 * are made until no exchange leaves less.
 */
final class SizeSearch {
    private static final double BETTER = 1 - 1e-12;
    private static final double FEW = 1e6;
    /** Far more than any search needs; rounding near zero must not keep it going. */
    private static final int MOST_EXCHANGES = 10_000;

    private final Phasor[][] effects;
    private final Phasor[] vibration;
    private final boolean minimax;
    private final int columns;
    private final int[] planeOf;
    private final double[][] choices; // what may stand on each position, nothing first; empty where any mass may
    private final double[] allGrams;

    /** Masses that are looked at, the vibration that they leave and what stands in each plane. */
    private final class State {
        final double[] grams;
        final double[] re;
        final double[] im;
        final double[] sums = new double[allGrams.length];

        State(double[] grams) {
            this.grams = new double[columns];
            re = Arrays.stream(vibration).mapToDouble(Phasor::re).toArray();
            im = Arrays.stream(vibration).mapToDouble(Phasor::im).toArray();
            for (int j = 0; j < columns; j++) {
                set(j, grams[j]);
            }
        }

        void set(int column, double mass) {
            double change = mass - grams[column];
            grams[column] = mass;
            sums[planeOf[column]] += change;
            for (int i = 0; i < re.length; i++) {
                re[i] += effects[i][column].re() * change;
                im[i] += effects[i][column].im() * change;
            }
        }

        boolean allows(int column, double mass) {
            int plane = planeOf[column];
            return sums[plane] + mass - grams[column] <= allGrams[plane] * (1 + 1e-9);
        }

        /** What would be left, were this mass on that position. */
        double leftWith(int column, double mass) {
            double change = mass - grams[column];
            double square = 0;
            double largest = 0;
            for (int i = 0; i < re.length; i++) {
                double x = re[i] + effects[i][column].re() * change;
                double y = im[i] + effects[i][column].im() * change;
                square += x * x + y * y;
                largest = Math.max(largest, x * x + y * y);
            }
            return minimax ? largest : square;
        }

        double left() {
            return leftWith(0, grams[0]);
        }
    }

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

    private static double[] choices(PlaneFitting plane) {
        return plane.sizesGrams().isEmpty() ? new double[0] : DoubleStream.concat(DoubleStream.of(0),
                plane.sizesGrams().stream().mapToDouble(Double::doubleValue).distinct()
                        .filter(size -> size <= plane.eachGrams())).toArray();
    }

    /** Tells whether all choices are few enough to be tried. */
    boolean triesAll() {
        double count = 1;
        for (double[] choice : choices) {
            count *= choice.length; // zero where any mass may stand
        }
        return count > 0 && count <= FEW;
    }

    /** What masses leave, in the measure that is made small. */
    double left(double[] grams) {
        return new State(grams).left();
    }

    /** Returns the best choice where all are tried, else one that no exchange of two betters. */
    double[] from(double[] grams) {
        if (triesAll()) {
            State state = new State(new double[columns]);
            double[] best = state.grams.clone();
            tryAll(state, 0, best, new double[] {state.left()});
            return best;
        }
        // From the rounded masses and from nothing; the better end is kept.
        double[] rounded = grams.clone();
        double[] nothing = grams.clone();
        for (int j = 0; j < columns; j++) {
            if (choices[j].length > 0) {
                rounded[j] = nearest(choices[j], grams[j]);
                nothing[j] = 0;
            }
        }
        State b = improved(new State(nothing));
        State start = new State(rounded);
        State a = withinLimits(start) ? improved(start) : b;
        return a.left() <= b.left() ? a.grams : b.grams;
    }

    private void tryAll(State state, int column, double[] best, double[] least) {
        if (column == columns) {
            double left = state.left();
            if (left < least[0] * BETTER) {
                least[0] = left;
                System.arraycopy(state.grams, 0, best, 0, columns);
            }
            return;
        }
        for (double choice : choices[column]) {
            if (state.allows(column, choice)) {
                state.set(column, choice);
                tryAll(state, column + 1, best, least);
            }
        }
        state.set(column, 0);
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

    private boolean withinLimits(State state) {
        for (int p = 0; p < allGrams.length; p++) {
            if (state.sums[p] > allGrams[p] * (1 + 1e-9)) {
                return false;
            }
        }
        return true;
    }

    private State improved(State state) {
        for (int step = 0; step < MOST_EXCHANGES; step++) {
            double now = state.left();
            if (!exchangeOne(state, now) && !exchangeTwo(state, now)) {
                break;
            }
        }
        return state;
    }

    /** Makes the best exchange of one position; tells whether there was one that leaves less than the given. */
    private boolean exchangeOne(State state, double now) {
        double best = now;
        int where = -1;
        double what = 0;
        for (int j = 0; j < columns; j++) {
            for (double choice : choices[j]) {
                if (choice != state.grams[j] && state.allows(j, choice) && state.leftWith(j, choice) < best * BETTER) {
                    best = state.leftWith(j, choice);
                    where = j;
                    what = choice;
                }
            }
        }
        if (where >= 0) {
            state.set(where, what);
        }
        return where >= 0;
    }

    /** Makes the first exchange of two positions that leaves less. */
    private boolean exchangeTwo(State state, double now) {
        for (int i = 0; i < columns; i++) {
            double kept = state.grams[i];
            for (double choice : choices[i]) {
                // What first adds and then takes away is tried the other way round too, which keeps to the limit.
                if (state.allows(i, choice)) {
                    state.set(i, choice);
                    if (exchangeOne(state, now)) {
                        return true;
                    }
                }
            }
            state.set(i, kept);
        }
        return false;
    }
}
