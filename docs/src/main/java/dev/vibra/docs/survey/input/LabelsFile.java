package dev.vibra.docs.survey.input;

import dev.vibra.score.Label;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Reads {@code labels.json}: by point id the code of a fault, a list of such codes, or {@code healthy}. A label with an
 * error is left out, the others are read.
 */
public final class LabelsFile {
    /** Name of the file in a survey folder. */
    public static final String NAME = "labels.json";

    private static final int MOST_MEGABYTES = 16;
    private static final int MOST_CODES = 100;
    private static final List<String> WORDS = Stream.concat(Stream.of(Label.HEALTHY), Label.knownCodes().stream())
            .toList();

    private LabelsFile() {}

    /**
     * Reads the labels in a survey folder.
     *
     * @param folder the survey folder
     * @param points ids of the points of the machine
     * @return what could be read and what was wrong; empty if there is no such file
     */
    public static Optional<LabelsReading> in(Path folder, Collection<String> points) {
        Path file = folder.resolve(NAME);
        if (Files.notExists(file)) {
            return Optional.empty();
        }
        try {
            return Optional.of(parse(SmallFile.read(file, MOST_MEGABYTES), points));
        } catch (SmallFile.Unusable e) {
            return Optional.of(new LabelsReading(Map.of(), List.of(new Problem(NAME, 0, "", e.getMessage()))));
        }
    }

    /**
     * Reads labels from the bytes of a file.
     *
     * @param bytes content of the file, JSON in UTF-8
     * @param points ids of the points of the machine
     * @return what could be read and what was wrong
     */
    public static LabelsReading parse(byte[] bytes, Collection<String> points) {
        Problems problems = new Problems(NAME);
        Set<String> known = new LinkedHashSet<>(points);
        Map<String, Label> labels = new LinkedHashMap<>();
        FieldReader.ofFile(bytes, problems).ifPresent(fields -> {
            for (String point : fields.names()) {
                Optional<Label> label = label(point, fields.given(point).orElseThrow(), problems);
                if (known.contains(point)) {
                    label.ifPresent(given -> labels.put(point, given));
                } else {
                    fields.fault(point, "is not the id of a point that " + MachineFile.NAME + " describes without error"
                            + (problems.full() ? "" : nearest(point, known)));
                }
            }
            fields.finish().faults().forEach(labels::remove);
        });
        return new LabelsReading(labels, problems.byLine());
    }

    private static Optional<Label> label(String point, JsonNode node, Problems problems) {
        boolean list = node.type() == JsonNode.Type.ARRAY;
        List<String> words = new ArrayList<>();
        int before = problems.count();
        if (node.items().size() > MOST_CODES) {
            problems.add(node.line(), point, "must hold " + MOST_CODES + " codes at most: " + node.items().size());
            return Optional.empty();
        }
        for (JsonNode item : list ? node.items() : List.of(node)) {
            objection(item, words).ifPresent(text -> problems.add(item.line(), list ? point + "[" + words.size() + "]"
                    : point, text));
            words.add(item.text());
        }
        if (words.isEmpty()) {
            problems.add(node.line(), point, "must be a code, a list of codes, or \"" + Label.HEALTHY + "\": [ ]");
        }
        if (problems.count() > before) {
            return Optional.empty();
        }
        return Optional.of(words.contains(Label.HEALTHY) ? Label.healthy() : new Label(words));
    }

    private static Optional<String> objection(JsonNode item, List<String> before) {
        if (item.type() != JsonNode.Type.TEXT) {
            return Optional.of("must be a code, a list of codes, or \"" + Label.HEALTHY + "\": " + item.shown());
        }
        if (!WORDS.contains(item.text())) {
            String part = item.text().toLowerCase(Locale.ROOT);
            List<String> longer = WORDS.stream().filter(word -> word.contains(part)).toList();
            return Optional.of("is not a known code" + nearest(part, longer.isEmpty() ? WORDS : longer) + ": "
                    + item.shown());
        }
        if (before.contains(item.text())) {
            return Optional.of("must be given once only: " + item.shown());
        }
        boolean mixed = !before.isEmpty() && (item.text().equals(Label.HEALTHY) || before.contains(Label.HEALTHY));
        return mixed ? Optional.of("\"" + Label.HEALTHY + "\" must stand alone: " + item.shown()) : Optional.empty();
    }

    private static String nearest(String given, Collection<String> known) {
        return known.isEmpty() ? "" : "; the nearest known name is \"" + NearestName.of(given, known) + "\"";
    }
}
