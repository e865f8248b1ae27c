package dev.vibra.io;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.sun.management.ThreadMXBean;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.Pipe;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where recordings come from: the same outcome through every door, whatever the bytes are. */
class RecordingInputTest {
    @TempDir
    private Path folder;

    private static Waveform wave(int length) {
        return Synthesis.silence(Quantity.ACCELERATION, 12_800, length).tone(3, 100, 0).noise(0.5, 1).waveform();
    }

    private byte[] written(String name, Waveform wave) throws IOException {
        Path file = folder.resolve("written-" + name);
        Recordings.write(wave, file, Unit.M_PER_S2);
        return Files.readAllBytes(file);
    }

    private byte[] written(SampleFormat format, Waveform wave) throws IOException {
        Path file = folder.resolve("written.wav");
        WavFile.write(wave, file, Unit.G, 2, format);
        return Files.readAllBytes(file);
    }

    /** A recording, or the words of the refusal; whatever else is thrown fails the test. */
    private static Object outcome(RecordingInput input) {
        try {
            return input.read(Unit.M_PER_S2);
        } catch (RecordingFileException e) {
            assertTrue(e.getMessage().startsWith(e.fileName() + ": "), e.getMessage());
            return e.reason();
        }
    }

    private static void assertRefused(String message, RecordingInput input) {
        assertEquals(message, assertThrows(RecordingFileException.class, () -> input.read(Unit.V)).getMessage());
    }

    @ParameterizedTest
    @EnumSource(SampleFormat.class)
    void everyDoorGivesTheSameSamples(SampleFormat format) throws IOException {
        byte[] bytes = written(format, wave(10_000));
        Waveform expected = Recordings.read(folder.resolve("written.wav"), Unit.G, 2);
        RecordingDoors.of(bytes, "a.wav", folder).forEach((door, input) ->
                assertEquals(expected, input.withScale(2).read(Unit.G), door));
        RecordingDoors.of(bytes, "a.wav", folder).forEach((door, input) ->
                assertEquals(Optional.of(format), input.sampleFormat(), door));
        RecordingDoors.of(bytes, "without ending", folder).forEach((door, input) ->
                assertEquals(expected, input.withScale(2).read(Unit.G), door));
    }

    @ParameterizedTest
    @ValueSource(strings = {"a.wav", "a.csv", "a.txt"})
    void whatIsWrittenIsReadBitForBitThroughEveryDoor(String name) throws IOException {
        Waveform wave = wave(3000);
        RecordingDoors.of(written(name, wave), name, folder).forEach((door, input) ->
                assertEquals(wave, input.read(Unit.M_PER_S2), door));
        RecordingDoors.of(written(name, wave), "b.dat", folder).forEach((door, input) ->
                assertEquals(wave, input.read(Unit.M_PER_S2), door));
    }

    @Test
    void aColumnIsReadThroughEveryDoor() {
        RecordingDoors.of("a\n1,5\n-2\n".getBytes(StandardCharsets.US_ASCII), "c.csv", folder).forEach((door, input) ->
                assertArrayEquals(new double[] {3, -4}, input.withSampleRate(10).withScale(2).read(Unit.V).samples(),
                        door));
    }

    /** Every length of a file that was cut; one that still holds whole lines or samples is a recording. */
    @ParameterizedTest
    @ValueSource(strings = {"a.wav", "a.csv"})
    void aCutFileHasTheSameOutcomeThroughEveryDoor(String name) throws IOException {
        byte[] bytes = written(name, wave(20));
        Set<Object> outcomes = new HashSet<>();
        for (int length = 0; length < bytes.length; length++) {
            byte[] cut = Arrays.copyOf(bytes, length);
            Map<String, RecordingInput> doors = RecordingDoors.inMemory(cut, name);
            Object expected = outcome(RecordingInput.of(Files.write(folder.resolve(name), cut)));
            doors.forEach((door, input) -> assertEquals(expected, outcome(input), door + " " + cut.length));
            outcomes.add(expected);
        }
        assertTrue(outcomes.size() > 10, outcomes.toString());
        assertTrue(name.endsWith("csv") || outcomes.stream().noneMatch(Waveform.class::isInstance));
    }

