package dev.vibra.survey;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * Hypothesis of a fault with what speaks for it and against it.
 *
 * @param fault what may be wrong, for example {@code unbalance}
 * @param belief how far the evidence supports it, 0 to 1
 * @param points ids of the points that show it
 * @param evidence what speaks for it, with figures
 * @param against what speaks against it, or could look the same
 * @param confirmBy what would decide
 */
public record Finding(String fault, double belief, List<String> points, List<String> evidence, List<String> against,
        String confirmBy) implements Serializable {
    /**
     * Checks the belief and copies the lists.
     *
     * @param fault see the record
     * @param belief see the record
     * @param points see the record
     * @param evidence see the record
     * @param against see the record
     * @param confirmBy see the record
     */
    public Finding {
        Objects.requireNonNull(fault, "fault");
        Require.within("belief", belief, 0, 1, "");
        points = List.copyOf(points);
        evidence = List.copyOf(evidence);
        against = List.copyOf(against);
        Objects.requireNonNull(confirmBy, "confirmBy");
    }

    /** Returns fault, belief and points, as in {@code unbalance (belief 0.7) at DE-H, DE-V}. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s (belief %.1f) at %s", fault, belief, String.join(", ", points));
    }
}
