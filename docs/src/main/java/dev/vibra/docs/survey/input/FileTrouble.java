package dev.vibra.docs.survey.input;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.Objects;

/** Says in words what the file system refused; its exceptions hold little more than a name, the rest is their class. */
public final class FileTrouble {
    private FileTrouble() {}

    /**
     * Says which file it was and why.
     *
     * @param trouble what was thrown
     * @return a sentence without its full stop, as in {@code /data/out: is no folder}
     */
    public static String inWords(IOException trouble) {
        String file = trouble instanceof FileSystemException known ? known.getFile() : null;
        return file == null ? reason(trouble) : file + ": " + reason(trouble);
    }

    /** Says why, without the name of the file. */
    static String reason(IOException trouble) {
        if (trouble instanceof AccessDeniedException) {
            return "the system doesn't allow it to be read or written";
        } else if (trouble instanceof NoSuchFileException) {
            return "is not there";
        } else if (trouble instanceof FileAlreadyExistsException) {
            return "is there already and no folder";
        } else if (trouble instanceof NotDirectoryException) {
            return "is no folder";
        } else if (trouble instanceof FileSystemLoopException) {
            return "is a loop of links";
        }
        String words = trouble instanceof FileSystemException known ? known.getReason() : trouble.getMessage();
        return Objects.requireNonNullElse(words, "the system gives no reason");
    }
}