    /** Each byte of a header (of a whole table) in each of its 255 other values. */
    @ParameterizedTest
    @ValueSource(strings = {"a.wav", "a.csv", "a.dat"})
    void aChangedByteGivesARecordingOrARefusal(String name) throws IOException {
        byte[] bytes = written(name.replace(".dat", ".wav"), wave(5));
        int refused = 0;
        for (int at = 0; at < Math.min(bytes.length, 66); at++) {
            for (int change = 1; change < 256; change++) {
                byte[] changed = bytes.clone();
                changed[at] ^= (byte) change;
                Object buffer = outcome(RecordingInput.of(ByteBuffer.wrap(changed), name));
                Object stream = outcome(RecordingInput.of(new ByteArrayInputStream(changed), name));
                assertEquals(buffer instanceof Waveform ? buffer : String.class,
                        stream instanceof Waveform ? stream : String.class, "byte " + at + " by " + change);
                refused += buffer instanceof String ? 1 : 0;
            }
        }
        assertTrue(refused > 2000, "refused " + refused);
    }

    @Test
    void aBufferStaysWhereItStandsAndAStreamStaysOpen() throws IOException {
        byte[] bytes = written("a.wav", wave(100));
        ByteBuffer buffer = ByteBuffer.wrap(RecordingDoors.padded(bytes, 4, 9)).position(4).limit(4 + bytes.length);
        RecordingInput input = RecordingInput.of(buffer, "a.wav");
        assertEquals(input.read(Unit.G), input.read(Unit.G));
        assertEquals(4, buffer.position());
        boolean[] closed = new boolean[1];
        InputStream in = new ByteArrayInputStream(bytes) {
            @Override
            public void close() {
                closed[0] = true;
            }
        };
        RecordingInput once = RecordingInput.of(in, "a.wav");
        assertEquals(100, once.read(Unit.G).length());
        assertEquals(false, closed[0]);
        assertRefused("a.wav: byte 0: file ends within the header, 4 bytes wanted, 0 there", once);
    }

    @Test
    void aSourceThatFailsIsNamed() throws IOException {
        byte[] bytes = written("a.wav", wave(100_000));
        IOException torn = new IOException("the line\u001b went dead");
        InputStream failing = new InputStream() {
            @Override
            public int read() throws IOException {
                throw torn;
            }
        };
        for (int held : new int[] {0, 30, 5000, 500_000}) {
            InputStream begun = new SequenceInputStream(new ByteArrayInputStream(bytes, 0, held), failing);
            RecordingFileException e = assertThrows(RecordingFileException.class,
                    () -> RecordingInput.of(begun, "a.wav").read(Unit.G));
            assertEquals("a.wav: can't be read: the line\\u001b went dead", e.getMessage());
            assertEquals("can't be read: the line\\u001b went dead", e.reason());
            assertSame(torn, e.getCause());
        }
        InputStream text = new SequenceInputStream(new ByteArrayInputStream("0,1\n1,2\n".getBytes(
                StandardCharsets.US_ASCII)), failing);
        assertRefused("t.csv: can't be read: the line\\u001b went dead", RecordingInput.of(text, "t.csv"));
        for (int wrong : new int[] {0, -2}) {
            assertRefused("a.wav: can't be read: its source gave " + wrong + " bytes where 1 to 65536 were asked for",
                    RecordingInput.of(RecordingDoors.reading(bytes, (left, asked) -> wrong), "a.wav"));
        }
    }

