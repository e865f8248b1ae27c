package dev.vibra.docs.survey.input;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * Takes typed fields out of one JSON object and notes what is wrong with them; what was never asked for is unknown. A
 * method returns empty both for a missing field and for one with an error; {@link #faults()} tells which had one.
 */
final class FieldReader {
    private static final int HIGHEST_COUNT = 1_000_000;
    private static final int LONGEST_LIST = 10_000;
    private static final int MOST_LISTED = 30;
    /** An unknown name beyond these isn't told any more, and only counted. */
    private static final int MOST_UNKNOWN = 100;

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

    /** What a value may be: its type, how it is read, and the rule that is told where that gives nothing. */
    private record Allowed<T>(JsonNode.Type type, Function<String, Optional<T>> reading, String rule) {
        static Allowed<Double> number(Range range) {
            return new Allowed<>(JsonNode.Type.NUMBER, text -> Optional.of(Double.parseDouble(text))
                    .filter(range::contains), range.toString());
        }

        static Allowed<Integer> count(int lowest) {
            return new Allowed<>(JsonNode.Type.NUMBER, text -> Optional.of(Double.parseDouble(text))
                    .filter(value -> value >= lowest && value <= HIGHEST_COUNT && value == Math.rint(value))
                    .map(Double::intValue), "a whole number from " + lowest + " to " + HIGHEST_COUNT);
        }

        static Allowed<String> text() {
            return new Allowed<>(JsonNode.Type.TEXT, text -> Optional.of(text).filter(given -> !given.isBlank()),
                    JsonNode.Type.TEXT + ", not blank");
        }
    }

    /** Makes a reader of a node that should be an object; notes the error and returns empty if it is not. */
    static Optional<FieldReader> of(JsonNode node, String path, Problems problems) {
        if (node.type() != JsonNode.Type.OBJECT) {
            problems.add(node.line(), path, "must be " + JsonNode.Type.OBJECT + ": " + node.shown());
            return Optional.empty();
        }
        return Optional.of(new FieldReader(node, path, problems));
    }

    /** Reads the object of a file; notes what is wrong and returns empty if it holds none. */
    static Optional<FieldReader> ofFile(byte[] bytes, Problems problems) {
        try {
            return of(JsonDocument.parse(bytes), "", problems);
        } catch (JsonDocument.NotJson e) {
            problems.add(e.line(), "", e.getMessage());
            return Optional.empty();
        }
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

    /** Notes a missing field; the rule says what is wanted. */
    FieldReader require(String name, String what) {
        if (!has(name)) {
            fault(name, what.isEmpty() ? "is required" : "is required: " + what);
        }
        return this;
    }

    Optional<String> required(String name, String what) {
        return require(name, what).text(name);
    }

    Optional<String> text(String name) {
        return value(name, Allowed.text());
    }

    Optional<Double> number(String name, Range range) {
        return value(name, Allowed.number(range));
    }

    Optional<Integer> count(String name, int lowest) {
        return value(name, Allowed.count(lowest));
    }

    Optional<Boolean> truth(String name) {
        return node(name, JsonNode.Type.TRUTH).map(node -> Boolean.valueOf(node.text()));
    }

    boolean isNumber(String name) {
        return has(name) && object.fields().get(name).type() == JsonNode.Type.NUMBER;
    }

    boolean isText(String name) {
        return has(name) && object.fields().get(name).type() == JsonNode.Type.TEXT;
    }

    Optional<Instant> instant(String name) {
        return value(name, new Allowed<>(JsonNode.Type.TEXT, JsonNode::instant,
                "a time with its offset, as in \"2026-03-04T10:20:00Z\""));
    }

    <T> Optional<T> choice(String name, List<T> allowed) {
        return value(name, new Allowed<>(JsonNode.Type.TEXT, text -> allowed.stream()
                .filter(one -> one.toString().equals(text)).findFirst(), "one of " + joined(allowed)));
    }

    private <T> Optional<T> value(String name, Allowed<T> allowed) {
        Optional<JsonNode> node = node(name, allowed.type);
        Optional<T> value = node.flatMap(given -> allowed.reading.apply(given.text()));
        if (node.isPresent() && value.isEmpty()) {
            fault(name, "must be " + allowed.rule + ": " + node.get().shown());
        }
        return value;
    }

    List<Double> numbers(String name, Range range) {
        return values(name, Allowed.number(range));
    }

    List<Integer> counts(String name, int lowest) {
        return values(name, Allowed.count(lowest));
    }

    /** Reads texts that differ from each other. */
    List<String> texts(String name) {
        Set<String> before = new LinkedHashSet<>();
        List<String> texts = values(name, Allowed.text());
        for (String text : texts) {
            if (!before.add(text)) {
                faultOfItem(name, before.size(), "given once only");
                return List.of();
            }
        }
        return texts;
    }

    /** Reads a list of values; one that isn't allowed makes the whole empty. */
    private <T> List<T> values(String name, Allowed<T> allowed) {
        List<T> values = new ArrayList<>();
        for (JsonNode item : items(name)) {
            Optional<T> value = item.type() == allowed.type ? allowed.reading.apply(item.text()) : Optional.empty();
            if (value.isEmpty()) {
                faultOfItem(name, values.size(), allowed.rule);
                return List.of();
            }
            values.add(value.get());
        }
        return values;
    }

    private void faultOfItem(String name, int index, String rule) {
        JsonNode item = object.fields().get(name).items().get(index);
        faults.add(name);
        problems.add(item.line(), pathOf(name) + "[" + index + "]", "must be " + rule + ": " + item.shown());
    }

    Optional<FieldReader> object(String name) {
        return node(name, JsonNode.Type.OBJECT).map(node -> new FieldReader(node, pathOf(name), problems));
    }

    /** Reads an object; one with any error is left out as a whole and makes its field faulty. */
    <T> Optional<T> part(String name, Function<FieldReader, T> reading) {
        Optional<FieldReader> inner = object(name);
        Optional<T> part = inner.flatMap(object -> object.taken(() -> Optional.of(reading.apply(object))));
        boolean faulty = inner.isPresent() && inner.get().finish().faulty();
        if (faulty) {
            faults.add(name);
        }
        return faulty ? Optional.empty() : part;
    }

    /** Reads each object of a list with the given method; what that method leaves empty is left out. */
    <T> List<T> objects(String name, BiFunction<FieldReader, Integer, Optional<T>> reading) {
        List<T> read = new ArrayList<>();
        List<JsonNode> items = items(name);
        for (int i = 0; i < items.size(); i++) {
            int index = i;
            Optional<T> item = FieldReader.of(items.get(i), pathOf(name) + "[" + i + "]", problems)
                    .flatMap(reader -> reader.taken(() -> reading.apply(reader, index)));
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
                faultOfItem(name, rows.size(), JsonNode.Type.ARRAY.toString());
                return List.of();
            }
            List<T> read = new ArrayList<>();
            for (JsonNode item : row.items()) {
                String where = pathOf(name) + "[" + rows.size() + "][" + read.size() + "]";
                Optional<T> one = FieldReader.of(item, where, problems)
                        .flatMap(reader -> reader.taken(() -> reading.apply(reader)));
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

    /** What the checks of the fields let through, a value may still refuse: that is an error of the object. */
    <T> Optional<T> taken(Supplier<Optional<T>> reading) {
        try {
            return reading.get();
        } catch (IllegalArgumentException e) {
            faults.add("");
            problems.add(object.line(), path, "can't be taken: " + e.getMessage());
            return Optional.empty();
        }
    }

    private List<JsonNode> items(String name) {
        List<JsonNode> items = node(name, JsonNode.Type.ARRAY).map(JsonNode::items).orElse(List.of());
        if (items.size() > LONGEST_LIST) {
            fault(name, "must hold " + LONGEST_LIST + " at most: " + items.size());
            return List.of();
        }
        return items;
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

    /** Returns the value of a field as it stands, for fields of more than one type. */
    Optional<JsonNode> given(String name) {
        return has(name) ? Optional.of(object.fields().get(name)) : Optional.empty();
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
        List<String> unknown = object.fields().keySet().stream().filter(name -> !known.contains(name)).toList();
        for (String name : unknown.subList(0, Math.min(MOST_UNKNOWN, unknown.size()))) {
            String nearest = NearestName.of(name, known);
            faults.add(nearest);
            problems.add(object.lineOfName(name), pathOf(name), "is not a known field; the nearest known name is \""
                    + nearest + "\"");
        }
        if (unknown.size() > MOST_UNKNOWN) {
            problems.add(object.line(), path, "holds " + (unknown.size() - MOST_UNKNOWN) + " more unknown fields");
        }
        return this;
    }

    /** Closes the object; with any error in it there is no result. */
    <T> Optional<T> finished(Supplier<T> result) {
        return finish().faulty() ? Optional.empty() : Optional.of(result.get());
    }

    /** Lists what is allowed; names that hold a comma themselves stand in quotes. */
    static String joined(Collection<?> allowed) {
        String quote = allowed.stream().limit(MOST_LISTED).anyMatch(one -> one.toString().contains(",")) ? "\"" : "";
        return allowed.stream().limit(MOST_LISTED).map(one -> quote + one + quote).collect(Collectors.joining(", "))
                + (allowed.size() > MOST_LISTED ? " and " + (allowed.size() - MOST_LISTED) + " more" : "");
    }
}
