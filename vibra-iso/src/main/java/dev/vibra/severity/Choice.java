package dev.vibra.severity;

import java.io.Serializable;
import java.util.List;
import java.util.Objects;

/**
 * Which criteria hold for a machine and why, or why none does.
 *
 * <p>Three outcomes: one or more criteria; none because no standard in the tables covers the machine; not determined
 * because a fact is missing. Several criteria: one for each quantity, and each support where that is unknown.
 */
public final class Choice implements Serializable {
    private static final long serialVersionUID = 1;

    private final List<Criterion> criteria;
    private final String reason;
    private final List<String> remarks;
    private final List<String> missing;
    private final List<CriterionRequest> alternatives;

    Choice(List<Criterion> criteria, String reason, List<String> remarks, List<String> missing,
            List<CriterionRequest> alternatives) {
        this.criteria = List.copyOf(criteria);
        this.reason = reason;
        this.remarks = List.copyOf(remarks);
        this.missing = List.copyOf(missing);
        this.alternatives = List.copyOf(alternatives);
    }

    /**
     * Tells whether at least one criterion holds.
     *
     * @return true if a level can be judged
     */
    public boolean hasCriterion() {
        return !criteria.isEmpty();
    }

    /**
     * Returns the criteria that hold, each with its own quantity, support and band.
     *
     * @return unmodifiable list; empty if none holds or a fact is missing
     */
    public List<Criterion> criteria() {
        return criteria;
    }

    /**
     * Returns why these criteria hold, or why none does.
     *
     * @return in words
     */
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

    /** Two choices are equal if criteria, reason, remarks, missing facts and alternatives are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Choice choice
                && criteria.equals(choice.criteria)
                && reason.equals(choice.reason)
                && remarks.equals(choice.remarks)
                && missing.equals(choice.missing)
                && alternatives.equals(choice.alternatives);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(criteria, reason, remarks, missing, alternatives);
    }

    /** Returns the reason, as in {@code ISO 20816-3:2022 group 2: rated power 37 kW (above 15 kW up to 300 kW)}. */
    @Override
    public String toString() {
        return reason;
    }
}
