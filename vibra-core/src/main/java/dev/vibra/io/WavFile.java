package dev.vibra.io;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;

/** All channels of a WAV file, immutable. */
public final class WavFile {
    private static final int BYTES_AT_ONCE = 1 << 16;
    private static final int HEADER_BYTES = 58;
    private static final long HIGHEST_RATE = 0xFFFF_FFFFL;

    private final Path file;
    private final SampleFormat format;
    private final double sampleRateHertz;
    private final double[][] channels;

    private WavFile(Path file, WavHeader header, FileChannel channel) throws IOException {
        this.file = file;
        format = header.format();
        sampleRateHertz = header.sampleRateHertz();
        if (header.frames() > Integer.MAX_VALUE - 8) {
            throw new RecordingFileException(file, "a recording may have up to " + (Integer.MAX_VALUE - 8)
                    + " samples: " + header.frames());
        }
        channels = new double[header.channels()][(int) header.frames()];
        readSamples(header, channel);
    }

    /**
     * Reads a WAV file: whole numbers of 16, 24 or 32 bits, floating point of 32 or 64 bits, plain or extensible
     * header, also RF64.
     *
     * @param file file to read
     * @return its channels
     * @throws RecordingFileException if the file can't be read, is truncated, lies in its header or holds a sample that
     *     is not finite
     */
    public static WavFile read(Path file) {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            return new WavFile(file, WavHeader.read(file, channel), channel);
        } catch (IOException e) {
            throw new RecordingFileException(file, "can't be read: " + e, e);
        }
    }

    private void readSamples(WavHeader header, FileChannel channel) throws IOException {
        int frameSize = channels.length * format.bytesPerSample();
        int frames = channels[0].length;
        int atOnce = Math.max(1, Math.min(frames, BYTES_AT_ONCE / frameSize));
        ByteBuffer bytes = ByteBuffer.allocate(atOnce * frameSize).order(ByteOrder.LITTLE_ENDIAN);
        long at = header.dataOffset();
        for (int first = 0; first < frames; first += atOnce) {
            int count = Math.min(atOnce, frames - first);
            bytes.clear().limit(count * frameSize);
            while (bytes.hasRemaining()) {
                int read = channel.read(bytes, at);
                if (read < 0) {
                    throw new RecordingFileException(file, "byte " + at + ": file was cut while it was read");
                }
                at += read;
            }
            bytes.flip();
            unpack(bytes, first, count);
        }
    }

    private void unpack(ByteBuffer bytes, int first, int count) {
        for (int i = first; i < first + count; i++) {
            for (int c = 0; c < channels.length; c++) {
                double value = format.get(bytes);
                if (!(Math.abs(value) < Double.POSITIVE_INFINITY)) {
                    throw new RecordingFileException(file, "sample " + i + " of channel " + c + " must be finite: "
                            + value);
                }
                channels[c][i] = value;
            }
        }
    }

    /**
     * Returns the number of channels.
     *
     * @return channels, at least 1
     */
    public int channels() {
        return channels.length;
    }

    /**
     * Returns how the samples are stored.
     *
     * @return sample format
     */
    public SampleFormat format() {
        return format;
    }

    /**
     * Returns one channel of a file with any number of them.
     *
     * @param index number of the channel from 0
     * @param unit unit of the values after scaling
     * @param scale factor that turns a stored value into the unit, finite, not zero
     * @return the channel as a waveform
     * @throws IllegalArgumentException if there is no such channel or the scale is out of range
     */
    public Waveform anyChannel(int index, Unit unit, double scale) {
        if (index < 0 || index >= channels.length) {
            throw new IllegalArgumentException("channel must be from 0 to " + (channels.length - 1) + ": " + index);
        }
        Recordings.requireScale(scale);
        double[] scaled = channels[index].clone();
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] *= scale;
        }
        return Waveform.of(unit, sampleRateHertz, scaled);
    }

    /** Returns the only channel; a file with several is refused, since choosing one would be a guess. */
    Waveform channel(int index, Unit unit, double scale) {
        if (channels.length != 1) {
            throw new RecordingFileException(file, "a recording must have one channel: " + channels.length);
        }
        return anyChannel(index, unit, scale);
    }

    /**
     * Writes one channel, whole or not at all.
     *
     * @param wave recording; its sample rate must be a whole number of Hz
     * @param file file to write; an existing one is replaced
     * @param unit unit of the values before division by the scale
     * @param scale value in the unit that a stored 1 (full scale of whole numbers) stands for, finite, above zero
     * @param format how to store the samples
     * @throws RecordingFileException if the file can't be written, the sample rate isn't whole, or a sample lies beyond
     *     full scale
     * @throws IllegalArgumentException if the unit measures another quantity or the scale is out of range
     */
    public static void write(Waveform wave, Path file, Unit unit, double scale, SampleFormat format) {
        Require.positive("scale", scale, unit.symbol());
        if (wave.sampleRateHertz() != Math.rint(wave.sampleRateHertz()) || wave.sampleRateHertz() > HIGHEST_RATE) {
            throw new RecordingFileException(file, "sample rate of a WAV file must be a whole number of Hz up to "
                    + HIGHEST_RATE + ": " + wave.sampleRateHertz());
        }
        double[] values = wave.in(unit);
        long dataSize = (long) values.length * format.bytesPerSample();
        if (dataSize > Integer.MAX_VALUE - HEADER_BYTES - 1) {
            throw new RecordingFileException(file, "written files may hold up to 2 GiB of samples: " + dataSize
                    + " bytes");
        }
        ByteBuffer bytes = header(wave, format, (int) dataSize);
        for (int i = 0; i < values.length; i++) {
            double value = values[i] / scale;
            if (!format.holds(value)) {
                throw new RecordingFileException(file, String.format(Locale.ROOT, "sample %d must be within full scale,"
                        + " %s %s: %s", i, scale, unit, values[i]));
            }
            format.put(bytes, value);
        }
        if (bytes.hasRemaining()) {
            bytes.put((byte) 0); // Chunks are padded to an even length.
        }
        WholeFile.write(file, out -> out.write(bytes.array()));
    }

    private static ByteBuffer header(Waveform wave, SampleFormat format, int dataSize) {
        int padded = dataSize + (dataSize & 1);
        int frames = wave.length();
        int rate = (int) (long) wave.sampleRateHertz();
        ByteBuffer bytes = ByteBuffer.allocate(HEADER_BYTES + padded).order(ByteOrder.LITTLE_ENDIAN);
        bytes.put(name("RIFF")).putInt(HEADER_BYTES - 8 + padded).put(name("WAVE"));
        bytes.put(name("fmt ")).putInt(18).putShort((short) format.tag()).putShort((short) 1).putInt(rate);
        bytes.putInt(rate * format.bytesPerSample()).putShort((short) format.bytesPerSample());
        bytes.putShort((short) (8 * format.bytesPerSample())).putShort((short) 0);
        bytes.put(name("fact")).putInt(4).putInt(frames);
        return bytes.put(name("data")).putInt(dataSize);
    }

    private static byte[] name(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    /** Returns channels, format and rate. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%d channel(s) of %,d samples at %s Hz, %s", channels.length,
                channels[0].length,
                sampleRateHertz, format);
    }
}
