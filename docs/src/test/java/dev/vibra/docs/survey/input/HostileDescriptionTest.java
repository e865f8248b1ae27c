package dev.vibra.docs.survey.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Descriptions that nobody writes by hand: each is read or refused with file, line and field, quickly. */
class HostileDescriptionTest {
    private static final Duration SOON = Duration.ofSeconds(60);

    @TempDir
    private Path folder;

    private static String text(String resource) {
        try (InputStream in = HostileDescriptionTest.class.getResourceAsStream(resource)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static MachineReading read(String json) {
        return MachineFile.parse("machine.json", json.getBytes(StandardCharsets.UTF_8));
    }

    private static String first(MachineReading reading) {
        return reading.problems().get(0).toString();
    }

    /** A number beyond any machine is an error of its field; the rest of the machine stays. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        "scale": 1.5 | "scale": 1e-200 | line 19, points[0].scale
        "scale": 1.5 | "scale": -1e200 | line 19, points[0].scale
        "sensitivityMillivoltsPerUnit": 4 | "sensitivityMillivoltsPerUnit": 1e-320 | line 24, points[1].sensitivity
        "sampleRateHertz": 2560 | "sampleRateHertz": 1e-310 | line 24, points[1].sampleRateHertz
        "speedRevolutionsPerMinute": 1480, | "speedRevolutionsPerMinute": 1e-322, | line 7, speedRevolutionsPerMinute
        "ratedPowerKilowatts": 37 | "ratedPowerKilowatts": 1e308 | line 4, ratedPowerKilowatts
        "shaftHeightMillimetres": 225 | "shaftHeightMillimetres": 1e-320 | line 5, shaftHeightMillimetres
        "lineFrequencyHertz": 50 | "lineFrequencyHertz": 1e-320 | line 8, lineFrequencyHertz
        "massKilograms": 64 | "massKilograms": 1e308 | line 10, rotor.massKilograms
        "ratio": 1.5 | "ratio": 1e300 | line 41, shafts[0].ratio
        "ballDiameterMillimetres": 7.94 | "ballDiameterMillimetres": 1e-320 | line 14, bearings[0].ball
        "pitchDiameterMillimetres": 39.04 | "pitchDiameterMillimetres": 1e308 | line 15, bearings[0].pitch
        "velocity-rms-10-1000Hz": 1.6 | "velocity-rms-10-1000Hz": 1e308 | line 26, baseline.DE-H.velocity-rms-10-1000Hz
        "standard": "ISO 20816-3" | "standard": ": { " | line 9, criterion.standard
        """)
    void aNumberBeyondAnyMachineIsAnErrorOfItsField(String from, String to, String where) {
        String full = text("full.json");
        assertTrue(full.contains(from), from);
        MachineReading reading = read(full.replaceFirst(Pattern.quote(from), Matcher.quoteReplacement(to)));
        assertTrue(first(reading).startsWith("machine.json, " + where), first(reading));
        assertTrue(reading.machine().orElseThrow().points().size() >= 1);
    }

    /** What the checks of the fields let through and a value refuses is an error of that object, with its line. */
    @Test
    void whatAValueRefusesIsAnErrorOfItsObject() throws JsonDocument.NotJson {
        Problems problems = new Problems("machine.json");
        FieldReader fields = new FieldReader(JsonDocument.parse("""
            { "rotor": { },
              "points": [ { "id": "A" }, { "id": "B" } ] }
            """.getBytes(StandardCharsets.UTF_8)), "", problems);
        Optional<String> rotor = fields.part("rotor", object -> {
            throw new IllegalArgumentException("mass must be finite: Infinity");
        });
        List<String> points = fields.objects("points", (object, index) -> object.text("id").map(id -> {
            if (id.equals("A")) {
                throw new IllegalArgumentException("speed must be finite");
            }
            return id;
        }));
        assertEquals(Optional.empty(), rotor);
        assertEquals(List.of("B"), points);
        assertEquals("[machine.json, line 1, rotor: can't be taken: mass must be finite: Infinity,"
                + " machine.json, line 2, points[0]: can't be taken: speed must be finite]",
                problems.byLine().toString());
        assertEquals(List.of("rotor", "points"), List.copyOf(fields.faults()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-32BE", "UTF-32LE", "UTF-16BE", "UTF-16LE"})
    void anotherCharacterSetIsReadOrRefused(String name) {
        byte[] bytes = text("full.json").getBytes(Charset.forName(name));
        assertTrue(MachineFile.parse("machine.json", bytes).machine().isPresent());
        byte[] cut = Arrays.copyOf(bytes, bytes.length - 2 - bytes.length % 4);
        assertTrue(first(MachineFile.parse("machine.json", cut)).contains("is not valid JSON"));
    }

    /** The first bytes of a code point outside Unicode, as UTF-32. */
    @Test
    void aCodePointOutsideUnicodeIsRefused() {
        byte[] bytes = {0x27, 0, 0, 0, 0x27, 0, 0, 0x7f};
        assertEquals("machine.json, line 1: is not valid JSON: the file is no text in UTF-8",
                first(MachineFile.parse("machine.json", bytes)));
    }

    @Test
    void limitsOfTheParserAreToldInPlainWordsWithTheirLine() {
        assertEquals("machine.json, line 2: is not valid JSON: a number has more than 400 digits",
                first(read("{ \"name\":\n" + "1".repeat(2000) + " }")));
        assertEquals("machine.json, line 3: is not valid JSON: a text or a name is longer than 20000 characters",
                first(read("{\n\"name\":\n\"" + "x".repeat(100_000) + "\" }")));
        assertEquals("machine.json, line 1: is not valid JSON: a text or a name is longer than 20000 characters",
                first(read("{ \"" + "x".repeat(100_000) + "\": 1 }")));
        String comment = first(read("{ // no\n}"));
        assertTrue(comment.startsWith("machine.json, line 1: is not valid JSON: ") && !comment.contains("Feature"),
                comment);
    }

    /** Processor time, which doesn't depend on what else the machine does. */
    private static List<String> soon(String json) {
        long begin = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        List<String> messages = read(json).problems().stream().map(Problem::toString).toList();
        double seconds = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - begin) / 1e9;
        assertTrue(seconds < 4, seconds + " s");
        return messages;
    }

    /** Of very many errors the first hundred are told and the rest counted. */
    @Test
    void theNumberOfErrorsIsBounded() {
        List<String> messages = soon("{ \"name\": \"Fan\", \"points\": [ " + "{}, ".repeat(5000) + "{} ] }");
        assertEquals(101, messages.size());
        assertEquals("machine.json: \u2026 and 9902 more errors, not listed", messages.get(100));
        assertEquals("machine.json, line 1, points: must hold 10000 at most: 1000001",
                soon("{ \"name\": \"Fan\", \"points\": [ " + "{}, ".repeat(1_000_000) + "{} ] }").get(0));
    }

    /** Before, the first took 8 s for a fifth of its length, the second 12 s. */
    @Test
    void workGrowsWithTheSizeOfTheFileAndNotWithItsSquare() {
        StringBuilder unknown = new StringBuilder("{ \"name\": \"Fan\"");
        for (int i = 0; i < 10_000; i++) {
            unknown.append(", \"").append("x".repeat(900)).append(i).append("\": 1");
        }
        assertTrue(soon(unknown + " }").get(1).contains("is not a known field"));
        StringBuilder planes = new StringBuilder("{ \"name\": \"Fan\", \"balancing\": { \"planes\": [ \"p\"");
        for (int i = 0; i < 100_000; i++) {
            planes.append(", \"").append(i).append('"');
        }
        assertTrue(soon(planes + " ] } }").contains("machine.json, line 1, balancing.planes: must hold 10000 at most:"
                + " 100001"));
        assertTrue(soon(planes.substring(0, 5000).replaceFirst(",[^,]*$", "") + " ] } }").toString()
                .contains("balancing.planes: must hold 100 names at most: "));
    }

    @Test
    void whatIsNotSeenIsShownAsAnEscape() {
        MachineReading reading = read("""
            { "name": "Fan", "points": [ { "id": "A", "recording": "../\\u001b]0;x\\u0007\\u202e.wav", "unit": "g" } ] }
            """);
        assertEquals("machine.json, line 1, points[0].recording: must be the name of a file inside the survey folder:"
                + " \"../\\u001b]0;x\\u0007\\u202e.wav\"", first(reading));
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void whatIsNoFileIsRefusedAndNotWaitedFor() throws Exception {
        Path file = folder.resolve("machine.json");
        assertEquals(0, new ProcessBuilder("mkfifo", file.toString()).start().waitFor());
        String rule = "machine.json: must be a file; it is a folder, a pipe or a device";
        assertTimeoutPreemptively(SOON, () -> assertEquals(rule, first(MachineFile.in(folder))));
        Files.delete(file);
        Files.createSymbolicLink(file, Path.of("/dev/zero"));
        assertTimeoutPreemptively(SOON, () -> assertEquals(rule, first(MachineFile.in(folder))));
        Files.delete(file);
        Files.createDirectory(file);
        assertEquals(rule, first(MachineFile.in(folder)));
    }

    @Test
    void aFileBeyondAnyDescriptionIsRefused() throws IOException {
        Files.write(folder.resolve("machine.json"), new byte[17 << 20]);
        assertEquals("machine.json: must be a file of 16 MB at most", first(MachineFile.in(folder)));
        Files.write(folder.resolve("labels.json"), new byte[17 << 20]);
        assertEquals("[labels.json: must be a file of 16 MB at most]",
                LabelsFile.in(folder, List.of()).orElseThrow().problems().toString());
    }
}