    @Test
    void argumentsAreNamed() throws IOException {
        RecordingInput input = RecordingInput.of(ByteBuffer.allocate(0), "a.wav");
        assertEquals("channel must be at least 1: 0", assertThrows(IllegalArgumentException.class,
                () -> input.withChannel(0)).getMessage());
        assertEquals("scale must be finite and not zero: NaN", assertThrows(IllegalArgumentException.class,
                () -> input.withScale(Double.NaN)).getMessage());
        assertEquals("sampleRateHertz must be finite and > 0 Hz: -1.0", assertThrows(IllegalArgumentException.class,
                () -> input.withSampleRate(-1)).getMessage());
        assertEquals("first must be at least 0: -1", assertThrows(IllegalArgumentException.class,
                () -> input.withRange(-1, 5)).getMessage());
        assertEquals("length must be at least 1: 0", assertThrows(IllegalArgumentException.class,
                () -> input.withRange(0, 0)).getMessage());
        assertEquals("name must not be blank: \" \"", assertThrows(IllegalArgumentException.class,
                () -> RecordingInput.of(ByteBuffer.allocate(0), " ")).getMessage());
        assertEquals("file", assertThrows(NullPointerException.class, () -> Recordings.read(null, Unit.V))
                .getMessage());
        assertEquals("unit", assertThrows(NullPointerException.class, () -> input.read(null)).getMessage());
        Pipe.SourceChannel channel = Pipe.open().source();
        channel.configureBlocking(false);
        assertEquals("channel must be in blocking mode", assertThrows(IllegalArgumentException.class,
                () -> RecordingInput.of(channel, "a.wav")).getMessage());
        assertEquals("a\\u001b.wav, channel 2, times 4.0, 10 samples from 5", RecordingInput.of(ByteBuffer.allocate(0),
                "a\u001b.wav").withChannel(2).withScale(4).withRange(5, 10).toString());
    }

    /** What can't be seen or turns the text over, in the name and in what the file holds, and a very long name. */
    @Test
    void noMessageHoldsWhatIsNotSeen() throws IOException {
        String name = "\u202ev\u001b[2J\ud800.csv";
        byte[] text = "0,1\n1,\u2067\u0007x\u0085y\n".getBytes(StandardCharsets.UTF_8);
        String shown = "\\u202ev\\u001b[2J\\ud800.csv: line 2, column 2: must be a finite number: "
                + "\\u2067\\u0007x\\u0085y";
        assertRefused(shown, RecordingInput.of(ByteBuffer.wrap(text), name));
        byte[] wav = written("a.wav", wave(5));
        System.arraycopy("\u001b]0;".getBytes(StandardCharsets.US_ASCII), 0, wav, 0, 4);
        assertRefused("a.wav: byte 0: must begin with RIFF (or RF64) and WAVE: \\u001b]0;, WAVE",
                RecordingInput.of(ByteBuffer.wrap(wav), "a.wav"));
        String message = assertThrows(RecordingFileException.class,
                () -> RecordingInput.of(ByteBuffer.wrap(wav), "x".repeat(100_000) + ".wav").read(Unit.G)).getMessage();
        assertTrue(message.length() < 350, message);
        Path folderName = Files.createDirectory(folder.resolve("a\u001b\u202e.csv"));
        assertRefused("a\\u001b\\u202e.csv: can't be read: it is a folder", RecordingInput.of(folderName));
    }

    /** A header that promises two or four gigabytes over a stream: no more memory than for what came. */
    @ParameterizedTest
    @CsvSource({"2000000000, byte 54: header promises 2000000000 bytes of samples; the file holds 2000",
        "-2, a recording may have up to 2147483639 samples: 2147483647"})
    void aSizeThatLiesTakesNoMemory(int promised, String message) throws IOException {
        byte[] bytes = written(SampleFormat.INTEGER_16, wave(1000));
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putInt(54, promised);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        assertRefused("a.wav: " + message.replace(';', ','),
                RecordingInput.of(new ByteArrayInputStream(bytes), "a.wav"));
        long allocated = threads.getCurrentThreadAllocatedBytes() - before;
        assertTrue(allocated < 500_000, "allocated " + allocated);
    }

    /** Half a million chunks without content, 4 MB: two calls of the system each, once. */
    @Test
    void manyChunksAreRefused() throws IOException {
        byte[] wav = written("a.wav", wave(5));
        ByteBuffer many = ByteBuffer.allocate(wav.length + 8 * 500_000).put(wav, 0, 12);
        for (int i = 0; i < 500_000; i++) {
            many.put("JUNK\0\0\0\0".getBytes(StandardCharsets.US_ASCII));
        }
        many.put(wav, 12, wav.length - 12);
        for (RecordingInput input : RecordingDoors.inMemory(many.array(), "a.wav").values()) {
            assertRefused("a.wav: byte 80012: file may hold up to 10000 chunks before the samples", input);
        }
    }

