package dev.vibra.severity;

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
     * @throws IllegalArgumentException if there is none
     */
    public CriterionSet {
        Objects.requireNonNull(label, "label");
        criteria = List.copyOf(criteria);
        if (criteria.isEmpty()) {
            throw new IllegalArgumentException("criteria must not be empty");
        }
    }

    /** Returns the label. */
    @Override
    public String toString() {
        return label;
    }
}
