package dev.vibra.io;

import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Recordings as text, by the rules at {@link Recordings}. */
final class CsvFormat implements RecordingFormat {
    @Override
    public List<String> endings() {
        return List.of(".csv", ".txt");
    }

    /** Text of an encoding that isn't read is one too: the message says so. */
    @Override
    public boolean begins(byte[] head) {
        return TextEncoding.isPlain(head) || TextEncoding.wide(head).isPresent();
    }

    @Override
    public Optional<SampleFormat> sampleFormat(ByteReader in) {
        return Optional.empty();
    }

    /** A long file is walked through twice where that is possible, and the whole one held in memory where it isn't. */
    @Override
    public Frames open(ByteReader in, ReadRequest request) throws IOException {
        if (request.sampleRateHertz().isPresent()) {
            return new ColumnRows(in, request.sampleRateHertz().getAsDouble());
        }
        if (!request.inPieces() || !in.isRepeatable()) {
            return new CsvTable(in);
        }
        TimeAxis axis = TimedRows.axisOf(in);
        in.close();
        ByteReader again = in.again();
        try {
            return new TimedRows(again, axis);
        } catch (IOException | RuntimeException e) {
            again.close();
            throw e;
        }
    }

    @Override
    public void write(Waveform wave, Path file, Unit unit) {
        double[] values = wave.in(unit);
        WholeFile.write(file, out -> {
            Writer text = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
            text.append("time [s],").append(wave.quantity().toString()).append(" [").append(unit.plainSymbol())
                    .append("]\n");
            for (int i = 0; i < values.length; i++) {
                text.append(Double.toString(wave.startSeconds() + i / wave.sampleRateHertz())).append(',')
                        .append(Double.toString(values[i])).append('\n');
            }
            text.flush();
        });
    }
}
