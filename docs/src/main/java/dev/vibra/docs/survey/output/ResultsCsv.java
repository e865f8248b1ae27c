package dev.vibra.docs.survey.output;

import dev.vibra.descriptor.DescriptorValue;
import dev.vibra.point.PointSurvey;
import dev.vibra.survey.MachineSurvey;
import java.io.IOException;
import java.io.OutputStream;

/** Writes {@code results.csv}: one descriptor a row, as point, descriptor, value, unit; RFC 4180, UTF-8. */
final class ResultsCsv {
    private ResultsCsv() {}

    static void write(MachineSurvey survey, OutputStream out) throws IOException {
        CsvTable table = new CsvTable(out).row("point", "descriptor", "value", "unit");
        for (PointSurvey point : survey.points()) {
            for (DescriptorValue one : point.description().numbers()) {
                table.row(point.point().id(), one.name(), one.value(), one.unit());
            }
        }
        table.flush();
    }
}
