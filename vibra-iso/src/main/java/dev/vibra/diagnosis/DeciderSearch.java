package dev.vibra.diagnosis;

import dev.vibra.diagnosis.Ranking.Candidate;
import dev.vibra.fault.Counts;
import dev.vibra.fault.FaultTable;
import dev.vibra.fault.Symptom;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds the measurements that would part a leading group, by the gain of information that the counts let expect. */
final class DeciderSearch {
    private final FaultTable table;
    private final Counts counts;
    private final List<Candidate> group;
    private final AnswerSheet sheet;
    private final double none;

    DeciderSearch(FaultTable table, Counts counts, List<Candidate> group, AnswerSheet sheet, double none) {
        this.table = table;
        this.counts = counts;
        this.group = group;
        this.sheet = sheet;
        this.none = none;
    }

    /** At most three of each effort; the gentlest first, the most telling first among them. */
    List<Decider> deciders() {
        return Experiment.best(table.symptoms().stream().map(this::experiment).flatMap(Optional::stream).toList());
    }

    /** Empty where it was measured, or was never counted for the group. */
    private Optional<Experiment> experiment(Symptom symptom) {
        if (group.stream().noneMatch(one -> sheet.isOpen(symptom, one.leader().site()))) {
            return Optional.empty();
        }
        int size = group.size() + 1;
        List<String> names = new ArrayList<>();
        double[] weight = new double[size];
        double[] seen = new double[size];
        for (int i = 0; i < group.size(); i++) {
            Optional<Double> share = share(group.get(i), symptom);
            if (share.isEmpty()) {
                return Optional.empty();
            }
            names.add(group.get(i).leader().words());
            weight[i] = group.get(i).share();
            seen[i] = share.get();
        }
        names.add(Experiment.NONE);
        weight[size - 1] = none;
        seen[size - 1] = counts.soundShare(group.get(0).leader().site().kind(), symptom.code()).orElse(0.5);
        return Optional.of(new Experiment(symptom, names, weight, seen));
    }

    /** Share of the kinds of a code that would show it; asked elsewhere than at its site it is a sound machine's. */
    private Optional<Double> share(Candidate candidate, Symptom symptom) {
        double sum = 0;
        for (Ranking.Ranked kind : candidate.kinds()) {
            Optional<Double> share = counts.share(kind.hypothesis().fault(), symptom.code());
            if (share.isEmpty()) {
                return Optional.empty();
            }
            sum += kind.share() * share.get();
        }
        return Optional.of(sum / candidate.share());
    }
}
