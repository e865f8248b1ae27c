package dev.vibra.io;

import dev.vibra.internal.Printable;
import java.io.EOFException;
import java.io.IOException;
import java.nio.channels.ClosedChannelException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** What an input or output error means to whoever looks for the file, without names of Java's. */
final class Reason {
    private static final int LONGEST = 200;

    private Reason() {}

    static String of(IOException error) {
        if (error instanceof NoSuchFileException) {
            return "there is no such file";
        }
        if (error instanceof AccessDeniedException) {
            return "permission is denied";
        }
        if (error instanceof EOFException) {
            return "it ends early";
        }
        if (error instanceof ClosedChannelException) {
            return "it was closed";
        }
        String words = error instanceof FileSystemException of ? of.getReason() : error.getMessage();
        return words == null || words.isBlank() ? "its source failed without a reason"
                : Printable.shortened(words, LONGEST);
    }
}
