package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** All files or none, and nobody else's. */
class OutputFolderTest {
    static final List<String> NAMES = List.of("report.html", "results.csv", "results.json");

    @TempDir
    private Path parent;

    private static void write(Path folder, Map<String, Content> files, Path... inputs) throws IOException {
        OutputFolder.write(folder, OutputSet.SURVEY, files, List.of(inputs));
    }

    private static List<String> names(Path folder) throws IOException {
        try (var list = Files.list(folder)) {
            return list.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    private static Map<String, Content> failing(String run, String name) {
        Map<String, Content> files = Contents.survey(run);
        files.put(name, out -> {
            out.write('x');
            throw new IOException("no room");
        });
        return files;
    }

    @Test
    void makesTheFolderAndLeavesNothingElse() throws IOException {
        Path folder = parent.resolve("a/b");
        write(folder, Contents.survey("1"));
        assertEquals(NAMES, names(folder));
        assertEquals(Contents.csv("1"), Files.readString(folder.resolve("results.csv")));
    }

    @Test
    void replacesAnEarlierSet() throws IOException {
        write(parent, Contents.survey("1"));
        write(parent, Contents.survey("2"));
        assertEquals(Contents.report("2"), Files.readString(parent.resolve("report.html")));
        assertEquals(NAMES, names(parent));
    }

    @Test
    void aFolderInPlaceOfAFileLeavesTheEarlierSet() throws IOException {
        write(parent, Contents.survey("1"));
        Files.delete(parent.resolve("results.json"));
        Files.createDirectory(parent.resolve("results.json"));
        IOException failure = assertThrows(IOException.class, () -> write(parent, Contents.survey("2")));
        assertTrue(failure.getMessage().contains("results.json is a folder"), failure.getMessage());
        assertEquals(Contents.report("1"), Files.readString(parent.resolve("report.html")));
        assertEquals(NAMES, names(parent));
    }

    @ParameterizedTest
    @ValueSource(strings = {"report.html", "results.csv", "results.json"})
    void aFileThatCantBeWrittenLeavesTheEarlierSetOrNoFolder(String name) throws IOException {
        Path folder = parent.resolve("new");
        assertThrows(IOException.class, () -> write(folder, failing("1", name)));
        assertFalse(Files.exists(folder));
        write(folder, Contents.survey("1"));
        assertEquals("no room", assertThrows(IOException.class, () -> write(folder, failing("2", name))).getMessage());
        assertEquals(Contents.report("1"), Files.readString(folder.resolve("report.html")));
        assertEquals(NAMES, names(folder));
    }

    @Test
    void aFileInPlaceOfTheFolderIsAnError() throws IOException {
        Path file = Files.writeString(parent.resolve("taken"), "x");
        IOException failure = assertThrows(IOException.class, () -> write(file, Contents.survey("1")));
        assertTrue(failure.getMessage().endsWith("taken is a file; a folder is needed"), failure.getMessage());
        assertEquals("x", Files.readString(file));
    }

    /** What doesn't begin as ours does is somebody's: a table of measurements, a page, an empty file, a link. */
    @ParameterizedTest
    @ValueSource(strings = {"report.html", "results.csv", "results.json"})
    void aFileThatIsNoneOfOursIsNotReplaced(String name) throws IOException {
        write(parent, Contents.survey("1"));
        for (String text : List.of("", "time;value\n0;1\n", "{ \"name\": \"Fan\" }", "<!DOCTYPE html>\n<p>plant")) {
            Files.writeString(parent.resolve(name), text);
            ForeignFileException refusal = assertThrows(ForeignFileException.class,
                    () -> write(parent, Contents.survey("2")));
            assertTrue(refusal.getMessage().contains(name + " would be overwritten, and it is no result of an earlier"),
                    refusal.getMessage());
            assertEquals(text, Files.readString(parent.resolve(name)));
        }
        Files.delete(parent.resolve(name));
        Files.createSymbolicLink(parent.resolve(name), parent.resolve("gone"));
        assertThrows(ForeignFileException.class, () -> write(parent, Contents.survey("2")));
        assertEquals(NAMES, names(parent));
    }

    /** Even one that looks like ours: by its name, by a link, by a hard link, by another spelling of the path. */
    @Test
    void whatTheSurveyReadsIsNotReplaced() throws IOException {
        write(parent, Contents.survey("1"));
        Path input = Files.copy(parent.resolve("results.csv"), parent.resolve("measured.csv"));
        Path other = parent.resolve("other");
        Path place = Files.createDirectory(other).resolve("results.csv");
        assertRefused(parent, parent.resolve("other/../results.csv"));
        Files.createSymbolicLink(place, input);
        assertRefused(other, input);
        Files.delete(place);
        Files.createLink(place, input);
        assertRefused(other, input);
        Path link = Files.createSymbolicLink(parent.resolve("link"), other);
        assertRefused(link, other.resolve("../other/results.csv"));
        assertEquals(Contents.csv("1"), Files.readString(input));
    }

    private static void assertRefused(Path folder, Path input) {
        ForeignFileException refusal = assertThrows(ForeignFileException.class,
                () -> write(folder, Contents.survey("2"), input));
        assertTrue(refusal.getMessage().contains("the survey reads it as "), refusal.getMessage());
    }

    /** A link to an earlier result of ours is replaced; what it leads to stays. */
    @Test
    void aLinkIsReplacedAndNotFollowed() throws IOException {
        Path archive = Files.writeString(parent.resolve("archive.csv"), Contents.csv("0"));
        Path folder = Files.createDirectory(parent.resolve("out"));
        Files.createSymbolicLink(folder.resolve("results.csv"), archive);
        write(folder, Contents.survey("1"));
        assertEquals(Contents.csv("0"), Files.readString(archive));
        assertEquals(Contents.csv("1"), Files.readString(folder.resolve("results.csv")));
        assertFalse(Files.isSymbolicLink(folder.resolve("results.csv")));
    }

    /** Leftovers whose inner folders lead elsewhere aren't ours. */
    @Test
    void leftoversThatAreLinksAreLeftAlone() throws IOException {
        Path elsewhere = Files.createDirectory(parent.resolve("elsewhere"));
        Files.writeString(elsewhere.resolve("results.csv"), "time;value");
        Path staged = Files.createDirectories(parent.resolve("out/.vibra-survey-" + "0".repeat(32)));
        Files.createSymbolicLink(staged.resolve("before"), elsewhere);
        Files.writeString(Files.createDirectory(staged.resolve("next")).resolve("results.json"), "x");
        write(parent.resolve("out"), Contents.survey("1"));
        assertEquals("time;value", Files.readString(elsewhere.resolve("results.csv")));
        assertEquals(Contents.csv("1"), Files.readString(parent.resolve("out/results.csv")));
    }
}
