package dev.vibra.docs.survey.input;

import dev.vibra.internal.Printable;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One value of a JSON document and the line on which it begins. */
final class JsonNode {
    /** What a value can be. */
    enum Type {
        OBJECT("an object { }"), ARRAY("a list [ ]"), TEXT("a text in quotes"), NUMBER("a number"),
        TRUTH("true or false"), NULL("null");

        private final String label;

        Type(String label) {
            this.label = label;
        }

        @Override
        public String toString() {
            return label;
        }
    }

    /** A field name that stands a second time in the same object. */
    record Repeat(String name, int line, int firstLine) {}

    private static final int MOST_SHOWN = 60;

    private final Type type;
    private final int line;
    private final String text;
    private int nameLine; // of the field that holds it; 0 in a list
    private Map<String, JsonNode> fields = Map.of(); // made when the first comes: most nodes hold none of the three
    private List<Repeat> repeats = List.of();
    private List<JsonNode> items = List.of();

    JsonNode(Type type, int line, String text) {
        this.type = type;
        this.line = line;
        this.text = text;
    }

    Type type() {
        return type;
    }

    int line() {
        return line;
    }

    /** Returns the characters of a text, or of a number as they stand in the file. */
    String text() {
        return text;
    }

    /** Reads an instant of ISO 8601 with its offset; empty if a text is none. */
    static Optional<Instant> instant(String text) {
        try {
            return Optional.of(OffsetDateTime.parse(text).toInstant());
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }

    /** Returns a field of an object, if it is there and of the type. */
    Optional<JsonNode> at(String name, Type wanted) {
        return Optional.ofNullable(fields.get(name)).filter(node -> node.type == wanted);
    }

    Map<String, JsonNode> fields() {
        return fields;
    }

    List<JsonNode> items() {
        return items;
    }

    List<Repeat> repeats() {
        return repeats;
    }

    int lineOfName(String name) {
        return fields.get(name).nameLine;
    }

    void add(String name, int line, JsonNode value) {
        fields = fields.isEmpty() ? new LinkedHashMap<>() : fields;
        value.nameLine = line;
        JsonNode before = fields.putIfAbsent(name, value);
        if (before != null) {
            repeats = repeats.isEmpty() ? new ArrayList<>() : repeats;
            repeats.add(new Repeat(name, line, before.nameLine));
        }
    }

    void add(JsonNode item) {
        items = items.isEmpty() ? new ArrayList<>() : items;
        items.add(item);
    }

    /** Returns the value as it is shown in a message, cut where it is long. */
    String shown() {
        return switch (type) {
            case TEXT -> '"' + Printable.shortened(text, MOST_SHOWN) + '"';
            case NUMBER, TRUTH, NULL -> Printable.shortened(text, MOST_SHOWN);
            case OBJECT, ARRAY -> type.toString();
        };
    }
}
