package dev.vibra.docs.survey.meter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import dev.vibra.docs.survey.Folders;
import dev.vibra.io.SampleFormat;
import dev.vibra.io.WavFile;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The meter from end to end: values, lines, exit codes, hostile streams. */
class MeterCommandTest {
    private static final String RAW_25600 = "- --rate 25600 --format f64le --unit m/s2 ";

    @TempDir
    private Path temp;

    /** What a run printed and returned. */
    private record Run(int code, String out, String err) {
        /** Numbers by name of one line of JSON; words are left out. */
        Map<String, Double> numbers(int line) throws IOException {
            Map<String, Double> numbers = new LinkedHashMap<>();
            try (JsonParser json = new JsonFactory().createParser(out.split("\n")[line])) {
                while (json.nextToken() != null) {
                    if (json.currentToken() == JsonToken.VALUE_NUMBER_INT
                            || json.currentToken() == JsonToken.VALUE_NUMBER_FLOAT) {
                        numbers.put(json.currentName(), json.getDoubleValue());
                    }
                }
            }
            return numbers;
        }

        List<String> lines() {
            return out.lines().toList();
        }
    }

    private static Run run(InputStream in, String line) {
        StringBuilder out = new StringBuilder();
        StringBuilder err = new StringBuilder();
        int code = new MeterCommand(in, out::append, text -> err.append(text).append('\n'), () -> false)
                .run(line.trim().split(" +"));
        return new Run(code, out.toString(), err.toString());
    }

    private static Run run(double[] samples, String line) {
        ByteBuffer bytes = ByteBuffer.allocate(8 * samples.length).order(ByteOrder.LITTLE_ENDIAN);
        Arrays.stream(samples).forEach(bytes::putDouble);
        return run(new ByteArrayInputStream(bytes.array()), line);
    }

    private static double[] tones(int length, double... amplitudesAndHertz) {
        double[] samples = new double[length];
        for (int i = 0; i < length; i++) {
            for (int k = 0; k < amplitudesAndHertz.length; k += 2) {
                samples[i] += amplitudesAndHertz[k] * Math.sin(2 * Math.PI * amplitudesAndHertz[k + 1] * i / 25_600);
            }
        }
        return samples;
    }

    /**
     * Four tones. SciPy 1.10: {@code signal.butter(3, 2*pi*f, analog=True)} as high- and low-pass, their {@code freqs} at
     * the tones, divided by (2 pi f)^n; {@code std}, {@code max} and {@code stats.kurtosis(fisher=False)} of the samples.
     */
    @Test
    void valuesAreThoseOfSciPy() throws IOException {
        Run run = run(tones(3 * 25_600, 0.5, 12, 4, 50, 3, 900, 2, 2500), RAW_25600 + "--json"
                + " --value velocity-rms-10-1000Hz --value displacement-rms-5-500Hz --value acceleration-rms-1000-4000Hz"
                + " --value acceleration-rms --value acceleration-peak --value crest-factor --value kurtosis");
        assertEquals(0, run.code(), run.err());
        assertEquals(4, run.lines().size());
        Map<String, Double> values = run.numbers(3);
        assertEquals(9.880052, values.get("velocity-rms-10-1000Hz"), 9.88 * 1e-3);
        assertEquals(68.329765, values.get("displacement-rms-5-500Hz"), 68.3 * 1e-3);
        assertEquals(1.855043, values.get("acceleration-rms-1000-4000Hz"), 1.855 * 1e-3);
        assertEquals(3.8242646, values.get("acceleration-rms"), 1e-7);
        assertEquals(8.7891019, values.get("acceleration-peak"), 1e-7);
        assertEquals(2.2982463, values.get("crest-factor"), 1e-7);
        assertEquals(2.3809994, values.get("kurtosis"), 1e-7);
        assertEquals(2, values.get("atSeconds"));
    }

    /** A sine: a/(2 pi f) as velocity, a/(2 pi f)^2 as displacement, peak-to-peak twice that, crest factor sqrt(2). */
    @Test
    void peaksBehindTheChainAreThoseOfASine() throws IOException {
        Run run = run(tones(2 * 25_600, 10, 100), RAW_25600 + "--json --value velocity-chain-peak-10-1000Hz"
                + " --value displacement-chain-peak-to-peak-10-1000Hz --value velocity-chain-crest-factor-10-1000Hz"
                + " --value velocity-chain-kurtosis-10-1000Hz");
        double omega = 2 * Math.PI * 100;
        Map<String, Double> values = run.numbers(2);
        assertEquals(1e3 * 10 / omega, values.get("velocity-chain-peak-10-1000Hz"), 0.02);
        assertEquals(2e6 * 10 / (omega * omega), values.get("displacement-chain-peak-to-peak-10-1000Hz"), 0.1);
        assertEquals(Math.sqrt(2), values.get("velocity-chain-crest-factor-10-1000Hz"), 1e-3);
        assertEquals(1.5, values.get("velocity-chain-kurtosis-10-1000Hz"), 1e-3);
    }

