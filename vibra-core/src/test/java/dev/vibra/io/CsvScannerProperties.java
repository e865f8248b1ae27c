package dev.vibra.io;

import static org.junit.jupiter.api.Assertions.assertEquals;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import dev.vibra.internal.Printable;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** Oracle: FastCSV 4.1.0. */
class CsvScannerProperties {
    private static final String REFUSED = "refused";

    /** A stream that gives a few bytes at a time. */
    private static InputStream slow(byte[] bytes, int together) {
        return new ByteArrayInputStream(bytes) {
            @Override
            public synchronized int read(byte[] target, int offset, int length) {
                return super.read(target, offset, Math.min(length, together));
            }
        };
    }

    private static List<String> ours(String text, char separator, int together) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
        List<String> rows = new ArrayList<>();
        CsvRow row = new CsvRow(false);
        try (ByteReader in = ByteReader.of(ByteSource.of(slow(bytes, together), "x.csv"))) {
            CsvScanner scanner = new CsvScanner(in, separator, row);
            while (scanner.takeRow()) {
                List<String> fields = new ArrayList<>();
                for (int i = 0; i < row.fields(); i++) {
                    fields.add(row.text(i));
                }
                rows.add(scanner.line() + ": " + fields);
            }
        } catch (RecordingFileException e) {
            rows.add(REFUSED);
        }
        return rows;
    }

    private static List<String> fastCsv(String text, char separator) {
        List<String> rows = new ArrayList<>();
        try {
            for (CsvRecord row : CsvReader.builder().fieldSeparator(separator).commentStrategy(CommentStrategy.SKIP)
                    .commentCharacter('#').allowExtraFields(true).allowMissingFields(true).ofCsvRecord(text)) {
                rows.add(row.getStartingLineNumber() + ": " + row.getFields().stream().map(String::strip).toList());
            }
        } catch (CsvParseException e) {
            rows.add(REFUSED);
        }
        return rows;
    }

    /**
     * No return beside quotes, and a line feed behind them: FastCSV 4.1.0 loses count of lines, or a field, after a
     * return within quotes, and the end of a doubled quote where the text ends within them.
     */
    @Provide
    Arbitrary<String> tables() {
        Arbitrary<String> quoted = Arbitraries.strings().withChars("1,; \n#").ofMaxLength(4)
                .map(content -> '"' + content + '"');
        Arbitrary<String> doubled = Arbitraries.strings().withChars("1,\n").ofMaxLength(2)
                .map(content -> "\"" + content + "\"\"" + content + "\"");
        Arbitrary<String> plain = Arbitraries.strings().withChars("12.,; #x").ofMaxLength(4);
        Arbitrary<String> ends = Arbitraries.of("\n", "\r\n", "\r", "", "\n\n", ",", ";", "x");
        return Arbitraries.oneOf(quoted, doubled, plain, plain).flatMap(field -> ends.map(end -> field + end)).list()
                .ofMaxSize(8).map(parts -> String.join("", parts))
                .map(text -> text.contains("\"") ? text.replace("\r", "") + "\n" : text);
    }

    @Property(tries = 5000)
    void rowsAreThoseOfAnotherParser(@ForAll("tables") String text, @ForAll boolean comma,
            @ForAll @IntRange(min = 1, max = 9) int together) throws IOException {
        char separator = comma ? ',' : ';';
        assertEquals(fastCsv(text, separator), ours(text, separator, together), Printable.of(text));
    }

    @Provide
    Arbitrary<String> rows() {
        Arbitrary<String> field = Arbitraries.of("1", "-2.5", "3e2", ".5", "4,5", "", "x", "\"6\"", " 7 ", "8 ", "#", "1e999",
                "12345678901234567890.5", "0.1234567890123456789", "\t9", "1e");
        return field.list().ofMinSize(1).ofMaxSize(3).flatMap(fields -> Arbitraries.of(",", ";", " ", "\t", "  ")
                .flatMap(separator -> Arbitraries.of("\n", "\r\n", "\r", "", " \n", ",\n").map(end ->
                        String.join(separator, fields) + end))).list().ofMaxSize(6).map(lines -> String.join("", lines));
    }

    /** Rows taken in one step are the rows taken field by field, wherever the bytes at hand end. */
    @Property(tries = 5000)
    void plainRowsAreTheSameTakenAtOnce(@ForAll("rows") String text, @ForAll @IntRange(min = 1, max = 3) int columns,
            @ForAll @IntRange(min = 1, max = 40) int together) throws IOException {
        for (char separator : new char[] {',', ';', ' ', '\t'}) {
            assertEquals(numbers(text, separator, columns, together, false),
                    numbers(text, separator, columns, together, true), Printable.of(text));
        }
    }

    private static List<String> numbers(String text, char separator, int columns, int together, boolean atOnce)
            throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
        List<String> found = new ArrayList<>();
        double[] values = new double[columns];
        CsvRow row = new CsvRow(separator == ' ');
        try (ByteReader in = ByteReader.of(ByteSource.of(slow(bytes, together), "x.csv"))) {
            CsvScanner scanner = new CsvScanner(in, separator, row);
            while (true) {
                if (atOnce && scanner.takeNumbers(values)) {
                    List<Double> taken = new ArrayList<>();
                    for (double value : values) {
                        taken.add(value);
                    }
                    found.add(scanner.line() + ": " + taken);
                } else if (scanner.takeRow()) {
                    List<Double> parsed = new ArrayList<>();
                    for (int i = 0; i < row.fields(); i++) {
                        parsed.add(row.number(i));
                    }
                    found.add(scanner.line() + ": " + parsed);
                } else {
                    return found;
                }
            }
        } catch (RecordingFileException e) {
            found.add(REFUSED);
            return found;
        }
    }
}
