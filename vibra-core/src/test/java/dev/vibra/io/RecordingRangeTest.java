package dev.vibra.io;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.vibra.meter.LevelMeter;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Parts of recordings, and recordings block by block. */
class RecordingRangeTest {
    private static final int LONG = 13_000_000; // 52 MB of single precision
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    @TempDir
    private Path folder;

    private static Waveform wave(int length) {
        return Synthesis.silence(Quantity.ACCELERATION, 25_600, length).tone(3, 100, 0).noise(0.5, 1).waveform()
                .startingAt(0.25);
    }

    private static Waveform all(RecordingReader reader, int block) {
        double[] samples = new double[200_000];
        double start = reader.seconds();
        int length = 0;
        int read;
        do {
            assertEquals(length, reader.position());
            read = reader.read(samples, length, block);
            length += read;
        } while (read == block);
        assertEquals(0, reader.read(samples, 0, 1));
        return Waveform.ofSi(reader.quantity(), reader.sampleRateHertz(), Arrays.copyOf(samples, length))
                .startingAt(start);
    }

    @ParameterizedTest
    @ValueSource(strings = {"a.wav", "a.csv"})
    void aRangeIsThePartOfTheWhole(String name) throws IOException {
        Path file = folder.resolve("whole-" + name);
        Recordings.write(wave(5000), file, Unit.M_PER_S2);
        Waveform whole = Recordings.read(file, Unit.M_PER_S2);
        for (int[] range : new int[][] {{0, 5000}, {0, 1}, {1234, 1000}, {4999, 1}}) {
            RecordingDoors.of(Files.readAllBytes(file), name, folder).forEach((door, input) ->
                    assertEquals(whole.part(range[0], range[1]), input.withRange(range[0], range[1])
                            .read(Unit.M_PER_S2), door));
        }
    }

    @ParameterizedTest
    @CsvSource({"a.wav, 5000, 1", "a.wav, 0, 5001", "a.wav, 9223372036854775807, 2", "a.csv, 5000, 1",
        "a.csv, 4999, 2", "a.csv, 1000000, 1"})
    void aRangeThatLeavesTheRecordingIsRefused(String name, long first, int length) throws IOException {
        Path file = folder.resolve("whole-" + name);
        Recordings.write(wave(5000), file, Unit.M_PER_S2);
        RecordingDoors.of(Files.readAllBytes(file), name, folder).forEach((door, input) ->
                assertEquals(name + ": range must lie within the recording of 5000 samples: " + length + " from sample "
                        + first, assertThrows(RecordingFileException.class, () -> input.withRange(first, length)
                        .read(Unit.M_PER_S2)).getMessage(), door));
    }

    @Test
    void aRangeOfOneColumnIsReadAndItsEndFound() {
        StringBuilder text = new StringBuilder("value\n");
        for (int i = 0; i < 3000; i++) {
            text.append(i % 77).append(',').append(i % 7).append('\n');
        }
        byte[] bytes = text.toString().getBytes(StandardCharsets.US_ASCII);
        Waveform whole = RecordingInput.of(ByteBuffer.wrap(bytes), "c.csv").withSampleRate(50).read(Unit.V);
        assertEquals(3000, whole.length());
        for (int first : new int[] {0, 10, 990, 1000, 2900}) {
            RecordingDoors.of(bytes, "c.csv", folder).forEach((door, input) -> assertEquals(whole.part(first, 100),
                    input.withSampleRate(50).withRange(first, 100).read(Unit.V), door));
        }
        RecordingInput input = RecordingInput.of(ByteBuffer.wrap(bytes), "c.csv").withSampleRate(50);
        for (int first : new int[] {2901, 3000, 5000}) {
            assertEquals("c.csv: range must lie within the recording of 3000 samples: 100 from sample " + first,
                    assertThrows(RecordingFileException.class, () -> input.withRange(first, 100).read(Unit.V))
                            .getMessage());
        }
        assertEquals("c.csv: range must begin at a finite time: from sample 5 at 4.9E-324 Hz", assertThrows(
                RecordingFileException.class, () -> input.withSampleRate(Double.MIN_VALUE).withRange(5, 2).read(Unit.V))
                .getMessage());
        try (RecordingReader reader = input.open(Unit.V)) {
            assertEquals(OptionalLong.empty(), reader.length());
            assertEquals(whole, all(reader, 999));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"a.wav", "a.csv"})
    void blocksOfAnySizeGiveTheWhole(String name) throws IOException {
        Path file = folder.resolve("whole-" + name);
        Recordings.write(wave(20_000), file, Unit.G);
        Waveform whole = Recordings.read(file, Unit.G);
        for (int block : new int[] {1, 7, 1000, 8192, 19_999, 20_000, 30_000}) {
            for (Map.Entry<String, RecordingInput> door : RecordingDoors.of(Files.readAllBytes(file), name, folder)
                    .entrySet()) {
                try (RecordingReader reader = door.getValue().open(Unit.G)) {
                    assertEquals(OptionalLong.of(20_000), reader.length());
                    assertEquals(whole, all(reader, block), door.getKey());
                }
            }
        }
    }