    /** Multimedia Programming Interface 1.0: the format chunk always comes before the data chunk. */
    @Test
    void samplesBeforeTheirFormatAreRefused() {
        byte[] bytes = "RIFF\0\0\0\0WAVEdata\4\0\0\0abcd".getBytes(StandardCharsets.US_ASCII);
        assertRefused("a.wav: byte 12: the format must stand before the samples",
                RecordingInput.of(ByteBuffer.wrap(bytes), "a.wav"));
    }

    @Test
    void valuesThatOverflowAreNamedByTheirPlace() throws IOException {
        byte[] wav = written("a.wav", wave(5));
        assertRefused("a.wav: sample 0 of channel 1 must be within ±1e70 in SI units: " + wave(5).at(0)
                + " times 1.7E308 V", RecordingInput.of(ByteBuffer.wrap(wav), "a.wav").withScale(1.7e308));
        RecordingInput text = RecordingInput.of(ByteBuffer.wrap("t,a\n0,1\n1,2e60\n".getBytes(
                StandardCharsets.US_ASCII)), "a.csv");
        assertRefused("a.csv: line 3, column 2: must be within ±1e70 in SI units: 2.0E60 times 1.0E11 V",
                text.withScale(1e11));
        assertRefused("a.csv: line 1, column 1: must be within ±1e70 in SI units: 2.0E60 times 1.0E11 V",
                RecordingInput.of(ByteBuffer.wrap("2e60\n".getBytes(StandardCharsets.US_ASCII)), "a.csv").withSampleRate(1)
                .withScale(1e11));
    }

    @Test
    void pipesAndDevicesAreNotWaitedFor() throws Exception {
        Path pipe = folder.resolve("pipe.wav");
        boolean made;
        try {
            made = new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0;
        } catch (IOException e) {
            made = false;
        }
        assumeTrue(made, "pipes can be made here");
        assertRefused("pipe.wav: can't be read: it is a pipe or a device, not a file; what comes out of it can be read"
                + " as a stream", RecordingInput.of(pipe));
    }

    @Test
    void filesWithoutPermissionAreNamed() throws IOException {
        IOException denied = new AccessDeniedException("/secret/a.wav");
        assertEquals("permission is denied", Reason.of(denied));
        assertEquals("there is no such file", Reason.of(new NoSuchFileException("/a.wav")));
        assertEquals("Not a directory", Reason.of(new FileSystemException("/a", null, "Not a directory")));
        assertEquals("it was closed", Reason.of(new ClosedChannelException()));
        assertEquals("it ends early", Reason.of(new EOFException()));
        assertEquals("its source failed without a reason", Reason.of(new IOException()));
        assertEquals("x".repeat(200) + "…", Reason.of(new IOException("x".repeat(5000))));
    }

    @Test
    void namesOfTextInTwoOrFourBytesAreSaid() {
        for (String encoding : List.of("UTF-16", "UTF-16LE", "UTF-16BE", "UTF-32", "UTF-32LE", "UTF-32BE")) {
            byte[] bytes = "0,1\n1,2\n2,3\n".getBytes(Charset.forName(encoding));
            String known = encoding.substring(0, 6);
            for (String name : List.of("a.csv", "a.dat")) {
                assertRefused(name + ": is text in " + known + "; save it as UTF-8",
                        RecordingInput.of(ByteBuffer.wrap(bytes), name));
            }
        }
        assertEquals(Optional.empty(), TextEncoding.wide(new byte[0]));
        assertEquals(Optional.empty(), TextEncoding.wide(new byte[512]));
        assertEquals(Optional.empty(), TextEncoding.wide("0,1\n".getBytes(StandardCharsets.UTF_8)));
        assertEquals(Optional.empty(), TextEncoding.wide("\u00ef\u00bb\u00bf0".getBytes(StandardCharsets.ISO_8859_1)));
    }
}
