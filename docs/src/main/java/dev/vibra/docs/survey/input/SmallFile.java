package dev.vibra.docs.survey.input;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads a file that people write or that holds results; a pipe, a device or a monster is refused, not read. */
final class SmallFile {
    private static final int MEGABYTE = 1 << 20;

    private SmallFile() {}

    /** A file can't be used; the message says why, without its name. */
    static final class Unusable extends Exception {
        private static final long serialVersionUID = 1;

        Unusable(String message) {
            super(message);
        }
    }

    static byte[] read(Path file, int mostMegabytes) throws Unusable {
        if (!Files.isRegularFile(file)) {
            throw new Unusable(Files.exists(file) ? "must be a file; it is a folder, a pipe or a device"
                    : "is not in the survey folder");
        }
        byte[] bytes;
        try (InputStream in = Files.newInputStream(file)) {
            bytes = in.readNBytes(mostMegabytes * MEGABYTE + 1);
        } catch (IOException e) {
            throw new Unusable("can't be read: " + FileTrouble.reason(e));
        }
        if (bytes.length > mostMegabytes * MEGABYTE) {
            throw new Unusable("must be a file of " + mostMegabytes + " MB at most");
        }
        return bytes;
    }
}