    @ParameterizedTest
    @CsvSource({"s16le, 2", "s24le, 3", "s32le, 4", "f32le, 4", "f64le, 8", "s16be, 2", "s24be, 3", "s32be, 4",
        "f32be, 4", "f64be, 8"})
    void everyFormatGivesTheSameNumbers(String format, int bytes) throws IOException {
        ByteBuffer raw = ByteBuffer.allocate(2 * 1000 * bytes);
        raw.order(format.endsWith("le") ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        for (int i = 0; i < 1000; i++) {
            put(raw, format, i % 7 == 0 ? 0.9 : -0.1); // the other channel
            put(raw, format, i % 2 == 0 ? 0.5 : -0.25);
        }
        Run run = run(new ByteArrayInputStream(raw.array()), "- --rate 1000 --unit m/s2 --scale 8 --channels 2"
                + " --channel 2 --json --value acceleration-rms --value acceleration-peak --format " + format);
        assertEquals(0, run.code(), run.err());
        assertEquals(3, run.numbers(1).get("acceleration-rms"), 1e-8);
        assertEquals(3, run.numbers(1).get("acceleration-peak"), 1e-8);
    }

    private static void put(ByteBuffer raw, String format, double value) {
        switch (format.substring(0, 3)) {
            case "s16" -> raw.putShort((short) (value * 0x1p15));
            case "s32" -> raw.putInt((int) (value * 0x1p31));
            case "f32" -> raw.putFloat((float) value);
            case "f64" -> raw.putDouble(value);
            default -> {
                int whole = (int) (value * 0x1p23);
                boolean isLittle = format.endsWith("le");
                raw.put((byte) (isLittle ? whole : whole >> 16)).put((byte) (whole >> 8))
                        .put((byte) (isLittle ? whole >> 16 : whole));
            }
        }
    }

    @Test
    void whatHasNotSettledIsSaidAndHasNoNumber() throws IOException {
        Run run = run(tones(25_600, 1, 50), RAW_25600 + "--interval 0.25 --value velocity-rms-10-1000Hz --json");
        assertEquals(0, run.code());
        assertFalse(run.numbers(1).containsKey("velocity-rms-10-1000Hz"));
        assertTrue(run.lines().get(1).contains("\"quality\":\"settling\""), run.out());
        assertTrue(run.lines().get(1).contains("{\"velocity-rms-10-1000Hz\":\"not settled\"}"), run.out());
        assertEquals(2.2508 * 0.99997, run.numbers(3).get("velocity-rms-10-1000Hz"), 0.01);
    }

    @Test
    void theIntervalThatTheEndCutsIsSaid() throws IOException {
        Run run = run(tones(25_600 + 2560, 1, 50), RAW_25600);
        assertEquals(0, run.code());
        assertEquals(3, run.lines().size());
        assertTrue(run.lines().get(2).startsWith("1 s  partial, 0.1 s  velocity-rms-10-1000Hz 2.2"), run.out());
        assertTrue(run.lines().get(1).startsWith("0 s  velocity-rms-10-1000Hz 2.2"), run.out());
    }

    @Test
    void aLimitThatIsReachedIsToldByLineAndExitCode() {
        double[] louder = tones(3 * 25_600, 1, 50);
        for (int i = 25_600; i < louder.length; i++) {
            louder[i] *= 3;
        }
        String line = RAW_25600 + "--value kurtosis --alarm velocity-rms-10-1000Hz=4.5";
        Run run = run(louder, line);
        assertEquals(MeterCommand.ALARM, run.code());
        assertEquals("", run.err());
        assertFalse(run.lines().get(1).contains("ALARM"), run.out());
        assertTrue(run.lines().get(3).startsWith("2 s  ALARM  kurtosis 1.50, velocity-rms-10-1000Hz 6.75 mm/s above"
                + " 4.5"), run.out());
        assertEquals(MeterCommand.MEASURED, run(tones(25_600, 1, 50), line).code());
    }

    /** A limit that was held against nothing isn't kept: no interval, or none of which half was measured. */
    @Test
    void aLimitHeldAgainstNothingIsNoGoodNews() {
        Run run = run(tones(10_000, 100, 50), RAW_25600 + "--value kurtosis --alarm acceleration-rms=4.5");
        assertEquals(MeterCommand.PARTS_LEFT_OUT, run.code());
        assertEquals("The limit of acceleration-rms was held against no interval\n", run.err());
    }

    @Test
    void deadAndOverloadedIntervalsRaiseNoAlarmAndAreNoGoodNews() {
        Run dead = run(new double[51_200], RAW_25600 + "--alarm acceleration-rms=1");
        assertEquals(MeterCommand.NOTHING_MEASURED, dead.code());
        assertEquals("0 s  no signal  all samples are equal", dead.lines().get(1));
        byte[] clipped = new byte[2 * 25_600];
        for (int i = 0; i < 25_600; i++) {
            int value = (int) Math.max(-32768, Math.min(32767, 40_000 * Math.sin(0.01 * i)));
            clipped[2 * i] = (byte) value;
            clipped[2 * i + 1] = (byte) (value >> 8);
        }
        Run run = run(new ByteArrayInputStream(clipped), "- --rate 25600 --format s16le --unit g --scale 5"
                + " --alarm velocity-rms-10-1000Hz=0.1");
        assertEquals(MeterCommand.PARTS_LEFT_OUT, run.code());
        assertTrue(run.lines().get(1).startsWith("0 s  overloaded  velocity-rms"), run.out());
        assertTrue(run.err().startsWith("1 interval(s) without signal or overloaded\n"), run.err());
    }

    @ParameterizedTest
    @CsvSource({"NaN", "Infinity", "-Infinity", "1e71"})
    void aBadSampleIsNamedAndBecomesNoValue(double bad) {
        double[] samples = tones(2 * 25_600, 1, 50);
        samples[30_000] = bad;
        Run run = run(samples, RAW_25600 + "--value acceleration-rms");
        assertEquals(MeterCommand.PARTS_LEFT_OUT, run.code());
        assertEquals("Measured up to there only: sample 30000 must be a number within ±1e70 m/s²: " + bad + "\n",
                run.err());
        assertEquals(List.of("0 s  acceleration-rms 0.707 m/s2", "1 s  partial, 0.171875 s  acceleration-rms 0.703 m/s2"),
                run.lines().subList(1, 3));
        samples[0] = bad;
        assertEquals(MeterCommand.NOTHING_MEASURED, run(samples, RAW_25600).code());
    }

    @Test
    void aSampleThatIsCutOffIsNamed() {
        Run run = run(new ByteArrayInputStream(new byte[25_600 * 3 + 2]), "- --rate 25600 --format s24le --unit g");
        assertTrue(run.err().startsWith("Measured up to there only: sample 25600 is cut off: 2 of 3 bytes\n"), run.err());
    }

    /** Hands out one byte at a time, as a slow line does. */
    @Test
    void bytesThatTrickleGiveTheSameLines() {
        ByteBuffer bytes = ByteBuffer.allocate(8 * 6000).order(ByteOrder.LITTLE_ENDIAN);
        Arrays.stream(tones(6000, 1, 50)).forEach(bytes::putDouble);
        InputStream trickle = new ByteArrayInputStream(bytes.array()) {
            @Override
            public synchronized int read(byte[] out, int offset, int length) {
                return super.read(out, offset, Math.min(1, length));
            }
        };
        String line = RAW_25600 + "--interval 0.1";
        assertEquals(run(tones(6000, 1, 50), line), run(trickle, line));
    }

    /** Endless input ends when nobody reads the lines any more. */
    @Test
    void endlessInputEndsWithItsReader() {
        InputStream endless = new InputStream() {
            private int next;

            @Override
            public int read() {
                return next++ * 31 & 0x3f;
            }
        };
        StringBuilder out = new StringBuilder();
        int code = new MeterCommand(endless, out::append, text -> { }, () -> out.length() > 2000)
                .run("- --rate 1000 --format s16be --unit g --value kurtosis --interval 10".split(" "));
        assertEquals(MeterCommand.MEASURED, code);
        assertTrue(out.length() > 2000 && out.length() < 2100, out.toString());
    }

    @Test
    void filesAreReadAsASurveyReadsThem() throws IOException {
        Path wav = temp.resolve("a.wav");
        WavFile.write(Waveform.ofSi(Quantity.ACCELERATION, 25_600, tones(25_600, 9.80665, 50)), wav, Unit.G, 4,
                SampleFormat.INTEGER_24);
        Run run = run(InputStream.nullInputStream(), wav + " --unit g --scale 4 --value acceleration-rms");
        assertEquals("a.wav, 24-bit whole numbers of ±4 g full scale, 25600 Hz, intervals of 1 s\n"
                + "0 s  acceleration-rms 6.93 m/s2\n", run.out());
        Folders.Run whole = Folders.run("--meter", wav, "--unit", "g", "--scale", 4, "--value", "acceleration-rms");
        assertEquals(new Folders.Run(0, run.out(), ""), whole);
        Path csv = temp.resolve("b.csv");
        Files.writeString(csv, "time;a;b\n" + "0;1;2\n0,01;3;5\n0,02;1;2\n0,03;3;5\n");
        Run text = run(InputStream.nullInputStream(), csv + " --unit m/s2 --channel 2 --value acceleration-rms"
                + " --interval 0.04");
        assertEquals("b.csv, text in m/s², 100 Hz, intervals of 0.04 s\n0 s  acceleration-rms 1.50 m/s2\n", text.out());
    }

    @Test
    void aFileThatBreaksOffIsMeasuredUpToThere() throws IOException {
        Path csv = temp.resolve("a.csv");
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 10_000; i++) {
            text.append(i % 2).append('\n');
        }
        Files.writeString(csv, text + "oops\n", StandardCharsets.US_ASCII);
        Run run = run(InputStream.nullInputStream(), csv + " --unit g --rate 1000 --value acceleration-rms");
        assertEquals(MeterCommand.PARTS_LEFT_OUT, run.code());
        assertTrue(run.err().startsWith("Measured up to there only: a.csv: line 10001"), run.err());
        assertTrue(run.lines().get(1).startsWith("0 s  acceleration-rms 4.90 m/s2"), run.out());
    }

