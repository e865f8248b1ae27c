package dev.vibra.io;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;

/** Columns of numbers read from a text file. */
final class NumberTable {
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+[.,]?\\d*|[.,]\\d+)([eE][+-]?\\d+)?");
    private static final Pattern PAIR = Pattern.compile("\\d+,\\d+");
    private static final Pattern DIGIT = Pattern.compile("\\d");
    private static final Pattern LIKE_A_NUMBER = Pattern.compile("[\\d.,+eE-]*\\d[\\d.,+eE-]*");
    private static final String BYTE_ORDER_MARK = "\u00ef\u00bb\u00bf"; // UTF-8's, read byte by byte

    private static final int LONGEST_QUOTE = 40;

    private final Path file;
    private final int columns;
    private final char separator;
    private final double[][] values;
    private int[] lines = new int[1 << 10];
    private int rows;
    private int pairs;

    private NumberTable(Path file, int columns) {
        this.file = file;
        this.columns = columns;
        this.separator = separator();
        values = new double[columns][1 << 10];
    }

    /** Reads a file with exactly the given number of columns. */
    static NumberTable read(Path file, int columns) {
        NumberTable table = new NumberTable(file, columns);
        try (BufferedReader text = Files.newBufferedReader(file, StandardCharsets.ISO_8859_1);
                CsvReader<CsvRecord> reader = CsvReader.builder().fieldSeparator(table.separator)
                        .commentStrategy(CommentStrategy.SKIP).commentCharacter('#').skipEmptyLines(true)
                        .allowExtraFields(true).allowMissingFields(true)
                        .ofCsvRecord(withoutMark(text))) {
            boolean first = true;
            for (CsvRecord row : reader) {
                table.add(row, first);
                first = false;
            }
        } catch (IOException | UncheckedIOException e) {
            throw new RecordingFileException(file, "can't be read: " + e, e);
        } catch (CsvParseException e) {
            throw new RecordingFileException(file, "is not a table: " + e.getMessage(), e);
        }
        table.refuseCountedPairs();
        if (table.rows == 0) {
            throw new RecordingFileException(file, "file holds no numbers");
        }
        return table;
    }

    private static BufferedReader withoutMark(BufferedReader text) throws IOException {
        text.mark(BYTE_ORDER_MARK.length());
        char[] first = new char[BYTE_ORDER_MARK.length()];
        int read = text.read(first);
        if (read < first.length || !BYTE_ORDER_MARK.equals(new String(first))) {
            text.reset();
        }
        return text;
    }

    /** Returns a column; it is not copied and the caller's from then on. */
    double[] column(int index) {
        values[index] = Arrays.copyOf(values[index], rows);
        return values[index];
    }

    /** Returns the line of the file, from 1, that a row stands on. */
    int lineOf(int row) {
        return lines[row];
    }

    /** One column needs no separator: a comma in it is a decimal comma. */
    private char separator() {
        if (columns == 1) {
            return ';';
        }
        String line = firstLineWithNumbers();
        for (char candidate : new char[] {';', '\t', ','}) {
            if (line.indexOf(candidate) >= 0) {
                return candidate;
            }
        }
        return ' ';
    }

    private String firstLineWithNumbers() {
        try (BufferedReader reader = Files.newBufferedReader(file, StandardCharsets.ISO_8859_1)) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                String text = clean(line);
                if (!text.startsWith("#") && DIGIT.matcher(text).find() && NUMBER.matcher(firstToken(text)).matches()) {
                    return text;
                }
            }
            return "";
        } catch (IOException e) {
            throw new RecordingFileException(file, "can't be read: " + e, e);
        }
    }

    private static String firstToken(String text) {
        return text.split("[;\t ,]", 2)[0].replace("\"", "");
    }

    private void add(CsvRecord row, boolean first) {
        List<String> fields = fields(row);
        if (fields.stream().allMatch(String::isEmpty)) {
            return;
        }
        long line = row.getStartingLineNumber();
        if (first && fields.stream().noneMatch(f -> LIKE_A_NUMBER.matcher(f).matches())) {
            return;
        }
        if (fields.size() != columns) {
            throw new RecordingFileException(file, "line " + line + ": must hold " + (columns == 1 ? "one number"
                    : columns + " numbers, time in s and value") + ": " + shortened(String.join(" | ", fields)));
        }
        grow();
        for (int c = 0; c < columns; c++) {
            values[c][rows] = number(fields.get(c), line, c);
        }
        lines[rows++] = (int) line;
    }

    /** Blanks may stand in rows; of the other separators one may follow the last number. */
    private List<String> fields(CsvRecord row) {
        List<String> fields = new ArrayList<>();
        for (String field : row.getFields()) {
            String text = clean(field);
            if (separator != ' ' || !text.isEmpty()) {
                fields.add(text);
            }
        }
        if (fields.size() == columns + 1 && fields.get(columns).isEmpty()) {
            fields.remove(columns);
        }
        return fields;
    }

    /** "0,512", "1,498", "2,530" are a counter and whole numbers, not one column with a decimal comma. */
    private void refuseCountedPairs() {
        if (columns != 1 || rows < 3 || pairs < rows) {
            return;
        }
        for (int i = 1; i < rows; i++) {
            if ((long) values[0][i] != (long) values[0][i - 1] + 1) {
                return;
            }
        }
        throw new RecordingFileException(file, "must hold one column; the numbers before the commas count up like"
                + " those of a second one");
    }

    private double number(String text, long line, int column) {
        pairs += PAIR.matcher(text).matches() ? 1 : 0;
        double value = NUMBER.matcher(text).matches() ? Double.parseDouble(text.replace(',', '.')) : Double.NaN;
        if (!(Math.abs(value) < Double.POSITIVE_INFINITY)) {
            throw new RecordingFileException(file, "line " + line + ", column " + (column + 1)
                    + ": must be a finite number: " + shortened(text));
        }
        return value;
    }

    private void grow() {
        if (rows == lines.length) {
            lines = Arrays.copyOf(lines, 2 * rows);
            for (int c = 0; c < columns; c++) {
                values[c] = Arrays.copyOf(values[c], 2 * rows);
            }
        }
    }

    private static String shortened(String text) {
        String line = text.replaceAll("\\s+", " ");
        return line.length() <= LONGEST_QUOTE ? line : line.substring(0, LONGEST_QUOTE) + "…";
    }

    private static String clean(String text) {
        return (text.startsWith(BYTE_ORDER_MARK) ? text.substring(BYTE_ORDER_MARK.length()) : text).strip();
    }
}
