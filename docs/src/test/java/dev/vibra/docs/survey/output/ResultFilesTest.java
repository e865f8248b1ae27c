package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.diagnosis.Finding;
import dev.vibra.docs.survey.chart.Lane;
import dev.vibra.docs.survey.demo.DemoMachine;
import dev.vibra.docs.survey.demo.DemoRecordings;
import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The result files: field names of the contract, RFC 4180, a report that needs nothing else. */
class ResultFilesTest {
    private static final List<Problem> PROBLEMS = List.of(new Problem("machine.json", 3, "kind",
            "must be <b>one</b> & so on"));

    private static MachineSurvey survey;
    private static SurveyRecord record;
    private static Map<String, byte[]> files;

    @BeforeAll
    static void survey(@TempDir Path folder) throws IOException {
        DemoMachine.unpack(folder);
        DemoRecordings.spoil(folder);
        String json = Files.readString(folder.resolve("machine.json"))
                .replace("Kiln exhaust fan (demonstration)", "Fan \\\"7\\\", <left>")
                .replace("\"id\": \"FE-A\"", "\"id\": \"FE, \\\"axial\\\"\"")
                .replace("\"radiusMillimetres\": { \"fan wheel\": 420 }",
                        "\"final\": [{\"amplitude\": 0.4, \"phaseDegrees\": 10}]");
        MachineReading reading = MachineFile.parse("machine.json", json.getBytes(StandardCharsets.UTF_8));
        Map<String, Waveform> recordings = new HashMap<>();
        Map<String, String> conversions = new HashMap<>();
        reading.sources().forEach((point, source) -> {
            recordings.put(point, source.read(folder).signal());
            conversions.put(point, source.read(folder).conversion());
        });
        survey = Survey.of(reading.machine().orElseThrow(), recordings);
        record = new SurveyRecord(survey, reading, conversions, PROBLEMS, "0123456789abcdef");
        try (HtmlReport report = new HtmlReport(ReportSettings.standard())) {
            survey.points().forEach(point -> report.add(report.draw(point)));
            files = Contents.bytes(ReportFiles.of(record, report));
            assertEquals(List.of(), report.problems());
        }
    }

    private static String text(String name) {
        return new String(files.get(name), StandardCharsets.UTF_8);
    }

