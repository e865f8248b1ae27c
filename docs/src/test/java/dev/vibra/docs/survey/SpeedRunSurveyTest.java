package dev.vibra.docs.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.docs.survey.Folders.Run;
import dev.vibra.io.Recordings;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.rotation.OrderVector;
import dev.vibra.signal.Waveform;
import dev.vibra.speedrun.RunModel;
import dev.vibra.synthesis.SpeedProfile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A coast-down through a resonance at 1500 r/min with 1/(2ζ) = 10, from recordings to report. */
class SpeedRunSurveyTest {
    private static final String MACHINE = """
            { "name": "Fan", "kind": "fan", "ratedPowerKilowatts": 45, "support": "rigid",
              "points": [ { "id": "FE-H", "recording": "fe-h.wav", "unit": "g", "scale": 4 } ],
              "runs": [
              { "id": "stop", "serviceRevolutionsPerMinute": 2000,
                "tachometer": { "recording": "tacho.wav" },
                "points": [
                  { "id": "BRG-H", "recording": "h.wav", "unit": "mm/s" },
                  { "id": "BRG-X", "recording": "x.wav", "unit": "um" },
                  { "id": "BRG-Y", "recording": "y.wav", "unit": "um" } ],
                "probes": [ { "id": "drive end", "x": "BRG-X", "y": "BRG-Y", "xDegrees": 45, "yDegrees": 135,
                              "turning": "counter-clockwise", "positive": "towards the probe" } ] } ] }
            """;
    private static final SpeedProfile DOWN = new SpeedProfile(RotationSpeed.ofRevolutionsPerMinute(3000),
            RotationSpeed.ofRevolutionsPerMinute(240), 150);
    private static final double RATE = 1000;

    @TempDir
    private Path temp;
    private Path folder;

    @BeforeEach
    void record() throws IOException {
        folder = Files.createDirectories(temp.resolve("fan"));
        Files.copy(Folders.demo(temp.resolve("demo")).resolve("fe-h.wav"), folder.resolve("fe-h.wav"));
        Files.writeString(folder.resolve("machine.json"), MACHINE);
        RunModel model = RunModel.of(DOWN);
        write("tacho.wav", Unit.V, model.tachometer(5000));
        write("h.wav", Unit.MM_PER_S, model.withMode(10e-6, 25, 0.05, 30).withNoise(1e-4, 3)
                .recording(Quantity.VELOCITY, RATE));
        write("x.wav", Unit.UM, model.withMode(10e-6, 25, 0.05, 30).withRunout(new OrderVector(4e-6, 1))
                .recording(Quantity.DISPLACEMENT, RATE));
        write("y.wav", Unit.UM, model.withMode(10e-6, 25, 0.05, 120).recording(Quantity.DISPLACEMENT, RATE));
    }

    private void write(String name, Unit unit, Waveform wave) {
        Recordings.write(wave, folder.resolve(name), unit);
    }

    private String written(String name) throws IOException {
        return Files.readString(temp.resolve("fan-survey").resolve(name));
    }

    private static double first(String json, String field) {
        Matcher found = Pattern.compile("\"" + field + "\" : ([-0-9.]+)").matcher(json);
        assertTrue(found.find(), field);
        return Double.parseDouble(found.group(1));
    }

    @Test
    void resonanceIsToldEverywhere() throws IOException {
        Run run = Folders.run(folder);
        assertEquals("", run.err());
        assertEquals(0, run.code(), run.out());
        String json = written("results.json");
        String runs = json.substring(json.indexOf("\"speedRuns\""));
        String resonance = runs.substring(runs.indexOf("\"resonances\""));
        assertEquals(1500, first(resonance, "revolutionsPerMinute"), 15);
        assertEquals(10, first(resonance, "amplification"), first(resonance, "amplificationUncertainty"));
        assertEquals(25, first(resonance, "percentBelowService"), 1);
        assertTrue(run.out().contains("Run-up and coast-down\n  stop: coast-down from 29"), run.out());
        assertTrue(run.out().contains("1× at 1"), run.out());
        String report = written("report.html");
        String section = report.substring(report.indexOf("<h2>Run-up and coast-down"));
        section = section.substring(0, section.indexOf("<h2", 4));
        assertEquals(3 * 3 + 2, section.split("<svg", -1).length - 1);
        assertFalse(section.contains("NaN"));
        assertTrue(section.contains("only as maker, owner and local codes allow"), section);
        assertTrue(section.contains("25 % below 2000 r/min"), section);
        assertTrue(section.contains("is taken off the first order"), section);
        assertTrue(section.contains("with the shaft"), section);
    }

    @Test
    void aRunThatIsNoneIsLeftOutAndTheRestSurveyed() throws IOException {
        write("tacho.wav", Unit.V, new SpeedProfile(DOWN.from(), DOWN.from(), 20).tachometer(5000, 1));
        Run run = Folders.run(folder);
        assertEquals(1, run.code());
        assertTrue(run.out().contains("tacho.wav: run stop is left out: the speed hardly changes"), run.out());
        assertTrue(written("results.json").contains("\"leftOut\" : ["));
    }

    @Test
    void aPointThatIsMissingIsLeftOutAndTheRunToldWithoutIt() throws IOException {
        Files.delete(folder.resolve("x.wav"));
        Run run = Folders.run(folder);
        assertEquals(1, run.code());
        assertTrue(run.out().contains("point BRG-X of run stop is left out"), run.out());
        assertTrue(written("report.html").contains("one of its probes is left out"));
    }

    @Test
    void digestOfTheRunHasTheRecordingsInIt() throws IOException {
        Folders.run(folder);
        String before = written("results.json").replaceAll("(?s).*\"run\" : \"([0-9a-f]+)\".*", "$1");
        write("h.wav", Unit.MM_PER_S, RunModel.of(DOWN).withNoise(1e-4, 4).recording(Quantity.VELOCITY, RATE));
        Run run = Folders.run(folder);
        String after = written("results.json").replaceAll("(?s).*\"run\" : \"([0-9a-f]+)\".*", "$1");
        assertNotEquals(before, after);
        assertTrue(run.out().contains("BRG-X"), run.out());
    }
}
