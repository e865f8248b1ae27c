package dev.vibra.severity;

import dev.vibra.evidence.Confidence;
import dev.vibra.internal.Require;
import dev.vibra.uncertainty.DecisionRule;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What the levels of one measuring point say: one judgement for each quantity and criterion, the worst decides.
 *
 * <p>Where a fact is missing, several sets of criteria may hold. Of two the worse decides, as for an unknown support;
 * of more there is a zone only if all agree, and {@link #zonesPossible()} and {@link #undecidedBy()} say the rest.
 *
 * @see "ISO 20816-3:2022, Annex A: where displacement and velocity are both evaluated, the worse zone counts"
 */
public final class Verdict implements Serializable {
    private static final long serialVersionUID = 1;

    /** So many candidates may remain for the worse to decide. */
    static final int WORSE_DECIDES = 2;

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
        this.choice = Objects.requireNonNull(choice, "choice");
        this.judgements = Require.copy("judgements", judgements);
        Require.atLeast("count of judgements", judgements.size(), 1);
        this.notJudged = Require.copy("notJudged", notJudged);
    }

    private Object readResolve() {
        return new Verdict(choice, judgements, notJudged);
    }

    /**
     * {@return the zone: the worst of all judgements, unless it hangs on a fact that is missing; empty if more than two
     * sets of criteria may hold that don't agree, or if one of them had no level to judge}
     */
    public Optional<Zone> zone() {
        return settled(zones(Judgement::zone));
    }

    /**
     * Returns the zones that the sets of criteria lead to, best first. With two of them {@link #zone()} is the worse.
     *
     * @return unmodifiable list, at least one
     */
    public List<Zone> zonesPossible() {
        return zones(Judgement::zone).stream().flatMap(Optional::stream).distinct().sorted()
                .toList();
    }

    /**
     * Returns the facts that would tell which of the possible zones holds.
     *
     * @return unmodifiable list, as in {@code duty}; empty where it makes no difference
     */
    public List<String> undecidedBy() {
        return zonesPossible().size() > 1 || zone().isEmpty() ? choice.undecided() : List.of();
    }

    /** The worst zone of each set of criteria; empty where it has no judgement. */
    private List<Optional<Zone>> zones(Function<Judgement, Zone> zoneOf) {
        return choice.candidates().stream()
                .map(set -> judgementsBy(set).stream().map(zoneOf).max(Comparator.naturalOrder())).toList();
    }

    private static Optional<Zone> settled(List<Optional<Zone>> zones) {
        boolean open = zones.contains(Optional.<Zone>empty())
                || zones.size() > WORSE_DECIDES && zones.stream().distinct().count() > 1;
        return open ? Optional.empty() : zones.stream().flatMap(Optional::stream).max(Comparator.naturalOrder());
    }

    private List<Judgement> judgementsBy(CriterionSet set) {
        return judgements.stream().filter(judgement -> set.criteria().contains(judgement.criterion())).toList();
    }

    /**
     * Returns the judgement that decides: the one with the worst zone, and among equals the one whose value is largest
     * against its highest limit. Where {@link #zone()} is empty it is the one that would decide in the worst case.
     *
     * @return the judgement
     */
    public Judgement deciding() {
        return Collections.max(judgements, SEVERITY);
    }

    /**
     * Returns what the standard calls the outcome: {@code zone C}, {@code not accepted}, {@code above alarm}; where it
     * is open all that is possible, as in {@code zone B or zone C}.
     *
     * @return words for a headline
     */
    public String rating() {
        List<String> ratings = (zone().isPresent() ? zone().stream() : zonesPossible().stream())
                .map(deciding().criterion()::rating).distinct().toList();
        int last = ratings.size() - 1;
        return last == 0 ? ratings.get(0) : String.join(", ", ratings.subList(0, last)) + " or " + ratings.get(last);
    }

    /**
     * Returns what the outcome means by the standard; where it is open, on what it depends.
     *
     * @return a phrase without full stop
     */
    public String meaning() {
        return zone().map(deciding().criterion()::meaning).orElseGet(() -> "which of them holds depends on the "
                + String.join(" and the ", choice.undecided()) + ", not known");
    }

    /**
     * Tells whether the standard accepts or refuses the machine and has no zones.
     *
     * @return true if {@link #rating()} is a word of acceptance
     */
    public boolean isAcceptance() {
        return deciding().criterion().isAcceptance();
    }

    /**
     * {@return how doubtful the limits are that the worst zone rests on, if none of them that leads there is firm;
     * empty if the limits are firm}
     */
    public Optional<Confidence> restsOnFlagged() {
        Zone worst = deciding().zone();
        return choice.candidates().stream()
                .flatMap(set -> judgementsBy(set).stream().filter(judgement -> judgement.zone() == worst)
                        .map(judgement -> judgement.criterion().confidence()).min(Comparator.naturalOrder()).stream())
                .max(Comparator.naturalOrder()).filter(confidence -> confidence != Confidence.FIRM);
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

    /** {@return which criteria hold and why} */
    public Choice choice() {
        return choice;
    }

    /**
     * Finds the zone as {@link #zone()} does, by a decision rule that counts the uncertainty.
     *
     * @param rule rule agreed between those who rely on the verdict
     * @return the zone; empty if a missing fact decides
     * @see "JCGM 106:2012, clause 8"
     */
    public Optional<Zone> zoneBy(DecisionRule rule) {
        return settled(zones(judgement -> judgement.zoneBy(rule)));
    }

    /**
     * Exports the verdict as plain numbers, strings, lists and maps: {@code zone} if there is one, {@code
     * zonesPossible}, {@code undecidedBy}, {@code rating}, {@code reason}, {@code remarks}, {@code alternatives} and
     * {@code judgements}, each of these as {@link Judgement#values()}.
     *
     * @return unmodifiable map
     */
    public Map<String, Object> values() {
        Map<String, Object> values = new LinkedHashMap<>();
        zone().ifPresent(zone -> values.put("zone", zone.name()));
        values.put("zonesPossible", zonesPossible().stream().map(Zone::name).toList());
        values.put("undecidedBy", undecidedBy());
        values.put("rating", rating());
        values.put("reason", choice.reason());
        values.put("remarks", choice.remarks());
        values.put("alternatives", alternatives());
        values.put("judgements", judgements.stream().map(Judgement::values).toList());
        return Collections.unmodifiableMap(values);
    }

    /**
     * Exports the verdict as one flat map of numbers and strings, for a historian: {@link #values()} with its lists as
     * text, and for each judgement its {@link Judgement#values()} behind the quantity, as in {@code velocity.value},
     * {@code velocity.limit-B/C} and {@code velocity.probability-C}. Where one quantity is judged twice the support, or
     * else the set of criteria, stands between: {@code velocity.rigid.value}.
     *
     * @return unmodifiable map with values of type String or Double
     */
    public Map<String, Object> plainValues() {
        Map<String, Object> plain = new LinkedHashMap<>();
        values().forEach((name, value) -> {
            if (!name.equals("judgements")) {
                plain.put(name, value instanceof List<?> list
                        ? list.stream().map(Object::toString).collect(Collectors.joining("; ")) : value);
            }
        });
        choice.candidates().forEach(set -> judgementsBy(set)
                .forEach(judgement -> flatten(judgement, prefix(judgement, set), plain)));
        return Collections.unmodifiableMap(plain);
    }

    private static void flatten(Judgement judgement, String prefix, Map<String, Object> plain) {
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

    private String prefix(Judgement judgement, CriterionSet set) {
        Criterion criterion = judgement.criterion();
        boolean alone = judgements.stream()
                .filter(other -> other.criterion().quantity() == criterion.quantity()).count() == 1;
        String between = choice.undecided().equals(List.of("support"))
                ? criterion.support().map(Support::toString).orElse(set.label()) : set.label();
        return criterion.quantity() + "." + (alone ? "" : between + ".");
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
        if (zone().isEmpty()) {
            lines.add(rating() + ": " + meaning());
            judgements.forEach(one -> lines.add("possibly " + one));
            Optional.of(zonesPossible().get(zonesPossible().size() - 1)).filter(worst -> !worst.caution().isEmpty())
                    .ifPresent(worst -> lines.add("caution, in the worst case: " + worst.caution()));
        } else {
            lines.add(deciding().describe());
            judgements.stream().filter(judgement -> judgement != deciding()).forEach(also -> lines.add("also " + also));
        }
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

    /** Returns the deciding judgement in one line, and of how many it is the worst; or between what it is open. */
    @Override
    public String toString() {
        if (zone().isEmpty()) {
            return rating() + ": " + meaning() + "; in the worst case " + deciding();
        }
        return deciding() + (judgements.size() > 1 ? "; worst of " + judgements.size() + " judgements" : "");
    }
}
