package dev.vibra.io;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BiFunction;

/** The same bytes through every door. */
final class RecordingDoors {
    private RecordingDoors() {}

    /** By name of the door, all inputs that a recording of some bytes can come through. */
    static Map<String, RecordingInput> of(byte[] bytes, String name, Path folder) {
        Map<String, RecordingInput> doors = inMemory(bytes, name);
        try {
            Path file = Files.write(folder.resolve(name), bytes);
            doors.put("path", RecordingInput.of(file));
            doors.put("file channel", RecordingInput.of(FileChannel.open(file), name));
            Path behind = Files.write(folder.resolve("behind.bin"), padded(bytes, 3, 0));
            doors.put("file channel from byte 3", RecordingInput.of(FileChannel.open(behind).position(3), name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return doors;
    }

    static Map<String, RecordingInput> inMemory(byte[] bytes, String name) {
        Map<String, RecordingInput> doors = new LinkedHashMap<>();
        doors.put("buffer", RecordingInput.of(ByteBuffer.wrap(bytes), name));
        ByteBuffer direct = ByteBuffer.allocateDirect(bytes.length + 8).position(5);
        doors.put("part of a direct buffer", RecordingInput.of(direct.put(bytes).flip().position(5), name));
        doors.put("stream", RecordingInput.of(new ByteArrayInputStream(bytes), name));
        doors.put("stream of single bytes", RecordingInput.of(reading(bytes, (left, asked) -> 1), name));
        doors.put("stream of sevens", RecordingInput.of(reading(bytes, (left, asked) -> Math.min(7, asked)), name));
        doors.put("channel", RecordingInput.of(Channels.newChannel(new ByteArrayInputStream(bytes)), name));
        return doors;
    }

    /** A stream that gives as many bytes at a time as it likes, and can't skip. */
    static InputStream reading(byte[] bytes, BiFunction<Integer, Integer, Integer> count) {
        return new InputStream() {
            private int at;

            @Override
            public int read() {
                throw new AssertionError("is read by blocks");
            }

            @Override
            public int read(byte[] target, int offset, int length) {
                int left = bytes.length - at;
                int given = left == 0 ? -1 : Math.min(left, count.apply(left, length));
                if (given > 0) {
                    System.arraycopy(bytes, at, target, offset, given);
                    at += given;
                }
                return given;
            }

            @Override
            public void close() {
                throw new AssertionError("is the caller's to close");
            }
        };
    }

    static byte[] padded(byte[] bytes, int before, int after) {
        byte[] all = new byte[before + bytes.length + after];
        Arrays.fill(all, (byte) 'x');
        System.arraycopy(bytes, 0, all, before, bytes.length);
        return all;
    }
}
