package dev.vibra.io;

import java.nio.file.Path;

/** A recording file can't be read or written; the message names file, place, value and what is allowed. */
public final class RecordingFileException extends RuntimeException {
    private static final long serialVersionUID = 1;

    RecordingFileException(Path file, String message) {
        super(name(file) + ": " + message);
    }

    RecordingFileException(Path file, String message, Throwable cause) {
        super(name(file) + ": " + message, cause);
    }

    private static Path name(Path file) {
        return file.getFileName() == null ? file : file.getFileName();
    }
}
