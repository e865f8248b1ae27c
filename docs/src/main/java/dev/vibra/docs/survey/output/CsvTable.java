package dev.vibra.docs.survey.output;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Writes a table as of RFC 4180. A text that a spreadsheet would run as a formula gets an apostrophe before it; numbers
 * stay numbers, negative ones too, and one that isn't finite leaves its cell empty.
 */
final class CsvTable {
    private static final String BEGINS_FORMULA = "=+-@\t\r";

    private final CsvWriter csv;

    CsvTable(OutputStream out) {
        csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF)
                .build(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    }

    /** Writes texts and numbers. */
    CsvTable row(Object... cells) {
        csv.writeRecord(Arrays.stream(cells).map(CsvTable::shown).toArray(String[]::new));
        return this;
    }

    private static String shown(Object cell) {
        if (cell instanceof Double number) {
            return Double.isFinite(number) ? PlainNumber.of(number) : "";
        }
        String text = cell.toString();
        return !text.isEmpty() && BEGINS_FORMULA.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }

    void flush() throws IOException {
        csv.flush();
    }
}
