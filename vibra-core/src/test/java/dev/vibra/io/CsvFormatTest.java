package dev.vibra.io;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvFormatTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"1.5\n-2e-1\n+.25\n", "1,5\n-2e-1\n,25\n", "value [g]\n1.5\n-0.2\n0.25",
        "# rig 3\n\n1.5\n# gap\n-0.2\n0.25",
        "\"1.5\"\r\n\"-0.2\"\r\n\"0.25\"\r\n", "\u00ef\u00bb\u00bfa (m/s\u00b2)\n1.5\n-0.2\n0.25",
        " 1.5 \n -0.2\n0.25;\n"})
    void oneColumnIsRead(String text) throws IOException {
        Waveform wave = Recordings.readColumn(write(text), Unit.M_PER_S2, 2, 400);
        assertEquals(400, wave.sampleRateHertz());
        assertArrayEquals(new double[] {3, -0.4, 0.5}, wave.samples(), 1e-15);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0,1\n0.5,2\n1,3\n", "0;1\n0,5;2\n1,0;3\n", "0\t1\n0.5\t2\n1\t3\n", "0  1\n0.5   2\n 1 3\n",
        "time,a\n0,1\n0.5,2\n1,3", "t1;a2\n0;1\n0.5;2\n1;3",
        "# made, by hand; today\nTime (s)\tValue\n0\t1\n0.5\t2\n1\t3",
        "\"0\",\"1\"\n\"0.5\",\"2\"\n\"1\",\"3\""})
    void timeAndValueAreRead(String text) throws IOException {
        Waveform wave = Recordings.read(write(text), Unit.V);
        assertEquals(2, wave.sampleRateHertz(), 1e-12);
        assertArrayEquals(new double[] {1, 2, 3}, wave.samples());
    }

    @Test
    void roundedTimesGiveTheRateThatWasMeant() throws IOException {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 5000; i++) {
            text.append(String.format(java.util.Locale.ROOT, "%.6f,%d%n", i / 25_600.0, i % 7));
        }
        assertEquals(25_600, Recordings.read(write(text.toString()), Unit.V).sampleRateHertz());
    }

    @Test
    void whatIsWrittenIsReadToTheLastDigit() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_800, 300).noise(3, 1).waveform();
        Path file = folder.resolve("b.csv");
        Recordings.write(wave, file, Unit.M_PER_S2);
        assertEquals(wave, Recordings.read(file, Unit.M_PER_S2));
    }

    @Test
    void faultsAreNamedWithLineAndColumn() throws IOException {
        assertColumn("line 3, column 1: must be a finite number: abc", "1\n2\nabc\n");
        assertColumn("line 2, column 1: must be a finite number: NaN", "1\nNaN\n");
        assertColumn("line 2, column 1: must be a finite number: 1e999", "1\n1e999\n");
        assertColumn("line 1, column 1: must be a finite number: 1.234,5", "1.234,5\n");
        assertColumn("line 1, column 1: must be a finite number: 0.1,0.2", "0.1,0.2\n0.3,0.4\n");
        assertColumn("line 2, column 1: must be a finite number: 0x10", "1\n0x10\n");
        assertColumn("line 3: must hold one number: 1 | 2", "x\n1\n1;2\n");
        assertColumn("file holds no numbers", "# nothing\n");
        assertColumn("file holds no numbers", "");
        assertPair("line 2: must hold 2 numbers, time in s and value: 1", "0,1\n1\n");
        assertPair("line 2, column 2: must be a finite number: ", "0,1\n1,\n2,5\n");
        assertPair("line 3, column 2: must be a finite number: x", "t,a\n0,1\n1,x\n");
        assertPair("line 1, column 2: must be a finite number: a", "0,a\n1,2\n");
        assertPair("line 3: time must rise evenly, here to about 2.5 s: 2.0", "0,1\n1.25,1\n2,1\n4,1\n5,1\n");
        assertPair("time must rise over at least two lines: from 0.0 s to 0.0 s in 1 line(s)", "0,1\n");
        assertPair("time must rise over at least two lines: from 1.0 s to 0.0 s in 2 line(s)", "1,1\n0,1\n");
    }

    @Test
    void aLostLineIsFound() throws IOException {
        StringBuilder text = new StringBuilder("time,a\n");
        for (int i = 0; i < 100; i++) {
            text.append(i < 60 ? i : i + 1).append(".0,1\n");
        }
        String message = assertThrows(RecordingFileException.class,
                () -> Recordings.read(write(text.toString()), Unit.V))
                .getMessage();
        assertTrue(message.matches("x.csv: line \\d+: time must rise evenly, here to about [0-9.]+ s: [0-9.]+"),
                message);
    }

    private Path write(String text) throws IOException {
        return Files.write(folder.resolve("x.csv"), text.getBytes(StandardCharsets.ISO_8859_1));
    }

    private void assertColumn(String message, String text) throws IOException {
        Path file = write(text);
        assertEquals("x.csv: " + message, assertThrows(RecordingFileException.class,
                () -> Recordings.readColumn(file, Unit.V, 1, 10)).getMessage());
    }

    private void assertPair(String message, String text) throws IOException {
        Path file = write(text);
        assertEquals("x.csv: " + message,
                assertThrows(RecordingFileException.class, () -> Recordings.read(file, Unit.V)).getMessage());
    }
}
