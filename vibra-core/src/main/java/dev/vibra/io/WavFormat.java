package dev.vibra.io;

import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;

/** RIFF and RF64 files, by the rules at {@link Recordings}. */
final class WavFormat implements RecordingFormat {
    private static final int BYTES_AT_ONCE = 1 << 16;

    @Override
    public List<String> endings() {
        return List.of(".wav");
    }

    @Override
    public boolean begins(byte[] head) {
        String text = new String(head, StandardCharsets.ISO_8859_1);
        return (text.startsWith("RIFF") || text.startsWith("RF64")) && text.startsWith("WAVE", 8);
    }

    @Override
    public Optional<SampleFormat> sampleFormat(Path file) {
        return Optional.of(read(file, channel -> WavHeader.read(file, channel).format()));
    }

    @Override
    public Waveform read(Path file, ReadRequest request) {
        if (request.sampleRateHertz().isPresent()) {
            throw new RecordingFileException(file, "a sample rate may be given for CSV only; a WAV file tells its own");
        }
        return read(file, channel -> {
            WavHeader header = WavHeader.read(file, channel);
            int wanted = request.channelOf(file, header.channels());
            return request.waveform(samples(file, header, channel, wanted), header.sampleRateHertz(), 0);
        });
    }

    @Override
    public void write(Waveform wave, Path file, Unit unit) {
        WavFile.write(wave, file, unit, 1, SampleFormat.FLOAT_64);
    }

    /** Makes something of an open file. */
    private interface Reading<T> {
        T of(FileChannel channel) throws IOException;
    }

    private static <T> T read(Path file, Reading<T> reading) {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            return reading.of(channel);
        } catch (IOException e) {
            throw new RecordingFileException(file, "can't be read: " + e, e);
        }
    }

    private static double[] samples(Path file, WavHeader header, FileChannel channel, int wanted) throws IOException {
        if (header.frames() > Integer.MAX_VALUE - 8) {
            throw new RecordingFileException(file, "a recording may have up to " + (Integer.MAX_VALUE - 8)
                    + " samples: " + header.frames());
        }
        double[] samples = new double[(int) header.frames()];
        int frameSize = header.channels() * header.format().bytesPerSample();
        int atOnce = Math.max(1, Math.min(samples.length, BYTES_AT_ONCE / frameSize));
        ByteBuffer bytes = ByteBuffer.allocate(atOnce * frameSize).order(ByteOrder.LITTLE_ENDIAN);
        long at = header.dataOffset();
        for (int first = 0; first < samples.length; first += atOnce) {
            int count = Math.min(atOnce, samples.length - first);
            bytes.clear().limit(count * frameSize);
            while (bytes.hasRemaining()) {
                int read = channel.read(bytes, at);
                if (read < 0) {
                    throw new RecordingFileException(file, "byte " + at + ": file was cut while it was read");
                }
                at += read;
            }
            for (int i = 0; i < count; i++) {
                bytes.position(i * frameSize + wanted * header.format().bytesPerSample());
                samples[first + i] = finite(file, header.format().get(bytes), first + i, wanted);
            }
        }
        return samples;
    }

    private static double finite(Path file, double value, int sample, int channel) {
        if (!(Math.abs(value) < Double.POSITIVE_INFINITY)) {
            throw new RecordingFileException(file, "sample " + sample + " of channel " + (channel + 1)
                    + " must be finite: " + value);
        }
        return value;
    }
}
