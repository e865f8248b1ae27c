package dev.vibra.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** How the hypotheses of one round stand; the shares of all and that of "none of these" make up 1. */
final class Ranking {
    /** The leading group reaches down to a third of the first. */
    private static final double GROUP = 3;

    private final List<Ranked> ranked;
    private final double none;

    /** A hypothesis with its share. */
    record Ranked(Hypothesis hypothesis, double share) {}

    /** All kinds of one code at one site. */
    record Candidate(List<Ranked> kinds, double share) {
        /** The best supported kind. */
        Hypothesis leader() {
            return kinds.get(0).hypothesis();
        }

        String code() {
            return leader().fault().code();
        }
    }

    private Ranking(List<Ranked> ranked, double none) {
        this.ranked = ranked;
        this.none = none;
    }

    /** Of logarithms of ratios to "none of these". */
    static Ranking of(List<Hypothesis> hypotheses, double[] logRatios) {
        double largest = 0;
        for (double ratio : logRatios) {
            largest = Math.max(largest, ratio);
        }
        double none = Math.exp(-largest);
        double sum = none;
        double[] weights = new double[logRatios.length];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = hypotheses.get(i).prior() * Math.exp(logRatios[i] - largest);
            sum += weights[i];
        }
        List<Ranked> ranked = new ArrayList<>();
        for (int i = 0; i < weights.length; i++) {
            ranked.add(new Ranked(hypotheses.get(i), weights[i] / sum));
        }
        ranked.sort(Comparator.comparingDouble(Ranked::share).reversed());
        return new Ranking(List.copyOf(ranked), none / sum);
    }

    /** Share of "none of these". */
    double none() {
        return none;
    }

    /** Codes at sites, the best supported first. */
    List<Candidate> candidates() {
        Map<String, List<Ranked>> byKey = new LinkedHashMap<>();
        ranked.forEach(one -> byKey.computeIfAbsent(one.hypothesis().key(), key -> new ArrayList<>()).add(one));
        return byKey.values().stream()
                .map(kinds -> new Candidate(List.copyOf(kinds), kinds.stream().mapToDouble(Ranked::share).sum()))
                .sorted(Comparator.comparingDouble(Candidate::share).reversed()).toList();
    }

    /** The candidates within a factor 3 of the first. */
    List<Candidate> group() {
        List<Candidate> all = candidates();
        return all.stream().filter(one -> GROUP * one.share() >= all.get(0).share()).toList();
    }
}
