package dev.vibra.docs.survey.output;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import dev.vibra.descriptor.DescriptorValue;
import dev.vibra.point.PointSurvey;
import dev.vibra.survey.MachineSurvey;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;

/** Writes {@code results.csv}: one descriptor a row, as point, descriptor, value, unit; RFC 4180, UTF-8. */
final class ResultsCsv {
    private ResultsCsv() {}

    static String of(MachineSurvey survey) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(text)) {
            csv.writeRecord("point", "descriptor", "value", "unit");
            for (PointSurvey point : survey.points()) {
                for (DescriptorValue one : point.description().numbers()) {
                    csv.writeRecord(point.point().id(), one.name(), PlainNumber.of(one.value()), one.unit());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }
}
