package dev.vibra.severity;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Which criteria hold for a machine and why, or why none does.
 *
 * <p>Three outcomes: one set of criteria, or several where a fact is missing that tells them apart; none because no
 * standard in the tables covers the machine; none because a fact is missing without which the standard says nothing.
 */
public final class Choice implements Serializable {
    private static final long serialVersionUID = 1;

    private final List<CriterionSet> candidates;
    private final List<String> undecided;
    private final String reason;
    private final List<String> remarks;
    private final List<String> missing;
    private final List<CriterionRequest> alternatives;
    private final OutOfScope outOfScope;

    /** {@code outOfScope} may be null. */
    Choice(List<CriterionSet> candidates, List<String> undecided, String reason, List<String> remarks,
            List<String> missing, List<CriterionRequest> alternatives, OutOfScope outOfScope) {
        this.candidates = Require.copy("candidates", candidates);
        this.undecided = Require.copy("undecided", undecided);
        this.reason = Objects.requireNonNull(reason, "reason");
        this.remarks = Require.copy("remarks", remarks);
        this.missing = Require.copy("missing", missing);
        this.alternatives = Require.copy("alternatives", alternatives);
        this.outOfScope = outOfScope;
    }

    private Object readResolve() {
        return new Choice(candidates, undecided, reason, remarks, missing, alternatives, outOfScope);
    }

    /**
     * Tells whether at least one criterion holds.
     *
     * @return true if a level can be judged
     */
    public boolean hasCriterion() {
        return !candidates.isEmpty();
    }

    /**
     * Returns the criteria of all candidates: what has to be measured, by quantity, detector and band.
     *
     * @return unmodifiable list; empty if none holds or a fact is missing
     */
    public List<Criterion> criteria() {
        return candidates.stream().flatMap(set -> set.criteria().stream()).distinct().toList();
    }

    /**
     * Returns the sets of criteria of which one holds: a single one where all facts that matter are known.
     *
     * @return unmodifiable list; empty if none holds or a fact is missing
     */
    public List<CriterionSet> candidates() {
        return candidates;
    }

    /**
     * Returns the facts that are not given and would tell which candidate holds.
     *
     * @return unmodifiable list, as in {@code support}, {@code category}, {@code duty}; empty with a single candidate
     */
    public List<String> undecided() {
        return undecided;
    }

    /**
     * Returns that a criterion asked for by name doesn't cover the machine, where that is so.
     *
     * @return the reason and what fits; empty if nothing that is known says so
     */
    public Optional<OutOfScope> outOfScope() {
        return Optional.ofNullable(outOfScope);
    }

    /** {@return why these criteria hold, or why none does} */
    public String reason() {
        return reason;
    }

    /**
     * Returns what else a reader of the verdict has to know: what was assumed, and which other standard to look at.
     *
     * @return unmodifiable list of phrases
     */
    public List<String> remarks() {
        return remarks;
    }

    /**
     * Returns the names of the facts without which no criterion can be chosen, all of them at once. Where any one of
     * them is enough, as shaft height or rated power of an electric motor, {@link #reason()} says so.
     *
     * @return unmodifiable list, as in {@code rated power}; empty if nothing that is missing decides
     */
    public List<String> missing() {
        return missing;
    }

    /**
     * Returns what else in the tables fits the machine and can be asked for in place of this choice: standards that are
     * written for its kind, acceptance, or vibration of the shaft. A request without a group may ask for one.
     *
     * @return unmodifiable list; empty if nothing else fits
     */
    public List<CriterionRequest> alternatives() {
        return alternatives;
    }

    /** Two choices are equal if all that they say is. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Choice choice
                && candidates.equals(choice.candidates)
                && undecided.equals(choice.undecided)
                && reason.equals(choice.reason)
                && remarks.equals(choice.remarks)
                && missing.equals(choice.missing)
                && alternatives.equals(choice.alternatives)
                && Objects.equals(outOfScope, choice.outOfScope);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(candidates, reason, remarks, missing);
    }

    /** Returns the reason, as in {@code ISO 20816-3:2022 group 2: rated power 37 kW (above 15 kW up to 300 kW)}. */
    @Override
    public String toString() {
        return reason;
    }
}
