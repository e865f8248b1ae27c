package dev.vibra.io;

import java.io.Closeable;
import java.io.IOException;
import java.util.List;
import java.util.OptionalLong;

/** An open recording, read frame after frame: one value of each channel. */
interface Frames extends Closeable {
    int channels();

    /** What the file calls its channels, one name each; empty if it doesn't. */
    List<String> names();

    double sampleRateHertz();

    double startSeconds();

    /** Number of frames in all, if it is known before the last one. */
    OptionalLong length();

    /** As many frames are known to be there: a reason to take memory for them at once. */
    long assuredLength();

    /**
     * Reads up to a number of frames, fewer only at the end.
     *
     * @param wanted channels, which exist
     * @param out receives the values in SI units, one array for each channel wanted
     */
    int read(RecordedChannel[] wanted, double[][] out, int offset, int count) throws IOException;

    /** Leaves out up to a number of frames, fewer only at the end, and tells how many. */
    long skip(long count) throws IOException;
}
