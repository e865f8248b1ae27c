package dev.vibra.docs.survey.input;

import dev.vibra.speedrun.ProbePair;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where the recordings of a run-up or coast-down lie.
 *
 * @param id name of the run
 * @param tachometer recording of the pulses; its {@link RecordingSource#tachometer()} is present
 * @param serviceRevolutionsPerMinute speed in service of the shaft with the tachometer, if known
 * @param orders orders to follow; empty for the usual ones
 * @param points recordings on the time scale of the tachometer by the id of the point, in the order of the file
 * @param pairs pairs of probes among the points
 */
public record SpeedRunSource(String id, RecordingSource tachometer, Optional<Double> serviceRevolutionsPerMinute,
        List<Double> orders, Map<String, RecordingSource> points, List<Pair> pairs) {
    /**
     * Two probes at one bearing.
     *
     * @param id name of the bearing
     * @param x id of the point of the first probe
     * @param y id of the point of the second probe
     * @param probes how they stand
     */
    public record Pair(String id, String x, String y, ProbePair probes) {}

    /**
     * Copies the collections.
     *
     * @param id see the record
     * @param tachometer see the record
     * @param serviceRevolutionsPerMinute see the record
     * @param orders see the record
     * @param points see the record
     * @param pairs see the record
     */
    public SpeedRunSource {
        orders = List.copyOf(orders);
        points = Collections.unmodifiableMap(new LinkedHashMap<>(points));
        pairs = List.copyOf(pairs);
    }

    /** {@return all files that the run is read from} */
    public List<String> files() {
        List<String> files = new ArrayList<>(tachometer.files());
        points.values().forEach(point -> files.addAll(point.files()));
        return files;
    }
}
