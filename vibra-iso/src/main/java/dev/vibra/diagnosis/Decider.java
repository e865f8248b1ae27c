package dev.vibra.diagnosis;

import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * A measurement that would decide on a finding.
 *
 * @param measurement what to measure or to look at
 * @param meaning what each outcome would mean
 */
public record Decider(String measurement, String meaning) implements Serializable {
    /**
     * Checks that both are there.
     *
     * @param measurement see the record
     * @param meaning see the record
     */
    public Decider {
        measurement = Require.notBlank("measurement", measurement);
        meaning = Require.notBlank("meaning", meaning);
    }

    /** Returns both. */
    @Override
    public String toString() {
        return measurement + ": " + meaning;
    }
}
