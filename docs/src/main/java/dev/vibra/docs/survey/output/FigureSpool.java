package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.Figure;
import java.io.EOFException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Keeps figures until the report is written: in one temporary file, which goes with the process however it ends. Several
 * threads may keep theirs at a time.
 */
final class FigureSpool implements AutoCloseable {
    private FileChannel channel; // null until there is a figure
    private long end;

    /**
     * A figure in the file.
     *
     * @param description what it shows
     * @param begin where its bytes begin
     * @param length how many there are
     */
    record Kept(String description, long begin, int length) {}

    synchronized Kept keep(Figure figure) {
        try {
            if (channel == null) {
                Path file = Files.createTempFile("vibra-figures", "");
                channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE,
                        StandardOpenOption.DELETE_ON_CLOSE);
            }
            byte[] png = figure.png();
            long begin = end;
            ByteBuffer bytes = ByteBuffer.wrap(png);
            while (bytes.hasRemaining()) {
                end += channel.write(bytes, end);
            }
            return new Kept(figure.description(), begin, png.length);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Returns the bytes of a PNG file. */
    synchronized byte[] png(Kept kept) {
        ByteBuffer bytes = ByteBuffer.allocate(kept.length);
        try {
            while (bytes.hasRemaining()) {
                if (channel.read(bytes, kept.begin + bytes.position()) < 0) {
                    throw new EOFException("the temporary file of the figures ends too soon");
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.array();
    }

    @Override
    public synchronized void close() throws IOException {
        if (channel != null) {
            channel.close();
        }
    }
}
