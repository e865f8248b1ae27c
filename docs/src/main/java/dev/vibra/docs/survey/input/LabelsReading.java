package dev.vibra.docs.survey.input;

import dev.vibra.score.Label;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What could be read of the labels of a machine and everything that was wrong with them.
 *
 * @param labels label by point id, without those that were wrong
 * @param problems what was wrong, by line; empty if all is well
 */
public record LabelsReading(Map<String, Label> labels, List<Problem> problems) {
    /**
     * Copies both.
     *
     * @param labels see the record
     * @param problems see the record
     */
    public LabelsReading {
        labels = Collections.unmodifiableMap(new LinkedHashMap<>(labels));
        problems = List.copyOf(problems);
    }
}
