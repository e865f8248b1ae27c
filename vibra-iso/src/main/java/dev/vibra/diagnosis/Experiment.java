package dev.vibra.diagnosis;

import dev.vibra.fault.Effort;
import dev.vibra.fault.Symptom;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * A measurement that isn't made yet, with what the counts let expect of it for several faults.
 *
 * @see "D. V. Lindley, Ann. Math. Statist. 27 (1956) 986-1005, expected information of an experiment"
 */
final class Experiment {
    /** How a sound machine is named among the faults. */
    static final String NONE = "none of them";
    private static final int MOST = 3;
    /** Gains below this part of the largest, or of a bit, aren't worth a way to the machine; common practice. */
    private static final double WORTH = 0.3;
    private static final double LEAST_BITS = 0.05;
    /** An outcome speaks for a fault that makes it this many times as likely as all of them together do. */
    private static final double SPEAKS = 1.25;

    private final Symptom symptom;
    private final List<String> names;
    private final double[] weight;
    private final double[] seen;
    private final double yes;

    /** Faults in words with their weights, of any sum, and the share of each that shows the symptom. */
    Experiment(Symptom symptom, List<String> names, double[] weight, double[] seen) {
        this.symptom = symptom;
        this.names = List.copyOf(names);
        double sum = Arrays.stream(weight).sum();
        this.weight = Arrays.stream(weight).map(one -> one / sum).toArray();
        this.seen = seen.clone();
        this.yes = share(this.weight, seen);
    }

    /** The best of each effort; the gentlest first, the most telling first among them. */
    static List<Decider> best(List<Experiment> experiments, int most) {
        List<Experiment> possible = experiments.stream().filter(one -> !one.symptom.isChange())
                .filter(Experiment::speaksForAFault).toList();
        double largest = possible.stream().mapToDouble(Experiment::gain).max().orElse(0);
        List<Decider> deciders = new ArrayList<>();
        for (Effort effort : Effort.values()) {
            possible.stream().filter(one -> one.symptom.effort() == effort)
                    .filter(one -> one.gain() >= Math.max(LEAST_BITS, WORTH * largest))
                    .sorted(Comparator.comparingDouble(Experiment::gain).reversed()).limit(most)
                    .forEach(one -> deciders.add(one.decider()));
        }
        return List.copyOf(deciders);
    }

    static List<Decider> best(List<Experiment> experiments) {
        return best(experiments, MOST);
    }

    double gain() {
        return bits(weight, seen);
    }

    /** Expected gain of information about which of several it is; weights sum up to 1. */
    static double bits(double[] weight, double[] seen) {
        double yes = share(weight, seen);
        double gain = 0;
        for (int i = 0; i < weight.length; i++) {
            gain += part(weight[i], seen[i], yes) + part(weight[i], 1 - seen[i], 1 - yes);
        }
        return gain / Math.log(2);
    }

    private static double share(double[] weight, double[] seen) {
        double yes = 0;
        for (int i = 0; i < weight.length; i++) {
            yes += weight[i] * seen[i];
        }
        return yes;
    }

    private static double part(double weight, double share, double all) {
        return weight * share > 0 ? weight * share * Math.log(share / all) : 0;
    }

    private Decider decider() {
        return new Decider(symptom.code(), symptom.effort(), cautioned(symptom.by(), symptom.effort()), meaning());
    }

    /** What isn't done on a machine that runs as it does is told with its caution. */
    static String cautioned(String measurement, Effort effort) {
        return effort == Effort.RUNNING ? measurement : measurement + " (" + effort.caution() + ")";
    }

    private String meaning() {
        return "if " + symptom.seenAs() + ", it speaks for " + named(spokenFor(true)) + "; if not, for "
                + named(spokenFor(false));
    }

    /** What only lifts or lowers the confidence that nothing is wrong tells nobody where to go. */
    private boolean speaksForAFault() {
        return !spokenFor(true).isEmpty() || spokenFor(false).stream().anyMatch(name -> !name.equals(NONE));
    }

    private Set<String> spokenFor(boolean outcome) {
        Set<String> spoken = new LinkedHashSet<>();
        for (int i = 0; i < weight.length; i++) {
            double share = outcome ? seen[i] : 1 - seen[i];
            if (share >= SPEAKS * (outcome ? yes : 1 - yes)) {
                spoken.add(names.get(i));
            }
        }
        return spoken;
    }

    private static String named(Set<String> names) {
        return names.isEmpty() ? "none more than the others" : String.join(" or ", names);
    }

    /** Returns the symptom and what is expected of it. */
    @Override
    public String toString() {
        return symptom.code() + ", " + gain() + " bits";
    }
}
