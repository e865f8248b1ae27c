package dev.vibra.severity;

import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * A criterion asked for by name instead of being chosen.
 *
 * <p>Without an edition the first one of that standard in the tables is taken, which is the newest; without a group the
 * rules of the standard find it.
 */
public final class CriterionRequest implements Serializable {
    private static final long serialVersionUID = 1;

    private final String standard;
    private final String edition;
    private final String group;

    private CriterionRequest(String standard, String edition, String group) {
        this.standard = standard;
        this.edition = edition;
        this.group = group;
    }

    /**
     * Asks for a standard.
     *
     * @param standard number as in {@code ISO 20816-3}; the edition may follow a colon, as in {@code ISO 20816-3:2022}
     * @return the request
     * @throws IllegalArgumentException if the number is blank
     */
    public static CriterionRequest of(String standard) {
        String trimmed = notBlank("standard", standard);
        int colon = trimmed.lastIndexOf(':');
        if (colon < 0) {
            return new CriterionRequest(trimmed, null, null);
        }
        return of(trimmed.substring(0, colon)).withEdition(trimmed.substring(colon + 1));
    }

    /**
     * Asks for an edition.
     *
     * @param newEdition year, as in {@code 2022}
     * @return the request with that edition
     * @throws IllegalArgumentException if the year is blank
     */
    public CriterionRequest withEdition(String newEdition) {
        return new CriterionRequest(standard, notBlank("edition", newEdition), group);
    }

    /**
     * Asks for a group or class, in place of the standard's rule by power and shaft height.
     *
     * @param newGroup as in {@code 2}, {@code group 2} or {@code class II}
     * @return the request with that group
     * @throws IllegalArgumentException if the group is blank
     */
    public CriterionRequest withGroup(String newGroup) {
        return new CriterionRequest(standard, edition, notBlank("group", newGroup));
    }

    /**
     * Returns the number of the standard.
     *
     * @return number without edition
     */
    public String standard() {
        return standard;
    }

    /**
     * Returns the edition asked for.
     *
     * @return year; empty for the newest
     */
    public Optional<String> edition() {
        return Optional.ofNullable(edition);
    }

    /**
     * Returns the group asked for.
     *
     * @return group; empty if the standard's rule finds it
     */
    public Optional<String> group() {
        return Optional.ofNullable(group);
    }

    CriterionRequest withoutGroup() {
        return new CriterionRequest(standard, edition, null);
    }

    boolean names(String designation) {
        int colon = designation.lastIndexOf(':');
        return folded(designation.substring(0, colon)).equals(folded(standard))
                && (edition == null || designation.substring(colon + 1).equals(edition));
    }

    boolean namesGroup(String label) {
        String plain = label.substring(label.indexOf(' ') + 1);
        return group == null || folded(label).equals(folded(group)) || folded(plain).equals(folded(group));
    }

    private static String folded(String text) {
        return text.replaceAll("\\s+", "").toUpperCase(Locale.ROOT);
    }

    private static String notBlank(String name, String text) {
        String trimmed = Objects.requireNonNull(text, name).strip();
        if (trimmed.isEmpty()) {
            throw new IllegalArgumentException(name + " must not be blank");
        }
        return trimmed;
    }

    /** Two requests are equal if they ask for the same words. */
    @Override
    public boolean equals(Object other) {
        return other instanceof CriterionRequest request
                && standard.equals(request.standard)
                && Objects.equals(edition, request.edition)
                && Objects.equals(group, request.group);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(standard, edition, group);
    }

    /** Returns what is asked for, as in {@code ISO 20816-3:2022, group 2}. */
    @Override
    public String toString() {
        String text = edition == null ? standard : standard + ":" + edition;
        return group == null ? text : text + ", " + (group.contains(" ") ? group : "group " + group);
    }
}
