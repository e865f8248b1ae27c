package dev.vibra.diagnosis;

import dev.vibra.diagnosis.AnswerSheet.Asked;
import dev.vibra.fault.Counts;
import dev.vibra.fault.Fault;
import dev.vibra.fault.FaultTable;
import dev.vibra.fault.Symptom;
import dev.vibra.machine.MachineDescription;
import dev.vibra.symptom.Answer;
import dev.vibra.symptom.Site;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Weighs the hypotheses on the answers, round by round: what the leader of a round explains is taken off before the next
 * fault is weighed.
 */
final class Inference {
    /** More faults at once than this are no diagnosis. */
    private static final int ROUNDS = 4;
    /** An answer is explained by a fault that makes it this many times as likely as in a sound machine. */
    private static final double EXPLAINS_SEEN = 2;
    private static final double EXPLAINS_ABSENCE = 1.5;
    /** What nearly each machine with an accepted fault shows says nothing of other faults any more. */
    private static final double EXPLAINS_ANYWAY = 0.8;
    /** Support that stands beside another fault, in nepers: ten times as likely as in a sound machine. */
    private static final double BESIDE = 2.3;
    private static final double HALF = 0.5;
    /** Weight of all faults together beside a sound machine. */
    private static final double FAULTY = 3;

    private final FaultTable table;
    private final Counts counts;

    /** What one round came to; the sheet is that of the round, before anything it explains is taken off. */
    record Round(Ranking ranking, AnswerSheet sheet) {}

    Inference(FaultTable table, Counts counts) {
        this.table = table;
        this.counts = counts;
    }

    /** Rounds in which a fault was told, then the last one, in which none was. */
    List<Round> rounds(List<Hypothesis> hypotheses, AnswerSheet all) {
        List<Round> rounds = new ArrayList<>();
        List<Hypothesis> left = hypotheses;
        AnswerSheet sheet = all;
        while (!left.isEmpty() && rounds.size() < ROUNDS) {
            Hypothesis leader = rank(left, sheet).candidates().get(0).leader();
            AnswerSheet rest = sheet.without(explainedBy(leader, sheet));
            AnswerSheet before = sheet;
            List<Hypothesis> rivals = left.stream().filter(one -> isRival(one, leader, before, rest)).toList();
            Ranking ranking = rank(rivals, sheet);
            rounds.add(new Round(ranking, sheet));
            if (!tells(rounds.get(rounds.size() - 1))) {
                break;
            }
            Set<String> told = ranking.group().stream().map(one -> one.leader().key()).collect(Collectors.toSet());
            sheet = rest;
            left = left.stream().filter(one -> !told.contains(one.key())).toList();
        }
        return rounds;
    }

    /** A fault that still has most of its support when the leader's evidence is taken off stands beside it. */
    private boolean isRival(Hypothesis one, Hypothesis leader, AnswerSheet sheet, AnswerSheet rest) {
        if (one.key().equals(leader.key())) {
            return true;
        }
        double alone = logRatio(one, rest);
        return alone < BESIDE || alone < HALF * logRatio(one, sheet);
    }

    boolean tells(Round round) {
        boolean high = table.symptoms().stream().filter(one -> one.asks().contains("high"))
                .anyMatch(one -> round.sheet.shows(one));
        return round.ranking.none() <= (high ? counts.draws().highestNone() : counts.draws().highestNoneQuiet());
    }

    Ranking rank(List<Hypothesis> hypotheses, AnswerSheet sheet) {
        double[] ratios = new double[hypotheses.size()];
        for (int i = 0; i < ratios.length; i++) {
            ratios[i] = logRatio(hypotheses.get(i), sheet);
        }
        return Ranking.of(hypotheses, ratios);
    }

    /**
     * Of what recordings show the strongest symptom counts whole; the others hang together in ways that a tree leaves
     * out, and count in part. What a crew finds by hand and eye hangs on the fault alone, and counts whole.
     */
    double logRatio(Hypothesis hypothesis, AnswerSheet sheet) {
        return support(hypothesis, sheet).logRatio(counts.draws().exponent());
    }

