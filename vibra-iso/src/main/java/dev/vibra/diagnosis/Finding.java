package dev.vibra.diagnosis;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * Hypothesis of a fault with what speaks for it and against it.
 *
 * @param code stable name, as in {@code rolling-bearing-outer-race}
 * @param fault what may be wrong in words
 * @param confidence how far the evidence supports it, 0 to 1
 * @param groupConfidence how far it supports that it is this one or one of those in {@code alikeTo}, 0 to 1
 * @param urgency how soon something has to happen
 * @param points ids of the points that show it
 * @param explainsLevel true if it explains the broad-band velocity there
 * @param evidence what speaks for it, with figures
 * @param against what speaks against it
 * @param notMeasured what would tell and was not measured
 * @param decidedBy what would decide, the gentlest first
 * @param alikeTo codes of faults that can't be told apart from it with what was measured
 * @param lookAlikes the same faults with their own confidence, where that was weighed
 * @param source where the symptoms are from, with edition and clause or its mark
 */
public record Finding(String code, String fault, double confidence, double groupConfidence, Rank urgency,
        List<String> points, boolean explainsLevel, List<Sign> evidence, List<Sign> against, List<String> notMeasured,
        List<Decider> decidedBy, List<String> alikeTo, List<LookAlike> lookAlikes, String source) implements Serializable {
    /**
     * Checks the confidence and copies the lists.
     *
     * @param code see the record
     * @param fault see the record
     * @param confidence see the record
     * @param groupConfidence see the record
     * @param urgency see the record
     * @param points see the record
     * @param explainsLevel see the record
     * @param evidence see the record
     * @param against see the record
     * @param notMeasured see the record
     * @param decidedBy see the record
     * @param alikeTo see the record
     * @param lookAlikes see the record
     * @param source see the record
     */
    public Finding {
        Objects.requireNonNull(code, "code");
        if (!code.matches("[a-z]+(-[a-z]+)*")) {
            throw new IllegalArgumentException("code must be lower case with hyphens: " + code);
        }
        fault = Require.notBlank("fault", fault);
        Require.within("confidence", confidence, 0, 1, "");
        Require.within("groupConfidence", groupConfidence, confidence, 1, "");
        Objects.requireNonNull(urgency, "urgency");
        points = Require.copy("points", points);
        evidence = Require.copy("evidence", evidence);
        against = Require.copy("against", against);
        notMeasured = Require.copy("notMeasured", notMeasured);
        decidedBy = Require.copy("decidedBy", decidedBy);
        alikeTo = Require.copy("alikeTo", alikeTo);
        lookAlikes = Require.copy("lookAlikes", lookAlikes);
        source = Require.notBlank("source", source);
    }

    /**
     * Returns fault, confidence and points, as in {@code unbalance (confidence 0.71) at DE-H, DE-V}; where others look
     * alike also the confidence that it is one of them, as in {@code (confidence 0.21, with look-alikes 0.94)}.
     */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s (confidence %.2f%s) at %s", fault, confidence, alikeTo.isEmpty() ? ""
                : String.format(Locale.ROOT, ", with look-alikes %.2f", groupConfidence), String.join(", ", points));
    }
}
