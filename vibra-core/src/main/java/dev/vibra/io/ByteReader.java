package dev.vibra.io;

import dev.vibra.internal.Printable;
import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.OptionalLong;

/** Reads a source by blocks of one size, so that no number in it decides how much memory is taken. */
final class ByteReader implements Closeable {
    /** As many bytes can be looked at together. */
    static final int BLOCK = 1 << 16;

    private final ByteSource source;
    private final Feed feed;
    private final ByteBuffer block = ByteBuffer.allocate(BLOCK).order(ByteOrder.LITTLE_ENDIAN).limit(0);
    private long blockStart;

    private ByteReader(ByteSource source, Feed feed) {
        this.source = source;
        this.feed = feed;
    }

    static ByteReader of(ByteSource source) throws IOException {
        return new ByteReader(source, source.open());
    }

    String name() {
        return source.name();
    }

    /** The name without any character that isn't seen. */
    String shownName() {
        return Printable.of(name());
    }

    /** Tells whether the source can be read once more from its beginning. */
    boolean isRepeatable() {
        return source.isRepeatable();
    }

    /** Opens the source once more. */
    ByteReader again() throws IOException {
        return of(source);
    }

    /** Number of bytes before the next one. */
    long position() {
        return blockStart + block.position();
    }

    /** Number of bytes from the next one to the end, if that is known before. */
    OptionalLong remaining() throws IOException {
        OptionalLong size = feed.size();
        return size.isEmpty() ? size : OptionalLong.of(size.getAsLong() - position());
    }

    /** Makes bytes ready, up to {@link #BLOCK}, and tells how many of those wanted there are: fewer only at the end. */
    int ready(int wanted) throws IOException {
        if (block.remaining() < wanted) {
            blockStart += block.position();
            block.compact();
            try {
                boolean more = true;
                while (more && block.position() < wanted) {
                    int read = feed.read(block.array(), block.position(), block.remaining());
                    more = read > 0;
                    block.position(block.position() + Math.max(read, 0));
                }
            } finally {
                block.flip();
            }
        }
        return Math.min(wanted, block.remaining());
    }

    /** The bytes made ready, in little-endian order from the position on; it is moved by whoever takes some. */
    ByteBuffer bytes() {
        return block;
    }

    /** Copies the first bytes without taking them; fewer only at the end. */
    byte[] head(int wanted) throws IOException {
        int count = ready(wanted);
        return Arrays.copyOfRange(block.array(), block.position(), block.position() + count);
    }

    /** Leaves out bytes and tells how many; fewer only at the end. */
    long skip(long count) throws IOException {
        long left = count;
        while (left > 0) {
            if (!block.hasRemaining()) {
                long skipped = feed.skip(left);
                blockStart += skipped;
                left -= skipped;
            }
            if (left > 0 && ready(1) == 0) {
                return count - left;
            }
            int taken = (int) Math.min(left, block.remaining());
            block.position(block.position() + taken);
            left -= taken;
        }
        return count;
    }

    /** What an input or output error means. */
    RecordingFileException unreadable(IOException error) {
        return source.unreadable(error);
    }

    RecordingFileException problem(String reason) {
        return new RecordingFileException(name(), reason);
    }

    RecordingFileException problem(long at, String reason) {
        return problem("byte " + at + ": " + reason);
    }

    @Override
    public void close() throws IOException {
        feed.close();
    }
}
