package dev.vibra.severity;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * The limit between two zones, in the unit in which the table prints it.
 *
 * @param better zone below the limit and on it
 * @param worse zone above the limit
 * @param limit the limit, finite, above zero
 */
public record Boundary(Zone better, Zone worse, double limit) implements Serializable {
    /**
     * Checks order and value.
     *
     * @param better zone below the limit and on it
     * @param worse zone above the limit
     * @param limit the limit, finite, above zero
     * @throws IllegalArgumentException if the zones are not in order or the limit is out of range
     */
    public Boundary {
        Objects.requireNonNull(better, "better");
        Objects.requireNonNull(worse, "worse");
        Require.positive("limit " + better + "/" + worse, limit, "");
        if (!worse.isWorseThan(better)) {
            throw new IllegalArgumentException("worse must be a worse zone than " + better + ": " + worse);
        }
    }

    /**
     * Returns the zones alone.
     *
     * @return as in {@code B/C}
     */
    public String name() {
        return better + "/" + worse;
    }

    /** Written out: the JDK holds the class loader of the record whose generated one ran last. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Boundary that && better == that.better && worse == that.worse
                && Double.compare(limit, that.limit) == 0;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(better, worse, limit);
    }

    /** Returns the zones and the limit, as in {@code B/C 2.8}. */
    @Override
    public String toString() {
        return name() + " " + Digits.compact(limit, 4);
    }
}
