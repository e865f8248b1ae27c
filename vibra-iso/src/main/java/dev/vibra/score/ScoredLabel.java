package dev.vibra.score;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;

/**
 * One fault that a point was labelled with, or its health, and what the survey made of it.
 *
 * @param machine name of the machine
 * @param point id of the point
 * @param label code of the fault, or {@code healthy}
 * @param outcome what the survey made of it
 * @param said codes of all findings at the point
 * @param extra codes among these that no label of the point has, although the fault of the label is named too
 * @param evidence what the findings rest on, and why the label's fault was not told; without full stops
 */
public record ScoredLabel(String machine, String point, String label, LabelOutcome outcome, List<String> said,
        List<String> extra, List<String> evidence) implements Serializable {
    /**
     * Copies the lists.
     *
     * @param machine see the record
     * @param point see the record
     * @param label see the record
     * @param outcome see the record
     * @param said see the record
     * @param extra see the record
     * @param evidence see the record
     */
    public ScoredLabel {
        Objects.requireNonNull(machine, "machine");
        Objects.requireNonNull(point, "point");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(outcome, "outcome");
        said = Require.copy("said", said);
        extra = Require.copy("extra", extra);
        evidence = Require.copy("evidence", evidence);
    }

    /** {@return true if something is said that the label contradicts, be it beside the right fault} */
    public boolean isWrong() {
        return outcome.isWrong() || !extra.isEmpty();
    }

    /** {@return true if the point was labelled healthy} */
    public boolean isHealthy() {
        return label.equals(Label.HEALTHY);
    }

    /** Returns the row, as in {@code fan 3, DE-H: rolling-bearing-outer-race: wrong code (unbalance)}. */
    @Override
    public String toString() {
        return machine + ", " + point + ": " + label + ": " + outcome + (extra.isEmpty() ? "" : " with an extra")
                + (said.isEmpty() ? "" : " (" + String.join(", ", said) + ")");
    }
}
