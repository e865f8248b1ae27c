package dev.vibra.docs.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.docs.survey.Folders.Run;
import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reference recordings of a survey folder: read beside the point, compared, left out by themselves. */
class ReferenceTest {
    @TempDir
    private Path temp;

    private Path withReference() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        Files.copy(folder.resolve("fe-v.wav"), folder.resolve("new-fe-v.wav"));
        Folders.replace(folder, "\"recording\": \"fe-v.wav\"",
                "\"recording\": \"fe-v.wav\", \"reference\": \"new-fe-v.wav\"");
        return folder;
    }

    /** A recording held against itself: nothing has changed. */
    @Test
    void aReferenceIsReadByTheScalingOfItsPoint() throws IOException {
        Path folder = withReference();
        MachineReading reading = MachineFile.in(folder);
        MachineSurvey survey = Survey.of(reading.machine().orElseThrow(), reading.recordings(folder), Map.of(),
                reading.references(folder));
        assertEquals(1, survey.changes().size());
        assertEquals("", survey.changes().get(0).obstacle());
        assertTrue(survey.changes().get(0).lines().size() >= 1);
        survey.changes().get(0).lines().forEach(line -> assertEquals(1, line.ratio().orElseThrow(), 1e-12));
        survey.changes().get(0).noise().forEach(octave -> assertEquals(1, octave.ratio().orElseThrow(), 1e-12));
        assertEquals(0, Folders.run(folder, "--out", temp.resolve("out")).code());
    }

    @Test
    void aReferenceThatCannotBeReadLeavesThePoint() throws IOException {
        Path folder = withReference();
        Files.writeString(folder.resolve("new-fe-v.wav"), "no sound");
        Run one = Folders.run(folder, "--threads", 1, "--out", temp.resolve("out"));
        assertEquals(1, one.code());
        assertTrue(one.out().contains("new-fe-v.wav: reference of point FE-V is left out: "), one.out());
        assertTrue(Files.readString(temp.resolve("out").resolve("results.csv")).contains("FE-V,velocity-rms"));
        Files.delete(folder.resolve("new-fe-v.wav"));
        assertEquals(1, Folders.run(folder, "--threads", 3, "--out", temp.resolve("out")).code());
    }

    /** Nothing is written over a reference. */
    @Test
    void aReferenceIsAnInput() throws IOException {
        Path folder = withReference();
        Files.createDirectories(temp.resolve("out"));
        Files.createLink(temp.resolve("out").resolve("results.csv"), folder.resolve("new-fe-v.wav"));
        assertEquals(64, Folders.run(folder, "--out", temp.resolve("out")).code());
    }
}
