package dev.vibra.docs.survey.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.docs.survey.input.RecordingSource.Recorded;
import dev.vibra.io.SampleFormat;
import dev.vibra.io.WavFile;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How the values of a file become m/s²: volts and counts. */
class RecordingSourceTest {
    /** 9 mm/s rms at 25 Hz. */
    private static final double PEAK = 9e-3 * Math.sqrt(2) * 2 * Math.PI * 25;

    @TempDir
    private Path folder;

    private static RecordingSource source(String fields) {
        String json = "{\"name\": \"Fan\", \"points\": [ {\"id\": \"A\", " + fields + " } ] }";
        MachineReading reading = MachineFile.parse("machine.json", json.getBytes(StandardCharsets.UTF_8));
        assertEquals(List.of(), reading.problems());
        return reading.sources().get("A");
    }

    /** Writes what a sensor of 100 mV/g gives, in volts, as whole numbers of a ±10 V converter or as floating point. */
    private void writeVolts(String name, SampleFormat format) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_800, 51_200).tone(PEAK, 25, 0).waveform();
        double gPerStored = format.name().startsWith("INTEGER") ? 10 / 0.1 : 1 / 0.1;
        WavFile.write(wave, folder.resolve(name), Unit.G, gPerStored, format);
    }

    private static double velocity(Waveform wave) {
        return wave.throughSeverityChain(Quantity.VELOCITY, Band.of(10, 1000)).rms().in(Unit.MM_PER_S);
    }

    private static String field(String name, String value) {
        return value == null ? "" : ", \"" + name + "\": " + value;
    }

    /** The chain passes 0.99796 of a line at 25 Hz (closed form of its roll-off). */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        INTEGER_16 | 100 |  | 10 | 16-bit whole numbers of ±10 V full scale, 100 mV per g
        INTEGER_24 | 100 |  | 10 | 24-bit whole numbers of ±10 V full scale, 100 mV per g
        INTEGER_16 |  | 100 |  | 16-bit whole numbers of ±100 g full scale
        INTEGER_16 |  | -100 |  | 16-bit whole numbers of ±100 g full scale, turned over
        FLOAT_32 | 100 |  |  | 32-bit floating point in V, 100 mV per g
        FLOAT_64 |  | 10 |  | 64-bit floating point, times 10 g
        """)
    void nineMillimetresPerSecondStayNine(SampleFormat format, String sensitivity, String scale, String fullScale,
            String words) {
        writeVolts("a.wav", format);
        Recorded recorded = source("\"recording\": \"a.wav\", \"unit\": \"g\""
                + field("sensitivityMillivoltsPerUnit", sensitivity) + field("scale", scale)
                + field("fullScaleVolts", fullScale)).read(folder);
        assertEquals(9 * 0.99796, velocity(recorded.signal()), 0.01);
        assertEquals(words, recorded.conversion());
    }

    @Test
    void wholeNumbersWithASensitivityNeedTheVoltageOfFullScale() {
        writeVolts("a.wav", SampleFormat.INTEGER_16);
        assertEquals("fullScaleVolts is required beside sensitivityMillivoltsPerUnit: the file holds whole numbers,"
                + " fractions of full scale; give the voltage that full scale stands for",
                refusal("\"recording\": \"a.wav\", \"unit\": \"g\", \"sensitivityMillivoltsPerUnit\": 100"));
    }

    @Test
    void floatingPointHasNoFullScale() {
        writeVolts("a.wav", SampleFormat.FLOAT_32);
        assertEquals("fullScaleVolts is for whole numbers only: the file holds floating point or text, which counts as"
                + " volts; leave it out, or give scale in place of both", refusal(
                "\"recording\": \"a.wav\", \"unit\": \"g\", \"sensitivityMillivoltsPerUnit\": 100,"
                + " \"fullScaleVolts\": 10"));
    }

    @Test
    void textHoldsVoltsOrTheUnit() throws IOException {
        Files.writeString(folder.resolve("a.csv"), "0.1\n-0.1\n0.1\n-0.1\n");
        Recorded volts = source("\"recording\": \"a.csv\", \"unit\": \"g\", \"sampleRateHertz\": 1000,"
                + " \"sensitivityMillivoltsPerUnit\": 100").read(folder);
        assertEquals(1.0, volts.signal().rms().in(Unit.G), 1e-12);
        assertEquals("numbers of a text file in V, 100 mV per g", volts.conversion());
        Recorded plain = source("\"recording\": \"a.csv\", \"unit\": \"mm/s\", \"sampleRateHertz\": 1000").read(folder);
        assertEquals(0.1, plain.signal().rms().in(Unit.MM_PER_S), 1e-12);
        assertEquals("numbers of a text file in mm/s", plain.conversion());
    }

    @Test
    void aChannelIsPickedByNumberAndNeverGuessed() throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(44 + 16).order(ByteOrder.LITTLE_ENDIAN);
        bytes.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(52);
        bytes.put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16).putShort((short) 1).putShort((short) 2);
        bytes.putInt(1000).putInt(4000).putShort((short) 4).putShort((short) 16);
        bytes.put("data".getBytes(StandardCharsets.US_ASCII)).putInt(16);
        for (int i = 0; i < 4; i++) {
            bytes.putShort((short) 8192).putShort((short) -16384);
        }
        Files.write(folder.resolve("set.wav"), bytes.array());
        String both = "\"recording\": \"set.wav\", \"unit\": \"g\"";
        assertEquals(0.25, source(both + ", \"channel\": 1").read(folder).signal().in(Unit.G)[0]);
        assertEquals(-0.5, source(both + ", \"channel\": 2").read(folder).signal().in(Unit.G)[0]);
        assertEquals("a recording must have one channel unless one is chosen: 2", refusal(both));
        assertEquals("channel must be from 1 to 2: 3", refusal(both + ", \"channel\": 3"));
        Waveform tachometer = source(both + ", \"channel\": 1, \"tachometer\": { \"recording\": \"set.wav\","
                + " \"channel\": 2 }").readTachometer(folder).orElseThrow();
        assertEquals(-0.5, tachometer.in(Unit.V)[0]);
    }

    @Test
    void aFileThatIsMissingOrBrokenIsSaidWithoutItsName() throws IOException {
        assertEquals("is not in the survey folder or no file", refusal("\"recording\": \"a.wav\", \"unit\": \"g\""));
        Files.writeString(folder.resolve("a.csv"), "0;1\n1;x\n");
        assertEquals("line 2", refusal("\"recording\": \"a.csv\", \"unit\": \"g\"").substring(0, 6));
    }

    private String refusal(String fields) {
        RecordingSource source = source(fields);
        return assertThrows(UnreadableRecordingException.class, () -> source.read(folder)).getMessage();
    }
}
