package dev.vibra.io;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.SeekableByteChannel;
import java.util.OptionalLong;

/** Bytes in their order, from wherever they come. */
interface Feed extends Closeable {
    /** Reads up to a number of bytes above zero; at least one, or -1 at the end. */
    int read(byte[] target, int offset, int length) throws IOException;

    /** Number of bytes from the beginning to the end, if that is known before. */
    default OptionalLong size() throws IOException {
        return OptionalLong.empty();
    }

    /** Leaves out up to a number of bytes without reading them, and tells how many; 0 if it can't. */
    default long skip(long count) throws IOException {
        return 0;
    }

    /** Closes what was opened here; what the caller opened is the caller's. */
    @Override
    default void close() throws IOException {}

    /** A stream of the caller's; what it says about itself is not trusted. */
    static Feed of(InputStream in) {
        return (target, offset, length) -> checked(in.read(target, offset, length), length);
    }

    /** A channel of the caller's. */
    static Feed of(ReadableByteChannel channel) {
        return (target, offset, length) -> checked(channel.read(ByteBuffer.wrap(target, offset, length)), length);
    }

    private static int checked(int count, int length) throws IOException {
        if (count == 0 || count < -1 || count > length) {
            throw new IOException("its source gave " + count + " bytes where 1 to " + length + " were asked for");
        }
        return count;
    }

    /** A file that is opened here. */
    static Feed ofFile(InputStream in, long size) {
        return new Feed() {
            @Override
            public int read(byte[] target, int offset, int length) throws IOException {
                return in.read(target, offset, length);
            }

            @Override
            public OptionalLong size() {
                return OptionalLong.of(size);
            }

            @Override
            public long skip(long count) throws IOException {
                return in.skip(count);
            }

            @Override
            public void close() throws IOException {
                in.close();
            }
        };
    }

    /** A channel of the caller's, from where it stands. */
    static Feed ofSeekable(SeekableByteChannel channel) throws IOException {
        Feed forward = of((ReadableByteChannel) channel);
        OptionalLong size = OptionalLong.of(Math.max(0, channel.size() - channel.position()));
        return new Feed() {
            @Override
            public int read(byte[] target, int offset, int length) throws IOException {
                return forward.read(target, offset, length);
            }

            @Override
            public OptionalLong size() {
                return size;
            }

            @Override
            public long skip(long count) throws IOException {
                long skipped = Math.max(0, Math.min(count, channel.size() - channel.position()));
                channel.position(channel.position() + skipped);
                return skipped;
            }
        };
    }

    /** Bytes in memory; the buffer is owned. */
    static Feed ofOwned(ByteBuffer buffer) {
        OptionalLong size = OptionalLong.of(buffer.remaining());
        return new Feed() {
            @Override
            public int read(byte[] target, int offset, int length) {
                int count = Math.min(length, buffer.remaining());
                buffer.get(target, offset, count);
                return count == 0 ? -1 : count;
            }

            @Override
            public OptionalLong size() {
                return size;
            }

            @Override
            public long skip(long count) {
                int skipped = (int) Math.min(count, buffer.remaining());
                buffer.position(buffer.position() + skipped);
                return skipped;
            }
        };
    }
}
