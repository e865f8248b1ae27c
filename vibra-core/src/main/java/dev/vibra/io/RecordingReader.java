package dev.vibra.io;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import java.io.IOException;
import java.util.Objects;
import java.util.OptionalLong;

/**
 * Reads one channel of a recording block by block, as meters take it, whatever its length. Made by {@link
 * RecordingInput#open}.
 *
 * <p>Holds state: not thread-safe; to be closed. Reading a WAV file allocates nothing.
 */
public final class RecordingReader implements AutoCloseable {
    private final ByteReader in;
    private final Frames frames;
    private final RecordedChannel[] channel;
    private final double[][] target = new double[1][];
    private final long end;
    private long position;
    private boolean isClosed;
    private RecordingFileException failure;

    RecordingReader(ByteReader in, Frames frames, ReadRequest request, RecordedChannel channel) throws IOException {
        this.in = in;
        this.frames = frames;
        this.channel = new RecordedChannel[] {channel};
        FrameCollector.toFirst(in, frames, request);
        position = request.first();
        end = request.length().isPresent() ? position + request.length().getAsInt() : Long.MAX_VALUE;
    }

    /**
     * Returns what the samples measure.
     *
     * @return the quantity of the unit that the recording was opened with
     */
    public Quantity quantity() {
        return channel[0].unit().quantity();
    }

    /**
     * Returns the sample rate.
     *
     * @return samples per second
     */
    public double sampleRateHertz() {
        return frames.sampleRateHertz();
    }

    /**
     * Returns the time of the next sample.
     *
     * @return time in s, by the clock of the file; a WAV file begins at 0
     */
    public double seconds() {
        return frames.startSeconds() + position / frames.sampleRateHertz();
    }

    /**
     * Returns the number of the next sample: where the next block belongs.
     *
     * @return number from 0, counted from the first sample of the recording, not of a range
     */
    public long position() {
        return position;
    }

    /**
     * Returns the number of samples of the recording.
     *
     * @return number of samples of the whole recording, not of a range; empty if only its end will tell
     */
    public OptionalLong length() {
        return frames.length();
    }

    /**
     * Reads the next samples.
     *
     * @param out receives them in the SI unit of the quantity
     * @param offset index of the first one
     * @param length number of samples wanted, at least 1
     * @return number of samples read, fewer than wanted only at the end, 0 only behind it
     * @throws RecordingFileException if the file ends early or holds something else than finite numbers; every later
     *     call fails in the same way
     * @throws IllegalArgumentException if the range leaves the array or is empty
     * @throws IllegalStateException if the reader was closed
     */
    public int read(double[] out, int offset, int length) {
        Require.range("out", offset, Require.atLeast("length", length, 1),
                Objects.requireNonNull(out, "out").length);
        requireUsable();
        target[0] = out;
        try {
            int read = frames.read(channel, target, offset, (int) Math.min(length, end - position));
            position += read;
            return read;
        } catch (IOException e) {
            throw failed(in.unreadable(e));
        } catch (RecordingFileException e) {
            throw failed(e);
        }
    }

    /**
     * Leaves out samples.
     *
     * @param count number of samples, zero or more
     * @return number of samples left out, fewer than wanted only at the end
     * @throws RecordingFileException if the file ends early or is malformed there
     * @throws IllegalArgumentException if the number is negative
     * @throws IllegalStateException if the reader was closed
     */
    public long skip(long count) {
        if (count < 0) {
            throw new IllegalArgumentException("count must be at least 0: " + count);
        }
        requireUsable();
        try {
            long skipped = frames.skip(Math.min(count, end - position));
            position += skipped;
            return skipped;
        } catch (IOException e) {
            throw failed(in.unreadable(e));
        } catch (RecordingFileException e) {
            throw failed(e);
        }
    }

    private void requireUsable() {
        if (isClosed) {
            throw new IllegalStateException("reader is closed");
        }
        if (failure != null) {
            throw failure;
        }
    }

    private RecordingFileException failed(RecordingFileException e) {
        failure = e;
        return e;
    }

    /**
     * Closes the file, if a path was given; what the caller opened stays open. Closing twice does nothing.
     *
     * @throws RecordingFileException if the file can't be closed
     */
    @Override
    public void close() {
        isClosed = true;
        try {
            frames.close();
        } catch (IOException e) {
            throw in.unreadable(e);
        }
    }

    /** Returns name, rate and position, as in {@code fan.wav at sample 51200 of 102400, 25600.0 Hz, acceleration}. */
    @Override
    public String toString() {
        return in.shownName() + " at sample " + position
                + (length().isPresent() ? " of " + length().getAsLong() : "") + ", " + sampleRateHertz() + " Hz, "
                + quantity();
    }
}
