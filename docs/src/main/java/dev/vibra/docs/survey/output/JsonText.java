package dev.vibra.docs.survey.output;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;

/**
 * Writes maps, lists, texts, numbers and truth values as indented JSON; numbers plain, line ends the same everywhere.
 */
final class JsonText {
    private JsonText() {}

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
            json.writeString((String) value);
        }
    }
}
