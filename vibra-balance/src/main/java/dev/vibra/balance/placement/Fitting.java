package dev.vibra.balance.placement;

import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.internal.Require;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * Masses on given positions, within given limits, that leave the least vibration: by the sum of squares, or by the
 * largest residual.
 *
 * <p>Each plane can make the unbalances of a polygon. Over these polygons the sum of squares is minimised by projected
 * gradients (Beck and Teboulle 2009), the largest residual by linear programs with cuts (Kelley 1960). Of the many sets
 * of masses that make one unbalance, the lightest is taken. With given sizes in all planes all choices are
 * tried if there are at most a million; else the search goes from the rounded masses by exchanges of one and of two
 * positions to a choice that no such exchange betters, which need not be the best of all.
 */
public final class Fitting {
    private static final int MOST_TURNS = 10;

    private final InfluenceCoefficients coefficients;
    private final Phasor[] vibration;
    private final double[] weights;
    private final List<PlaneFitting> planes;

    private Fitting(InfluenceCoefficients coefficients, Phasor[] vibration, double[] weights,
            List<PlaneFitting> planes) {
        this.coefficients = coefficients;
        this.vibration = vibration;
        this.weights = weights;
        this.planes = planes;
    }

    /**
     * Sets the problem.
     *
     * @param coefficients influence coefficients
     * @param vibration vibration to cancel, one element per reading, zero-to-peak SI; copied
     * @param weights factor on each residual, finite, zero or more; copied
     * @param planes what can be fitted, one element per plane in the order of the coefficients
     * @return the problem
     * @throws IllegalArgumentException if a count is wrong or a weight out of range
     */
    public static Fitting of(InfluenceCoefficients coefficients, Phasor[] vibration, double[] weights,
            List<PlaneFitting> planes) {
        Objects.requireNonNull(coefficients, "coefficients");
        Objects.requireNonNull(vibration, "vibration");
        Objects.requireNonNull(weights, "weights");
        Objects.requireNonNull(planes, "planes");
        int rows = coefficients.layout().rows();
        if (vibration.length != rows || weights.length != rows) {
            throw new IllegalArgumentException("vibration and weights must be one per reading, " + rows + ": "
                    + vibration.length + " and " + weights.length);
        }
        if (planes.size() != coefficients.layout().planes().size()) {
            throw new IllegalArgumentException("fittings must be one per plane, " + coefficients.layout().planes()
                    .size()
                    + ": " + planes.size());
        }
        for (double weight : weights) {
            Require.notNegative("weight", weight, "");
        }
        return new Fitting(coefficients, vibration.clone(), weights.clone(), List.copyOf(planes));
    }

    /**
     * Finds the masses that leave the least weighted sum of squares.
     *
     * @return masses and what they leave
     * @throws IllegalStateException if planes act so alike that the search does not settle
     */
    public FittedMasses leastSquares() {
        return fitted(false);
    }

    /**
     * Finds the masses whose largest weighted residual is least.
     *
     * @return masses and what they leave
     */
    public FittedMasses minimax() {
        return fitted(true);
    }

    /** The best masses within limits, sizes left aside. */
    private static double[] relaxed(Phasor[][] effects, Phasor[] target, List<PlaneFitting> planes, boolean minimax) {
        return minimax ? new PolygonMinimax(effects, target, planes).solve()
                : new PolygonLeastSquares(effects, target, planes).solve();
    }

    /** Planes of given sizes hold no more than the largest of them on a position. */
    private List<PlaneFitting> bounded() {
        return planes.stream().map(p -> p.sizesGrams().isEmpty() ? p : p.atMostEach(Math.min(p.eachGrams(),
                p.sizesGrams().stream().mapToDouble(Double::doubleValue).max().orElseThrow()))).toList();
    }

