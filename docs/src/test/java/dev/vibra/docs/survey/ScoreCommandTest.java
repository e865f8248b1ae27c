package dev.vibra.docs.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.docs.survey.Folders.Run;
import dev.vibra.io.SampleFormat;
import dev.vibra.io.WavFile;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command on labelled folders, made by the forward model. */
class ScoreCommandTest {
    private static final List<String> FILES = List.of("scorecard.csv", "scorecard.json");

    @TempDir
    private Path temp;

    /** A machine with one point at a bearing whose outer race has a defect, or none. */
    private Path machine(String name, boolean defect, String labels) throws IOException {
        Path folder = Files.createDirectories(temp.resolve("set").resolve(name));
        BearingSignal signal = BearingSignal.of(BearingGeometry.of(9, 7.94, 39.04, 0).frequencies(RotatingRing.INNER,
                RotationSpeed.ofRevolutionsPerMinute(1797))).withResonance(3200, 0.04).withNoise(0.6);
        WavFile.write((defect ? signal.withDefect(BearingElement.OUTER_RACE, 8) : signal).waveform(12_000, 120_000, 7),
                folder.resolve("p.wav"), Unit.G, 4, SampleFormat.INTEGER_16);
        Files.writeString(folder.resolve("machine.json"), """
            { "name": "motor", "kind": "electric motor", "speedRevolutionsPerMinute": 1797,
              "bearings": [ { "id": "b", "rollingElements": 9, "ballDiameterMillimetres": 7.94,
                  "pitchDiameterMillimetres": 39.04, "contactAngleDegrees": 0, "rotatingRing": "inner" } ],
              "points": [
                { "id": "P", "bearing": "b", "recording": "p.wav", "unit": "g", "scale": 4 } ] }
            """);
        if (!labels.isEmpty()) {
            Files.writeString(folder.resolve("labels.json"), labels);
        }
        return folder;
    }

    private Run score(Object... more) {
        Object[] arguments = Arrays.copyOf(new Object[] {"--score", temp.resolve("set")}, 2 + more.length);
        System.arraycopy(more, 0, arguments, 2, more.length);
        return Folders.run(arguments);
    }

    private static String unwrapped(String text) {
        return text.replaceAll("\\s+", " ");
    }

    @Test
    void eachLabelledMachineIsARow() throws IOException {
        machine("a", true, "{ \"P\": \"rolling-bearing-outer-race\" }");
        machine("deeper/b", true, "{ \"P\": \"rolling-bearing-inner-race\" }");
        machine("deeper/c", true, "{ \"P\": \"healthy\" }");
        Run run = score();
        assertEquals("", run.err());
        assertEquals(0, run.code(), "what is wrong is a result and no failure");
        assertEquals(FILES, Folders.names(temp.resolve("set-score")));
        assertEquals(List.of("set", "set-score"), Folders.names(temp), "no survey is written");
        String text = unwrapped(run.out());
        assertTrue(text.contains("all 3 1 0 1 0 0 0 1"), text);
        assertTrue(text.contains("deeper/b, P: rolling-bearing-inner-race: wrong code (rolling-bearing-outer-race) -"
                + " rolling bearing, outer race, b (confidence 0."), text);
        assertTrue(text.contains("deeper/c, P: healthy: false alarm (rolling-bearing-outer-race)"), text);
        for (String line : run.out().split("\n")) {
            assertTrue(line.length() <= 80 || line.startsWith("Written to "), line);
        }
        String csv = Files.readString(temp.resolve("set-score/scorecard.csv"));
        assertTrue(csv.startsWith("machine,point,label,outcome,said,extra,evidence\r\na,P,rolling-bearing-outer-race,"
                + "right,rolling-bearing-outer-race,,"), csv);
    }

    @Test
    void whatFailsIsNamedAndTheRestScored() throws IOException {
        machine("a-good", true, "{ \"P\": \"rolling-bearing-outer-race\" }");
        Files.writeString(machine("b-bad", true, "{ \"P\": \"healthy\" }").resolve("machine.json"), "{ \"name\": 3 }");
        Files.delete(machine("c-lost", true, "{ \"P\": \"healthy\" }").resolve("p.wav"));
        machine("d-typo", true, "{ \"P\": \"rolling-bearing-outer-rase\" }");
        machine("e-none", true, "");
        Run run = score("--out", temp.resolve("out"));
        assertEquals(1, run.code());
        String text = unwrapped(run.out());
        assertTrue(text.contains("all 2 1 0 0 0 0 1 0"), text);
        assertTrue(text.contains("b-bad: machine.json, line 1, name: must be a text in quotes"), text);
        assertTrue(text.contains("c-lost, P: healthy: refused - recording: not determined, p.wav: is not in the survey"
                + " folder"), text);
        assertTrue(text.contains("d-typo/labels.json, line 1, P: is not a known code; the nearest known name is"
                + " \"rolling-bearing-outer-race\""), text);
        assertTrue(text.contains("d-typo, P: no label"), text);
        assertTrue(text.contains("e-none: there is no labels.json"), text);
        assertEquals(FILES, Folders.names(temp.resolve("out")));
    }

    @Test
    void theSameInputsGiveTheSameBytes() throws IOException {
        machine("a", false, "{ \"P\": \"healthy\" }");
        assertEquals(0, score("--out", temp.resolve("one")).code());
        assertEquals(0, score("--out", temp.resolve("two")).code());
        for (String name : FILES) {
            assertEquals(Files.readString(temp.resolve("one").resolve(name)),
                    Files.readString(temp.resolve("two").resolve(name)));
        }
    }

    @Test
    void theFolderMayBeAMachineItself() throws IOException {
        Path folder = machine(".", true, "{ \"P\": \"rolling-bearing-outer-race\" }");
        assertTrue(unwrapped(Folders.run(folder, "--score").out()).contains("all 1 1 0 0 0 0 0 0"));
    }

    @Test
    void withoutAnyRowNothingIsWritten() throws IOException {
        Files.createDirectories(temp.resolve("set"));
        Run run = score();
        assertEquals(2, run.code());
        assertTrue(run.err().startsWith("No folder with machine.json is in or below "), run.err());
        machine("e-none", true, "");
        run = score();
        assertEquals(2, run.code());
        assertEquals("e-none: there is no labels.json\nNo point with a label could be surveyed; nothing was written.\n",
                run.err());
        assertEquals(List.of("set"), Folders.names(temp));
    }

    @Test
    void aScoreNeedsAFolder() {
        Run run = Folders.run("--score");
        assertEquals(64, run.code());
        assertTrue(run.err().startsWith("--score needs a folder\nUsage: "), run.err());
        assertFalse(run.err().contains("SCORE"));
    }
}
