package dev.vibra.benchmarks.work;

import dev.vibra.io.Recordings;
import dev.vibra.io.SampleFormat;
import dev.vibra.io.WavFile;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Files of one recording in several formats, and their readers. */
public final class Reading {
    private static final double FULL_SCALE = 50;
    private static final int HEADER_BYTES = 58;

    private final Path folder;

    /** Takes the folder that holds, or is going to hold, the files. */
    public Reading(Path folder) {
        this.folder = folder;
    }

    /** Writes the files, text with as many digits as acquisition programs give. */
    public void write(Waveform wave) throws IOException {
        text("record.csv", "time [s],acceleration [m/s2]", wave.length(), i -> String.format(Locale.ROOT, "%.7f,%.5f",
                i / wave.sampleRateHertz(), wave.at(i)));
        text("column.csv", "acceleration [m/s2]", wave.length(), i -> String.format(Locale.ROOT, "%.5f", wave.at(i)));
        Recordings.write(wave, folder.resolve("all-digits.csv"), Unit.M_PER_S2);
        WavFile.write(wave, folder.resolve("record-16.wav"), Unit.M_PER_S2, FULL_SCALE, SampleFormat.INTEGER_16);
        WavFile.write(wave, folder.resolve("record-64.wav"), Unit.M_PER_S2, 1, SampleFormat.FLOAT_64);
    }

    private void text(String name, String head, int rows, IntFunction<String> row) throws IOException {
        Files.writeString(folder.resolve(name), IntStream.range(0, rows).mapToObj(row)
                .collect(Collectors.joining("\n", head + "\n", "\n")));
    }

    /** Time and value. */
    public Waveform csv() {
        return Recordings.read(folder.resolve("record.csv"), Unit.M_PER_S2);
    }

    /** Time and value with all digits that a number has. */
    public Waveform csvAllDigits() {
        return Recordings.read(folder.resolve("all-digits.csv"), Unit.M_PER_S2);
    }

    /** Values only. */
    public Waveform csvColumn() {
        return Recordings.readColumn(folder.resolve("column.csv"), Unit.M_PER_S2, 1, RouteRecord.RATE);
    }

    /** Whole numbers of 16 bits. */
    public Waveform wav16() {
        return Recordings.read(folder.resolve("record-16.wav"), Unit.M_PER_S2, FULL_SCALE);
    }

    /** Floating point of 64 bits. */
    public Waveform wav64() {
        return Recordings.read(folder.resolve("record-64.wav"), Unit.M_PER_S2);
    }

    /** The same by a loop that knows where the samples stand and checks nothing: the least that reading costs. */
    public double[] plainWav16() {
        ByteBuffer bytes = bytes("record-16.wav");
        double[] samples = new double[bytes.remaining() / Short.BYTES];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = bytes.getShort() * (FULL_SCALE / 0x1p15);
        }
        return samples;
    }

    /** The same of 64 bits. */
    public double[] plainWav64() {
        ByteBuffer bytes = bytes("record-64.wav");
        double[] samples = new double[bytes.remaining() / Double.BYTES];
        bytes.asDoubleBuffer().get(samples);
        return samples;
    }

    private ByteBuffer bytes(String name) {
        try {
            return ByteBuffer.wrap(Files.readAllBytes(folder.resolve(name))).position(HEADER_BYTES)
                    .slice().order(ByteOrder.LITTLE_ENDIAN);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