    private FittedMasses fitted(boolean minimax) {
        Phasor[][] effects = effects();
        Phasor[] target = target();
        SizeSearch sizes = new SizeSearch(effects, target, planes, minimax);
        // Where all given sizes are tried, no start is needed.
        double[] grams = sizes.triesAll() ? new double[effects[0].length]
                : relaxed(effects, target, bounded(), minimax);
        boolean anyMass = planes.stream().allMatch(p -> p.sizesGrams().isEmpty());
        double[] chosen = anyMass ? grams : withSizes(sizes, grams, minimax);
        double nothing = 1e-9 * Arrays.stream(chosen).max().orElse(0); // less is rounding
        List<List<PositionedMass>> masses = new ArrayList<>();
        List<PlacedMass> sums = new ArrayList<>();
        int column = 0;
        for (PlaneFitting plane : planes) {
            List<PositionedMass> inPlane = new ArrayList<>();
            for (int position : plane.positions().free()) {
                if (chosen[column] > nothing) {
                    inPlane.add(new PositionedMass(position, chosen[column]));
                }
                column++;
            }
            inPlane.sort(Comparator.comparingInt(PositionedMass::position));
            masses.add(inPlane);
            sums.add(plane.positions().combined(inPlane));
        }
        return new FittedMasses(coefficients.layout().planes(), masses, sums, left(sums), minimax,
                anyMass || sizes.triesAll());
    }

    /**
     * Where some planes take any mass, these are fitted anew to what the sizes leave, and the sizes to them, in turn.
     */
    private double[] withSizes(SizeSearch sizes, double[] grams, boolean minimax) {
        double[] best = sizes.from(grams);
        boolean mixed = planes.stream().anyMatch(p -> p.sizesGrams().isEmpty());
        for (int turn = 0; mixed && turn < MOST_TURNS; turn++) {
            double[] next = sizes.from(freeAnew(best, minimax));
            if (!(sizes.left(next) < sizes.left(best) * (1 - 1e-9))) {
                break;
            }
            best = next;
        }
        return mixed ? freeAnew(best, minimax) : best;
    }

    /** Masses of the planes without sizes, best for the sizes that stand in the others. */
    private double[] freeAnew(double[] grams, boolean minimax) {
        Phasor[][] effects = effects();
        Phasor[] rest = target();
        List<Integer> free = new ArrayList<>();
        int column = 0;
        for (PlaneFitting plane : planes) {
            for (int k = 0; k < plane.positions().free().size(); k++, column++) {
                if (plane.sizesGrams().isEmpty()) {
                    free.add(column);
                } else {
                    for (int i = 0; i < rest.length; i++) {
                        rest[i] = rest[i].plus(effects[i][column].times(grams[column]));
                    }
                }
            }
        }
        Phasor[][] ofFree = Arrays.stream(effects).map(row -> free.stream().map(c -> row[c]).toArray(Phasor[]::new))
                .toArray(Phasor[][]::new);
        List<PlaneFitting> open = planes.stream().filter(p -> p.sizesGrams().isEmpty()).toList();
        double[] found = relaxed(ofFree, rest, open, minimax);
        double[] out = grams.clone();
        for (int k = 0; k < found.length; k++) {
            out[free.get(k)] = found[k];
        }
        return out;
    }

    private List<Phasor> left(List<PlacedMass> sums) {
        Phasor[] unbalances = new Phasor[planes.size()];
        for (int j = 0; j < unbalances.length; j++) {
            unbalances[j] = sums.get(j).kilograms().times(coefficients.layout().lever(j));
        }
        Phasor[] change = coefficients.response(unbalances);
        List<Phasor> out = new ArrayList<>();
        for (int i = 0; i < vibration.length; i++) {
            out.add(vibration[i].plus(change[i]));
        }
        return out;
    }

    /** Weighted vibration per gram at each position, all planes one after the other. */
    private Phasor[][] effects() {
        Phasor[][] out = new Phasor[vibration.length][];
        for (int i = 0; i < out.length; i++) {
            List<Phasor> row = new ArrayList<>();
            for (int j = 0; j < planes.size(); j++) {
                Phasor perGram = coefficients.at(i, j).times(coefficients.layout().lever(j) / 1000 * weights[i]);
                for (int position : planes.get(j).positions().free()) {
                    row.add(perGram.times(planes.get(j).positions().direction(position)));
                }
            }
            out[i] = row.toArray(Phasor[]::new);
        }
        return out;
    }

    private Phasor[] target() {
        Phasor[] out = new Phasor[vibration.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = vibration[i].times(weights[i]);
        }
        return out;
    }

    /** Returns planes and limits in one line. */
    @Override
    public String toString() {
        return "fitting of " + String.join("; ", planes.stream().map(PlaneFitting::toString).toList());
    }
}
