package dev.vibra.diagnosis;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * What speaks for a fault or against it: a statement, the figures it rests on, and how often simulated machines show it.
 *
 * @param statement what was seen or not seen, as in {@code 1× leads}
 * @param figures figures by point behind the statement; empty if there are none
 * @param counts how often simulated machines with the fault show it, and those without; empty if that wasn't counted
 */
public record Sign(String statement, String figures, String counts) implements Serializable {
    /**
     * Checks that there is a statement.
     *
     * @param statement see the record
     * @param figures see the record
     * @param counts see the record
     */
    public Sign {
        statement = Require.notBlank("statement", statement);
        Objects.requireNonNull(figures, "figures");
        Objects.requireNonNull(counts, "counts");
    }

    /**
     * Makes a sign of a statement alone.
     *
     * @param statement what was seen
     * @return a sign without figures and counts
     */
    public static Sign of(String statement) {
        return new Sign(statement, "", "");
    }

    /** Returns the statement, figures in parentheses, counts in brackets. */
    @Override
    public String toString() {
        return statement + (figures.isEmpty() ? "" : " (" + figures + ")") + (counts.isEmpty() ? "" : " [" + counts + "]");
    }
}
