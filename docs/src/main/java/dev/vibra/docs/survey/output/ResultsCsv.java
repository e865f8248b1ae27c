package dev.vibra.docs.survey.output;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import dev.vibra.survey.Descriptor;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.PointSurvey;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;

/** Writes {@code results.csv}: one descriptor a row, as point, descriptor, value, unit; RFC 4180, UTF-8. */
public final class ResultsCsv {
    private ResultsCsv() {}

    /**
     * Writes the descriptors of all points.
     *
     * @param survey result of the survey
     * @return content of the file
     */
    public static String of(MachineSurvey survey) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(text)) {
            csv.writeRecord("point", "descriptor", "value", "unit");
            for (PointSurvey point : survey.points()) {
                for (Descriptor descriptor : point.descriptors()) {
                    csv.writeRecord(point.point().id(), descriptor.name(), PlainNumber.of(descriptor.value()),
                            descriptor.unit());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }
}
