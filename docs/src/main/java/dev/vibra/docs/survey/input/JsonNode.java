package dev.vibra.docs.survey.input;

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

    private final Type type;
    private final int line;
    private final String text;
    private final Map<String, JsonNode> fields = new LinkedHashMap<>();
    private final Map<String, Integer> nameLines = new LinkedHashMap<>();
    private final List<Repeat> repeats = new ArrayList<>();
    private final List<JsonNode> items = new ArrayList<>();

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
        return nameLines.get(name);
    }

    void add(String name, int nameLine, JsonNode value) {
        if (nameLines.containsKey(name)) {
            repeats.add(new Repeat(name, nameLine, nameLines.get(name)));
            return;
        }
        nameLines.put(name, nameLine);
        fields.put(name, value);
    }

    void add(JsonNode item) {
        items.add(item);
    }

    /** Returns the value as it is shown in a message, cut where it is long. */
    String shown() {
        return switch (type) {
            case TEXT -> '"' + shortened(text) + '"';
            case NUMBER, TRUTH, NULL -> shortened(text);
            case OBJECT, ARRAY -> type.toString();
        };
    }

    private static String shortened(String text) {
        String oneLine = text.replaceAll("\\p{Cntrl}", "\ufffd");
        return oneLine.length() <= 60 ? oneLine : oneLine.substring(0, 60) + "\u2026";
    }
}
