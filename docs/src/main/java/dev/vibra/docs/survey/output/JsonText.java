package dev.vibra.docs.survey.output;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Writes maps, lists, numbers, truth values, and everything else as text, as indented JSON; numbers plain, line ends
 * the same everywhere.
 */
final class JsonText {
    private JsonText() {}

    /** Makes an object of names and values in turn, in that order; one whose value is an empty Optional is left out. */
    static Map<String, Object> object(Object... namesAndValues) {
        Map<String, Object> object = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            String name = (String) namesAndValues[i];
            Object value = namesAndValues[i + 1];
            if (value instanceof Optional<?> optional) {
                optional.ifPresent(present -> object.put(name, present));
            } else if (value instanceof OptionalDouble optional) {
                optional.ifPresent(present -> object.put(name, present));
            } else {
                object.put(name, value);
            }
        }
        return object;
    }

    static String of(Map<String, Object> object) {
        DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.setPrettyPrinter(new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter));
            write(json, object);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.append('\n').toString();
    }

    private static void write(JsonGenerator json, Object value) throws IOException {
        if (value instanceof Map<?, ?> map) {
            json.writeStartObject();
            for (Map.Entry<?, ?> field : map.entrySet()) {
                json.writeFieldName((String) field.getKey());
                write(json, field.getValue());
            }
            json.writeEndObject();
        } else if (value instanceof List<?> list) {
            json.writeStartArray();
            for (Object item : list) {
                write(json, item);
            }
            json.writeEndArray();
        } else if (value instanceof Boolean truth) {
            json.writeBoolean(truth);
        } else if (value instanceof Number number) {
            json.writeNumber(PlainNumber.of(number.doubleValue()));
        } else {
            json.writeString(value.toString());
        }
    }
}
