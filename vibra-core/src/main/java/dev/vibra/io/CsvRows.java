package dev.vibra.io;

import dev.vibra.internal.Printable;
import dev.vibra.internal.Require;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Rows of numbers in a text file, one after the other; what isn't such a row is skipped or named with its line. */
final class CsvRows {
    private static final byte[] BYTE_ORDER_MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};
    private static final int LONGEST_NAME = 100;

    private final ByteReader in;
    private final CsvRow row;
    private final CsvScanner scanner;
    private final boolean oneColumn;
    private List<String> header = List.of();
    private boolean begun;
    private double[] values = {};

    /** One column needs no separator: a comma in it is a decimal comma. */
    CsvRows(ByteReader in, boolean oneColumn) throws IOException {
        this.in = in;
        this.oneColumn = oneColumn;
        Optional<String> wide = TextEncoding.wide(in.head(Recordings.HEAD_BYTES));
        if (wide.isPresent()) {
            throw in.problem("is text in " + wide.get() + "; save it as UTF-8");
        }
        if (Arrays.equals(in.head(BYTE_ORDER_MARK.length), BYTE_ORDER_MARK)) {
            in.skip(BYTE_ORDER_MARK.length);
        }
        char separator = oneColumn ? ';' : separator();
        row = new CsvRow(separator == ' ');
        scanner = new CsvScanner(in, separator, row);
    }

    /** The separator that the first line with numbers holds. */
    private char separator() throws IOException {
        String line = firstLineWithNumbers();
        return line.indexOf(';') >= 0 ? ';' : line.indexOf('\t') >= 0 ? '\t' : line.indexOf(',') >= 0 ? ',' : ' ';
    }

    private String firstLineWithNumbers() throws IOException {
        byte[] head = in.head(ByteReader.BLOCK);
        int start = 0;
        for (int i = 0; i <= head.length; i++) {
            if (i < head.length ? head[i] == '\n' || head[i] == '\r' : head.length < ByteReader.BLOCK) {
                String line = new String(head, start, i - start, StandardCharsets.ISO_8859_1).strip();
                if (startsWithNumber(line)) {
                    return line;
                }
                start = i + 1;
            }
        }
        if (head.length == ByteReader.BLOCK) {
            throw in.problem("must hold a line of numbers within its first " + ByteReader.BLOCK + " bytes");
        }
        return "";
    }

    private static boolean startsWithNumber(String line) {
        int end = 0;
        while (end < line.length() && ";\t ,".indexOf(line.charAt(end)) < 0) {
            end++;
        }
        return !Double.isNaN(NumberText.parse(line.substring(0, end).replace("\"", "")));
    }

    /** Goes on to the next row of numbers; false if there is none. */
    boolean next() throws IOException {
        return values.length > 0 && scanner.takeNumbers(values) || nextText();
    }

    /** Goes on to the next row of numbers and keeps its text too. */
    boolean nextText() throws IOException {
        while (scanner.takeRow()) {
            int fields = row.fields();
            if (fields == values.length + 1 && values.length > 0 || values.length == 0 && fields > fewest()) {
                dropEmptyEnd();
            }
            if (row.longField() >= 0) {
                throw problem(row.longField(), "must be a number of at most " + CsvRow.LONGEST_FIELD
                        + " characters (is there a quote that isn't closed?): "
                        + Printable.quoted(row.text(row.longField())));
            }
            if (!row.isBlank() && !isHeader()) {
                takeNumbers();
                return true;
            }
        }
        return false;
    }

    private int fewest() {
        return oneColumn ? 1 : 2;
    }

    /** One separator may follow the last number. */
    private void dropEmptyEnd() {
        if (row.isEmpty(row.fields() - 1)) {
            row.dropLast();
        }
    }

    /** The first row may be one, if it holds no number. */
    private boolean isHeader() {
        if (begun) {
            return false;
        }
        begun = true;
        List<String> names = new ArrayList<>();
        for (String text : row.texts(row.fields())) {
            if (NumberText.isLikeNumber(text)) {
                return false;
            }
            names.add(Printable.shortened(text, LONGEST_NAME));
        }
        header = names;
        return true;
    }

    private void takeNumbers() {
        int fields = row.fields();
        if (fields > CsvRow.MOST_FIELDS) {
            throw in.problem("line " + line() + ": may hold up to " + CsvRow.MOST_FIELDS + " numbers");
        }
        if (oneColumn ? fields != 1 : fields < 2 || values.length > 0 && fields != values.length) {
            throw in.problem("line " + line() + ": must hold " + rule(Math.max(2, values.length)) + ": " + quotedRow());
        }
        if (values.length == 0) {
            values = new double[fields];
        }
        for (int c = 0; c < fields; c++) {
            values[c] = row.number(c);
            if (!(Math.abs(values[c]) < Double.POSITIVE_INFINITY)) {
                throw problem(c, "must be a finite number: " + Printable.quoted(row.text(c)));
            }
        }
    }

    private String rule(int columns) {
        if (oneColumn) {
            return "one number";
        }
        return columns + " numbers, time in s and " + (columns == 2 ? "value" : columns - 1 + " values");
    }

    private String quotedRow() {
        int shown = Math.min(row.fields(), Printable.QUOTED);
        return Printable.quoted(String.join(" | ", row.texts(shown)));
    }

    /** Number of numbers in each row. */
    int columns() {
        return values.length;
    }

    double value(int column) {
        return values[column];
    }

    long line() {
        return scanner.line();
    }

    /** Tells whether the first field of the text is two whole numbers with a comma between. */
    boolean isPair() {
        return row.isPair(0);
    }

    /** What the header calls the columns behind the time; empty if it doesn't name each of them. */
    List<String> names() {
        return header.size() == values.length ? header.subList(1, header.size()) : List.of();
    }

    RecordingFileException problem(int column, String reason) {
        return problem(line(), column, reason);
    }

    RecordingFileException problem(long line, int column, String reason) {
        return in.problem("line " + line + ", column " + (column + 1) + ": " + reason);
    }

    /** A number of a column in SI units. */
    double si(RecordedChannel channel, double stored, long line, int column) {
        double si = stored * channel.scale() * channel.unit().toSi();
        if (!(Math.abs(si) <= Require.LARGEST_SAMPLE)) {
            throw problem(line, column, channel.complaint(stored));
        }
        return si;
    }
}
