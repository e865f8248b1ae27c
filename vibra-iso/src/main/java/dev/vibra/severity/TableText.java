package dev.vibra.severity;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;

/**
 * The text form of the tables: sections of rows of cells between bars. Knows nothing of vibration.
 *
 * <p>A column declared as {@code name=default} may be left out of a header; its cells then read as the default.
 */
final class TableText {
    /** One row, with its line for messages. */
    record Row(int line, Map<String, String> cells) {
        String text(String column) {
            return cells.get(column);
        }

        /** Reads a cell; whatever is wrong with it is told with line and column. */
        <T> T read(String column, Function<String, T> reader) {
            String cell = text(column);
            try {
                return reader.apply(cell);
            } catch (IllegalArgumentException e) {
                throw failure(line, "column '" + column + "': " + e.getMessage());
            }
        }
    }

    private final Map<String, List<Row>> sections = new LinkedHashMap<>();
    private final Map<String, List<String>> columnsOf;
    private List<String> header = List.of();

    private TableText(Map<String, List<String>> columnsOf) {
        this.columnsOf = columnsOf;
    }

    /** Parses a text; {@code columnsOf} names each allowed section with its columns. */
    static TableText parse(String text, Map<String, List<String>> columnsOf) {
        Objects.requireNonNull(text, "text");
        TableText result = new TableText(columnsOf);
        String section = null;
        boolean headed = false;
        String[] lines = text.split("\\R");
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i].strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            if (line.startsWith("[")) {
                section = result.open(i + 1, line);
                headed = false;
            } else if (section == null) {
                throw failure(i + 1, "a row must stand below a [section]: " + line);
            } else if (!headed) {
                result.checkHeader(i + 1, section, cells(line));
                headed = true;
            } else {
                result.add(i + 1, section, cells(line));
            }
        }
        return result;
    }

    /** Rows of a section in the order of the text; none if the section is missing. */
    List<Row> rows(String section) {
        return Collections.unmodifiableList(sections.getOrDefault(section, List.of()));
    }

    static IllegalArgumentException failure(int line, String message) {
        return new IllegalArgumentException("criteria tables, line " + line + ": " + message);
    }

    private String open(int line, String text) {
        String name = text.endsWith("]") ? text.substring(1, text.length() - 1) : text;
        if (!columnsOf.containsKey(name)) {
            throw failure(line, "section must be one of " + String.join(", ", columnsOf.keySet()) + ": " + text);
        }
        sections.computeIfAbsent(name, unused -> new ArrayList<>());
        return name;
    }

    private void checkHeader(int line, String section, List<String> columns) {
        List<String> required = new ArrayList<>();
        List<String> optional = new ArrayList<>();
        List<String> expected = new ArrayList<>();
        for (String column : columnsOf.get(section)) {
            boolean mayMiss = column.contains("=");
            (mayMiss ? optional : required).add(name(column));
            if (!mayMiss || columns.contains(name(column))) {
                expected.add(name(column));
            }
        }
        if (!columns.equals(expected)) {
            throw failure(line, "columns of [" + section + "] must be " + String.join(" | ", required)
                    + (optional.isEmpty() ? "" : ", with or without " + String.join(", ", optional)) + ": "
                    + String.join(" | ", columns));
        }
        header = columns;
    }

    private static String name(String column) {
        int sign = column.indexOf('=');
        return sign < 0 ? column : column.substring(0, sign);
    }

    private void add(int line, String section, List<String> cells) {
        if (cells.size() != header.size()) {
            throw failure(line, "a row of [" + section + "] must have " + header.size() + " cells: " + cells.size());
        }
        Map<String, String> row = new LinkedHashMap<>();
        for (String column : columnsOf.get(section)) {
            int at = header.indexOf(name(column));
            row.put(name(column), at < 0 ? column.substring(column.indexOf('=') + 1) : cells.get(at));
        }
        sections.get(section).add(new Row(line, row));
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        for (String cell : line.split("\\|", -1)) {
            cells.add(cell.strip());
        }
        return cells;
    }
}
