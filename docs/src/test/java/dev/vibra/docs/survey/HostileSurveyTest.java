package dev.vibra.docs.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.docs.survey.Folders.Run;
import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.docs.survey.input.RecordingSource;
import dev.vibra.docs.survey.output.HtmlReport;
import dev.vibra.docs.survey.output.ReportSettings;
import dev.vibra.docs.survey.output.OutputSet;
import dev.vibra.point.PointSurvey;
import dev.vibra.quantity.Unit;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One hostile number, name or file loses its own part of a survey and no other. */
class HostileSurveyTest {
    private static final String MACHINE = """
            { "name": "Fan", "kind": "fan", "speedRevolutionsPerMinute": 1480,
              "points": [ { "id": "bad", "recording": "a.csv", "unit": "mm/s" },
                          { "id": "good", "recording": "b.csv", "unit": "mm/s" } ],
              "balancing": { "planes": [ "p" ], "sensors": [ "s" ], "speedRevolutionsPerMinute": 1480,
                "initial": [ { "amplitude": 5, "phaseDegrees": 0 } ],
                "trials": [ { "plane": "p", "massGrams": 10, "angleDegrees": 0,
                  "readings": [ { "amplitude": 4, "phaseDegrees": 30 } ] } ] } }
            """;

    @TempDir
    private Path temp;

    private static String recording(double factor, double hertz) {
        Random random = new Random(1);
        StringBuilder text = new StringBuilder("time;value\n");
        for (int i = 0; i < 12_000; i++) {
            text.append(i / hertz).append(';').append(factor * (Math.sin(0.0605 * i) + 0.1 * random.nextGaussian()))
                    .append('\n');
        }
        return text.toString();
    }

    private Path folder(String machine, String recording) throws IOException {
        Path folder = Files.createDirectories(temp.resolve("fan"));
        Files.writeString(folder.resolve("machine.json"), machine);
        Files.writeString(folder.resolve("a.csv"), recording);
        Files.writeString(folder.resolve("b.csv"), recording(1, 2560));
        return folder;
    }

