package dev.vibra.diagnosis.study;

import java.util.TreeMap;

/** A motion of a structure: a weighted sum of its degrees of freedom, as of a point in a direction. */
final class Tap {
    private final TreeMap<Integer, Double> weights;

    private Tap(TreeMap<Integer, Double> weights) {
        this.weights = weights;
    }

    static Tap of(int degree) {
        return new Tap(new TreeMap<>()).plus(degree, 1);
    }

    private Tap plus(int degree, double weight) {
        TreeMap<Integer, Double> more = new TreeMap<>(weights);
        more.merge(degree, weight, Double::sum);
        return new Tap(more);
    }

    Tap plus(double factor, Tap other) {
        TreeMap<Integer, Double> more = new TreeMap<>(weights);
        other.weights.forEach((degree, weight) -> more.merge(degree, factor * weight, Double::sum));
        return new Tap(more);
    }

    Tap minus(Tap other) {
        return plus(-1, other);
    }

    Tap times(double factor) {
        return new Tap(new TreeMap<>()).plus(factor, this);
    }

    /** Sum of the values of the degrees of freedom as this motion weighs them. */
    double in(double[] values) {
        double sum = 0;
        for (var entry : weights.entrySet()) {
            sum += entry.getValue() * values[entry.getKey()];
        }
        return sum;
    }

    TreeMap<Integer, Double> weights() {
        return weights;
    }
}
