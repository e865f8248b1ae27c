package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.input.Problem;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The files of a survey by name. */
public final class ReportFiles {
    /** Name of the report. */
    public static final String REPORT = "report.html";
    /** Name of the results for programs. */
    public static final String JSON = "results.json";
    /** Name of the descriptors as a table. */
    public static final String CSV = "results.csv";

    private ReportFiles() {}

    /**
     * Makes the content of all files, to be written in this order: the results for programs come last and hold the
     * digests of the others. The report must not be closed before.
     *
     * @param record the survey
     * @param report report with the figures of all points
     * @return content by file name
     */
    public static Map<String, Content> of(SurveyRecord record, HtmlReport report) {
        report.drawWhole(record);
        List<Problem> problems = Stream.concat(record.problems().stream(), report.problems().stream()).toList();
        SurveyRecord whole = record.with(problems);
        Map<String, String> digests = new LinkedHashMap<>();
        Map<String, Content> files = new LinkedHashMap<>();
        files.put(REPORT, Digest.noted(REPORT, digests, out -> report.write(whole, out)));
        files.put(CSV, Digest.noted(CSV, digests, out -> ResultsCsv.write(record.survey(), out)));
        files.put(JSON, out -> ResultsJson.write(whole, digests, out));
        return files;
    }
}