    /**
     * Weight of the strongest symptom in recordings that speaks for a hypothesis, 0 without any, of all others there
     * together, and of what a crew found.
     */
    record Support(double strongest, double others, double found) {
        double logRatio(double exponent) {
            return strongest + exponent * others + found;
        }
    }

    Support support(Hypothesis hypothesis, AnswerSheet sheet) {
        double sum = 0;
        double strongest = 0;
        double found = 0;
        for (Symptom symptom : table.symptoms()) {
            double one = logRatio(hypothesis, symptom, sheet);
            if (isFoundByHand(symptom)) {
                found += one;
            } else {
                sum += one;
                strongest = Math.max(strongest, one);
            }
        }
        return new Support(strongest, sum - strongest, found);
    }

    /** By a test, a look or an impact test at standstill; none of them reads a recording of the machine as it runs. */
    private static boolean isFoundByHand(Symptom symptom) {
        return symptom.isTest() || symptom.asks().startsWith("natural ");
    }

    /** Weight of one symptom; 0 where it wasn't measured or is explained already. */
    double logRatio(Hypothesis hypothesis, Symptom symptom, AnswerSheet sheet) {
        Answer answer = sheet.at(symptom, hypothesis.site());
        return answer.isMeasured() ? counts.logRatio(hypothesis.fault(), symptom.code(), answer.isSeen(),
                given(hypothesis.site(), symptom, sheet)) : 0;
    }

    /** Answer to the symptom that this one hangs on, if measured. */
    Optional<Boolean> given(Site site, Symptom symptom, AnswerSheet sheet) {
        return counts.given(site.kind(), symptom.code()).map(code -> sheet.at(table.symptom(code), site))
                .filter(Answer::isMeasured).map(Answer::isSeen);
    }

    /** Answers that a fault makes likely, seen or not seen. */
    private Set<Asked> explainedBy(Hypothesis accepted, AnswerSheet sheet) {
        Set<Asked> explained = new HashSet<>();
        for (Symptom symptom : table.symptoms()) {
            Optional<Double> with = counts.share(accepted.fault(), symptom.code());
            Optional<Double> without = counts.soundShare(accepted.site().kind(), symptom.code());
            if (with.isEmpty() || without.isEmpty()) {
                continue;
            }
            for (Asked asked : sheet.asked(symptom, accepted.site())) {
                Answer answer = sheet.of(asked);
                boolean likely = answer.isSeen()
                        ? with.get() >= Math.min(EXPLAINS_ANYWAY, EXPLAINS_SEEN * without.get())
                        : 1 - with.get() >= EXPLAINS_ABSENCE * (1 - without.get());
                if (answer.isMeasured() && likely) {
                    explained.add(asked);
                }
            }
        }
        return explained;
    }

    /**
     * All faults at all places of a machine. One machine of four that somebody asks about counts as sound (common practice,
     * no source); the codes share the rest alike unless the caller gives weights, at each site where they can sit, and the
     * kinds of a code share its part.
     */
    List<Hypothesis> hypotheses(MachineDescription machine, Map<String, Double> priors) {
        List<Hypothesis> flat = new ArrayList<>();
        for (Fault fault : table.faults()) {
            table.sitesOf(fault, machine).forEach(site -> flat.add(new Hypothesis(fault, site, 1)));
        }
        return shared(flat, priors);
    }

    static List<Hypothesis> shared(List<Hypothesis> flat, Map<String, Double> priors) {
        Map<String, Long> kinds = flat.stream().collect(Collectors.groupingBy(Hypothesis::key, Collectors.counting()));
        long codes = flat.stream().map(one -> one.fault().code()).distinct().count();
        return flat.stream().map(one -> new Hypothesis(one.fault(), one.site(), FAULTY * priors.getOrDefault(
                one.fault().code(), 1.0) / kinds.get(one.key()) / codes)).toList();
    }
}
