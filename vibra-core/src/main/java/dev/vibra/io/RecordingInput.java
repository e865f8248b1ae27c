package dev.vibra.io;

import dev.vibra.internal.Printable;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.SimultaneousRecording;
import dev.vibra.signal.Waveform;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.SelectableChannel;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Where a recording comes from and what is wanted of it: {@code RecordingInput.of(in, "fan.wav").withScale(4)
 * .read(Unit.G)}. By the rules at {@link Recordings}, with the same outcome through every door.
 *
 * <p>Defaults: scale 1, the only channel, the sample rate that the file tells, the whole recording.
 *
 * <p>The name begins each message, and its ending tells the kind of file; where it ends otherwise the first bytes do. A
 * path or a buffer can be read again and again. A stream or channel is read once, by blocks from where it stands, so
 * that bytes behind the recording may be taken too; it isn't closed. Memory is taken for data that came, whatever a
 * header promises. Immutable.
 */
public final class RecordingInput {
    private final ByteSource source;
    private final ReadRequest request;

    private RecordingInput(ByteSource source, ReadRequest request) {
        this.source = source;
        this.request = request;
    }

    /**
     * Reads from a file; it is opened by each reading and closed at its end.
     *
     * @param file file, no pipe or device
     * @return the input; the file isn't looked at yet
     */
    public static RecordingInput of(Path file) {
        return new RecordingInput(ByteSource.of(Objects.requireNonNull(file, "file")), ReadRequest.ALL);
    }

    /**
     * Reads from a stream, once.
     *
     * @param in stream; read from where it stands, never closed
     * @param name what to call it in messages, as in {@code fan.wav}
     * @return the input; nothing is read yet
     * @throws IllegalArgumentException if the name is blank
     */
    public static RecordingInput of(InputStream in, String name) {
        Objects.requireNonNull(in, "in");
        return new RecordingInput(ByteSource.of(in, Objects.requireNonNull(name, "name")), ReadRequest.ALL);
    }

    /**
     * Reads from a channel, once.
     *
     * @param channel channel in blocking mode; read from where it stands, never closed
     * @param name what to call it in messages, as in {@code fan.wav}
     * @return the input; nothing is read yet
     * @throws IllegalArgumentException if the name is blank or the channel isn't in blocking mode
     */
    public static RecordingInput of(ReadableByteChannel channel, String name) {
        if (Objects.requireNonNull(channel, "channel") instanceof SelectableChannel own && !own.isBlocking()) {
            throw new IllegalArgumentException("channel must be in blocking mode");
        }
        return new RecordingInput(ByteSource.of(channel, Objects.requireNonNull(name, "name")), ReadRequest.ALL);
    }

    /**
     * Reads from a buffer, as often as wished; {@code ByteBuffer.wrap(bytes)} makes one of an array.
     *
     * @param buffer bytes of the file, from its position to its limit, which are left as they are; not copied, so that
     *     the bytes must stay
     * @param name what to call it in messages, as in {@code fan.wav}
     * @return the input
     * @throws IllegalArgumentException if the name is blank
     */
    public static RecordingInput of(ByteBuffer buffer, String name) {
        Objects.requireNonNull(buffer, "buffer");
        return new RecordingInput(ByteSource.of(buffer, Objects.requireNonNull(name, "name")), ReadRequest.ALL);
    }

    /**
     * Sets the factor that turns a value of the file into the unit.
     *
     * @param scale factor, finite, not zero; whole numbers of a WAV file count as fractions of full scale, -1 to 1
     * @return the changed input
     * @throws IllegalArgumentException if the factor is out of range
     */
    public RecordingInput withScale(double scale) {
        return new RecordingInput(source, request.withScale(scale));
    }

    /**
     * Chooses one channel of several.
     *
     * @param channel number of the channel, from 1; in text that of the column behind the time
     * @return the changed input
     * @throws IllegalArgumentException if the number is below 1
     */
    public RecordingInput withChannel(int channel) {
        return new RecordingInput(source, request.withChannel(channel));
    }

    /**
     * Gives the sample rate of text that holds one column of values and no time.
     *
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @return the changed input
     * @throws IllegalArgumentException if the rate is out of range
     */
    public RecordingInput withSampleRate(double sampleRateHertz) {
        return new RecordingInput(source, request.withSampleRate(sampleRateHertz));
    }

    /**
     * Chooses a range. The rest takes no memory: a WAV file is read from there on, text is skipped line by line, after
     * a first walk through all lines if it holds times, as its sample rate stands in the last one. Text with times out
     * of a stream or channel is held in memory whole.
     *
     * @param firstSample number of the first sample, from 0
     * @param length number of samples, at least 1
     * @return the changed input
     * @throws IllegalArgumentException if a number is out of range
     */
    public RecordingInput withRange(long firstSample, int length) {
        return new RecordingInput(source, request.withRange(firstSample, length));
    }

    /** An open recording. */
    private record Opened(ByteReader in, Frames frames) implements Closeable {
        RecordedChannel existing(RecordedChannel channel) {
            if (channel.number() > frames.channels()) {
                throw in.problem("channel must be from 1 to " + frames.channels() + ": " + channel.number());
            }
            return channel;
        }

