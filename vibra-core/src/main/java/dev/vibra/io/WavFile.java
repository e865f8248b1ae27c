package dev.vibra.io;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.SimultaneousRecording;
import dev.vibra.signal.Waveform;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/** Writes WAV files with a chosen sample format; {@link Recordings} reads them. */
public final class WavFile {
    private static final int HEADER_BYTES = 58;
    private static final long HIGHEST_RATE = 0xFFFF_FFFFL;
    private static final int LARGEST_FRAME = 0xFFFF;

    private WavFile() {}

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
        write(SimultaneousRecording.of(List.of(Objects.requireNonNull(wave, "wave"))), file, unit, scale, format);
    }

    /**
     * Writes several channels of one quantity, whole or not at all. Their names are not kept.
     *
     * @param recording channels; their sample rate must be a whole number of Hz
     * @param file file to write; an existing one is replaced
     * @param unit unit of the values before division by the scale
     * @param scale value in the unit that a stored 1 (full scale of whole numbers) stands for, finite, above zero
     * @param format how to store the samples
     * @throws RecordingFileException if the file can't be written, the sample rate isn't whole, a sample lies beyond
     *     full scale, or a sample of all channels takes more than 65535 bytes
     * @throws IllegalArgumentException if the unit measures another quantity or the scale is out of range
     */
    public static void write(SimultaneousRecording recording, Path file, Unit unit, double scale,
            SampleFormat format) {
        Objects.requireNonNull(recording, "recording");
        Objects.requireNonNull(file, "file");
        Objects.requireNonNull(format, "format");
        Require.positive("scale", scale, Objects.requireNonNull(unit, "unit").symbol());
        double[][] values = recording.channels().stream().map(channel -> channel.in(unit)).toArray(double[][]::new);
        checkSize(recording, file, format);
        ByteBuffer bytes = header(recording, format);
        for (int i = 0; i < recording.length(); i++) {
            for (double[] channel : values) {
                if (!format.holds(channel[i] / scale)) {
                    throw new RecordingFileException(file, String.format(Locale.ROOT, "sample %d must be within full"
                            + " scale, %s %s: %s", i, scale, unit, channel[i]));
                }
                format.put(bytes, channel[i] / scale);
            }
        }
        WholeFile.write(file, out -> out.write(bytes.array())); // A chunk of odd length has a byte of 0 behind it.
    }

    private static void checkSize(SimultaneousRecording recording, Path file, SampleFormat format) {
        double rate = recording.sampleRateHertz();
        if (rate != Math.rint(rate) || rate > HIGHEST_RATE) {
            throw new RecordingFileException(file, "sample rate of a WAV file must be a whole number of Hz up to "
                    + HIGHEST_RATE + ": " + rate);
        }
        int frame = recording.channels().size() * format.bytesPerSample();
        if (frame > LARGEST_FRAME) {
            throw new RecordingFileException(file, "a sample of all channels may take up to " + LARGEST_FRAME
                    + " bytes: " + frame);
        }
        long dataSize = (long) recording.length() * frame;
        if (dataSize > Integer.MAX_VALUE - HEADER_BYTES - 1) {
            throw new RecordingFileException(file, "written files may hold up to 2 GiB of samples: " + dataSize
                    + " bytes");
        }
    }

    private static ByteBuffer header(SimultaneousRecording recording, SampleFormat format) {
        int channels = recording.channels().size();
        int frame = channels * format.bytesPerSample();
        int dataSize = recording.length() * frame;
        int padded = dataSize + (dataSize & 1);
        int rate = (int) (long) recording.sampleRateHertz();
        ByteBuffer bytes = ByteBuffer.allocate(HEADER_BYTES + padded).order(ByteOrder.LITTLE_ENDIAN);
        bytes.put(name("RIFF")).putInt(HEADER_BYTES - 8 + padded).put(name("WAVE"));
        bytes.put(name("fmt ")).putInt(18).putShort((short) format.tag()).putShort((short) channels).putInt(rate);
        bytes.putInt(rate * frame).putShort((short) frame);
        bytes.putShort((short) (8 * format.bytesPerSample())).putShort((short) 0);
        bytes.put(name("fact")).putInt(4).putInt(recording.length());
        return bytes.put(name("data")).putInt(dataSize);
    }

    private static byte[] name(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }
}
