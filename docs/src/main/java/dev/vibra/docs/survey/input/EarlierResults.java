package dev.vibra.docs.survey.input;

import dev.vibra.descriptor.Descriptor;
import dev.vibra.descriptor.Descriptors;
import dev.vibra.docs.survey.input.JsonNode.Type;
import dev.vibra.docs.survey.input.SmallFile.Unusable;
import dev.vibra.history.Visit;
import dev.vibra.machine.MachineDescription;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What an earlier {@code results.json}, of format 1 or 2, tells of the points.
 *
 * @param origin file and date in words
 * @param measured instant of the measurement; the earliest of all where it isn't told
 * @param serving points whose values may serve as baseline: sound ones of results that may
 * @param visit values of all points; what a recording wasn't fit for has none
 */
record EarlierResults(String origin, Instant measured, Set<String> serving, Visit visit) {
    /** A folder in that of the survey whose results need not be named. */
    static final String FOLDER = "earlier";

    /** Some 3,000 points. */
    private static final int MOST_MEGABYTES = 64;

    /**
     * Gives each point without a stated baseline that of the newest earlier results that have the point and may serve:
     * the newest by date; among those without a date, which are older, the one named last.
     */
    static MachineReading into(MachineReading reading, Path folder) {
        List<String> names = new ArrayList<>(reading.earlier());
        found(folder).stream().filter(name -> !names.contains(name)).forEach(names::add);
        if (reading.machine().isEmpty() || names.isEmpty()) {
            return reading;
        }
        MachineDescription machine = reading.machine().get();
        List<Problem> problems = new ArrayList<>(reading.problems());
        List<EarlierResults> newestFirst = new ArrayList<>();
        for (String name : names) {
            try {
                newestFirst.add(0, read(folder, name, machine.name()));
            } catch (Unusable e) {
                problems.add(new Problem(name, 0, "", e.getMessage()));
            }
        }
        newestFirst.sort(Comparator.comparing(EarlierResults::measured).reversed());
        Map<String, String> origins = new LinkedHashMap<>();
        for (EarlierResults one : newestFirst) {
            for (String point : one.serving) {
                if (machine.baseline(point).isEmpty() && reading.sources().containsKey(point)) {
                    machine = machine.withBaseline(point, one.visit.values().get(point));
                    origins.put(point, one.origin);
                }
            }
        }
        List<Visit> visits = newestFirst.stream().map(EarlierResults::visit).toList();
        return reading.with(machine, names, origins, visits, problems);
    }

    /** Names of results in the folder for them, sorted; a folder that can't be listed holds none. */
    private static List<String> found(Path folder) {
        Path earlier = folder.resolve(FOLDER);
        if (!Files.isDirectory(earlier)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(earlier)) {
            return files.map(file -> Files.isDirectory(file) ? file.resolve("results.json") : file)
                    .filter(file -> file.getFileName().toString().endsWith(".json") && Files.isRegularFile(file))
                    .map(file -> folder.relativize(file).toString().replace('\\', '/')).sorted().toList();
        } catch (IOException e) {
            return List.of();
        }
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
        Set<String> serving = new LinkedHashSet<>();
        Visit visit = Visit.of(name, points(root, format.equals("1"), serving));
        visit = measured.isPresent() ? visit.measuredAt(measured.get()) : visit;
        Optional<String> state = root.at("state", Type.TEXT).map(JsonNode::text).filter(text -> !text.isBlank());
        return new EarlierResults(origin, measured.orElse(Instant.MIN), serves ? serving : Set.of(),
                state.isPresent() ? visit.inState(state.get()) : visit);
    }

    /**
     * Takes what was measured soundly: a recording too short for velocity is fit for acceleration, and format 2 has no
     * values of what it wasn't fit for, unless they were insisted on; format 1 doesn't tell.
     */
    private static Map<String, Map<String, Double>> points(JsonNode root, boolean soundOnly, Set<String> sounds)
            throws Unusable {
        Map<String, Map<String, Double>> points = new LinkedHashMap<>();
        for (JsonNode point : root.at("points", Type.ARRAY).map(JsonNode::items).orElse(List.of())) {
            Optional<JsonNode> id = point.at("id", Type.TEXT);
            boolean sound = point.at("recording", Type.OBJECT).flatMap(node -> node.at("sound", Type.TRUTH))
                    .filter(node -> node.text().equals("true")).isPresent();
            Map<String, Double> values = new LinkedHashMap<>();
            for (Map.Entry<String, JsonNode> one : point.at("descriptors", Type.OBJECT).map(JsonNode::fields)
                    .orElse(Map.of()).entrySet()) {
                requireUnit(one.getKey(), one.getValue());
                one.getValue().at("value", Type.NUMBER).map(value -> Double.parseDouble(value.text()))
                        .filter(Double::isFinite).ifPresent(value -> values.put(one.getKey(), value));
            }
            boolean insisted = point.at("insisted", Type.TRUTH).filter(node -> node.text().equals("true")).isPresent();
            if (id.isPresent() && !insisted && (sound || !soundOnly) && !values.isEmpty()) {
                points.put(id.get().text(), Collections.unmodifiableMap(values));
                sounds.addAll(sound ? Set.of(id.get().text()) : Set.of());
            }
        }
        return points;
    }

    /** A number in another unit would be taken for a change. */
    private static void requireUnit(String name, JsonNode node) throws Unusable {
        Optional<String> unit = node.at("unit", Type.TEXT).map(JsonNode::text);
        Optional<String> wanted = Descriptors.named(name).map(Descriptor::unit);
        if (unit.isPresent() && wanted.isPresent() && !unit.equals(wanted)) {
            throw new Unusable("unit of " + name + " must be " + wanted.get() + ": " + unit.get());
        }
    }
}
