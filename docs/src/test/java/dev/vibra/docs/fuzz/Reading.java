package dev.vibra.docs.fuzz;

import dev.vibra.io.RecordingFileException;
import dev.vibra.io.RecordingInput;
import dev.vibra.io.RecordingReader;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.SimultaneousRecording;
import dev.vibra.signal.Waveform;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * One way to read a recording: finite samples come out, or a message that names the file.
 *
 * @param folder folder for a file
 * @param name name of the recording
 * @param source where the bytes come from
 * @param way what is asked for
 * @param unit unit of the values
 * @param scale scale of the values
 * @param number first sample of a range, or size of a block
 */
record Reading(Path folder, String name, Source source, Way way, Unit unit, double scale, int number) {
    private static final int LONGEST_MESSAGE = 500;
    private static final int MOST_BLOCKS = 100_000;

    enum Source { BUFFER, STREAM, CHANNEL, FILE }

    enum Way { WHOLE, CHANNEL, COLUMN, RANGE, CHANNELS, BLOCKS, FORMAT }

    static Reading of(Dice dice, Path folder, String ending) {
        Source source = dice.oneIn(12) ? Source.FILE : dice.pick(Source.BUFFER, Source.STREAM, Source.CHANNEL);
        String name = (dice.oneIn(10) && source != Source.FILE ? "r" + Hostile.text(dice) : "recording") + ending;
        double scale = dice.oneIn(8) ? dice.pick(1e-320, 1e-200, 1e200, 1e308, -1.0) : dice.pick(1.0, 9.81, 100.0);
        return new Reading(folder, name, source, dice.pick(Way.values()), dice.pick(Unit.M_PER_S2, Unit.G,
                Unit.MM_PER_S, Unit.UM),
                scale, dice.oneIn(9) ? Integer.MAX_VALUE : dice.size(700));
    }

    /** Columns of a text for it. */
    int columns() {
        return way == Way.COLUMN ? 1 : way == Way.CHANNELS ? 3 : 2;
    }

    String outcome(byte[] bytes) throws IOException {
        try {
            return way + " " + read(input(bytes).withScale(scale));
        } catch (RecordingFileException e) {
            Shown.require("the message", e.getMessage(), LONGEST_MESSAGE);
            Shown.require("the reason", e.reason(), LONGEST_MESSAGE);
            if (!e.getMessage().startsWith(e.fileName()) || name.startsWith("recording")
                    && !e.fileName().equals(name)) {
                throw new AssertionError("the message doesn't name the file: " + e.getMessage(), e);
            }
            return way + " refused";
        }
    }

    private RecordingInput input(byte[] bytes) throws IOException {
        if (source == Source.FILE) {
            return RecordingInput.of(Files.write(folder.resolve(name), bytes));
        }
        ByteArrayInputStream stream = new ByteArrayInputStream(bytes);
        return source == Source.STREAM ? RecordingInput.of(stream, name)
                : source == Source.CHANNEL ? RecordingInput.of(Channels.newChannel(stream), name)
                : RecordingInput.of(ByteBuffer.wrap(bytes), name);
    }

    private String read(RecordingInput input) {
        switch (way) {
            case WHOLE -> check(input.read(unit));
            case CHANNEL -> check(input.withChannel(2).read(unit));
            case COLUMN -> check(input.withSampleRate(2560).read(unit));
            case RANGE -> check(input.withRange(number / 2, Math.max(1, number)).read(unit));
            case CHANNELS -> {
                SimultaneousRecording all = input.readChannels(unit);
                all.channels().forEach(Reading::check);
            }
            case BLOCKS -> blocks(input);
            default -> {
                return input.sampleFormat().isPresent() ? "numbers" : "text";
            }
        }
        return "read";
    }

    private void blocks(RecordingInput input) {
        try (RecordingReader reader = input.open(unit)) {
            double[] block = new double[1 + number % 1000];
            int last = block.length;
            for (int i = 0; last == block.length && i < MOST_BLOCKS; i++) {
                last = reader.read(block, 0, block.length);
                check(block, last);
            }
        }
    }

    private static void check(Waveform wave) {
        check(wave.samples(), wave.length());
    }

    private static void check(double[] samples, int length) {
        for (int i = 0; i < length; i++) {
            if (!(Math.abs(samples[i]) <= Double.MAX_VALUE)) {
                throw new AssertionError("a sample is no number: " + samples[i]);
            }
        }
    }

    @Override
    public String toString() {
        return Shown.escaped(name, 80) + " " + source + " " + way + ", " + unit + " times " + scale + ", number "
                + number;
    }
}
