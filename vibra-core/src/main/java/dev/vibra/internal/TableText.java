package dev.vibra.internal;

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
public final class TableText {
    /**
     * One row, with its place for messages.
     *
     * @param what what the table is called in messages
     * @param line line of the text, from 1
     * @param cells cells by column
     */
    public record Row(String what, int line, Map<String, String> cells) {
        /**
         * Returns a cell.
         *
         * @param column name of its column
         * @return text of the cell
         */
        public String text(String column) {
            return cells.get(column);
        }

        /**
         * Reads a cell; whatever is wrong with it is told with line and column.
         *
         * @param column name of its column
         * @param reader makes a value of its text
         * @param <T> kind of value
         * @return the value
         */
        public <T> T read(String column, Function<String, T> reader) {
            String cell = text(column);
            try {
                return reader.apply(cell);
            } catch (IllegalArgumentException e) {
                throw failure("column '" + column + "': " + e.getMessage());
            }
        }

        /**
         * Makes the exception for a row that can't be.
         *
         * @param message what is wrong
         * @return an exception that names table and line
         */
        public IllegalArgumentException failure(String message) {
            return TableText.failure(what, line, message);
        }
    }

    private final String what;
    private final Map<String, List<Row>> sections = new LinkedHashMap<>();
    private final Map<String, List<String>> columnsOf;
    private List<String> header = List.of();

    private TableText(String what, Map<String, List<String>> columnsOf) {
        this.what = what;
        this.columnsOf = columnsOf;
    }

    /**
     * Parses a text.
     *
     * @param what what the table is called in messages
     * @param text the text
     * @param columnsOf columns of each section that is allowed
     * @return the tables
     * @throws IllegalArgumentException if the text has another form; the message names the line
     */
    public static TableText parse(String what, String text, Map<String, List<String>> columnsOf) {
        Objects.requireNonNull(text, "text");
        TableText result = new TableText(Objects.requireNonNull(what, "what"), columnsOf);
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
                throw failure(what, i + 1, "a row must stand below a [section]: " + line);
            } else if (!headed) {
                result.checkHeader(i + 1, section, cells(line));
                headed = true;
            } else {
                result.add(i + 1, section, cells(line));
            }
        }
        return result;
    }

    /**
     * Returns the rows of a section.
     *
     * @param section its name
     * @return rows in the order of the text; none if the section is missing
     */
    public List<Row> rows(String section) {
        return Collections.unmodifiableList(sections.getOrDefault(section, List.of()));
    }

    private static IllegalArgumentException failure(String what, int line, String message) {
        return new IllegalArgumentException(what + ", line " + line + ": " + message);
    }

    private String open(int line, String text) {
        String name = text.endsWith("]") ? text.substring(1, text.length() - 1) : text;
        if (!columnsOf.containsKey(name)) {
            throw failure(what, line, "section must be one of " + String.join(", ", columnsOf.keySet()) + ": " + text);
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
            throw failure(what, line, "columns of [" + section + "] must be " + String.join(" | ", required)
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
            throw failure(what, line, "a row of [" + section + "] must have " + header.size() + " cells: " + cells.size());
        }
        Map<String, String> row = new LinkedHashMap<>();
        for (String column : columnsOf.get(section)) {
            int at = header.indexOf(name(column));
            row.put(name(column), at < 0 ? column.substring(column.indexOf('=') + 1) : cells.get(at));
        }
        sections.get(section).add(new Row(what, line, row));
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        for (String cell : line.split("\\|", -1)) {
            cells.add(cell.strip());
        }
        return cells;
    }
}
