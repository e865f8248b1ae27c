package dev.vibra.docs.survey;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.docs.survey.Folders.Run;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Measurements are irreplaceable: the command overwrites nothing but its own earlier results. */
class OverwriteTest {
    private static final byte[] SOMEBODYS = "somebody's".getBytes(StandardCharsets.UTF_8);

    @TempDir
    private Path temp;

    private static void assertKept(Path file, byte[] before, Run run) throws IOException {
        assertEquals(64, run.code(), run.err());
        assertTrue(run.err().startsWith("Nothing was written: ") && run.err().contains(" would be overwritten, "),
                run.err());
        assertEquals(1, run.err().lines().count(), run.err());
        assertEquals("", run.out());
        assertArrayEquals(before, Files.readAllBytes(file));
    }

    private Path folderWithARecordingCalledAsOurs() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        StringBuilder text = new StringBuilder("time;value\n");
        for (int i = 0; i < 2000; i++) {
            text.append(i / 1000.0).append(';').append(Math.sin(i)).append('\n');
        }
        Files.writeString(folder.resolve("results.csv"), text);
        Folders.replace(folder, "fe-v.wav", "results.csv");
        return folder;
    }

    @Test
    void aRecordingIsNotOverwrittenWhateverThePathIsCalled() throws IOException {
        Path folder = folderWithARecordingCalledAsOurs();
        byte[] before = Files.readAllBytes(folder.resolve("results.csv"));
        Path link = Files.createSymbolicLink(temp.resolve("link"), folder);
        for (Path out : new Path[] {folder, folder.resolve("../fan"), folder.resolve("."), link}) {
            assertKept(folder.resolve("results.csv"), before, Folders.run(folder, "--out", out));
        }
        Files.delete(folder.resolve("fe-h.wav"));
        assertKept(folder.resolve("results.csv"), before, Folders.run(link, "--out", folder));
    }

    @Test
    void theDescriptionAndEarlierResultsAreNotOverwrittenThroughLinks() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        assertEquals(0, Folders.run(folder, "--out", folder).code(), "the survey folder itself may be written to");
        assertEquals(0, Folders.run(folder, "--out", folder).code(), "and its earlier results replaced");
        Path out = Files.createDirectory(temp.resolve("out"));
        Files.createSymbolicLink(out.resolve("results.json"), folder.resolve("machine.json"));
        byte[] machine = Files.readAllBytes(folder.resolve("machine.json"));
        assertKept(folder.resolve("machine.json"), machine, Folders.run(folder, "--out", out));
        Folders.replace(folder, "\"points\": [", "\"earlier\": [ \"results.json\" ], \"points\": [");
        assertKept(folder.resolve("results.json"), Files.readAllBytes(folder.resolve("results.json")),
                Folders.run(folder, "--out", folder));
    }

    @Test
    void somebodysFileWithOneOfOurNamesIsNotOverwritten() throws IOException {
        Path folder = Folders.demo(temp.resolve("fan"));
        for (String name : new String[] {"report.html", "results.json", "results.csv"}) {
            Path out = Files.createDirectory(temp.resolve("out-" + name));
            Path file = Files.writeString(out.resolve(name), "somebody's");
            assertKept(file, SOMEBODYS, Folders.run(folder, "--out", out));
            assertKept(file, SOMEBODYS, Folders.run("--out", out));
        }
    }

    @Test
    void theScorecardOverwritesNobodysFileEither() throws IOException {
        Path folder = Folders.demo(temp.resolve("set/fan"));
        Files.writeString(folder.resolve("labels.json"), "{ \"FE-H\": \"unbalance\" }");
        Path out = Files.createDirectory(temp.resolve("out"));
        Path file = Files.writeString(out.resolve("scorecard.csv"), "somebody's");
        assertKept(file, SOMEBODYS, Folders.run("--score", temp.resolve("set"), "--out", out));
        Files.delete(file);
        assertEquals(0, Folders.run("--score", temp.resolve("set"), "--out", out).code());
        assertEquals(0, Folders.run("--score", temp.resolve("set"), "--out", out).code(), "replaces its own");
    }
}