    @Test
    void aReaderSkipsAndKeepsToItsRange() throws IOException {
        Path file = folder.resolve("a.wav");
        Recordings.write(wave(1000), file, Unit.M_PER_S2);
        double[] out = new double[1000];
        try (RecordingReader reader = RecordingInput.of(file).withRange(100, 500).open(Unit.M_PER_S2)) {
            assertEquals("a.wav at sample 100 of 1000, 25600.0 Hz, acceleration", reader.toString());
            assertEquals(100 / 25_600.0, reader.seconds());
            assertEquals(50, reader.skip(50));
            assertEquals(10, reader.read(out, 990, 10));
            assertEquals(wave(1000).at(159), out[999]);
            assertEquals(440, reader.read(out, 0, 1000));
            assertEquals(wave(1000).at(599), out[439]);
            assertEquals(600, reader.position());
            assertEquals(0, reader.skip(5));
            assertEquals("length must be at least 1: 0", assertThrows(IllegalArgumentException.class,
                    () -> reader.read(out, 0, 0)).getMessage());
            assertEquals("out must lie inside the array of length 1000: offset 999, length 2",
                    assertThrows(IllegalArgumentException.class, () -> reader.read(out, 999, 2)).getMessage());
            assertEquals("count must be at least 0: -1", assertThrows(IllegalArgumentException.class,
                    () -> reader.skip(-1)).getMessage());
        }
        RecordingReader closed = RecordingInput.of(file).open(Unit.G);
        closed.close();
        closed.close();
        assertEquals("reader is closed", assertThrows(IllegalStateException.class, () -> closed.read(out, 0, 1))
                .getMessage());
    }

    /** A value that isn't a number, half-way: the blocks before it are read, and every call behind it fails. */
    @Test
    void aFaultInTheMiddleIsFoundThere() throws IOException {
        Path file = folder.resolve("a.wav");
        Recordings.write(wave(20_000), file, Unit.M_PER_S2);
        byte[] bytes = Files.readAllBytes(file);
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putDouble(58 + 8 * 15_000, Double.NaN);
        double[] out = new double[10_000];
        try (RecordingReader reader = RecordingInput.of(ByteBuffer.wrap(bytes), "a.wav").open(Unit.M_PER_S2)) {
            assertEquals(10_000, reader.read(out, 0, 10_000));
            RecordingFileException e = assertThrows(RecordingFileException.class, () -> reader.read(out, 0, 10_000));
            assertEquals("a.wav: sample 15000 of channel 1 must be finite: NaN", e.getMessage());
            assertSame(e, assertThrows(RecordingFileException.class, () -> reader.read(out, 0, 1)));
            assertSame(e, assertThrows(RecordingFileException.class, () -> reader.skip(1)));
        }
    }

