package dev.vibra.diagnosis;

import dev.vibra.diagnosis.Ranking.Candidate;
import dev.vibra.fault.Counts;
import dev.vibra.fault.Fault;
import dev.vibra.fault.FaultTable;
import dev.vibra.fault.Symptom;
import dev.vibra.internal.Digits;
import dev.vibra.point.PointSurvey;
import dev.vibra.severity.Zone;
import dev.vibra.symptom.Answer;
import dev.vibra.symptom.Evidence;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Makes a finding of the leading group of a round: the words are made here, and nothing is weighed any more. */
final class FindingWriter {
    /** Models are no plants: no confidence is told beyond this; common practice, no source. */
    private static final double HIGHEST = 0.95;
    /** Least weight, in nepers, of what is told as speaking for or against. */
    private static final double WORTH = 0.4;
    /** A symptom is missed where this share of the simulated machines shows it. */
    private static final double OFTEN = 0.3;
    private static final int MOST = 6;

    private final Evidence evidence;
    private final FaultTable table;
    private final Counts counts;
    private final Inference inference;

    /** A symptom with its answer and its weight for the leader of the group. */
    private record Weighed(Symptom symptom, Answer answer, double weight) {}

    FindingWriter(Evidence evidence, FaultTable table, Counts counts, Inference inference) {
        this.evidence = evidence;
        this.table = table;
        this.counts = counts;
        this.inference = inference;
    }

    Finding finding(Inference.Round round) {
        List<Candidate> group = round.ranking().group();
        Candidate first = group.get(0);
        Hypothesis leader = first.leader();
        List<Weighed> weighed = table.symptoms().stream().map(symptom -> new Weighed(symptom,
                round.sheet().at(symptom, leader.site()), inference.logRatio(leader, symptom, round.sheet()))).toList();
        Set<String> points = new LinkedHashSet<>();
        weighed.stream().filter(one -> one.weight() > WORTH)
                .forEach(one -> points.addAll(one.answer().points()));
        if (points.isEmpty()) {
            evidence.points().stream().filter(point -> !point.refused()).forEach(point -> points.add(point.point().id()));
        }
        double together = group.stream().mapToDouble(Candidate::share).sum();
        return new Finding(leader.fault().code(), leader.words(), Math.min(HIGHEST, first.share()),
                Math.min(HIGHEST, together), urgency(leader.fault(), points), List.copyOf(points),
                leader.fault().explainsLevel(),
                speaksFor(weighed, leader), against(weighed, round.ranking()),
                notMeasured(weighed, leader, round.sheet()),
                deciders(round, group), alikeTo(group),
                group.stream().skip(1).map(one -> new LookAlike(one.code(), one.leader().words(), one.share())).toList(),
                source(leader.fault()));
    }

    /** What parts the group, then what settles its first and doesn't do that already; the gentlest first. */
    private List<Decider> deciders(Inference.Round round, List<Candidate> group) {
        List<Decider> deciders = new ArrayList<>(
                new DeciderSearch(table, counts, group, round.sheet(), round.ranking().none()).deciders());
        String code = group.get(0).code();
        table.confirmations(code).stream().map(one -> new Decider(code, one.effort(),
                Experiment.cautioned(one.measurement(), one.effort()), "if so, " + one.ifSo() + "; if not, "
                        + one.ifNot()))
                .filter(one -> deciders.stream().noneMatch(other -> other.measurement().equals(one.measurement())))
                .toList().forEach(deciders::add);
        deciders.sort(Comparator.comparing(Decider::effort));
        return List.copyOf(deciders);
    }

    private Rank urgency(Fault fault, Set<String> points) {
        List<PointSurvey> showing = evidence.points().stream().filter(point -> points.contains(point.point().id())).toList();
        Zone worst = showing.stream().flatMap(point -> point.zone().stream()).max(Zone::compareTo).orElse(Zone.A);
        Rank byLevel = worst == Zone.D ? Rank.DECIDE_NOW : worst == Zone.C ? Rank.PLAN_REMEDY : Rank.WATCH;
        return switch (fault.urgency()) {
            case BY_LEVEL -> byLevel;
            case PLAN -> fault.explainsLevel() ? byLevel.orWorse(Rank.PLAN_REMEDY) : Rank.PLAN_REMEDY;
            case WATCH -> Rank.WATCH;
        };
    }

    private List<Sign> speaksFor(List<Weighed> weighed, Hypothesis leader) {
        return weighed.stream().filter(one -> one.weight() > WORTH)
                .sorted(Comparator.comparing((Weighed one) -> !one.answer().isSeen())
                        .thenComparing(Comparator.comparingDouble(Weighed::weight).reversed()))
                .limit(MOST).map(one -> one.answer().isSeen() ? sign("", one, counted(one.symptom(), leader))
                        : sign("not seen: ", one, "")).toList();
    }

    private static Sign sign(String lead, Weighed one, String counts) {
        return new Sign(lead + one.symptom().seenAs(), one.answer().words(), counts);
    }

    private String counted(Symptom symptom, Hypothesis leader) {
        return "on " + percent(counts.share(leader.fault(), symptom.code())) + " of simulated machines with the fault, "
                + percent(counts.soundShare(leader.site().kind(), symptom.code())) + " without";
    }

    private static String percent(Optional<Double> share) {
        return share.map(one -> Math.round(100 * one) + " %").orElse("?");
    }

    private static List<Sign> against(List<Weighed> weighed, Ranking ranking) {
        List<Sign> against = new ArrayList<>();
        if (ranking.none() > 0.05) {
            against.add(Sign.of("none of the faults looked for: " + Digits.significant(ranking.none(), 2)));
        }
        weighed.stream().filter(one -> one.weight() < -WORTH).sorted(Comparator.comparingDouble(Weighed::weight))
                .limit(MOST).forEach(one -> against.add(sign(one.answer().isSeen() ? "seen all the same: "
                        : "not seen: ", one, "")));
        return List.copyOf(against);
    }

    /** What would be expected with the fault and could not be seen, the most telling first. */
    private List<String> notMeasured(List<Weighed> weighed, Hypothesis leader, AnswerSheet sheet) {
        return weighed.stream().filter(one -> sheet.isOpen(one.symptom(), leader.site()))
                .filter(one -> counts.share(leader.fault(), one.symptom().code()).filter(share -> share >= OFTEN
                        && share >= 2 * counts.soundShare(leader.site().kind(), one.symptom().code()).orElse(1.0))
                        .isPresent())
                .sorted(Comparator.comparingDouble((Weighed one) ->
                        counts.share(leader.fault(), one.symptom().code()).orElse(0.0)).reversed())
                .limit(MOST).map(one -> one.symptom().seenAs()
                        + (one.answer().words().isEmpty() ? "" : " (" + one.answer().words() + ")")).toList();
    }

    private static List<String> alikeTo(List<Candidate> group) {
        String first = group.get(0).code();
        return group.stream().map(Candidate::code).distinct().filter(code -> !code.equals(first)).toList();
    }

    private String source(Fault fault) {
        return fault.source() + "; weights: counts of " + counts.draws().machines()
                + " simulated machines, kinder than plants";
    }
}