        /** The one channel that is wanted. */
        RecordedChannel channel(ReadRequest request, Unit unit) {
            return existing(request.channelOf(in, frames.channels(), unit));
        }

        @Override
        public void close() throws IOException {
            frames.close();
        }
    }

    /**
     * Reads the recording.
     *
     * @param unit unit of the values after scaling
     * @return the samples, starting where the range does
     * @throws RecordingFileException if it can't be read, is malformed, has no such channel or range, or has several
     *     channels of which none was chosen
     */
    public Waveform read(Unit unit) {
        Objects.requireNonNull(unit, "unit");
        try (Opened open = opened(request)) {
            return FrameCollector.collect(open.in(), open.frames(), request, open.channel(request, unit)).get(0);
        } catch (IOException e) {
            throw source.unreadable(e);
        }
    }

    /**
     * Reads all channels in one pass; only the chosen one, if one was.
     *
     * @param unit unit of all values after scaling
     * @return the channels
     * @throws RecordingFileException if the recording can't be read, is malformed or has no such channel or range
     */
    public SimultaneousRecording readChannels(Unit unit) {
        Objects.requireNonNull(unit, "unit");
        try (Opened open = opened(request)) {
            boolean isOne = request.channel().isPresent();
            RecordedChannel[] wanted = new RecordedChannel[isOne ? 1 : open.frames().channels()];
            for (int i = 0; i < wanted.length; i++) {
                wanted[i] = isOne ? open.channel(request, unit) : new RecordedChannel(i + 1, unit, request.scale());
            }
            return together(open, wanted);
        } catch (IOException e) {
            throw source.unreadable(e);
        }
    }

    /**
     * Reads some channels in one pass, each in its unit.
     *
     * @param channels channels, at least one, in the order wished; their scales stand in place of that of this input
     * @return the channels
     * @throws RecordingFileException if the recording can't be read, is malformed or has no such channel or range
     * @throws IllegalArgumentException if no channel is named
     */
    public SimultaneousRecording readChannels(RecordedChannel... channels) {
        RecordedChannel[] wanted = Objects.requireNonNull(channels, "channels").clone();
        if (wanted.length == 0) {
            throw new IllegalArgumentException("channels must be one or more: 0");
        }
        for (RecordedChannel channel : wanted) {
            Objects.requireNonNull(channel, "channel");
        }
        try (Opened open = opened(request)) {
            for (RecordedChannel channel : wanted) {
                open.existing(channel);
            }
            return together(open, wanted);
        } catch (IOException e) {
            throw source.unreadable(e);
        }
    }

    private SimultaneousRecording together(Opened open, RecordedChannel... wanted) throws IOException {
        List<Waveform> channels = FrameCollector.collect(open.in(), open.frames(), request, wanted);
        return ChannelNames.together(wanted, open.frames().names(), channels);
    }

    /**
     * Opens the recording for reading block by block, for meters: whatever its length, it takes no more memory than a
     * block. Text with times is walked through twice, and held in memory if it comes out of a stream or channel.
     *
     * @param unit unit of the values after scaling
     * @return the reader, to be closed; it reads the range only, if one was chosen
     * @throws RecordingFileException if the recording can't be read, its header is malformed, it has no such channel or
     *     range, or has several channels of which none was chosen
     */
    public RecordingReader open(Unit unit) {
        Objects.requireNonNull(unit, "unit");
        try {
            Opened open = opened(request.handedOnInPieces());
            try {
                return new RecordingReader(open.in(), open.frames(), request, open.channel(request, unit));
            } catch (IOException | RuntimeException | Error e) {
                open.close();
                throw e;
            }
        } catch (IOException e) {
            throw source.unreadable(e);
        }
    }

    /**
     * Tells how the samples are stored. A stream or channel is read to the end of the header.
     *
     * @return sample format; empty if as text
     * @throws RecordingFileException if the file can't be read or its header is malformed
     */
    public Optional<SampleFormat> sampleFormat() {
        try (ByteReader in = ByteReader.of(source)) {
            return Recordings.formatOf(in).sampleFormat(in);
        } catch (IOException e) {
            throw source.unreadable(e);
        }
    }

    /** What is opened stays open only if nothing fails. */
    private Opened opened(ReadRequest wanted) throws IOException {
        ByteReader in = ByteReader.of(source);
        try {
            return new Opened(in, Recordings.formatOf(in).open(in, wanted));
        } catch (IOException | RuntimeException | Error e) {
            in.close();
            throw e;
        }
    }

    /** Returns the name, and what was chosen. */
    @Override
    public String toString() {
        return Printable.of(source.name())
                + (request.channel().isPresent() ? ", channel " + request.channel().getAsInt() : "")
                + (request.scale() == 1 ? "" : ", times " + request.scale())
                + (request.sampleRateHertz().isPresent() ? ", at " + request.sampleRateHertz().getAsDouble() + " Hz"
                : "")
                + (request.length().isPresent() ? ", " + request.length().getAsInt() + " samples from "
                + request.first() : "");
    }
}
