package dev.vibra.docs.notebook;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The start-up file for JShell: imports of the library and of {@link Notebook}. */
public final class StartUpFile {
    private static final String NAME = "vibra.jsh";

    private StartUpFile() {}

    /** {@return the file, in ASCII} */
    public static String text() {
        try (InputStream in = StartUpFile.class.getResourceAsStream(NAME)) {
            return new String(in.readAllBytes(), StandardCharsets.US_ASCII);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
