package dev.vibra.diagnosis;

import dev.vibra.diagnosis.AnswerSheet.Asked;
import dev.vibra.fault.Counts;
import dev.vibra.fault.Fault;
import dev.vibra.fault.FaultTable;
import dev.vibra.fault.Presence;
import dev.vibra.symptom.Answer;
import dev.vibra.symptom.Site;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Fits the exponent of the ratios, and the threshold for telling a fault. */
final class CountsFit {
    /**
     * Quiet sound machines of these that may be told a fault; of 212 sound ones of the other generator (seeds 630001 to
     * 630800 of the study) none was then.
     */
    private static final double FALSE = 0.03;
    private static final double MOST = 0.2;

    private final FaultTable table;
    private final Counts counts;
    private final List<DrawnMachine> machines;

    CountsFit(FaultTable table, Counts counts, List<DrawnMachine> machines) {
        this.table = table;
        this.counts = counts;
        this.machines = machines.stream().map(this::asSurveyed).toList();
    }

    /** What a first survey has: no test made, and a reference of every other machine. */
    private DrawnMachine asSurveyed(DrawnMachine machine) {
        boolean reference = machine.seed() / 200 % 2 == 0;
        Map<Asked, Answer> answers = new LinkedHashMap<>();
        for (Asked asked : machine.sheet().asked()) {
            boolean missing = table.symptom(asked.symptom()).isTest()
                    || !reference && asked.symptom().endsWith("rose");
            answers.put(asked, missing ? Answer.notMeasured("") : machine.sheet().of(asked));
        }
        return new DrawnMachine(machine.seed(), machine.fault(), machine.owner(), AnswerSheet.of(answers));
    }

    /** Exponent with the best mean logarithm of the share of the truth; a quarter of the weight is with sound machines. */
    double exponent() {
        double sound = machines.stream().filter(one -> one.fault().isEmpty()).count();
        double weight = (machines.size() - sound) / (3 * sound);
        List<Case> cases = machines.stream().map(this::weighed).toList();
        double best = 1;
        double most = Double.NEGATIVE_INFINITY;
        for (double exponent = 0.2; exponent < 1.01; exponent += 0.05) {
            double score = 0;
            for (Case one : cases) {
                score += (one.machine().fault().isEmpty() ? weight : 1) * Math.log(Math.max(1e-9, one.truth(exponent)));
            }
            if (score > most) {
                most = score;
                best = exponent;
            }
        }
        return best;
    }

    private record Case(DrawnMachine machine, List<Hypothesis> hypotheses, List<Inference.Support> support,
            String code) {
        double truth(double exponent) {
            Ranking ranking = Ranking.of(hypotheses, support.stream().mapToDouble(one -> one.logRatio(exponent)).toArray());
            return code.isEmpty() ? ranking.none() : ranking.candidates().stream()
                    .filter(one -> one.code().equals(code)).mapToDouble(Ranking.Candidate::share).sum();
        }
    }

    private Case weighed(DrawnMachine machine) {
        Inference inference = new Inference(table, counts);
        List<Hypothesis> hypotheses = hypotheses(machine);
        return new Case(machine, hypotheses, hypotheses.stream().map(one -> inference.support(one, machine.sheet())).toList(),
                machine.fault().isEmpty() ? "" : table.fault(machine.fault()).code());
    }

    /** As {@link Inference#hypotheses}, of the sites that the answers name. */
    private List<Hypothesis> hypotheses(DrawnMachine machine) {
        List<Hypothesis> flat = new ArrayList<>();
        for (Fault fault : table.faults()) {
            boolean sits = fault.on() != Presence.BELT || !machine.sites(Site.Kind.BELT).isEmpty();
            for (Site site : sits ? machine.sites(fault.site()) : List.<Site>of()) {
                flat.add(new Hypothesis(fault, site, 1));
            }
        }
        return Inference.shared(flat, Map.of());
    }

    /** Of the quiet machines. */
    double highestNone(double exponent) {
        double[] sound = machines.stream().filter(one -> one.fault().isEmpty()).filter(one -> table.symptoms().stream()
                .noneMatch(symptom -> symptom.asks().contains("high") && one.sheet().shows(symptom))).map(this::weighed)
                .mapToDouble(one -> one.truth(exponent)).sorted().toArray();
        return Math.min(MOST, sound[(int) (FALSE * sound.length)]);
    }
}
