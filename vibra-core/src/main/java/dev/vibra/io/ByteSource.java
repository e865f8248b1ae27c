package dev.vibra.io;

import dev.vibra.internal.Require;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;

/** Where the bytes of a recording come from, and what it is called in messages. */
abstract class ByteSource {
    private final String name;
    private final boolean repeatable;

    private ByteSource(String name, boolean repeatable) {
        this.name = name;
        this.repeatable = repeatable;
    }

    static ByteSource of(Path file) {
        return new ByteSource(RecordingFileException.nameOf(file), true) {
            @Override
            Feed open() throws IOException {
                return openFile(file);
            }
        };
    }

    static ByteSource of(InputStream in, String name) {
        return new ByteSource(Require.notBlank("name", name), false) {
            @Override
            Feed open() {
                return Feed.of(in);
            }
        };
    }

    static ByteSource of(ReadableByteChannel channel, String name) {
        return new ByteSource(Require.notBlank("name", name), false) {
            @Override
            Feed open() throws IOException {
                return channel instanceof SeekableByteChannel own ? Feed.ofSeekable(own) : Feed.of(channel);
            }
        };
    }

    static ByteSource of(ByteBuffer buffer, String name) {
        ByteBuffer own = buffer.asReadOnlyBuffer();
        return new ByteSource(Require.notBlank("name", name), true) {
            @Override
            Feed open() {
                return Feed.ofOwned(own.duplicate());
            }
        };
    }

    /** A pipe without a writer would be waited for without an end. */
    private static Feed openFile(Path file) throws IOException {
        if (Files.isDirectory(file)) {
            throw new RecordingFileException(file, "can't be read: it is a folder");
        }
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new RecordingFileException(file, "can't be read: it is a pipe or a device, not a file; what comes out"
                    + " of it can be read as a stream");
        }
        InputStream in = Files.newInputStream(file);
        try {
            return Feed.ofFile(in, Files.size(file));
        } catch (IOException e) {
            in.close();
            throw e;
        }
    }

    String name() {
        return name;
    }

    boolean isRepeatable() {
        return repeatable;
    }

    /** Opens the bytes. */
    abstract Feed open() throws IOException;

    RecordingFileException unreadable(IOException error) {
        return new RecordingFileException(name, "can't be read: " + Reason.of(error), error);
    }
}