    /** Surveys with parts left out, and without words that only a program understands. */
    private String surveyed(String machine, String recording) throws IOException {
        Run run = Folders.run(folder(machine, recording), "--out", temp.resolve("out"));
        assertEquals(1, run.code(), run.out() + run.err());
        assertEquals("", run.err());
        StringBuilder all = new StringBuilder(run.out());
        for (String name : OutputSet.SURVEY.names()) {
            all.append(Files.readString(temp.resolve("out").resolve(name))
                    .replaceAll("(?s)<script>.*?</script>|\"[A-Za-z0-9+/=]{24,}\"", ""));
        }
        assertFalse(all.toString().matches("(?s).*(Infinity|NaN|java\\.|Exception).*"), all.toString());
        assertTrue(Files.readString(temp.resolve("out/results.csv")).contains("\r\ngood,velocity-rms-10-1000Hz,"));
        return run.out().replaceAll("\\s+", " ");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        "unit": "mm/s" } | "unit": "mm/s", "scale": 1e-200 } | points[0].scale: must be at least 1e-12
        "unit": "mm/s" } | "unit": "mm/s", "sensitivityMillivoltsPerUnit": 1e-320 } | points[0].sensitivityMillivolts
        "speedRevolutionsPerMinute": 1480, | "speedRevolutionsPerMinute": 1e-322, | speedRevolutionsPerMinute: must be
        "kind": "fan" | "kind": "fan", "ratedPowerKilowatts": 1e308 | ratedPowerKilowatts: must be
        "kind": "fan" | "kind": "fan", "criterion": { "standard": ": { " } | criterion.standard: must be
        "massGrams": 10 | "massGrams": 9.2e18 | balancing.trials[0].massGrams: must be of a size
        "amplitude": 5 | "amplitude": 1e308 | balancing.initial[0].amplitude: must be of a size
        """)
    void aHostileNumberIsAnErrorOfItsField(String from, String to, String message) throws IOException {
        assertTrue(MACHINE.contains(from));
        String text = surveyed(MACHINE.replaceFirst(from.replace("{", "\\{").replace("}", "\\}"), to), recording(1,
                2560));
        assertTrue(text.contains("machine.json, line ") && text.contains(message), text);
    }

    @Test
    void aRecordingThatNoMachineMakesIsLeftOut() throws IOException {
        String text = surveyed(MACHINE, recording(1e60, 2560));
        assertTrue(text.contains("a.csv: point bad is left out: reaches 1.33e+57 m/s, which no machine does; look at"
                + " unit and scale"), text);
        text = surveyed(MACHINE, recording(1, 1));
        assertTrue(text.contains("a.csv: point bad is left out: is sampled at 1 Hz; a vibration needs 5 Hz at least"),
                text);
    }

    /** Coefficients of two planes that answer alike to the last bit. */
    @Test
    void planesThatActAlikeAreToldInWords() throws IOException {
        String text = surveyed(MACHINE.replaceAll("(?s)\"balancing\".*", """
            "balancing": { "planes": [ "p", "q" ], "sensors": [ "s", "t" ], "speedRevolutionsPerMinute": 1480,
                "initial": [ { "amplitude": 5, "phaseDegrees": 0 }, { "amplitude": 5, "phaseDegrees": 0 } ],
                "influence": [ [ { "amplitude": 1e-9, "phaseDegrees": 0 }, { "amplitude": 1e-9, "phaseDegrees": 0 } ],
                               [ { "amplitude": 0, "phaseDegrees": 0 }, { "amplitude": 0, "phaseDegrees": 0 } ] ] } }
            """), recording(1, 2560));
        assertTrue(text.contains("condition number above 1e16"), text);
    }

    @Test
    void namesSteerNeitherTerminalNorSpreadsheetNorPage() throws IOException {
        String text = surveyed(MACHINE.replace("\"Fan\"", "\"Fan \\u001b]0;x\\u0007\\u202e\"")
                .replace("\"bad\"", "\"=cmd|' /C calc'!A0\"").replace("\"planes\": [ \"p\" ]", "\"planes\": [ 1 ]"),
                recording(-1, 2560));
        assertTrue(text.startsWith("Fan \\u001b]0;x\\u0007\\u202e: "), text);
        String csv = Files.readString(temp.resolve("out/results.csv"));
        assertTrue(csv.contains("\r\n'=cmd|' /C calc'!A0,velocity-rms-10-1000Hz,"), csv);
        String html = Files.readString(temp.resolve("out/report.html"));
        assertTrue(html.contains("<h1>Fan \\u001b]0;x\\u0007\\u202e</h1>"), html.substring(0, 600));
        assertTrue(Files.readString(temp.resolve("out/results.json")).contains("\"id\" : \"=cmd|' /C calc'!A0\""));
    }

    /** A source that no description gives: the net beneath the checks. */
    @Test
    void whatNobodyForesawLeavesOutItsPointOnly() throws IOException {
        Path folder = folder(MACHINE, recording(1, 2560));
        MachineReading read = MachineFile.in(folder);
        Map<String, RecordingSource> sources = new HashMap<>(read.sources());
        RecordingSource bad = sources.get("bad");
        sources.put("bad", new RecordingSource(bad.channel(), Unit.V, bad.scaling(), bad.sampleRateHertz(),
                bad.tachometer(), bad.measured(), bad.reference()));
        FolderPoints inside = new FolderPoints(folder, new MachineReading(read.machine(), sources, List.of(), Map.of(),
                List.of()), false, 2);
        Terminal silent = new Terminal(System.out, System.err, StandardCharsets.UTF_8, false);
        List<PointSurvey> points = inside.survey(silent, new HtmlReport(ReportSettings.standard().withoutFigures()));
        assertEquals(2, points.size());
        assertTrue(points.get(0).refused() && points.get(1).recording().isPresent());
        assertTrue(inside.problems().toString().startsWith("[a.csv: point bad is left out: can't be worked out; this is"
                + " an error of the program, please report it: "), inside.problems().toString());
    }

    @Test
    void aProcessWithoutMemorySaysSoAndHasItsCode() throws Exception {
        Path folder = folder("{ \"name\": \"Fan\", \"points\": [ " + "{ }, ".repeat(1_000_000) + "{ } ] }", "");
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx16m", "-XX:+UseSerialGC", "-cp", System.getProperty("java.class.path"),
                SurveyCommand.class.getName(), folder.toString()).redirectErrorStream(true).start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(5, TimeUnit.MINUTES));
        assertEquals(2, process.exitValue(), printed);
        assertEquals("Nothing was written: the memory of this process is too small (java -Xmx... gives more)",
                printed.trim());
    }
}