    /** 52 MB of silence that the disk doesn't hold, and one value near the end. */
    private Path longFile() throws IOException {
        Path file = folder.resolve("long.wav");
        WavFile.write(Waveform.ofSi(Quantity.ACCELERATION, 51_200, 0), file, Unit.M_PER_S2, 1, SampleFormat.FLOAT_32);
        try (RandomAccessFile made = new RandomAccessFile(file.toFile(), "rw")) {
            made.seek(54);
            made.writeInt(Integer.reverseBytes(4 * LONG));
            made.setLength(58 + 4L * LONG);
            made.seek(58 + 4L * (LONG - 10));
            made.writeInt(Integer.reverseBytes(Float.floatToIntBits(2.5f)));
        }
        return file;
    }

    @Test
    void aRangeOfALongFileTakesNoMoreThanItself() throws IOException {
        Path file = longFile();
        RecordingInput input = RecordingInput.of(file).withRange(LONG - 1000, 1000);
        input.read(Unit.M_PER_S2);
        long before = THREADS.getCurrentThreadAllocatedBytes();
        Waveform part = input.read(Unit.M_PER_S2);
        long allocated = THREADS.getCurrentThreadAllocatedBytes() - before;
        assertEquals(2.5, part.at(990));
        assertEquals((LONG - 1000) / 51_200.0, part.startSeconds());
        assertTrue(allocated < 200_000, "allocated " + allocated);
    }

    @Test
    void aLongFileThroughAMeterTakesNoMoreThanABlock() throws IOException {
        double[] block = new double[5120];
        LevelMeter meter = LevelMeter.withDefaults().at(51_200);
        long allocated = 0;
        try (RecordingReader reader = RecordingInput.of(longFile()).open(Unit.M_PER_S2)) {
            for (int read = reader.read(block, 0, block.length); read > 0; read = reader.read(block, 0, block.length)) {
                meter.push(block, 0, read);
                if (reader.position() < 100 * block.length) {
                    allocated = THREADS.getCurrentThreadAllocatedBytes();
                }
            }
            allocated = THREADS.getCurrentThreadAllocatedBytes() - allocated;
            assertEquals(LONG, reader.position());
        }
        assertEquals(2.5, meter.acceleration().peakSi(), 1e-6);
        assertTrue(allocated < 100_000, "allocated for 50 MB: " + allocated);
    }

    /** 5 MB of text, its last lines: lines are skipped, and the rate is that of the whole file. */
    @Test
    void aRangeOfALongTextIsReadInLittleMemory() throws IOException {
        Path file = folder.resolve("long.csv");
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            out.write("time;a\n");
            for (int i = 0; i < 300_000; i++) {
                out.write(Math.rint(i / 25_600.0 * 1e6) / 1e6 + ";" + i % 1000 + "\n");
            }
        }
        double[] out = new double[10];
        RecordingInput.of(file).withRange(10, 10).read(Unit.V);
        long before = THREADS.getCurrentThreadAllocatedBytes();
        Waveform part = RecordingInput.of(file).withRange(299_990, 10).read(Unit.V);
        long allocated = THREADS.getCurrentThreadAllocatedBytes() - before;
        part.copyTo(0, out, 0, 10);
        assertArrayEquals(new double[] {990, 991, 992, 993, 994, 995, 996, 997, 998, 999}, out);
        assertEquals(25_600, part.sampleRateHertz());
        assertTrue(allocated < 1_000_000, "allocated " + allocated);
    }

    /** A line lost before the range would shift it: it is found on the way. */
    @Test
    void aLineLostBeforeTheRangeIsFound() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 1000; i++) {
            text.append(i < 500 ? i : i + 1).append(",1\n");
        }
        RecordingInput input = RecordingInput.of(ByteBuffer.wrap(text.toString().getBytes(StandardCharsets.US_ASCII)),
                "a.csv").withRange(900, 10);
        String message = assertThrows(RecordingFileException.class, () -> input.read(Unit.V)).getMessage();
        assertTrue(message.matches("a.csv: line \\d+: time must rise evenly, .*"), message);
    }
}
