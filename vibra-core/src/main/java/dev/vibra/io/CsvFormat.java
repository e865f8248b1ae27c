package dev.vibra.io;

import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.io.BufferedWriter;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Recordings as text, by the rules at {@link Recordings}. */
final class CsvFormat implements RecordingFormat {
    private static final double TOLERATED_STEP = 0.25;

    @Override
    public List<String> endings() {
        return List.of(".csv", ".txt");
    }

    /** Text: no other control characters than those that end lines and separate columns. */
    @Override
    public boolean begins(byte[] head) {
        for (byte b : head) {
            if (b >= 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r') {
                return false;
            }
        }
        return true;
    }

    @Override
    public Optional<SampleFormat> sampleFormat(Path file) {
        return Optional.empty();
    }

    @Override
    public Waveform read(Path file, ReadRequest request) {
        request.channelOf(file, 1);
        if (request.sampleRateHertz().isPresent()) {
            double[] values = NumberTable.read(file, 1).column(0);
            return request.waveform(values, request.sampleRateHertz().getAsDouble(), 0);
        }
        NumberTable table = NumberTable.read(file, 2);
        double[] time = table.column(0);
        return request.waveform(table.column(1), sampleRate(file, time, table), time[0]);
    }

    private static double sampleRate(Path file, double[] time, NumberTable table) {
        int last = time.length - 1;
        double step = last < 1 ? 0 : (time[last] - time[0]) / last;
        if (!(step > 0)) {
            throw new RecordingFileException(file, "time must rise over at least two lines: from " + time[0] + " s to "
                    + time[Math.max(last, 0)] + " s in " + time.length + " line(s)");
        }
        for (int i = 1; i < last; i++) {
            double place = time[0] + i * step;
            if (!(Math.abs(time[i] - place) <= TOLERATED_STEP * step)) {
                throw new RecordingFileException(file, "line " + table.lineOf(i)
                        + ": time must rise evenly, here to about "
                        + place + " s: " + time[i]);
            }
        }
        return roundedRate(1 / step, last);
    }

    /** Printed times are rounded: a whole number of Hz that puts the last sample within a tenth of a step is meant. */
    private static double roundedRate(double rate, int steps) {
        double whole = Math.rint(rate);
        double relative = Math.abs(rate - whole) / rate;
        return relative <= 1e-5 && relative * steps <= 0.1 ? whole : rate;
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