    @Test
    void whatTheSampleRateDoesNotAllowIsLeftOutAndSaid() {
        Run run = run(tones(1000, 1, 50), "- --rate 500 --format f64le --unit m/s2");
        assertEquals(MeterCommand.PARTS_LEFT_OUT, run.code());
        assertTrue(run.err().startsWith(
                "velocity-rms-10-1000Hz is left out: needs a sample rate of at least 2500 Hz: 500 Hz\n"), run.err());
        assertTrue(run.lines().get(1).startsWith("0 s  acceleration-rms"), run.out());
        Run none = run(tones(1000, 1, 50), "- --rate 500 --format f64le --unit m/s2 --value velocity-rms-10-1000Hz");
        assertEquals(MeterCommand.NOTHING_MEASURED, none.code());
        assertEquals("", none.out());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        --unit g | --meter needs a FILE, or - for standard input
        a b --unit g | FILE may be given once only; it was given as a
        a | --unit must be one of acceleration, m/s2, g, mg, mm/s2, in/s2; it isn't given
        a --unit mm/s | --unit must be one of acceleration, m/s2, g, mg, mm/s2, in/s2: mm/s
        a --unit g --frobnicate | unknown option: --frobnicate
        a --unit g --scale 0 | --scale must not be 0
        a --unit g --scale NaN | --scale needs a number from -1e12 to 1e12: NaN
        a --unit g --unit g | --unit may be given once only
        a --unit | --unit needs a value behind it
        a --unit g --interval 0 | --interval needs a number from 1e-6 to 86400: 0
        a --unit g --format s16le | --format and --channels are for standard input only; a file tells its own
        - --unit g | standard input needs --rate and --format
        - --unit g --rate 1 --format s8 | --format must be one of s16le, s24le, s32le, f32le, f64le, s16be
        - --unit g --rate 1 --format s16le --channels 2 | --channels needs --channel beside it
        - --unit g --rate 1 --format s16le --channels 2 --channel 3 | --channel must be from 1 to 2, the number of
        - --unit g --rate 1 --format s16le --interval 0.1 | --interval must hold from 1 to 1073741824 samples at 1 Hz
        a --unit g --channel 0 | --channel needs a whole number from 1 to 9999: 0
        a --unit g --value skewness | no value of a meter: skewness; there are acceleration-rms,
        a --unit g --value velocity-rms-1000-10Hz | no value of a meter: velocity-rms-1000-10Hz; there are
        a --unit g --value velocity-rms-0-10Hz | no value of a meter: velocity-rms-0-10Hz; there are
        a --unit g --alarm kurtosis | --alarm needs NAME=LIMIT: kurtosis
        a --unit g --alarm kurtosis=x | --alarm kurtosis needs a number from 0 to 1e12: x
        a --unit g --alarm kurtosis=3 --alarm kurtosis=4 | --alarm may be given once only for kurtosis
        """)
    void wrongUseIsToldWithTheUsage(String line, String message) {
        Run run = run(InputStream.nullInputStream(), line);
        assertEquals(MeterCommand.WRONG_USE, run.code());
        assertTrue(run.err().startsWith(message), run.err());
        assertTrue(run.err().endsWith(MeterCommand.USAGE + "\n"), run.err());
        assertEquals("", run.out());
    }

    @Test
    void nothingThereIsSaid() {
        Run run = run(InputStream.nullInputStream(), "nowhere.wav --unit g");
        assertEquals(MeterCommand.NOTHING_MEASURED, run.code());
        assertTrue(run.err().startsWith("Nothing was measured: nowhere.wav: "), run.err());
        assertEquals(MeterCommand.NOTHING_MEASURED, run(InputStream.nullInputStream(), RAW_25600).code());
        assertEquals(new Run(0, MeterCommand.USAGE, ""), run(InputStream.nullInputStream(), "--help"));
    }
}
