package dev.vibra.io;

import dev.vibra.internal.Printable;
import java.nio.file.Path;

/**
 * A recording can't be read or written; the message names file, place, value and what is allowed. Whatever of the
 * file's name or content could control a terminal or can't be seen stands in it as an escape.
 */
public final class RecordingFileException extends RuntimeException {
    private static final int LONGEST_NAME = 255;
    private static final long serialVersionUID = 2;

    private final String fileName;
    private final String reason;

    RecordingFileException(String name, String reason, Throwable cause) {
        super(Printable.shortened(name, LONGEST_NAME) + ": " + Printable.of(reason), cause);
        this.fileName = Printable.shortened(name, LONGEST_NAME);
        this.reason = Printable.of(reason);
    }

    RecordingFileException(String name, String reason) {
        this(name, reason, null);
    }

    RecordingFileException(Path file, String reason) {
        this(nameOf(file), reason);
    }

    RecordingFileException(Path file, String reason, Throwable cause) {
        this(nameOf(file), reason, cause);
    }

    static String nameOf(Path file) {
        return String.valueOf(file.getFileName() == null ? file : file.getFileName());
    }

    /**
     * Returns what the message begins with: the last part of a path, or the name given to a stream or buffer.
     *
     * @return name without any character that isn't seen, 255 characters at most
     */
    public String fileName() {
        return fileName;
    }

    /**
     * Returns what is wrong: the message without the name.
     *
     * @return place, value and what is allowed
     */
    public String reason() {
        return reason;
    }
}
