package dev.vibra.io;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.SimultaneousRecording;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class WavFileTest {
    @TempDir
    private Path folder;

    private static Waveform wave() {
        return Synthesis.silence(Quantity.ACCELERATION, 12_800, 777).tone(3, 100, 0).noise(0.5, 1).waveform();
    }

    @ParameterizedTest
    @CsvSource({"INTEGER_16, 16", "INTEGER_24, 24", "INTEGER_32, 32", "FLOAT_32, 25", "FLOAT_64, 60"})
    void whatIsWrittenIsRead(SampleFormat format, int bits) {
        Path file = folder.resolve("a.wav");
        WavFile.write(wave(), file, Unit.G, 2, format);
        Waveform read = Recordings.read(file, Unit.G, 2);
        assertEquals(Optional.of(format), Recordings.sampleFormat(file));
        assertEquals(12_800, read.sampleRateHertz());
        assertArrayEquals(wave().in(Unit.G), read.in(Unit.G), 2 * Math.pow(2, -bits) + 1e-15);
        assertEquals(1, folder.toFile().list().length);
    }

    /** Oracle: the reader of the JDK (javax.sound) tells the channels; each is read back as if written alone. */
    @ParameterizedTest
    @EnumSource(SampleFormat.class)
    void severalChannelsAreWrittenAndReadTogether(SampleFormat format) throws Exception {
        Path file = folder.resolve("three.wav");
        Path alone = folder.resolve("one.wav");
        SimultaneousRecording three = SimultaneousRecording.of(List.of(wave(), wave().part(0, 777),
                Synthesis.silence(Quantity.ACCELERATION, 12_800, 777).noise(1, 2).waveform()));
        WavFile.write(three, file, Unit.G, 2, format);
        if (format.isFractionOfFullScale()) {
            assertEquals(3, AudioSystem.getAudioFileFormat(file.toFile()).getFormat().getChannels());
            assertEquals(777, AudioSystem.getAudioFileFormat(file.toFile()).getFrameLength());
        }
        for (RecordingInput input : RecordingDoors.of(Files.readAllBytes(file), "three.wav", folder).values()) {
            SimultaneousRecording read = input.withScale(2).readChannels(Unit.G);
            assertEquals(List.of("channel 1", "channel 2", "channel 3"), read.names());
            for (int c = 1; c <= 3; c++) {
                WavFile.write(three.channel(c), alone, Unit.G, 2, format);
                assertEquals(Recordings.read(alone, Unit.G, 2), read.channel(c));
                assertEquals(Recordings.read(alone, Unit.G, 2), Recordings.read(file, Unit.G, 2, c));
            }
        }
        SimultaneousRecording mixed = RecordingInput.of(file).withRange(700, 50).readChannels(
                RecordedChannel.of(3, Unit.MM_PER_S).withScale(-1), RecordedChannel.of(1, Unit.G));
        assertEquals(-1e-3 * three.channel(3).part(700, 50).in(Unit.G)[7] / 2, mixed.channel(1).at(7), 1e-4);
        assertEquals(Quantity.ACCELERATION, mixed.channel(2).quantity());
        assertEquals(700 / 12_800.0, mixed.startSeconds());
    }

    @Test
    void asManyChannelsAsAHeaderCanTell() {
        List<Waveform> many = Collections.nCopies(8191, Waveform.ofSi(Quantity.VOLTAGE, 10, 0.5, 0.25));
        Path file = folder.resolve("a.wav");
        WavFile.write(SimultaneousRecording.of(many), file, Unit.V, 1, SampleFormat.FLOAT_64);
        assertEquals(many, RecordingInput.of(file).readChannels(Unit.V).channels());
        assertMessage("a.wav: a sample of all channels may take up to 65535 bytes: 65536", () -> WavFile.write(
                SimultaneousRecording.of(Collections.nCopies(8192, many.get(0))), file, Unit.V, 1,
                SampleFormat.FLOAT_64));
    }

    /** Oracle: the reader of the JDK (javax.sound), which knows whole numbers. */
    @ParameterizedTest
    @CsvSource({"INTEGER_16, 2", "INTEGER_24, 3", "INTEGER_32, 4"})
    void theJdkReadsWhatIsWritten(SampleFormat format, int size) throws Exception {
        Path file = folder.resolve("a.wav");
        WavFile.write(wave(), file, Unit.M_PER_S2, 10, format);
        try (AudioInputStream in = AudioSystem.getAudioInputStream(file.toFile())) {
            assertEquals(12_800, in.getFormat().getSampleRate());
            assertEquals(777, in.getFrameLength());
            ByteBuffer bytes = ByteBuffer.wrap(in.readAllBytes()).order(ByteOrder.LITTLE_ENDIAN);
            for (int i = 0; i < 777; i++) {
                long whole = 0;
                for (int b = 0; b < size; b++) {
                    whole |= (bytes.get() & 0xFFL) << (8 * b);
                }
                whole = whole << (64 - 8 * size) >> (64 - 8 * size);
                assertEquals(wave().at(i) / 10 * Math.pow(2, 8 * size - 1), whole, 0.5 + 1e-6);
            }
        }
    }

    @Test
    void theJdksFilesAreRead() throws Exception {
        byte[] samples = new byte[2 * 100];
        for (int i = 0; i < 100; i++) {
            samples[2 * i] = (byte) i;
            samples[2 * i + 1] = (byte) (i - 50);
        }
        Path file = folder.resolve("jdk.wav");
        AudioFormat format = new AudioFormat(48_000, 16, 1, true, false);
        AudioSystem.write(new AudioInputStream(new ByteArrayInputStream(samples), format, 100),
                AudioFileFormat.Type.WAVE,
                file.toFile());
        double[] read = Recordings.read(file, Unit.V).samples();
        for (int i = 0; i < 100; i++) {
            assertEquals(((i - 50) * 256 + i) / 32_768.0, read[i], 1e-15);
        }
    }

    @Test
    void extensibleHeaderOtherChunksAndSeveralChannelsAreRead() throws IOException {
        ByteBuffer b = ByteBuffer.allocate(200).order(ByteOrder.LITTLE_ENDIAN);
        name(b, "RIFF").putInt(0);
        name(b, "WAVE");
        name(b, "LIST").putInt(3).put(new byte[] {1, 2, 3, 0});
        name(b, "fmt ").putInt(40).putShort((short) 0xFFFE).putShort((short) 2).putInt(1000).putInt(8000)
                .putShort((short) 8).putShort((short) 32).putShort((short) 22).putShort((short) 32).putInt(3)
                .putShort((short) 3).put(new byte[14]);
        name(b, "data").putInt(16).putFloat(1).putFloat(2).putFloat(3).putFloat(4);
        Path file = write(Arrays.copyOf(b.array(), b.position()));
        assertArrayEquals(new double[] {2, 4}, Recordings.read(file, Unit.V, 1, 2).samples());
        assertArrayEquals(new double[] {-2, -6}, Recordings.read(file, Unit.V, -2, 1).samples());
        assertMessage("x.wav: a recording must have one channel unless one is chosen: 2",
                () -> Recordings.read(file, Unit.V));
        assertMessage("x.wav: channel must be from 1 to 2: 3", () -> Recordings.read(file, Unit.V, 1, 3));
        assertEquals("channel must be at least 1: 0", assertThrows(IllegalArgumentException.class,
                () -> Recordings.read(file, Unit.V, 1, 0)).getMessage());
    }

    /** A converter of 10 V full scale: -1 stands for -10 V. */
    @Test
    void wholeNumbersAreFractionsOfFullScale() throws IOException {
        Path file = folder.resolve("a.wav");
        WavFile.write(Waveform.of(Unit.V, 100, 9, -10, 0.5), file, Unit.V, 10, SampleFormat.INTEGER_16);
        assertTrue(Recordings.sampleFormat(file).orElseThrow().isFractionOfFullScale());
        assertArrayEquals(new double[] {0.9, -1, 0.05}, Recordings.read(file, Unit.V).samples(), 2e-5);
        assertArrayEquals(new double[] {9, -10, 0.5}, Recordings.read(file, Unit.V, 10).samples(), 2e-4);
        Recordings.write(wave(), file, Unit.G);
        assertFalse(Recordings.sampleFormat(file).orElseThrow().isFractionOfFullScale());
    }

    @Test
    void withAnotherEndingTheContentTells() throws IOException {
        Path wav = Files.write(folder.resolve("a.dat"), riff(1, 1, 1000, 2, 16, 8, 8));
        assertEquals(4, Recordings.read(wav, Unit.V).length());
        assertEquals(Optional.of(SampleFormat.INTEGER_16), Recordings.sampleFormat(wav));
        Path text = Files.writeString(folder.resolve("b"), "time;a\n0;1\n0,5;2\n1,0;3\n");
        assertEquals(3, Recordings.read(text, Unit.V).length());
        assertEquals(Optional.empty(), Recordings.sampleFormat(text));
        assertArrayEquals(new double[] {1, 2}, Recordings.readColumn(Files.writeString(folder.resolve("c.asc"), "1\n2"),
                Unit.V, 1, 10).samples());
        assertBegins("d.mp3: must be a recording: its name doesn't end in .wav, ", () ->
                Recordings.read(Files.write(folder.resolve("d.mp3"), new byte[] {'I', 'D', 3}), Unit.V));
        assertBegins("e.mp3: name must end in .wav, ",
                () -> Recordings.write(wave(), folder.resolve("e.mp3"), Unit.G));
        assertMessage("b: channel must be from 1 to 1: 2", () -> Recordings.read(text, Unit.V, 1, 2));
        assertBegins("f.mp3: can't be read: there is no such file",
                () -> Recordings.read(folder.resolve("f.mp3"), Unit.V));
    }

    /** EBU Tech 3306: the size of the samples stands in the ds64 chunk. */
    @Test
    void sizesOf64BitsAreRead() throws IOException {
        ByteBuffer b = ByteBuffer.allocate(200).order(ByteOrder.LITTLE_ENDIAN);
        name(b, "RF64").putInt(-1);
        name(b, "WAVE");
        name(b, "ds64").putInt(28).putLong(0).putLong(6).putLong(3).putInt(0);
        format(b, 1, 1, 1000, 2, 16);
        name(b, "data").putInt(-1).putShort((short) 16_384).putShort((short) -32_768).putShort((short) 0);
        Path file = write(Arrays.copyOf(b.array(), b.position()));
        assertArrayEquals(new double[] {0.5, -1, 0}, Recordings.read(file, Unit.V).samples());
    }

    /** A file of zeros that would take an eighth more than all memory as a whole; a part of it is read. */
    @Test
    void whatTakesMoreThanAllMemoryIsSaid() throws IOException {
        long frames = Runtime.getRuntime().maxMemory() / 64 * 9;
        assumeTrue(frames < 2_147_000_000L, "beyond that the length of an array ends before the memory does");
        ByteBuffer b = ByteBuffer.allocate(100).order(ByteOrder.LITTLE_ENDIAN);
        name(b, "RF64").putInt(-1);
        name(b, "WAVE");
        name(b, "ds64").putInt(28).putLong(0).putLong(2 * frames).putLong(frames).putInt(0);
        format(b, 1, 1, 1000, 2, 16);
        name(b, "data").putInt(-1);
        Path file = write(Arrays.copyOf(b.array(), b.position()));
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.setLength(b.position() + 2 * frames);
        }
        RecordingInput input = RecordingInput.of(file);
        assertEquals(String.format(Locale.ROOT, "%s: %,d samples of 1 channel(s) take %,d MB as a whole, more memory than"
                + " is free: read a range, block by block, or with a larger -Xmx", file.getFileName(), frames,
                8 * frames / 1_000_000), assertThrows(OutOfMemoryError.class, () -> input.read(Unit.V)).getMessage());
        assertEquals(100, input.withRange(frames - 100, 100).read(Unit.V).length());
    }

    @Test
    void headersThatLieAreFound() throws IOException {
        byte[] good = riff(1, 1, 1000, 2, 16, 8, 8);
        assertEquals(4, Recordings.read(write(good), Unit.V).length());
        assertFailure("byte 0: file ends within the header, 4 bytes wanted, 0 there", new byte[0]);
        assertFailure("byte 0: must begin with RIFF (or RF64) and WAVE: RIFX, WAVE", "RIFX\0\0\0\0WAVE".getBytes(
                StandardCharsets.ISO_8859_1));
        assertFailure("byte 12: file ends before the format", Arrays.copyOf(good, 12));
        assertFailure("byte 16: chunk 'fmt ' promises 16 bytes, the file holds 10", Arrays.copyOf(good, 30));
        assertFailure("byte 36: file ends before the samples", Arrays.copyOf(good, 40));
        assertFailure("byte 40: header promises 8 bytes of samples, the file holds 7",
                Arrays.copyOf(good, good.length - 1));
        assertFailure("byte 40: file holds no samples", riff(1, 1, 1000, 2, 16, 0, 0));
        assertFailure("byte 40: size of the samples must be a multiple of 2 bytes: 7", riff(1, 1, 1000, 2, 16, 7, 8));
        assertFailure("byte 40: header promises 4294967295 bytes of samples, the file holds 8",
                riff(1, 1, 1000, 2, 16, -1, 8));
        assertFailure("byte 22: number of channels must be at least 1: 0", riff(1, 0, 1000, 2, 16, 8, 8));
        assertFailure("byte 24: sample rate must be > 0 Hz: 0.0", riff(1, 1, 0, 2, 16, 8, 8));
        assertFailure("byte 32: bytes per sample of all channels must be 2 for 1 channel(s) of 16 bits: 4",
                riff(1, 1, 1000, 4, 16, 8, 8));
        assertFailure("byte 20: samples must be whole numbers of 16, 24 or 32 bits (format 1) or floating point of"
                + " 32 or 64 bits (format 3): format 1, 8 bits", riff(1, 1, 1000, 1, 8, 8, 8));
        assertFailure("byte 20: extensible format must be at least 40 bytes long: 16",
                riff(0xFFFE, 1, 1000, 2, 16, 8, 8));
    }

    @Test
    void samplesThatAreNoNumbersAreFound() throws IOException {
        byte[] bytes = riff(3, 1, 1000, 4, 32, 8, 8);
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putFloat(48, Float.NaN);
        assertFailure("sample 1 of channel 1 must be finite: NaN", bytes);
    }

    @ParameterizedTest
    @EnumSource(value = SampleFormat.class, names = {"INTEGER_16", "INTEGER_24", "INTEGER_32"})
    void nothingIsClippedInSilence(SampleFormat format) {
        Path file = folder.resolve("a.wav");
        Waveform wave = Waveform.ofSi(Quantity.VOLTAGE, 10, 0, -1, 1);
        assertMessage("a.wav: sample 2 must be within full scale, 1.0 V: 1.0",
                () -> WavFile.write(wave, file, Unit.V, 1, format));
        assertTrue(Files.notExists(file));
    }

    @Test
    void ratesThatAWavFileCanNotTellAreRefused() {
        assertMessage("a.wav: sample rate of a WAV file must be a whole number of Hz up to 4294967295: 12.5",
                () -> Recordings.write(Waveform.ofSi(Quantity.VOLTAGE, 12.5, 1), folder.resolve("a.wav"), Unit.V));
        assertBegins("none.wav: can't be read: there is no such file",
                () -> Recordings.read(folder.resolve("none.wav"), Unit.V));
        assertEquals("scale must be finite and not zero: 0.0", assertThrows(IllegalArgumentException.class,
                () -> Recordings.read(folder.resolve("a.wav"), Unit.V, 0)).getMessage());
        Recordings.write(wave(), folder.resolve("a.wav"), Unit.G);
        assertMessage("a.wav: a sample rate may be given for CSV only; a WAV file tells its own",
                () -> Recordings.readColumn(folder.resolve("a.wav"), Unit.V, 1, 100));
    }

    private static ByteBuffer name(ByteBuffer buffer, String name) {
        return buffer.put(name.getBytes(StandardCharsets.ISO_8859_1));
    }

    private static void format(ByteBuffer b, int tag, int channels, int rate, int align, int bits) {
        name(b, "fmt ").putInt(16).putShort((short) tag).putShort((short) channels).putInt(rate).putInt(rate * align)
                .putShort((short) align).putShort((short) bits);
    }

    private static byte[] riff(int tag, int channels, int rate, int align, int bits, int promised, int held) {
        ByteBuffer b = ByteBuffer.allocate(44 + held).order(ByteOrder.LITTLE_ENDIAN);
        name(b, "RIFF").putInt(36 + held);
        name(b, "WAVE");
        format(b, tag, channels, rate, align, bits);
        name(b, "data").putInt(promised);
        return b.array();
    }

    private Path write(byte[] bytes) throws IOException {
        return Files.write(folder.resolve("x.wav"), bytes);
    }

    private void assertFailure(String message, byte[] bytes) throws IOException {
        Path file = write(bytes);
        assertMessage("x.wav: " + message, () -> Recordings.read(file, Unit.V));
    }

    private static void assertBegins(String start, Executable call) {
        String message = assertThrows(RecordingFileException.class, call).getMessage();
        assertTrue(message.startsWith(start), message);
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(RecordingFileException.class, call).getMessage());
    }
}
