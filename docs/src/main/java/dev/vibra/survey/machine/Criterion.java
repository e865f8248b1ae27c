package dev.vibra.survey.machine;

import java.io.Serializable;
import java.util.Objects;

/**
 * Severity criterion that the owner of the machine wants it judged by.
 *
 * @param standard number of the standard, for example {@code ISO 20816-3}
 * @param edition year of the edition; empty if not given
 */
public record Criterion(String standard, String edition) implements Serializable {
    /** Checks that both are there. */
    public Criterion {
        Objects.requireNonNull(standard, "standard");
        Objects.requireNonNull(edition, "edition");
    }

    /** Returns number and edition, as in {@code ISO 20816-3:2022}. */
    @Override
    public String toString() {
        return edition.isEmpty() ? standard : standard + ":" + edition;
    }
}
