package dev.vibra.docs.survey.output;

import java.io.IOException;
import java.io.OutputStream;

/** What is written into a file, made while it is written, so that no file need be held in memory. */
@FunctionalInterface
public interface Content {
    /**
     * Writes all of it.
     *
     * @param out where to; it is not closed
     * @throws IOException if the stream takes no more
     */
    void writeTo(OutputStream out) throws IOException;
}
