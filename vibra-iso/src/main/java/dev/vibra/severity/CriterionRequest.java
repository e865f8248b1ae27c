package dev.vibra.severity;

import java.io.Serializable;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A criterion asked for by name instead of being chosen.
 *
 * <p>Without an edition the first one of that standard in the tables is taken, which is the newest; without a group the
 * rules of the standard find it, or a duty in words does.
 */
public final class CriterionRequest implements Serializable {
    private static final long serialVersionUID = 1;

    private final String standard;
    private final String edition;
    private final String group;
    private final String duty;

    private CriterionRequest(String standard, String edition, String group, String duty) {
        this.standard = notBlank("standard", Objects.requireNonNull(standard, "standard"));
        this.edition = notBlank("edition", edition);
        this.group = notBlank("group", group);
        this.duty = notBlank("duty", duty);
    }

    private Object readResolve() {
        return new CriterionRequest(standard, edition, group, duty);
    }

    /**
     * Asks for a standard.
     *
     * @param standard number as in {@code ISO 20816-3}; the edition may follow a colon, as in {@code ISO 20816-3:2022}
     * @return the request
     * @throws IllegalArgumentException if the number is blank
     */
    public static CriterionRequest of(String standard) {
        String trimmed = notBlank("standard", Objects.requireNonNull(standard, "standard"));
        int colon = trimmed.lastIndexOf(':');
        if (colon < 0) {
            return new CriterionRequest(trimmed, null, null, null);
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
        return new CriterionRequest(standard, Objects.requireNonNull(newEdition, "edition"), group, duty);
    }

    /**
     * Asks for a group or class. Its full name stands in place of the standard's rule by power and shaft height; parts
     * of a name that has commas narrow the choice, and the rule finds the rest.
     *
     * @param newGroup as in {@code 2}, {@code group 2}, {@code class II}, or {@code category I} of {@code category I,
     *     up to 200 kW}
     * @return the request with that group
     * @throws IllegalArgumentException if the group is blank
     */
    public CriterionRequest withGroup(String newGroup) {
        return new CriterionRequest(standard, edition, Objects.requireNonNull(newGroup, "group"), duty);
    }

    /**
     * Says what the machine does, where a standard finds the group by that: {@code HVAC} for the fans of ISO 14694 or
     * {@code critical service} for the pumps of ISO 10816-7, for example.
     *
     * @param newDuty duty in words of the tables; a wrong one is refused with a list of the right ones
     * @return the request with that duty
     * @throws IllegalArgumentException if the duty is blank
     */
    public CriterionRequest withDuty(String newDuty) {
        return new CriterionRequest(standard, edition, group, Objects.requireNonNull(newDuty, "duty"));
    }

    /**
     * Returns the number of the standard.
     *
     * @return number without edition
     */
    public String standard() {
        return standard;
    }

    /** {@return the edition asked for; empty for the newest} */
    public Optional<String> edition() {
        return Optional.ofNullable(edition);
    }

    /** {@return the group asked for; empty if the standard's rule finds it} */
    public Optional<String> group() {
        return Optional.ofNullable(group);
    }

    /**
     * Returns the duty that stands for a group.
     *
     * @return duty in words; empty if not given
     */
    public Optional<String> duty() {
        return Optional.ofNullable(duty);
    }

    boolean names(String designation) {
        int colon = designation.lastIndexOf(':');
        return folded(designation.substring(0, colon)).equals(folded(standard))
                && (edition == null || designation.substring(colon + 1).equals(edition));
    }

    /** Whether each part asked for is a part of the label. */
    boolean namesGroup(String label) {
        return group == null || parts(label).containsAll(parts(group));
    }

    boolean namesWholly(String label) {
        return group != null && parts(label).equals(parts(group));
    }

    boolean namesDuty(String label) {
        return folded(label).equals(folded(duty));
    }

    /** The request with the group that its duty stands for. */
    CriterionRequest resolved(String dutyGroup) {
        return new CriterionRequest(standard, edition, group == null ? dutyGroup : group + ", " + dutyGroup, null);
    }

    private static Set<String> parts(String label) {
        return Arrays.stream(label.toLowerCase(Locale.ROOT).split(","))
                .map(part -> folded(Criterion.plain(part.strip()))).collect(Collectors.toSet());
    }

    private static String folded(String text) {
        return text.replaceAll("\\s+", "").toUpperCase(Locale.ROOT);
    }

    /** Null stays null. */
    private static String notBlank(String name, String text) {
        String trimmed = text == null ? null : text.strip();
        if (trimmed != null && trimmed.isEmpty()) {
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
                && Objects.equals(group, request.group)
                && Objects.equals(duty, request.duty);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(standard, edition, group, duty);
    }

    /** Returns what is asked for, as in {@code ISO 20816-3:2022, group 2}. */
    @Override
    public String toString() {
        String text = edition == null ? standard : standard + ":" + edition;
        String named = group == null ? text : text + ", " + (group.contains(" ") ? group : "group " + group);
        return duty == null ? named : named + ", duty " + duty;
    }
}
