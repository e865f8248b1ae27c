package dev.vibra.docs.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.docs.notebook.StartUpFile;
import dev.vibra.docs.survey.Folders.Run;
import dev.vibra.docs.survey.demo.DemoRecordings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The command from end to end: exit codes, messages, files. */
class SurveyCommandTest {
    private static final List<String> FILES = List.of("report.html", "results.csv", "results.json");

    @TempDir
    private Path temp;

    @Test
    void demonstrationFindsWhatWasPutIn() throws IOException {
        Run run = Folders.run("--out", temp.resolve("out"));
        assertEquals(0, run.code());
        assertEquals("", run.err());
        assertEquals(FILES, Folders.names(temp.resolve("out")));
        assertTrue(run.out().startsWith("Kiln exhaust fan (demonstration): decide now\n  - zone D at FE-H\n"),
                run.out());
        assertTrue(run.out().contains("unbalance of an overhung wheel at FE-H, FE-V"), run.out());
        assertTrue(run.out().contains("rolling bearing, outer race, drive end at DE-H, DE-V, DE-A"), run.out());
        assertTrue(run.out().contains("worn, loose or unequal belts, drive at M-DE-H, "), run.out());
        assertEquals(3, run.out().split("present \\(", -1).length - 1, "one element is present and no other");
    }

    @Test
    void startUpFileForJShellIsPrintedAndNothingElseDone() {
        Run run = Folders.run("--jshell");
        assertEquals(new Run(0, StartUpFile.text(), ""), run);
        assertEquals(64, Folders.run("--jshell", temp).code());
        assertEquals(64, Folders.run("--insist", "--jshell").code());
    }

