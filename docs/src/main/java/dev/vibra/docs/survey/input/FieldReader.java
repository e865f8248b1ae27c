package dev.vibra.docs.survey.input;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * Takes typed fields out of one JSON object and notes what is wrong with them; what was never asked for is unknown. A
 * method returns empty both for a missing field and for one with an error; {@link #faults()} tells which had one.
 */
final class FieldReader {
    private final JsonNode object;
    private final String path;
    private final Problems problems;
    private final Set<String> known = new LinkedHashSet<>();
    private final Set<String> faults = new LinkedHashSet<>();

    FieldReader(JsonNode object, String path, Problems problems) {
        this.object = object;
        this.path = path;
        this.problems = problems;
    }

    /** Makes a reader of a node that should be an object; notes the error and returns empty if it is not. */
    static Optional<FieldReader> of(JsonNode node, String path, Problems problems) {
        if (node.type() != JsonNode.Type.OBJECT) {
            problems.add(node.line(), path, "must be " + JsonNode.Type.OBJECT + ": " + node.shown());
            return Optional.empty();
        }
        return Optional.of(new FieldReader(node, path, problems));
    }

    Problems problems() {
        return problems;
    }

    boolean has(String name) {
        known.add(name);
        return object.fields().containsKey(name);
    }

    String pathOf(String name) {
        return path.isEmpty() ? name : path + "." + name;
    }

    /** Names the fields with an error; an unknown field counts as the known one nearest to it. */
    Set<String> faults() {
        return faults;
    }

    boolean faulty() {
        return !faults.isEmpty();
    }

    void fault(String name, String text) {
        JsonNode node = object.fields().get(name);
        faults.add(name);
        problems.add(node == null ? object.line() : node.line(), pathOf(name), text);
    }

    Optional<String> text(String name) {
        Optional<String> text = node(name, JsonNode.Type.TEXT).map(JsonNode::text);
        if (text.isPresent() && text.get().isBlank()) {
            fault(name, "must not be blank: \"" + text.get() + "\"");
            return Optional.empty();
        }
        return text;
    }

    Optional<String> required(String name, String what) {
        if (!has(name)) {
            fault(name, "is required: " + what);
        }
        return text(name);
    }

    <T> Optional<T> choice(String name, List<T> allowed) {
        Optional<String> given = text(name);
        for (T one : allowed) {
            if (given.isPresent() && one.toString().equals(given.get())) {
                return Optional.of(one);
            }
        }
        given.ifPresent(text -> fault(name, "must be one of " + joined(allowed) + ": \"" + text + "\""));
        return Optional.empty();
    }

    Optional<Double> number(String name, Range range) {
        return node(name, JsonNode.Type.NUMBER).flatMap(node -> number(name, node, range));
    }

    private Optional<Double> number(String name, JsonNode node, Range range) {
        double value = Double.parseDouble(node.text());
        if (!range.contains(value)) {
            fault(name, "must be " + range + ": " + node.shown());
            return Optional.empty();
        }
        return Optional.of(value);
    }

    Optional<Integer> count(String name, int lowest) {
        Optional<JsonNode> node = node(name, JsonNode.Type.NUMBER);
        if (node.isEmpty()) {
            return Optional.empty();
        }
        double value = Double.parseDouble(node.get().text());
        if (!(value >= lowest && value <= 1_000_000 && value == Math.rint(value))) {
            fault(name, "must be a whole number from " + lowest + " to 1000000: " + node.get().shown());
            return Optional.empty();
        }
        return Optional.of((int) value);
    }

    Optional<FieldReader> object(String name) {
        return node(name, JsonNode.Type.OBJECT).map(node -> new FieldReader(node, pathOf(name), problems));
    }

    /** Reads each object of a list with the given method; what that method leaves empty is left out. */
    <T> List<T> objects(String name, BiFunction<FieldReader, Integer, Optional<T>> reading) {
        List<T> read = new ArrayList<>();
        List<JsonNode> items = items(name);
        for (int i = 0; i < items.size(); i++) {
            int index = i;
            Optional<T> item = FieldReader.of(items.get(i), pathOf(name) + "[" + i + "]", problems)
                    .flatMap(reader -> reading.apply(reader, index));
            item.ifPresent(read::add);
            if (item.isEmpty()) {
                faults.add(name);
            }
        }
        return read;
    }

    /** Reads a list of lists of objects; what the method leaves empty makes the whole empty. */
    <T> List<List<T>> rows(String name, Function<FieldReader, Optional<T>> reading) {
        List<List<T>> rows = new ArrayList<>();
        for (JsonNode row : items(name)) {
            if (row.type() != JsonNode.Type.ARRAY) {
                faultOfItem(name, rows.size(), row, JsonNode.Type.ARRAY.toString());
                return List.of();
            }
            List<T> read = new ArrayList<>();
            for (JsonNode item : row.items()) {
                String where = pathOf(name) + "[" + rows.size() + "][" + read.size() + "]";
                Optional<T> one = FieldReader.of(item, where, problems).flatMap(reading);
                if (one.isEmpty()) {
                    faults.add(name);
                    return List.of();
                }
                read.add(one.get());
            }
            rows.add(read);
        }
        return rows;
    }

    Optional<Boolean> truth(String name) {
        return node(name, JsonNode.Type.TRUTH).map(node -> Boolean.valueOf(node.text()));
    }

    List<Double> numbers(String name, Range range) {
        List<Double> numbers = new ArrayList<>();
        for (JsonNode item : items(name)) {
            if (item.type() != JsonNode.Type.NUMBER || !range.contains(Double.parseDouble(item.text()))) {
                faultOfItem(name, numbers.size(), item, range.toString());
                return List.of();
            }
            numbers.add(Double.parseDouble(item.text()));
        }
        return numbers;
    }

    List<String> texts(String name) {
        List<String> texts = new ArrayList<>();
        for (JsonNode item : items(name)) {
            if (item.type() != JsonNode.Type.TEXT || item.text().isBlank()) {
                faultOfItem(name, texts.size(), item, JsonNode.Type.TEXT + ", not blank");
                return List.of();
            }
            if (texts.contains(item.text())) {
                faultOfItem(name, texts.size(), item, "given once only");
                return List.of();
            }
            texts.add(item.text());
        }
        return texts;
    }

    List<Integer> counts(String name, int lowest) {
        List<Integer> counts = new ArrayList<>();
        for (JsonNode item : items(name)) {
            double value = item.type() == JsonNode.Type.NUMBER ? Double.parseDouble(item.text()) : Double.NaN;
            if (!(value >= lowest && value <= 1_000_000 && value == Math.rint(value))) {
                faultOfItem(name, counts.size(), item, "a whole number from " + lowest + " to 1000000");
                return List.of();
            }
            counts.add((int) value);
        }
        return counts;
    }

    private void faultOfItem(String name, int index, JsonNode item, String rule) {
        faults.add(name);
        problems.add(item.line(), pathOf(name) + "[" + index + "]", "must be " + rule + ": " + item.shown());
    }

    private List<JsonNode> items(String name) {
        return node(name, JsonNode.Type.ARRAY).map(JsonNode::items).orElse(List.of());
    }

    private Optional<JsonNode> node(String name, JsonNode.Type type) {
        if (!has(name)) {
            return Optional.empty();
        }
        JsonNode node = object.fields().get(name);
        if (node.type() != type) {
            fault(name, "must be " + type + ": " + node.shown());
            return Optional.empty();
        }
        return Optional.of(node);
    }

    /** Lists the names that stand in the object, for objects whose names are free. */
    Set<String> names() {
        return object.fields().keySet();
    }

    /**
     * Notes repeated fields, and unknown ones with the nearest known name; to be called after all fields were asked
     * for.
     */
    FieldReader finish() {
        for (JsonNode.Repeat repeat : object.repeats()) {
            faults.add(repeat.name());
            problems.add(repeat.line(), pathOf(repeat.name()),
                    "must be given once only; it stands on line " + repeat.firstLine() + " already");
        }
        for (Map.Entry<String, JsonNode> field : object.fields().entrySet()) {
            if (!known.contains(field.getKey())) {
                String nearest = NearestName.of(field.getKey(), known);
                faults.add(nearest);
                problems.add(object.lineOfName(field.getKey()), pathOf(field.getKey()),
                        String.format(Locale.ROOT, "is not a known field; the nearest known name is \"%s\"", nearest));
            }
        }
        return this;
    }

    static String joined(List<?> allowed) {
        return String.join(", ", allowed.stream().map(Object::toString).toList());
    }
}
