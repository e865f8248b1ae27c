package dev.vibra.docs.browser;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** JSON as maps, lists, texts, doubles and truth values, both ways. */
final class JsonValue {
    private JsonValue() {}

    static Object parse(String text) {
        try (JsonParser json = new JsonFactory().createParser(text)) {
            json.nextToken();
            return value(json);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Object value(JsonParser json) throws IOException {
        return switch (json.currentToken()) {
            case START_OBJECT -> object(json);
            case START_ARRAY -> list(json);
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> json.getDoubleValue();
            case VALUE_TRUE -> true;
            case VALUE_FALSE -> false;
            case VALUE_NULL -> null;
            default -> json.getText();
        };
    }

    private static Map<String, Object> object(JsonParser json) throws IOException {
        Map<String, Object> object = new LinkedHashMap<>();
        while (json.nextToken() != JsonToken.END_OBJECT) {
            String name = json.currentName();
            json.nextToken();
            object.put(name, value(json));
        }
        return object;
    }

    private static List<Object> list(JsonParser json) throws IOException {
        List<Object> list = new ArrayList<>();
        while (json.nextToken() != JsonToken.END_ARRAY) {
            list.add(value(json));
        }
        return list;
    }

    static String text(Object value) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            write(json, value);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static void write(JsonGenerator json, Object value) throws IOException {
        if (value instanceof Map<?, ?> map) {
            json.writeStartObject();
            for (Map.Entry<?, ?> field : map.entrySet()) {
                json.writeFieldName(field.getKey().toString());
                write(json, field.getValue());
            }
            json.writeEndObject();
        } else if (value instanceof List<?> list) {
            json.writeStartArray();
            for (Object item : list) {
                write(json, item);
            }
            json.writeEndArray();
        } else if (value instanceof Integer number) {
            json.writeNumber(number);
        } else if (value instanceof Number number) {
            json.writeNumber(number.doubleValue());
        } else if (value instanceof Boolean truth) {
            json.writeBoolean(truth);
        } else {
            json.writeString(value.toString());
        }
    }
}
