package dev.vibra.io;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;

/** Places that can't be read or written, and tables that look like something else. */
class FileEdgesTest {
    @TempDir
    private Path folder;

    private static Waveform wave() {
        return Waveform.of(Unit.V, 10, 1, -2, 3);
    }

    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(RecordingFileException.class, call).getMessage());
    }

    private Path text(String text) throws IOException {
        return Files.write(folder.resolve("x.csv"), text.getBytes(StandardCharsets.ISO_8859_1));
    }

    private double[] column(String text) throws IOException {
        return Recordings.readColumn(text(text), Unit.V, 1, 10).samples();
    }

    @Test
    void placesThatCanNotBeWrittenAreNamed() throws IOException {
        Path nowhere = folder.resolve("none").resolve("a.wav");
        assertRefused("a.wav: can't be written: there is no folder " + folder.resolve("none").toAbsolutePath(),
                () -> Recordings.write(wave(), nowhere, Unit.V));
        Files.createDirectory(folder.resolve("b.csv"));
        assertRefused("b.csv: can't be written: it is a folder",
                () -> Recordings.write(wave(), folder.resolve("b.csv"), Unit.V));
    }

    /** A disk that fills up half-way: the old file stays, nothing is left beside it. */
    @Test
    void aFailedWriteLeavesTheOldFile() throws IOException {
        Path file = Files.writeString(folder.resolve("a.csv"), "old");
        IOException full = new IOException("disk full");
        RecordingFileException failure = assertThrows(RecordingFileException.class, () -> WholeFile.write(file, out -> {
            out.write(1);
            throw full;
        }));
        assertEquals("a.csv: can't be written: disk full", failure.getMessage());
        assertSame(full, failure.getCause());
        assertEquals("old", Files.readString(file));
        assertEquals(1, folder.toFile().list().length);
    }

    /** What another process has begun to write beside it is left alone. */
    @Test
    void aBegunFileOfAnotherIsLeftAlone() throws IOException {
        Files.writeString(folder.resolve(".vibra-0.part"), "begun");
        Path file = folder.resolve("a.wav");
        Recordings.write(wave(), file, Unit.V);
        assertEquals(wave(), Recordings.read(file, Unit.V));
        assertEquals("begun", Files.readString(folder.resolve(".vibra-0.part")));
        assertEquals(2, folder.toFile().list().length);
        Recordings.write(wave().part(0, 2), file, Unit.V);
        assertEquals(2, Recordings.read(file, Unit.V).length());
    }

    @Test
    void whatCanNotBeReadIsNamed() throws IOException {
        Files.createDirectory(folder.resolve("c.csv"));
        assertRefused("c.csv: can't be read: it is a folder", () -> Recordings.read(folder.resolve("c.csv"), Unit.V));
        assertRefused("c.csv: can't be read: it is a folder",
                () -> Recordings.readColumn(folder.resolve("c.csv"), Unit.V, 1, 10));
        assertRefused("d.csv: can't be read: there is no such file",
                () -> Recordings.read(folder.resolve("d.csv"), Unit.V));
        assertRefused("d.csv: can't be read: there is no such file",
                () -> Recordings.sampleFormat(folder.resolve("d.csv")));
        assertEquals("scale must be finite and not zero: Infinity", assertThrows(IllegalArgumentException.class,
                () -> Recordings.read(folder.resolve("c.csv"), Unit.V, Double.POSITIVE_INFINITY)).getMessage());
    }

    @Test
    void namesMayBeWrittenInCapitalsAndEndInTxt() throws IOException {
        Recordings.write(wave(), folder.resolve("A.WAV"), Unit.V);
        assertEquals(wave(), Recordings.read(folder.resolve("A.WAV"), Unit.V));
        Recordings.write(wave(), folder.resolve("a.TXT"), Unit.V);
        assertEquals(wave(), Recordings.read(folder.resolve("a.TXT"), Unit.V));
        assertTrue(Files.readString(folder.resolve("a.TXT")).startsWith("time [s],voltage [V]\n0.0,1.0\n"));
    }

    /** A counter, a comma and a whole number are two columns, and a decimal comma is none. */
    @Test
    void countedPairsAreNotTakenForOneColumn() throws IOException {
        String message = "x.csv: must hold one column; the numbers before the commas count up like those of a second"
                + " one";
        assertRefused(message, () -> column("0,512\n1,498\n2,530\n"));
        assertRefused(message, () -> column("a\n7,5\n8,25\n9,75\n10,5\n"));
        assertArrayEquals(new double[] {0.512, 1.498}, column("0,512\n1,498\n"));
        assertArrayEquals(new double[] {0.5, 1.5, 3.5}, column("0,5\n1,5\n3,5\n"));
        assertArrayEquals(new double[] {0.5, 1.5, 2}, column("0,5\n1,5\n2\n"));
        assertArrayEquals(new double[] {2.5, 1.5, 0.5}, column("2,5\n1,5\n0,5\n"));
    }

    @Test
    void linesOfSeparatorsAreBlankAndLongOnesAreShortened() throws IOException {
        assertArrayEquals(new double[] {1, 2}, column("1\n;\n \n2\n"));
        assertRefused("x.csv: line 2, column 1: must be a finite number: " + "x".repeat(40) + "\u2026",
                () -> column("1\n" + "x".repeat(41) + "\n"));
        assertRefused("x.csv: line 2, column 1: must be a finite number: " + "x".repeat(40),
                () -> column("1\n" + "x".repeat(40) + "\n"));
        assertRefused("x.csv: file holds no numbers",
                () -> Recordings.read(text("time,value\n# nothing else\n"), Unit.V));
    }

    /** Written with six digits the times of 25,600 Hz give 25,600.02 Hz; a true rate beside a whole number is kept. */
    @Test
    void aRateCloseToAWholeNumberIsMeantWhereTheTimesAllowIt() throws IOException {
        assertEquals(3, Recordings.read(text("0,1\n0.333333,2\n0.666667,3\n1.000001,4\n"), Unit.V).sampleRateHertz());
        assertEquals(1 / 0.3333, Recordings.read(text("0,1\n0.3333,2\n0.6666,3\n"), Unit.V).sampleRateHertz(), 1e-12);
        StringBuilder slow = new StringBuilder();
        for (int i = 0; i <= 20_000; i++) {
            slow.append(i * 1.000009).append(",1\n"); // 9 ppm off: a fifth of a step over the recording
        }
        assertEquals(1 / 1.000009, Recordings.read(text(slow.toString()), Unit.V).sampleRateHertz(), 1e-9);
    }
}
