package dev.vibra.docs.survey.input;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;

/** Turns the bytes of a JSON document into nodes that remember their lines. */
final class JsonDocument {
    /** No sane description is deeper; the limit keeps a hostile one from exhausting the stack. */
    private static final int DEEPEST = 50;

    private final JsonParser parser;

    private JsonDocument(JsonParser parser) {
        this.parser = parser;
    }

    /** Reads the one value of a document; throws with the line of the first place that is not JSON. */
    static JsonNode parse(byte[] bytes) throws JsonProcessingException {
        try (JsonParser parser = new JsonFactory().createParser(bytes)) {
            JsonDocument document = new JsonDocument(parser);
            if (parser.nextToken() == null) {
                throw new JsonParseException(parser, "the file is empty");
            }
            JsonNode root = document.value(0);
            if (parser.nextToken() != null) {
                throw new JsonParseException(parser, "something follows the end of the description");
            }
            return root;
        } catch (JsonProcessingException e) {
            throw e;
        } catch (IOException e) {
            throw new IllegalStateException("reading from memory", e);
        }
    }

    private JsonNode value(int depth) throws IOException {
        if (depth > DEEPEST) {
            throw new JsonParseException(parser, "nested deeper than " + DEEPEST + " levels");
        }
        int line = line();
        return switch (parser.currentToken()) {
            case START_OBJECT -> object(new JsonNode(JsonNode.Type.OBJECT, line, ""), depth);
            case START_ARRAY -> array(new JsonNode(JsonNode.Type.ARRAY, line, ""), depth);
            case VALUE_STRING -> new JsonNode(JsonNode.Type.TEXT, line, parser.getText());
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new JsonNode(JsonNode.Type.NUMBER, line, parser.getText());
            case VALUE_TRUE, VALUE_FALSE -> new JsonNode(JsonNode.Type.TRUTH, line, parser.getText());
            case VALUE_NULL -> new JsonNode(JsonNode.Type.NULL, line, "null");
            default -> throw new JsonParseException(parser, "unexpected " + parser.currentToken());
        };
    }

    private JsonNode object(JsonNode object, int depth) throws IOException {
        while (parser.nextToken() == JsonToken.FIELD_NAME) {
            String name = parser.currentName();
            int nameLine = line();
            parser.nextToken();
            object.add(name, nameLine, value(depth + 1));
        }
        return object;
    }

    private JsonNode array(JsonNode array, int depth) throws IOException {
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            array.add(value(depth + 1));
        }
        return array;
    }

    private int line() {
        return parser.currentTokenLocation().getLineNr();
    }
}
