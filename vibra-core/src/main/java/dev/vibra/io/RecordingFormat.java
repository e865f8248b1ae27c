package dev.vibra.io;

import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** One kind of recording file: a new one is a class of its own and a row in {@link Recordings}. */
interface RecordingFormat {
    /** Endings of the names of such files, in lower case with their point. */
    List<String> endings();

    /** Tells from its first bytes, up to {@link Recordings#HEAD_BYTES}, whether a file with another ending is one. */
    boolean begins(byte[] head);

    /** How the samples of a file are stored; empty if as text. */
    Optional<SampleFormat> sampleFormat(ByteReader in) throws IOException;

    /** Opens a file that stands at its beginning; whoever opened the bytes closes them, if this fails. */
    Frames open(ByteReader in, ReadRequest request) throws IOException;

    /** Writes one channel so that every digit is kept, whole or not at all. */
    void write(Waveform wave, Path file, Unit unit);
}
