package dev.vibra.io;

import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** RIFF and RF64 files, by the rules at {@link Recordings}. */
final class WavFormat implements RecordingFormat {
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
    public Optional<SampleFormat> sampleFormat(ByteReader in) throws IOException {
        return Optional.of(WavHeader.read(in).format());
    }

    @Override
    public Frames open(ByteReader in, ReadRequest request) throws IOException {
        if (request.sampleRateHertz().isPresent()) {
            throw in.problem("a sample rate may be given for CSV only; a WAV file tells its own");
        }
        return new WavFrames(in);
    }

    @Override
    public void write(Waveform wave, Path file, Unit unit) {
        WavFile.write(wave, file, unit, 1, SampleFormat.FLOAT_64);
    }
}
