package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.input.Problem;
import dev.vibra.survey.MachineSurvey;
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
     * Makes the content of all files.
     *
     * @param survey result of the survey
     * @param report report with the figures of all points
     * @param problems what was wrong in the survey folder
     * @return content by file name
     */
    public static Map<String, byte[]> of(MachineSurvey survey, HtmlReport report, List<Problem> problems) {
        report.drawSeverity(survey);
        report.drawBalancing(survey);
        List<Problem> all = Stream.concat(problems.stream(), report.problems().stream()).toList();
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put(REPORT, report.page(survey, all).getBytes(StandardCharsets.UTF_8));
        files.put(JSON, ResultsJson.of(survey, all).getBytes(StandardCharsets.UTF_8));
        files.put(CSV, ResultsCsv.of(survey).getBytes(StandardCharsets.UTF_8));
        return files;
    }
}
