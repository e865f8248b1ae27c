package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.PlotData;
import java.io.EOFException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
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

    /** Points of an outline, which looks the same as all values as long as nobody zooms in. */
    static final int OUTLINE = 2000;

    /**
     * A figure in the file.
     *
     * @param description what it shows
     * @param still where its picture lies, as SVG
     * @param whole where all values behind it lie, as JSON; nothing of no length if it is only looked at
     * @param outline where the outline of these values lies
     */
    record Kept(String description, Span still, Span whole, Span outline) {
        boolean isExplorable() {
            return whole.length > 0;
        }
    }

    /** Bytes of the file. */
    record Span(long begin, int length) {}

    Kept keep(Explorable figure) {
        Span none = new Span(0, 0);
        return new Kept(figure.still().description(), write(figure.still().svg()),
                figure.data().map(data -> write(json(data))).orElse(none),
                figure.data().map(data -> write(json(data.outline(OUTLINE)))).orElse(none));
    }

    private static String json(PlotData data) {
        StringBuilder text = new StringBuilder();
        try {
            data.writeJson(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private synchronized Span write(String text) {
        try {
            if (channel == null) {
                Path file = Files.createTempFile("vibra-figures", "");
                channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE,
                        StandardOpenOption.DELETE_ON_CLOSE);
            }
            ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
            Span span = new Span(end, bytes.remaining());
            while (bytes.hasRemaining()) {
                end += channel.write(bytes, end);
            }
            return span;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Returns what was written. */
    synchronized String read(Span span) {
        ByteBuffer bytes = ByteBuffer.allocate(span.length);
        try {
            while (bytes.hasRemaining()) {
                if (channel.read(bytes, span.begin + bytes.position()) < 0) {
                    throw new EOFException("the temporary file of the figures ends too soon");
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new String(bytes.array(), StandardCharsets.UTF_8);
    }

    @Override
    public synchronized void close() throws IOException {
        if (channel != null) {
            channel.close();
        }
    }
}