    @Test
    void aRefusedPointIsToldByTheExitCode() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        DemoRecordings.spoil(folder);
        Run run = Folders.run(folder);
        assertEquals(1, run.code());
        assertTrue(run.out().contains("DE-V     vertical    not determined: the recording is not sound (drop-out"), run
                .out());
    }

    @Test
    void outputGoesBesideTheFolderAndTheFolderStaysAsItWas() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        List<String> before = Folders.names(folder);
        Run run = Folders.run(folder);
        assertEquals("", run.err());
        assertEquals(before, Folders.names(folder));
        assertEquals(FILES, Folders.names(temp.resolve("fan-survey")));
        assertTrue(run.out().contains("Written to " + temp.resolve("fan-survey")), run.out());
    }

    @Test
    void aMissingRecordingLeavesOutItsPointOnly() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        Files.delete(folder.resolve("fe-v.wav"));
        Run run = Folders.run(folder);
        assertEquals(1, run.code());
        assertTrue(run.out().contains("fe-v.wav: point FE-V is left out: is not in the survey folder or no file"), run
                .out());
        assertTrue(run.out().contains("FE-H     horizontal  5."), run.out());
        assertEquals(FILES, Folders.names(temp.resolve("fan-survey")));
        assertTrue(Files.readString(temp.resolve("fan-survey/results.json")).contains("point FE-V is left out"));
    }

    @Test
    void aTruncatedRecordingIsRefusedWithItsFileAndPlace() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        byte[] whole = Files.readAllBytes(folder.resolve("fe-h.wav"));
        Files.write(folder.resolve("fe-h.wav"), Arrays.copyOf(whole, whole.length / 2));
        Run run = Folders.run(folder);
        assertEquals(1, run.code());
        assertTrue(run.out().contains("fe-h.wav: point FE-H is left out: "), run.out());
    }

    @Test
    void textInANumberColumnNamesFileAndLine() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        Files.writeString(folder.resolve("a.csv"), "time;value\n0;1,5\n0,001;2,5\n0,002;oops\n");
        Folders.replace(folder, "fe-h.wav", "a.csv");
        Run run = Folders.run(folder);
        assertEquals(1, run.code());
        String line = run.out().lines().filter(one -> one.contains("a.csv: point FE-H is left out")).findFirst()
                .orElseThrow();
        assertTrue(line.contains("line 4"), line);
    }

    @Test
    void anUnknownFieldNamesFileLineFieldAndTheNearestName() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        Folders.replace(folder, "\"ratedPowerKilowatts\"", "\"ratedPowerKilowatt\"");
        Run run = Folders.run(folder);
        assertEquals(1, run.code());
        assertTrue(unwrapped(run.out()).contains("machine.json, line 8, parts[0].ratedPowerKilowatt: is not a known"
                + " field; the nearest known name is \"ratedPowerKilowatts\""), run.out());
        assertTrue(unwrapped(run.out()).contains("the criterion depends on facts that the description gives with an"
                + " error: kind, power, shaft height or support"), run.out());
        assertTrue(run.out().startsWith("Kiln exhaust fan (demonstration): not determined\n"), run.out());
    }

    /** Readings that fit the form and tell nothing: the job is left out with the reason, the points are surveyed. */
    @Test
    void aTrialWithoutEffectLeavesOutTheBalancingOnly() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        Folders.replace(folder, "\"amplitude\": 7.08, \"phaseDegrees\": 56.7",
                "\"amplitude\": 5.20, \"phaseDegrees\": 63.0");
        Run run = Folders.run(folder);
        assertEquals(1, run.code());
        assertTrue(unwrapped(run.out()).contains("machine.json, balancing: is left out: trial run in plane fan wheel"
                + " must change the readings by more than a thousandth: the change is 0 of them"), run.out());
        assertTrue(run.out().contains("FE-H     horizontal  5."), run.out());
        assertFalse(Files.readString(temp.resolve("fan-survey/results.json")).contains("\"massGrams\""));
    }

    @Test
    void aWrongUnitLeavesOutItsPointOnly() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        Folders.replace(folder, "\"unit\": \"g\"", "\"unit\": \"gal\"");
        Run run = Folders.run(folder);
        assertEquals(1, run.code());
        assertTrue(unwrapped(run.out()).contains("machine.json, line 27, points[0].unit: must be one of m/s2, g, mg,"),
                run.out());
        assertTrue(unwrapped(run.out()).contains("1 part is left out because of errors, see the end."), run.out());
        assertFalse(run.out().contains("\n  FE-H "), run.out());
        assertTrue(run.out().contains("\n  FE-V "), run.out());
    }

    @Test
    void withoutDescriptionNothingIsSurveyedAndNothingWritten() throws IOException {
        Path folder = Files.createDirectory(temp.resolve("empty"));
        Run run = Folders.run(folder);
        assertEquals(2, run.code());
        assertEquals("", run.out());
        assertTrue(run.err().startsWith("machine.json: is required in the survey folder and not there"), run.err());
        assertEquals(List.of("empty"), Folders.names(temp));
    }

    @Test
    void withoutAnyReadableRecordingNothingIsWritten() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        for (String name : Folders.names(folder)) {
            if (name.endsWith(".wav")) {
                Files.writeString(folder.resolve(name), "no sound");
            }
        }
        Run run = Folders.run(folder);
        assertEquals(2, run.code());
        assertTrue(run.err().contains("fe-h.wav: point FE-H is left out: "), run.err());
        assertEquals(List.of("fan"), Folders.names(temp));
    }

    @Test
    void aTargetThatCantBeWrittenLeavesNothing() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        Files.createDirectories(temp.resolve("out/results.json"));
        Run run = Folders.run(folder, "--out", temp.resolve("out"));
        assertEquals(2, run.code());
        assertTrue(run.err().contains("Nothing was written") && run.err().contains("results.json is a folder"), run
                .err());
        assertEquals(List.of("results.json"), Folders.names(temp.resolve("out")));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        --frobnicate | unknown option: --frobnicate
        a b          | FOLDER may be given once only; it was given as a
        --out        | --out needs a folder
        --out x --out y | --out may be given once only; it was given as x
        --threads    | --threads needs a whole number from 1 to 64
        --units | --units needs metric or imperial
        --units inches | --units needs metric or imperial: inches
        --units metric --units imperial | --units may be given once only; it was given as metric
        --export | --export needs csv, png, svg, or some of them with commas between
        --export csv,pdf | --export needs csv, png, svg, or some of them with commas between: csv,pdf
        --export csv,csv | --export needs csv, png, svg, or some of them with commas between: csv,csv
        --threads 0  | --threads needs a whole number from 1 to 64: 0
        --threads 65 | --threads needs a whole number from 1 to 64: 65
        --threads -1 | --threads needs a whole number from 1 to 64: -1
        --threads 2.0 | --threads needs a whole number from 1 to 64: 2.0
        --threads 4294967298 | --threads needs a whole number from 1 to 64: 4294967298
        --threads 2 --threads 2 | --threads may be given once only; it was given as 2
        /            | --out is needed: there is no place beside /
        """)
    void wrongUseIsToldWithTheUsage(String line, String message) {
        Run run = Folders.run((Object[]) line.trim().split(" "));
        assertEquals(64, run.code());
        assertTrue(run.err().startsWith(message + "\n"), run.err());
        assertTrue(run.err().contains("Usage: java -jar vibra-survey.jar [FOLDER] [OPTIONS]\n"),
                run.err());
        assertEquals("", run.out());
    }

    @Test
    void insistingJudgesAnUnsoundRecordingAndSaysSo() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        DemoRecordings.spoil(folder);
        Run run = Folders.run(folder, "--insist", "--out", temp.resolve("out"));
        assertEquals(0, run.code(), "nothing is refused");
        String row = run.out().lines().filter(one -> one.startsWith("  DE-V ")).findFirst().orElseThrow();
        assertTrue(row.contains("zone "), row);
        assertTrue(unwrapped(run.out()).contains("the recording is not sound; this verdict was insisted on"),
                run.out());
        String json = Files.readString(temp.resolve("out/results.json"));
        assertEquals(1, json.split("\"insisted\" : true", -1).length - 1);
        assertTrue(Files.readString(temp.resolve("out/report.html")).contains("this verdict was insisted on"));
    }

    @Test
    void changeAgainstTheBaselineIsTold() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        Folders.replace(folder, "\"balancing\": {",
                "\"baseline\": { \"FE-H\": { \"velocity-rms-10-1000Hz\": 3.9 } },"
                + " \"balancing\": {");
        Run run = Folders.run(folder);
        assertTrue(unwrapped(run.out()).contains("The change against the baseline matters at FE-H"), run.out());
        String json = Files.readString(temp.resolve("fan-survey/results.json"));
        assertTrue(json.contains("\"reference\" : 3.9") && json.contains("\"matters\" : true"), json);
        assertTrue(Files.readString(temp.resolve("fan-survey/report.html")).contains("Suggested for monitoring"));
    }

    /** In words and pictures only: files for programs hold what they hold without. The option stands over the file. */
    @Test
    void imperialUnitsAreForPeople() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        Run metric = Folders.run(folder, "--out", temp.resolve("metric"));
        Folders.replace(folder, "{", "{ \"units\": \"imperial\",");
        Run imperial = Folders.run(folder, "--out", temp.resolve("imperial"));
        assertEquals(0, imperial.code(), imperial.out());
        assertTrue(imperial.out().matches("(?s).*FE-H +horizontal +0\\.\\d+ ± 0\\.\\d+ in/s rms +zone D.*"), imperial.out());
        assertTrue(unwrapped(imperial.out()).contains("Units      Levels are shown in in/s rms, mil and g;"), imperial.out());
        String html = Files.readString(temp.resolve("imperial/report.html"));
        assertTrue(html.contains("Limits are those of the standards, which are metric, converted."), html);
        assertTrue(html.contains("Velocity 0.0551 / 0.110 / 0.177 in/s rms"));
        String[] halves = html.split("<h2>Balancing</h2>");
        assertFalse(halves[0].contains("mm/s") || halves[0].contains("µm"), halves[0]);
        assertTrue(halves[1].contains("mm/s rms per g"), "the sheet stays as the crew wrote it");
        assertEquals(Files.readString(temp.resolve("metric/results.csv")),
                Files.readString(temp.resolve("imperial/results.csv")));
        Run again = Folders.run(folder, "--units", "metric", "--out", temp.resolve("again"));
        assertEquals(metric.out().replaceAll("Written to.*", ""), again.out().replaceAll("Written to.*", ""));
    }

    @Test
    void helpIsNoError() {
        Run run = Folders.run("--help");
        assertEquals(0, run.code());
        assertTrue(run.out().startsWith("Usage: "), run.out());
    }

    @Test
    void aFolderThatIsNotThereIsSaid() {
        Run run = Folders.run(temp.resolve("nowhere"));
        assertEquals(2, run.code());
        assertTrue(run.err().contains("The survey folder is not there or no folder: "), run.err());
    }

    @Test
    void everyLineFitsEightyColumns() {
        Run run = Folders.run("--out", temp.resolve("o"));
        for (String line : run.out().split("\n")) {
            assertTrue(line.length() <= 80 || line.startsWith("Written to "), line);
        }
    }

    @Test
    void aMessageThatSpansLinesIsReadAsOne() {
        assertEquals("a b c", unwrapped("a b\n   c"));
    }

    private static String unwrapped(String text) {
        return text.replaceAll("\n +", " ");
    }
}
