package dev.vibra.io;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;

/** Writes WAV files with a chosen sample format; {@link Recordings} reads them. */
public final class WavFile {
    private static final int HEADER_BYTES = 58;
    private static final long HIGHEST_RATE = 0xFFFF_FFFFL;

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
}
