package dev.vibra.docs.survey.input;

import dev.vibra.docs.survey.input.JsonNode.Type;
import dev.vibra.docs.survey.input.SmallFile.Unusable;
import dev.vibra.machine.MachineDescription;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What an earlier {@code results.json}, of format 1 or 2, tells of the points.
 *
 * @param origin file and date in words
 * @param measured instant of the measurement; the earliest of all where it isn't told
 * @param points value by descriptor by point; empty if the results may not serve as baseline
 */
record EarlierResults(String origin, Instant measured, Map<String, Map<String, Double>> points) {
    /** Some 3,000 points. */
    private static final int MOST_MEGABYTES = 64;

    /**
     * Gives each point without a stated baseline that of the newest earlier results that have the point and may serve:
     * the newest by date; among those without a date, which are older, the one named last.
     */
    static MachineReading into(MachineReading reading, Path folder) {
        if (reading.machine().isEmpty() || reading.earlier().isEmpty()) {
            return reading;
        }
        MachineDescription machine = reading.machine().get();
        List<Problem> problems = new ArrayList<>(reading.problems());
        List<EarlierResults> newestFirst = new ArrayList<>();
        for (String name : reading.earlier()) {
            try {
                newestFirst.add(0, read(folder, name, machine.name()));
            } catch (Unusable e) {
                problems.add(new Problem(name, 0, "", e.getMessage()));
            }
        }
        newestFirst.sort(Comparator.comparing(EarlierResults::measured).reversed());
        Map<String, String> origins = new LinkedHashMap<>();
        for (EarlierResults one : newestFirst) {
            for (String point : one.points.keySet()) {
                if (machine.baseline(point).isEmpty() && reading.sources().containsKey(point)) {
                    machine = machine.withBaseline(point, one.points.get(point));
                    origins.put(point, one.origin);
                }
            }
        }
        return new MachineReading(Optional.of(machine), reading.sources(), reading.earlier(), origins, problems);
    }

    private static EarlierResults read(Path folder, String name, String machine) throws Unusable {
        try {
            JsonNode root = JsonDocument.parse(SmallFile.read(folder.resolve(name), MOST_MEGABYTES));
            String owner = root.at("machine", Type.TEXT).map(JsonNode::text).orElse("");
            if (!owner.equals(machine)) {
                throw new Unusable("must be results of \"" + machine + "\": \"" + owner + "\"");
            }
            return of(name, root);
        } catch (JsonDocument.NotJson e) {
            throw new Unusable(e.getMessage());
        }
    }

    private static EarlierResults of(String name, JsonNode root) throws Unusable {
        String format = root.at("format", Type.NUMBER).map(JsonNode::text).orElse("1");
        Optional<Instant> measured = root.at("measured", Type.TEXT).flatMap(node -> JsonNode.instant(node.text()));
        String origin = name + measured.map(when -> ", measured " + when).orElse("");
        boolean serves = root.at("condition", Type.OBJECT).flatMap(node -> node.at("mayServeAsBaseline", Type.TRUTH))
                .map(node -> Boolean.valueOf(node.text())).orElse(false);
        switch (format) {
            case "1" -> {
                serves = true;
                origin += " (format 1, which doesn't say whether it may serve as baseline)";
            }
            case "2" -> { }
            default -> throw new Unusable("must be of format 1 or 2: " + format);
        }
        return new EarlierResults(origin, measured.orElse(Instant.MIN), serves ? points(root) : Map.of());
    }

    /** A recording that wasn't sound says nothing, even if a verdict was insisted on. */
    private static Map<String, Map<String, Double>> points(JsonNode root) {
        Map<String, Map<String, Double>> points = new LinkedHashMap<>();
        for (JsonNode point : root.at("points", Type.ARRAY).map(JsonNode::items).orElse(List.of())) {
            Optional<JsonNode> id = point.at("id", Type.TEXT);
            boolean sound = point.at("recording", Type.OBJECT).flatMap(node -> node.at("sound", Type.TRUTH))
                    .filter(node -> node.text().equals("true")).isPresent();
            Map<String, Double> values = new LinkedHashMap<>();
            point.at("descriptors", Type.OBJECT).map(JsonNode::fields).orElse(Map.of()).forEach((name, node) ->
                    node.at("value", Type.NUMBER).map(value -> Double.parseDouble(value.text()))
                            .filter(Double::isFinite).ifPresent(value -> values.put(name, value)));
            if (id.isPresent() && sound && !values.isEmpty()) {
                points.put(id.get().text(), Collections.unmodifiableMap(values));
            }
        }
        return points;
    }
}
