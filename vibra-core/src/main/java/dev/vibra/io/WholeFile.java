package dev.vibra.io;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Writes a file whole or not at all: beside its place first, then moved there in one step. */
final class WholeFile {
    private static final int ATTEMPTS = 1000;

    private WholeFile() {}

    /** Writes the content of a file. */
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    static void write(Path file, Content content) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new RecordingFileException(file, "can't be written: there is no folder " + folder);
        }
        if (Files.isDirectory(file)) {
            throw new RecordingFileException(file, "can't be written: it is a folder");
        }
        Path temporary = null;
        try {
            temporary = newFile(folder);
            try (OutputStream out = Files.newOutputStream(temporary, StandardOpenOption.WRITE)) {
                content.writeTo(out);
            }
            move(temporary, file);
        } catch (IOException e) {
            remove(temporary, e);
            throw new RecordingFileException(file, "can't be written: " + Reason.of(e), e);
        }
    }

    /** A file made by createTempFile would be readable by its owner alone, for ever. */
    private static Path newFile(Path folder) throws IOException {
        for (int i = 0; ; i++) {
            try {
                return Files.createFile(folder.resolve(".vibra-" + i + ".part"));
            } catch (FileAlreadyExistsException e) {
                if (i == ATTEMPTS) {
                    throw e;
                }
            }
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
