package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.input.Problem;
import java.nio.charset.StandardCharsets;
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
     * Makes the content of all files; the results for programs come last and hold the digests of the others.
     *
     * @param record the survey
     * @param report report with the figures of all points
     * @return content by file name
     */
    public static Map<String, byte[]> of(SurveyRecord record, HtmlReport report) {
        report.drawWhole(record.survey());
        List<Problem> problems = Stream.concat(record.problems().stream(), report.problems().stream()).toList();
        SurveyRecord whole = record.with(problems);
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put(REPORT, report.page(whole).getBytes(StandardCharsets.UTF_8));
        files.put(CSV, ResultsCsv.of(record.survey()).getBytes(StandardCharsets.UTF_8));
        Map<String, String> digests = new LinkedHashMap<>();
        files.forEach((name, content) -> digests.put(name, Digest.of(content)));
        files.put(JSON, ResultsJson.of(whole, digests).getBytes(StandardCharsets.UTF_8));
        return files;
    }
}
