package dev.vibra.io;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes a file whole or not at all: beside its place first, then moved there in one step. */
final class WholeFile {
    private WholeFile() {}

    static void write(Path file, byte[] content) {
        Path folder = file.toAbsolutePath().getParent();
        Path temporary = null;
        try {
            temporary = Files.createTempFile(folder, file.getFileName().toString(), ".part");
            Files.write(temporary, content);
            move(temporary, file);
        } catch (IOException e) {
            remove(temporary, e);
            throw new RecordingFileException(file, "can't be written: " + e, e);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static void remove(Path temporary, IOException cause) {
        try {
            if (temporary != null) {
                Files.deleteIfExists(temporary);
            }
        } catch (IOException e) {
            cause.addSuppressed(e);
        }
    }
}
