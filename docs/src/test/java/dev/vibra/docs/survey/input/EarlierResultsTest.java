package dev.vibra.docs.survey.input;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Baselines out of earlier results. */
class EarlierResultsTest {
    @TempDir
    private Path folder;

    @BeforeEach
    void describe() throws IOException {
        Files.writeString(folder.resolve("machine.json"), """
            { "name": "Fan", "earlier": [ "b.json", "a.json" ],
              "baseline": { "stated": { "kurtosis": 3 } },
              "points": [ { "id": "stated", "recording": "a.wav", "unit": "g" },
                { "id": "left", "recording": "a.wav", "unit": "g" },
                { "id": "new", "recording": "a.wav", "unit": "g" } ] }
            """);
    }

    private void results(String name, String head, String left) throws IOException {
        String sound = "\"recording\": { \"sound\": true }, ";
        Files.writeString(folder.resolve(name), "{ " + head + "\"machine\": \"Fan\", \"points\": [ { \"id\": \"left\", "
                + sound + "\"descriptors\": { \"velocity-rms-10-1000Hz\": { \"value\": " + left
                + ", \"unit\": \"mm/s\" } } }, { \"id\": \"stated\", " + sound + "\"descriptors\": { \"kurtosis\":"
                + " { \"value\": 9, \"unit\": \"1\" } } } ] }");
    }

    private static String serving(boolean serves) {
        return "\"condition\": { \"mayServeAsBaseline\": " + serves + " }, ";
    }

    private String taken() {
        MachineReading reading = MachineFile.in(folder);
        Map<String, Double> left = reading.machine().orElseThrow().baseline("left");
        assertEquals(Map.of("kurtosis", 3.0), reading.machine().orElseThrow().baseline("stated"));
        assertEquals(Map.of(), reading.machine().orElseThrow().baseline("new"));
        return left.get("velocity-rms-10-1000Hz") + " of " + reading.baselines() + reading.problems();
    }

    @Test
    void theNewestThatMayServeIsTaken() throws IOException {
        results("a.json", "\"format\": 2, \"measured\": \"2026-01-01T00:00:00Z\", " + serving(true), "1.1");
        results("b.json", "\"format\": 2, \"measured\": \"2026-02-01T00:00:00Z\", " + serving(true), "1.2");
        assertEquals("1.2 of {left=b.json, measured 2026-02-01T00:00:00Z}[]", taken());
        results("b.json", "\"format\": 2, \"measured\": \"2026-02-01T00:00:00Z\", " + serving(false), "1.2");
        assertEquals("1.1 of {left=a.json, measured 2026-01-01T00:00:00Z}[]", taken());
    }

    /** Format 1 has neither a date nor the word whether it may serve: it is older than any with a date. */
    @Test
    void formatOneIsReadAndThatIsSaid() throws IOException {
        results("a.json", "", "1.1");
        results("b.json", "", "1.2");
        assertEquals("1.1 of {left=a.json (format 1, which doesn't say whether it may serve as baseline)}[]", taken());
        results("b.json", "\"format\": 2, \"measured\": \"2020-01-01T00:00:00Z\", " + serving(true), "1.3");
        assertEquals("1.3 of {left=b.json, measured 2020-01-01T00:00:00Z}[]", taken());
    }

    /** What lies in the folder for them needs no name; what may not serve as baseline is a visit all the same. */
    @Test
    void visitsAreThoseNamedAndThoseInTheFolder() throws IOException {
        results("a.json", "\"format\": 2, \"measured\": \"2026-01-01T00:00:00Z\", \"state\": \"full load\", "
                + serving(false), "1.1");
        results("b.json", "", "1.2");
        Files.createDirectories(folder.resolve("earlier/2025-12"));
        results("earlier/2025-12/results.json", "\"format\": 2, \"measured\": \"2025-12-01T00:00:00Z\", "
                + serving(true), "1.0");
        results("earlier/c.json", "\"format\": 7, ", "1.4");
        Files.writeString(folder.resolve("earlier/notes.txt"), "no results");
        MachineReading reading = MachineFile.in(folder);
        assertEquals(List.of("b.json", "a.json", "earlier/2025-12/results.json", "earlier/c.json"), reading.earlier());
        assertEquals("[a.json, 2026-01-01T00:00:00Z, full load: 2 points, earlier/2025-12/results.json,"
                + " 2025-12-01T00:00:00Z: 2 points, b.json: 2 points]", reading.visits().toString());
        assertEquals(1, reading.problems().size());
        assertEquals("earlier/c.json", reading.problems().get(0).file());
    }

    /** A tenth of a second is too short for velocity and long enough for acceleration, which format 2 tells. */
    @Test
    void whatAnUnsoundRecordingWasFitForIsAVisitAndNoBaseline() throws IOException {
        String head = "\"format\": 2, \"measured\": \"2026-01-01T00:00:00Z\", " + serving(true);
        results("a.json", head, "1.1");
        results("b.json", head.replace("01-01", "02-01"), "1.2");
        String short2 = Files.readString(folder.resolve("b.json")).replace("\"sound\": true", "\"sound\": false");
        Files.writeString(folder.resolve("b.json"), short2);
        assertEquals("1.1 of {left=a.json, measured 2026-01-01T00:00:00Z}[]", taken());
        assertEquals(2, MachineFile.in(folder).visits().get(0).values().size());
        Files.writeString(folder.resolve("b.json"), short2.replace("\"descriptors\"", "\"insisted\": true, \"descriptors\""));
        assertEquals(0, MachineFile.in(folder).visits().get(0).values().size());
    }

    @Test
    void anotherUnitIsAProblemAndNoChange() throws IOException {
        results("a.json", "", "1.1");
        results("b.json", "", "1.2");
        Files.writeString(folder.resolve("b.json"), Files.readString(folder.resolve("b.json")).replace("mm/s", "in/s"));
        MachineReading reading = MachineFile.in(folder);
        assertEquals("unit of velocity-rms-10-1000Hz must be mm/s: in/s", reading.problems().get(0).text());
        assertEquals(1, reading.visits().size());
    }

    @Test
    void anUnsoundRecordingIsNoBaseline() throws IOException {
        results("a.json", "", "1.1");
        results("b.json", "", "1.2");
        String sound = Files.readString(folder.resolve("a.json"));
        Files.writeString(folder.resolve("a.json"), sound.replace("true", "false"));
        assertEquals("1.2 of {left=b.json (format 1, which doesn't say whether it may serve as baseline)}[]", taken());
    }

    @Test
    void whatCantBeReadIsNamedAndTheRestIsTaken() throws IOException {
        results("a.json", "", "1.1");
        assertEquals(List.of("b.json: is not in the survey folder"), problems());
        Files.writeString(folder.resolve("b.json"), "{");
        assertEquals("b.json: is not valid JSON", problems().get(0).substring(0, 25));
        Files.writeString(folder.resolve("b.json"), "{ \"machine\": \"Pump\" }");
        assertEquals(List.of("b.json: must be results of \"Fan\": \"Pump\""), problems());
        Files.writeString(folder.resolve("b.json"), "{ \"machine\": \"Fan\", \"format\": 3 }");
        assertEquals(List.of("b.json: must be of format 1 or 2: 3"), problems());
    }

    private List<String> problems() {
        MachineReading reading = MachineFile.in(folder);
        assertEquals(1.1, reading.machine().orElseThrow().baseline("left").get("velocity-rms-10-1000Hz"));
        return reading.problems().stream().map(Problem::toString).toList();
    }
}
