package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** All files or none. */
class OutputFolderTest {
    private static Map<String, byte[]> files(String... namesAndContents) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (int i = 0; i < namesAndContents.length; i += 2) {
            files.put(namesAndContents[i], namesAndContents[i + 1].getBytes(StandardCharsets.UTF_8));
        }
        return files;
    }

    private static List<String> names(Path folder) throws IOException {
        try (var list = Files.list(folder)) {
            return list.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void makesTheFolderAndLeavesNothingElse(@TempDir Path parent) throws IOException {
        Path folder = parent.resolve("a/b");
        OutputFolder.write(folder, files("one.txt", "1", "two.txt", "2"));
        assertEquals(List.of("one.txt", "two.txt"), names(folder));
        assertEquals("2", Files.readString(folder.resolve("two.txt")));
    }

    @Test
    void replacesEarlierFiles(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("one.txt"), "old");
        OutputFolder.write(folder, files("one.txt", "new"));
        assertEquals("new", Files.readString(folder.resolve("one.txt")));
        assertEquals(List.of("one.txt"), names(folder));
    }

    @Test
    void aFileThatCantBeWrittenLeavesTheEarlierSet(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("one.txt"), "old");
        Files.createDirectory(folder.resolve("two.txt"));
        IOException failure = assertThrows(IOException.class,
                () -> OutputFolder.write(folder, files("one.txt", "new", "two.txt", "2")));
        assertTrue(failure.getMessage().contains("two.txt is a folder"), failure.getMessage());
        assertEquals("old", Files.readString(folder.resolve("one.txt")));
        assertEquals(List.of("one.txt", "two.txt"), names(folder));
    }

    @Test
    void aFailureTakesANewFolderAway(@TempDir Path parent) {
        Path folder = parent.resolve("new");
        assertThrows(IOException.class,
                () -> OutputFolder.write(folder, files("one.txt", "1", "missing/two.txt", "2")));
        assertFalse(Files.exists(folder));
    }

    @Test
    void aMoveThatFailsTakesBackThoseBeforeIt(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("one.txt"), "old");
        IOException failure = assertThrows(IOException.class,
                () -> OutputFolder.write(folder, files("one.txt", "new", "two.txt", "2", "three.txt", "3"), (from,
                        to) -> {
                    if (to.endsWith("three.txt")) {
                        throw new IOException("no room");
                    }
                    Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
                }));
        assertEquals("no room", failure.getMessage());
        assertEquals("old", Files.readString(folder.resolve("one.txt")));
        assertEquals(List.of("one.txt"), names(folder));
    }

    @Test
    void aFileInPlaceOfTheFolderIsAnError(@TempDir Path parent) throws IOException {
        Path file = Files.writeString(parent.resolve("taken"), "x");
        assertThrows(IOException.class, () -> OutputFolder.write(file, files("one.txt", "1")));
        assertEquals("x", Files.readString(file));
    }
}
