package dev.vibra.docs.fuzz;

import java.nio.file.Path;
import java.util.List;

/** Recordings with errors, from a file, a buffer, a stream or a channel, whole or in parts. */
final class ReaderTarget implements Target {
    private static final int MEGABYTE = 1_000_000;
    private static final List<String> ENDINGS = List.of(".csv", ".csv", ".txt", ".dat", "");

    private final Path folder;

    ReaderTarget(Path folder) {
        this.folder = folder;
    }

    @Override
    public String name() {
        return "readers";
    }

    @Override
    public Cost limit() {
        return new Cost(8_000_000, 150, 2);
    }

    @Override
    public Input input(Dice dice) {
        int largest = dice.oneIn(5000) ? MEGABYTE : dice.oneIn(50) ? 60_000 : 600;
        boolean wav = dice.oneIn(2);
        Reading reading = Reading.of(dice, folder, wav ? dice.pick(".wav", ".wav", ".WAV", "") : dice.pick(ENDINGS));
        byte[] bytes = wav ? WavFiles.mutated(dice, largest) : CsvFiles.mutated(dice, reading.columns(), largest);
        return new ByteInput(reading.toString(), bytes, reading::outcome);
    }
}
