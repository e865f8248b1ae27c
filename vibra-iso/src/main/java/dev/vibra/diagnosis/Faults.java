package dev.vibra.diagnosis;

import dev.vibra.fault.Counts;
import dev.vibra.fault.Fault;
import dev.vibra.fault.FaultTable;
import dev.vibra.fault.Symptom;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The reference of fault patterns: {@code Faults.reference()}. It is made of the table and the counts that the engine
 * weighs with and of nothing else, so the two can't disagree. What is counted comes from forward models of each fault,
 * driven through random supports, sensors and noise, not from plants.
 *
 * @see "ISO 13379-1:2012, fault and symptom tables (from memory, unverified)"
 */
public final class Faults {
    /** What tells less than that in the mean, in nepers, is no part of a pattern; common practice, no source. */
    private static final double TELLS = 0.1;
    /** Measurements of each effort that are named for a pair. */
    private static final int EACH_EFFORT = 2;

    private final FaultTable table;
    private final Counts counts;

    private Faults(FaultTable table, Counts counts) {
        this.table = table;
        this.counts = counts;
    }

    /** {@return the pattern of each fault that is looked for, in the order of the table} */
    public static List<FaultPattern> reference() {
        Faults faults = new Faults(FaultTable.standard(), Counts.standard());
        return faults.table.faults().stream().map(faults::pattern).toList();
    }

    /**
     * Finds the pattern of one fault.
     *
     * @param id its id, as in {@code misalignment/angular}
     * @return the pattern
     * @throws IllegalArgumentException if there is none
     */
    public static FaultPattern pattern(String id) {
        Objects.requireNonNull(id, "id");
        return new Faults(FaultTable.standard(), Counts.standard()).pattern(FaultTable.standard().fault(id));
    }

    /** For tests, with counts of their own. */
    static FaultPattern pattern(Fault fault, FaultTable table, Counts counts) {
        return new Faults(table, counts).pattern(fault);
    }

    private FaultPattern pattern(Fault fault) {
        List<FaultPattern.CountedSymptom> symptoms = table.symptoms().stream().map(symptom -> counted(fault, symptom))
                .flatMap(Optional::stream).filter(one -> one.weight() >= TELLS)
                .sorted(Comparator.comparingDouble(FaultPattern.CountedSymptom::weight).reversed()).toList();
        return new FaultPattern(fault.id(), fault.words(), fault.site(), symptoms,
                fault.mimics().stream().map(table::fault).map(other -> mimic(fault, other)).toList(), fault.source());
    }

    /**
     * The weight is the expected logarithm of the ratio of probabilities with the fault to those without.
     *
     * @see "S. Kullback, R. A. Leibler, Ann. Math. Statist. 22 (1951) 79-86, mean information for discrimination"
     */
    private Optional<FaultPattern.CountedSymptom> counted(Fault fault, Symptom symptom) {
        Optional<Double> with = counts.share(fault, symptom.code());
        Optional<Double> without = counts.soundShare(fault.site(), symptom.code());
        if (with.isEmpty() || without.isEmpty()) {
            return Optional.empty();
        }
        double p = with.get();
        double q = without.get();
        double weight = p * Math.log(p / q) + (1 - p) * Math.log((1 - p) / (1 - q));
        int[] sick = counts.seenOf(fault.id(), symptom.code());
        int[] sound = counts.seenOf(Counts.soundAt(fault.site()), symptom.code());
        return Optional.of(new FaultPattern.CountedSymptom(symptom.code(), symptom.seenAs(), sick[0], sick[1], sound[0],
                sound[1], Math.max(0, weight)));
    }

    private FaultPattern.Mimic mimic(Fault fault, Fault other) {
        List<Experiment> experiments = new ArrayList<>();
        for (Symptom symptom : table.symptoms()) {
            Optional<Double> one = counts.share(fault, symptom.code());
            Optional<Double> two = counts.share(other, symptom.code());
            if (one.isPresent() && two.isPresent()) {
                experiments.add(new Experiment(symptom, List.of(fault.words(), other.words()), new double[] {1, 1},
                        new double[] {one.get(), two.get()}));
            }
        }
        return new FaultPattern.Mimic(other.id(), other.words(), Experiment.best(experiments, EACH_EFFORT));
    }

    /** Returns what it is made of. */
    @Override
    public String toString() {
        return "reference of " + table + ", " + counts;
    }
}
