package dev.vibra.diagnosis;

import dev.vibra.fault.Effort;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * A measurement that would decide on a finding.
 *
 * @param symptom code of the symptom that it answers, as it may stand among the observations of a machine; or of what it
 *     clears up
 * @param effort what it asks of the machine
 * @param measurement what to measure or to look at
 * @param meaning what each outcome would mean
 */
public record Decider(String symptom, Effort effort, String measurement, String meaning) implements Serializable {
    /**
     * Checks that all is there.
     *
     * @param symptom see the record
     * @param effort see the record
     * @param measurement see the record
     * @param meaning see the record
     */
    public Decider {
        symptom = Require.notBlank("symptom", symptom);
        Objects.requireNonNull(effort, "effort");
        measurement = Require.notBlank("measurement", measurement);
        meaning = Require.notBlank("meaning", meaning);
    }

    /** Returns measurement and meaning. */
    @Override
    public String toString() {
        return measurement + ": " + meaning;
    }
}
