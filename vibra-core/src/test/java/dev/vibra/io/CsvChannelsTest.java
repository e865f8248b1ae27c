package dev.vibra.io;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.SimultaneousRecording;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Text with several channels, and text that was made to break the reader. */
class CsvChannelsTest {
    @TempDir
    private Path folder;

    private static RecordingInput input(String text) {
        return RecordingInput.of(ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8)), "x.csv");
    }

    private static void assertRefused(String message, RecordingInput input) {
        assertEquals("x.csv: " + message, assertThrows(RecordingFileException.class, () -> input.read(Unit.V))
                .getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"t,Süd,b,c\n0,1,2,3\n0.5,4,5,6\n1,7,8,9\n", "t;Süd;b;c\n0;1,0;2;3\n0,5;4;5;6\n1;7;8;9\n",
        "t\tSüd\tb\tc\n0\t1\t2\t3\n.5\t4\t5\t6\n1\t7\t8\t9", "t Süd  b c \n0 1 2 3\n .5 4 5  6\n1 7 8 9",
        "\ufefft,Süd,b,c\n0,1,2,3,\n0.5,4,5,6,\n1,7,8,9,\n"})
    void severalColumnsAreChannels(String text) {
        RecordingDoors.of(text.getBytes(StandardCharsets.UTF_8), "x.csv", folder).forEach((door, input) -> {
            SimultaneousRecording all = input.readChannels(Unit.V);
            assertEquals(List.of("Süd", "b", "c"), all.names(), door);
            assertEquals(2, all.sampleRateHertz(), door);
            assertArrayEquals(new double[] {1, 4, 7}, all.channel("Süd").samples(), door);
            assertArrayEquals(new double[] {3, 6, 9}, all.channel(3).samples(), door);
        });
        assertArrayEquals(new double[] {2, 5, 8}, input(text).withChannel(2).read(Unit.V).samples());
        assertRefused("a recording must have one channel unless one is chosen: 3", input(text));
        assertRefused("channel must be from 1 to 3: 4", input(text).withChannel(4));
    }

    @Test
    void channelsHaveTheirOwnUnitsAndScales() {
        SimultaneousRecording two = input("0,1,2,3\n0.5,4,5,6\n1,7,8,9\n").withRange(1, 2).readChannels(
                RecordedChannel.of(3, Unit.MM_PER_S), RecordedChannel.of(1, Unit.G).withScale(-2));
        assertEquals(List.of("channel 1", "channel 2"), two.names());
        assertEquals(Quantity.VELOCITY, two.channel(1).quantity());
        assertArrayEquals(new double[] {6e-3, 9e-3}, two.channel(1).samples(), 1e-17);
        assertArrayEquals(new double[] {-8, -14}, two.channel(2).in(Unit.G), 1e-14);
        assertEquals(0.5, two.startSeconds());
        assertEquals("channels must be one or more: 0", assertThrows(IllegalArgumentException.class,
                () -> input("0,1\n1,2\n").readChannels()).getMessage());
    }

    /** A header that doesn't name each channel by a name of its own names none. */
    @ParameterizedTest
    @ValueSource(strings = {"", "t,a\n", "t,a,a\n", "t,a,\n", "a,b,c,d\n", "# t,a,b\n"})
    void channelsWithoutNamesHaveNumbers(String header) {
        assertEquals(List.of("channel 1", "channel 2"), input(header + "0,1,2\n1,2,3\n").readChannels(Unit.V).names());
    }

    @Test
    void namesHoldNothingThatIsNotSeen() {
        String text = "t,\u202eb\u001b," + "c".repeat(500) + "\n0,1,2\n1,2,3\n";
        assertEquals(List.of("\\u202eb\\u001b", "c".repeat(100) + "…"), input(text).readChannels(Unit.V).names());
    }

    @Test
    void rowsOfAnotherLengthAreNamed() {
        assertRefused("line 2: must hold 3 numbers, time in s and 2 values: 1 | 2", input("0,1,2\n1,2\n"));
        assertRefused("line 2: must hold 3 numbers, time in s and 2 values: 1 | 2 | 3 | 4", input("0,1,2\n1,2,3,4\n"));
        assertRefused("line 1: may hold up to 1000 numbers", input("0" + ",1".repeat(1000) + "\n"));
        assertEquals(2, input("0" + ",1".repeat(999) + "\n1" + ",2".repeat(999)).withChannel(999).read(Unit.V)
                .length());
    }

    /**
     * A field of 100 kB that nearly is a number took 49 s when its rules were tried one after the other at each place;
     * now its length is looked at first. All of these together take less than a second.
     */
    @Test
    void longFieldsTakeTimeInProportion() {
        int n = 100_000;
        String tooLong = "must be a number of at most 1000 characters (is there a quote that isn't closed?): ";
        String ones = "1".repeat(40) + "…";
        assertTimeoutPreemptively(Duration.ofSeconds(20), () -> {
            assertRefused("line 2, column 2: " + tooLong + ones, input("0,1\n1," + "1".repeat(n) + "x\n2,3\n"));
            assertRefused("line 2, column 1: " + tooLong + ones,
                    input("0\n" + "1".repeat(n) + "x\n").withSampleRate(10));
            assertRefused("line 1, column 1: " + tooLong + ones, input("1".repeat(n) + "x\n0\n").withSampleRate(10));
            assertRefused("line 2, column 2: " + tooLong + "abc\\u000aabc\\u000aabc\\u000aabc\\u000aabc…",
                    input("0,1\n1,\"" + "abc\n".repeat(n / 4)));
            assertRefused("line 1, column 2: " + tooLong + "1e" + "9".repeat(38) + "…",
                    input("0,1e" + "9".repeat(60_000)));
            assertRefused("line 2, column 2: must be a finite number: ", input("0,1\n1, " + " ".repeat(n) + "\n2,3\n"));
            assertRefused("must hold a line of numbers within its first 65536 bytes",
                    input("1".repeat(n) + "x,2\n0,1\n"));
            assertRefused("must hold a line of numbers within its first 65536 bytes", input("\"".repeat(n)));
            assertEquals(2, input("0,1\n#" + "c".repeat(n) + "\n1,2\n").read(Unit.V).length());
        });
    }

    @Test
    void whatIsNoTableIsSaidWithItsCause() {
        String open = "0,1\n1,\"" + "2".repeat(2_000_000);
        String message = assertThrows(RecordingFileException.class, () -> input(open).read(Unit.V)).getMessage();
        assertTrue(message.startsWith("x.csv: is not a table: ") && message.contains("buffer"), message);
    }

    @Test
    void timesThatTellNoRateAreRefused() {
        assertRefused("time must rise by steps that a sample rate can be told of: 1.0E-320 s",
                input("0,1\n1e-320,2\n"));
        assertRefused("time must rise by steps that a sample rate can be told of: Infinity s",
                input("-1e308,1\n1e308,2\n"));
        assertRefused("recording must end at a finite time: 2 samples at 6.25E-309 Hz", input("-8e307,1\n8e307,2\n"));
    }
}
