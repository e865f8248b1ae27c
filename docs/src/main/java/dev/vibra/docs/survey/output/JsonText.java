package dev.vibra.docs.survey.output;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Writes maps, lists, streams, numbers, truth values, and everything else as text, as indented JSON; numbers plain and
 * null where they aren't finite, line ends the same everywhere.
 */
public final class JsonText {
    private JsonText() {}

    /**
     * Writes an object on one line.
     *
     * @param object names and values
     * @return the line without its end
     */
    public static String line(Map<String, Object> object) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            write(json, object);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // Memory doesn't refuse.
        }
        return text.toString();
    }

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

    static void write(Map<String, Object> object, OutputStream out) throws IOException {
        DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
        Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
            json.setPrettyPrinter(new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter));
            write(json, object);
        }
        text.append('\n').flush();
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
            write(json, list.iterator());
        } else if (value instanceof Stream<?> items) {
            write(json, items.iterator());
        } else if (value instanceof Boolean truth) {
            json.writeBoolean(truth);
        } else if (value instanceof Number number && Double.isFinite(number.doubleValue())) {
            json.writeNumber(PlainNumber.of(number.doubleValue()));
        } else if (value instanceof Number) {
            json.writeNull(); // a file holds no infinity
        } else {
            json.writeString(value.toString());
        }
    }

    private static void write(JsonGenerator json, Iterator<?> items) throws IOException {
        json.writeStartArray();
        while (items.hasNext()) {
            write(json, items.next());
        }
        json.writeEndArray();
    }
}
