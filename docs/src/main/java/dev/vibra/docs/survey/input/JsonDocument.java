package dev.vibra.docs.survey.input;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import java.io.IOException;
import java.util.Map;

/** Turns the bytes of a JSON document into nodes that remember their lines. */
final class JsonDocument {
    /** No sane description is deeper; the limit keeps a hostile one from exhausting the stack. */
    private static final int DEEPEST = 50;
    private static final int LONGEST_TEXT = 20_000;
    private static final int LONGEST_NUMBER = 400;
    private static final int MOST_VALUES = 2_000_000;
    /** The parser's words for what it doesn't take, by what they begin with, and ours: its own name an interface. */
    private static final Map<String, String> LIMITS = Map.of(
            "Number value length", "a number has more than " + LONGEST_NUMBER + " digits",
            "String value length", "a text or a name is longer than " + LONGEST_TEXT + " characters",
            "Non-standard token", "NaN and infinities are not numbers in JSON");

    private final JsonParser parser;
    private int values;

    private JsonDocument(JsonParser parser) {
        this.parser = parser;
    }

    /** A document is not valid JSON; the message says why, the line where. */
    static final class NotJson extends Exception {
        private static final long serialVersionUID = 1;
        private final int line;

        NotJson(int line, String reason) {
            super("is not valid JSON: " + reason);
            this.line = line;
        }

        /** Returns the line, from 1. */
        int line() {
            return line;
        }
    }

    /** Reads the one value of a document; throws with the line of the first place that is not JSON. */
    static JsonNode parse(byte[] bytes) throws NotJson {
        try (JsonParser parser = factory().createParser(bytes)) {
            return new JsonDocument(parser).whole();
        } catch (IOException e) { // of the character set: the first bytes choose UTF-8, UTF-16 or UTF-32
            throw new NotJson(1, "the file is no text in UTF-8");
        }
    }

    private static JsonFactory factory() {
        // Names are few in a sane file; a table of all of them, shared by the process, serves a hostile one only.
        return new JsonFactoryBuilder().disable(JsonFactory.Feature.CANONICALIZE_FIELD_NAMES)
                .streamReadConstraints(StreamReadConstraints.builder()
                .maxStringLength(LONGEST_TEXT).maxNumberLength(LONGEST_NUMBER).build())
                .build();
    }

    private JsonNode whole() throws IOException, NotJson {
        try {
            if (parser.nextToken() == null) {
                throw notJson("the file is empty");
            }
            JsonNode root = value(0);
            if (parser.nextToken() != null) {
                throw notJson("something follows the end of the description");
            }
            return root;
        } catch (JsonProcessingException e) {
            JsonLocation where = e.getLocation() == null || e instanceof StreamConstraintsException
                    ? parser.currentLocation() : e.getLocation();
            throw new NotJson(Math.max(1, where.getLineNr()), plain(e.getOriginalMessage()));
        }
    }

    private static String plain(String message) {
        return LIMITS.entrySet().stream().filter(limit -> message.startsWith(limit.getKey())).map(Map.Entry::getValue)
                .findFirst().orElseGet(() -> message.replaceAll(" ?\\((not recognized|consider)[^)]*\\)", ""));
    }

    private NotJson notJson(String reason) {
        return new NotJson(line(), reason);
    }

    private JsonNode value(int depth) throws IOException, NotJson {
        if (depth > DEEPEST) {
            throw notJson("nested deeper than " + DEEPEST + " levels");
        }
        if (++values > MOST_VALUES) {
            throw notJson("holds more than " + MOST_VALUES + " values");
        }
        int line = line();
        return switch (parser.currentToken()) {
            case START_OBJECT -> object(new JsonNode(JsonNode.Type.OBJECT, line, ""), depth);
            case START_ARRAY -> array(new JsonNode(JsonNode.Type.ARRAY, line, ""), depth);
            case VALUE_STRING -> new JsonNode(JsonNode.Type.TEXT, line, parser.getText());
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new JsonNode(JsonNode.Type.NUMBER, line, parser.getText());
            case VALUE_TRUE, VALUE_FALSE -> new JsonNode(JsonNode.Type.TRUTH, line, parser.getText());
            case VALUE_NULL -> new JsonNode(JsonNode.Type.NULL, line, "null");
            default -> throw notJson("unexpected " + parser.currentToken());
        };
    }

    private JsonNode object(JsonNode object, int depth) throws IOException, NotJson {
        while (parser.nextToken() == JsonToken.FIELD_NAME) {
            String name = parser.currentName();
            int nameLine = line();
            parser.nextToken();
            object.add(name, nameLine, value(depth + 1));
        }
        return object;
    }

    private JsonNode array(JsonNode array, int depth) throws IOException, NotJson {
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            array.add(value(depth + 1));
        }
        return array;
    }

    private int line() {
        return parser.currentTokenLocation().getLineNr();
    }
}
