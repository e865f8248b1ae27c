package dev.vibra.severity;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;

/**
 * Criteria that hold together: one for each quantity that a class limits on one support. A {@link Choice} has several
 * sets where a fact is missing that would tell which of them holds.
 *
 * @param label group or class, and the support where the limits depend on it, as in {@code group 2, rigid}
 * @param criteria at least one, each of another quantity
 */
public record CriterionSet(String label, List<Criterion> criteria) implements Serializable {
    /**
     * Checks and copies the criteria.
     *
     * @param label group or class, and the support where the limits depend on it
     * @param criteria at least one, each of another quantity
     * @throws IllegalArgumentException if there is none or the label is blank
     */
    public CriterionSet {
        if (Objects.requireNonNull(label, "label").isBlank()) {
            throw new IllegalArgumentException("label must not be blank");
        }
        criteria = Require.copy("criteria", criteria);
        if (criteria.isEmpty()) {
            throw new IllegalArgumentException("criteria must not be empty");
        }
    }

    /** Written out: the JDK holds the class loader of the record whose generated one ran last. */
    @Override
    public boolean equals(Object other) {
        return other instanceof CriterionSet that && label.equals(that.label) && criteria.equals(that.criteria);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(label, criteria);
    }

    /** Returns the label. */
    @Override
    public String toString() {
        return label;
    }
}
