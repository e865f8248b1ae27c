package dev.vibra.severity;

import dev.vibra.uncertainty.DecisionRule;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * What the levels of one measuring point say: one judgement for each quantity and criterion, the worst decides.
 *
 * @see "ISO 20816-3:2022, Annex A: where displacement and velocity are both evaluated, the worse zone counts"
 */
public final class Verdict implements Serializable {
    private static final long serialVersionUID = 1;

    /** Worse zone first; within one zone, the value that is larger against its highest limit. */
    private static final Comparator<Judgement> SEVERITY = Comparator.comparing(Judgement::zone)
            .thenComparing(judgement -> {
                List<Double> limits = judgement.criterion().limits();
                return judgement.value() / limits.get(limits.size() - 1);
            });

    private final Choice choice;
    private final List<Judgement> judgements;
    private final List<Criterion> notJudged;

    Verdict(Choice choice, List<Judgement> judgements, List<Criterion> notJudged) {
        this.choice = choice;
        this.judgements = List.copyOf(judgements);
        this.notJudged = List.copyOf(notJudged);
    }

    /**
     * Returns the worst zone of all judgements.
     *
     * @return the zone
     */
    public Zone zone() {
        return deciding().zone();
    }

    /**
     * Returns the judgement that decides: the one with the worst zone, and among equals the one whose value is largest
     * against its highest limit.
     *
     * @return the judgement
     */
    public Judgement deciding() {
        return Collections.max(judgements, SEVERITY);
    }

    /**
     * Returns all judgements in the order of the levels, then of the criteria.
     *
     * @return unmodifiable list, at least one
     */
    public List<Judgement> judgements() {
        return judgements;
    }

    /**
     * Returns the criteria that hold for the machine but had no level to judge.
     *
     * @return unmodifiable list
     */
    public List<Criterion> notJudged() {
        return notJudged;
    }

    /**
     * Returns which criteria hold and why.
     *
     * @return the choice
     */
    public Choice choice() {
        return choice;
    }

    /**
     * Finds the worst zone of all judgements by a decision rule that counts the uncertainty.
     *
     * @param rule rule agreed between those who rely on the verdict
     * @return the zone
     * @see "JCGM 106:2012, clause 8"
     */
    public Zone zoneBy(DecisionRule rule) {
        return judgements.stream().map(judgement -> judgement.zoneBy(rule)).max(Comparator.naturalOrder())
                .orElseThrow();
    }

    /**
     * Exports the verdict as plain numbers, strings, lists and maps: {@code zone}, {@code reason}, {@code remarks},
     * {@code alternatives} and {@code judgements}, each of these as {@link Judgement#values()}.
     *
     * @return unmodifiable map
     */
    public Map<String, Object> values() {
        Map<String, Object> values = new LinkedHashMap<>();
        values.put("zone", zone().name());
        values.put("reason", choice.reason());
        values.put("remarks", choice.remarks());
        values.put("alternatives", alternatives());
        values.put("judgements",
                judgements.stream().map(Judgement::values).collect(Collectors.toUnmodifiableList()));
        return Collections.unmodifiableMap(values);
    }

    /**
     * Exports the verdict as one flat map of numbers and strings, for a historian: {@code zone}, {@code reason}, {@code
     * remarks}, {@code alternatives}, and for each judgement its {@link Judgement#values()} behind the quantity, as in
     * {@code velocity.value}, {@code velocity.limit-B/C} and {@code velocity.probability-C}. Where one quantity is
     * judged twice the support, or else the group, stands between: {@code velocity.rigid.value}.
     *
     * @return unmodifiable map with values of type String or Double
     */
    public Map<String, Object> plainValues() {
        Map<String, Object> plain = new LinkedHashMap<>();
        plain.put("zone", zone().name());
        plain.put("reason", choice.reason());
        plain.put("remarks", String.join("; ", choice.remarks()));
        plain.put("alternatives", String.join("; ", alternatives()));
        judgements.forEach(judgement -> flatten(judgement, plain));
        return Collections.unmodifiableMap(plain);
    }

    private void flatten(Judgement judgement, Map<String, Object> plain) {
        String prefix = prefix(judgement);
        judgement.values().forEach((name, value) -> {
            if (value instanceof String || value instanceof Double) {
                plain.put(prefix + name, value);
            }
        });
        judgement.criterion().boundaries()
                .forEach(boundary -> plain.put(prefix + "limit-" + boundary.name(), boundary.limit()));
        plain.put(prefix + "zonesWithinUncertainty", judgement.zonesWithinUncertainty().stream().map(Zone::name)
                .collect(Collectors.joining(" or ")));
        judgement.probabilities().forEach((zone, value) -> plain.put(prefix + "probability-" + zone, value));
    }

    private String prefix(Judgement judgement) {
        Criterion criterion = judgement.criterion();
        boolean alone = judgements.stream()
                .filter(other -> other.criterion().quantity() == criterion.quantity()).count() == 1;
        String between = alone ? "" : criterion.support().map(Support::toString).orElse(criterion.group()) + ".";
        return criterion.quantity() + "." + between;
    }

    private List<String> alternatives() {
        return choice.alternatives().stream().map(CriterionRequest::toString).toList();
    }

    /**
     * Writes the verdict in full: the deciding judgement first, then the others, what was not judged, and why this
     * criterion.
     *
     * @return several lines without a line break at the end
     */
    public String describe() {
        List<String> lines = new ArrayList<>();
        lines.add(deciding().describe());
        judgements.stream().filter(judgement -> judgement != deciding()).forEach(also -> lines.add("also " + also));
        notJudged.forEach(criterion -> lines.add("not judged, no level given: " + criterion));
        lines.add("chosen: " + choice.reason());
        choice.remarks().forEach(remark -> lines.add("remark: " + remark));
        if (!choice.alternatives().isEmpty()) {
            lines.add("on request: " + String.join("; ", alternatives()));
        }
        return String.join("\n", lines);
    }

    /** Two verdicts are equal if choice and judgements are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Verdict verdict
                && choice.equals(verdict.choice)
                && judgements.equals(verdict.judgements);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(choice, judgements);
    }

    /** Returns the deciding judgement in one line, and of how many it is the worst. */
    @Override
    public String toString() {
        return deciding() + (judgements.size() > 1 ? "; worst of " + judgements.size() + " judgements" : "");
    }
}