    /** Collects the path of every value, list indices as []. */
    private static Set<String> paths(String json) throws IOException {
        Set<String> paths = new TreeSet<>();
        Deque<String> path = new ArrayDeque<>();
        String field = "";
        try (JsonParser parser = new JsonFactory().createParser(json)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                switch (token) {
                    case START_OBJECT, START_ARRAY -> {
                        path.addLast(field + (token == JsonToken.START_ARRAY ? "[]" : ""));
                        field = "";
                    }
                    case END_OBJECT, END_ARRAY -> {
                        path.removeLast();
                        field = "";
                    }
                    case FIELD_NAME -> field = "/" + parser.currentName();
                    default -> paths.add(String.join("", path) + field);
                }
            }
        }
        return paths;
    }

    @Test
    void jsonHasTheFieldsOfTheContract() throws IOException {
        Set<String> paths = paths(text("results.json"));
        for (String expected : List.of("/machine", "/zone", "/points[]/id", "/points[]/direction",
                "/points[]/recording/sound", "/points[]/recording/sampleRateHertz", "/points[]/recording/samples",
                "/points[]/recording/remarks[]/code", "/points[]/recording/remarks[]/text",
                "/points[]/recording/remarks[]/value", "/points[]/recording/remarks[]/limit",
                "/points[]/speedRevolutionsPerMinute/value", "/points[]/speedRevolutionsPerMinute/source",
                "/points[]/descriptors/acceleration-rms/value", "/points[]/descriptors/acceleration-rms/unit",
                "/points[]/descriptors/acceleration-peak/value", "/points[]/descriptors/crest-factor/value",
                "/points[]/descriptors/kurtosis/value", "/points[]/descriptors/skewness/value",
                "/points[]/descriptors/velocity-rms-10-1000Hz/value",
                "/points[]/descriptors/displacement-peak-to-peak-10-1000Hz/value",
                "/points[]/descriptors/velocity-rms-1x/value", "/points[]/spectrumPeaks[]/frequencyHertz",
                "/points[]/spectrumPeaks[]/velocityRmsMillimetresPerSecond", "/points[]/spectrumPeaks[]/order",
                "/points[]/severity[]/standard", "/points[]/severity[]/clause", "/points[]/severity[]/group",
                "/points[]/severity[]/support", "/points[]/severity[]/quantity", "/points[]/severity[]/value",
                "/points[]/severity[]/unit", "/points[]/severity[]/limits[]", "/points[]/severity[]/zone",
                "/points[]/severity[]/expandedUncertainty", "/points[]/severity[]/zonesWithinUncertainty[]",
                "/points[]/bearings[]/bearing", "/points[]/bearings[]/elements[]/element",
                "/points[]/bearings[]/elements[]/verdict", "/points[]/bearings[]/elements[]/frequencyHertz",
                "/points[]/bearings[]/elements[]/expectedHertz", "/points[]/bearings[]/elements[]/evidence",
                "/advice[]",
                "/balancing/influence[][]/amplitude", "/balancing/influence[][]/phaseDegrees",
                "/balancing/corrections[]/plane", "/balancing/corrections[]/massGrams",
                "/balancing/corrections[]/angleDegrees", "/balancing/corrections[]/radiusMillimetres",
                "/balancing/corrections[]/split[]/position", "/balancing/corrections[]/split[]/massGrams",
                "/balancing/predictedResidual[]/sensor", "/balancing/predictedResidual[]/amplitude",
                "/balancing/residualUnbalance[]/plane", "/balancing/residualUnbalance[]/gramMillimetres",
                "/balancing/residualUnbalance[]/permissible", "/balancing/grade/required", "/balancing/grade/achieved",
                "/balancing/grade/permissibleResidualUnbalanceGramMillimetres",
                "/problems[]/file", "/problems[]/line", "/problems[]/field", "/problems[]/text")) {
            assertTrue(paths.contains(expected), expected + " is missing in " + paths);
        }
    }

    @Test
    void jsonHasTheFieldsOfVersionTwo() throws IOException {
        Set<String> paths = paths(text("results.json"));
        for (String expected : List.of("/format", "/library/name", "/library/version", "/run", "/digests/report.html",
                "/digests/results.csv", "/measured", "/state", "/condition/rank", "/condition/word",
                "/condition/because[]", "/condition/mayServeAsBaseline", "/findings[]/code", "/findings[]/fault",
                "/findings[]/confidence", "/findings[]/urgency", "/findings[]/points[]", "/findings[]/evidence[]",
                "/findings[]/notMeasured[]", "/findings[]/decidedBy[]/measurement", "/findings[]/decidedBy[]/meaning",
                "/findings[]/decidedBy[]/effort", "/findings[]/decidedBy[]/symptom", "/findings[]/decidedBy[]/answer",
                "/lookedFor[]", "/notLookedFor[]",
                "/findings[]/alikeTo[]", "/findings[]/source", "/points[]/severity[]/coverageFactor",
                "/points[]/recording/conversion", "/points[]/omissions[]/part", "/points[]/omissions[]/reason",
                "/omissions[]/part", "/points[]/dominantLines[]/frequencyHertz", "/points[]/dominantLines[]/order",
                "/points[]/dominantLines[]/level", "/points[]/dominantLines[]/unit",
                "/points[]/dominantLines[]/detector", "/points[]/dominantLines[]/name")) {
            assertTrue(paths.contains(expected), expected + " is missing in " + paths);
        }
        for (String gone : List.of("belief", "confirmBy", "notDetermined")) {
            assertFalse(text("results.json").contains("\"" + gone + "\" :"), gone);
        }
        assertTrue(text("results.json").startsWith("{\n  \"format\" : 2,\n"));
    }

    @Test
    void findingsComeByUrgencyAndThenConfidence() {
        List<Finding> findings = survey.findings();
        assertEquals(findings.stream().sorted(Comparator.comparing(Finding::urgency).thenComparing(Finding::confidence)
                .reversed()).toList(), findings);
        assertTrue(findings.size() > 1, findings.toString());
    }

    /** SHA-256 as the JDK has it, over the bytes that are written. */
    @Test
    void digestsAreThoseOfTheFilesBeside() throws Exception {
        for (String name : List.of("report.html", "results.csv")) {
            String digest = HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(files.get(name)));
            assertTrue(text("results.json").contains("\"" + name + "\" : \"" + digest + "\""), name);
        }
        assertTrue(text("report.html").contains(", run 0123456789abcdef</p>"));
        assertFalse(text("results.csv").contains("0123456789abcdef"), "the table stays as it is");
    }

    @Test
    void jsonNumbersArePlain() {
        assertFalse(text("results.json").matches("(?s).*: -?[0-9.]+[eE].*"), "no exponents");
        assertTrue(text("results.json")
                .contains("\"limits\" : [\n            1.4,\n            2.8,\n            4.5\n"),
                text("results.json"));
    }

    @Test
    void csvQuotesAsTheRfcAsks() {
        String csv = text("results.csv");
        assertTrue(csv.startsWith("point,descriptor,value,unit\r\nFE-H,acceleration-rms,"), csv);
        assertTrue(csv.contains("\r\n\"FE, \"\"axial\"\"\",kurtosis,"), csv);
        assertTrue(csv.contains(",crest-factor,") && csv.contains(",1\r\n"), csv);
        long rows = survey.points().stream().mapToLong(point -> point.description().numbers().size()).sum();
        assertEquals(rows + 1, csv.lines().count());
    }

    @Test
    void reportNeedsNothingElseAndEscapesEveryText() {
        String html = text("report.html");
        assertTrue(html.contains("<h1>Fan &quot;7&quot;, &lt;left&gt;</h1>\n<p class=\"state\">Decide now</p>"));
        assertTrue(html.contains("must be &lt;b&gt;one&lt;/b&gt; &amp; so on"));
        assertFalse(html.matches("(?s).*(src|href)=\"(?!data:image/png;base64,).*"), "no reference to another file");
        assertFalse(html.contains("@import") || html.contains("url("));
        assertEquals(1, html.split("<script>", -1).length - 1, "one script, whose digest the policy names");
        assertFalse(html.contains(" style=\"") || html.matches("(?s).*<[^>]* on[a-z]+=.*"), "nothing that the policy forbids");
        int open = html.split("<(table|figure|div|ul|p|h[123])[ >]", -1).length;
        int closed = html.split("</(table|figure|div|ul|p|h[123])>", -1).length;
        assertEquals(open, closed, "every element is closed");
    }

    /** A defect of the outer race was put in; its multiples stand far above everything else, beyond the fifth. */
    @Test
    void marksAboveTheEnvelopeSayWhatStandsThere() {
        BearingDiagnosis diagnosis = survey.points().get(3).bearings().get(0).diagnosis();
        List<Lane> lanes = PointFigures.envelopeLanes(diagnosis.spectrum().orElseThrow(), diagnosis);
        assertEquals(5, lanes.get(0).marks().stream().filter(Lane.Mark::found).count());
        assertEquals(List.of(false, false), lanes.get(1).marks().stream().map(Lane.Mark::found).limit(2).toList());
    }

    @Test
    void reportShowsTheFiguresOfEachPoint() {
        // Five points at bearings: waveform, velocity, acceleration and envelope; four at the motor: all but the
        // envelope; DE-V: waveform only; DE-H and DE-A: map of bands; two severity figures; the polar one.
        assertEquals(5 * 4 + 4 * 3 + 1, text("report.html").split("<figure class=\"plot\">", -1).length - 1);
        assertEquals(2 + 2 + 1, text("report.html").split("<figure>", -1).length - 1);
    }

    @Test
    void reportProvesTheFinalRunAndNamesTheConventionAtTheFigure() {
        String html = text("report.html");
        String section = html.substring(html.indexOf("<h2>Balancing"));
        assertTrue(section.contains("<th>Plane</th><th>Before</th><th>Residual</th><th>Permissible</th>"), section);
        for (String part : List.of("<h3>Runs</h3>", "<h3>Influence coefficients</h3>", "<h3>Masses to add</h3>",
                "<h3>Vibration at rotation frequency</h3>", "<h3>Unbalance and grade</h3>",
                "<h3>Next, if more is wanted</h3>", "<h3>Who may rely on what</h3>", "lock out the drive")) {
            assertTrue(section.contains(part), part);
        }
        assertTrue(html.contains("Vectors of the balancing job. Rotation is counter-clockwise; phase is lag"));
    }

    @Test
    void summaryTellsTheBalancingWithItsConvention() {
        String summary = Summary.of(record, ShownUnits.METRIC);
        assertTrue(summary.contains("Convention: phase is lag to the tachometer mark"), summary);
        assertTrue(summary.contains("machine.json, line 3, kind: must be <b>one</b> & so on"), summary);
        summary.lines().forEach(line -> assertTrue(line.length() <= TextPage.WIDTH, line));
    }

    @Test
    void numbersForFilesArePlainAndFinite() {
        assertEquals("0.000000012", PlainNumber.of(1.2e-8));
        assertEquals("12000000000", PlainNumber.of(1.2e10));
        assertEquals("0.1", PlainNumber.of(0.1));
        assertEquals("0", PlainNumber.of(-0.0));
        assertEquals("number for a file must be finite: NaN",
                assertThrows(IllegalArgumentException.class, () -> PlainNumber.of(Double.NaN)).getMessage());
    }

    @Test
    void numbersForPeopleKeepThreeDigits() {
        assertEquals(List.of("123", "12.3", "1.23", "0.123", "0.0123", "100", "9.99", "10.0"),
                List.of(123.4, 12.34, 1.234, 0.1234, 0.01234, 99.96, 9.994, 9.996).stream()
                        .map(PlainNumber::forPeople).toList());
        assertEquals(List.of("0.00123", "0.0000474", "0.0100", "0"),
                List.of(0.0012345, 4.742e-5, 0.009996, 0.0).stream()
                        .map(PlainNumber::forPeople).toList());
        assertEquals("0.26", PlainNumber.withPlacesOf(0.2613, 5.23));
        assertEquals(List.of("infinite", "infinite", "not determined"), Stream.of(Double.POSITIVE_INFINITY,
                Double.NEGATIVE_INFINITY, Double.NaN).map(PlainNumber::forPeople).toList());
    }
}
