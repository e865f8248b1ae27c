package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.evidence.Remark;
import dev.vibra.io.RecordingFileException;
import dev.vibra.io.Recordings;
import dev.vibra.io.SampleFormat;
import dev.vibra.io.WavFile;
import dev.vibra.quality.RecordingCheck;
import dev.vibra.quality.RecordingQuality;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;

/** Files give back what was written; the quality gate passes sound recordings and finds injected faults. */
class RecordingProperties {
    /** What is done with a file that is taken away afterwards. */
    private interface Use {
        void with(Path file) throws IOException;
    }

    private static void withFile(String ending, Use use) throws IOException {
        Path file = Files.createTempFile("properties", ending);
        try {
            use.with(file);
        } finally {
            Files.deleteIfExists(file);
        }
    }

    private static Waveform wave(Unit unit, double rate, int length, long seed) {
        return Waveform.of(unit, rate, Signals.noise(length, seed));
    }

    @Property(tries = 60)
    void wavKeepsSamplesWithinHalfAStep(@ForAll SampleFormat format, @ForAll Unit unit, @ForAll long seed,
            @ForAll @IntRange(min = 1, max = 300) int length, @ForAll @IntRange(min = 1, max = 200_000) int rate,
            @ForAll @DoubleRange(min = 1.01, max = 500) double scale) throws IOException {
        Waveform wave = wave(unit, rate, length, seed);
        double step = switch (format) {
            case INTEGER_16 -> 0x1p-15;
            case INTEGER_24 -> 0x1p-23;
            case INTEGER_32 -> 0x1p-31;
            case FLOAT_32 -> 0x1p-24;
            case FLOAT_64 -> 0x1p-52;
        };
        withFile(".wav", file -> {
            WavFile.write(wave, file, unit, scale, format);
            assertEquals(format, Recordings.sampleFormat(file).orElseThrow());
            Waveform back = Recordings.read(file, unit, scale, 1);
            assertEquals(rate, back.sampleRateHertz());
            assertEquals(length, back.length());
            double[] before = wave.in(unit);
            double[] after = back.in(unit);
            for (int i = 0; i < length; i++) {
                // Half a step of the format, and rounding of the scaling by unit and scale, there and back.
                assertEquals(before[i], after[i], 0.5 * step * scale * 1.0001 + 4e-16);
            }
        });
    }

    @Property(tries = 60)
    void csvKeepsEverySample(@ForAll Unit unit, @ForAll long seed, @ForAll @IntRange(min = 3, max = 200) int length,
            @ForAll @IntRange(min = 1, max = 50_000) int rate) throws IOException {
        Waveform wave = wave(unit, rate, length, seed);
        withFile(".csv", file -> {
            Recordings.write(wave, file, unit);
            Waveform back = Recordings.read(file, unit);
            assertEquals(rate, back.sampleRateHertz(), 1e-9 * rate);
            assertEquals(wave.quantity(), back.quantity());
            double[] before = wave.in(unit);
            double[] after = back.in(unit);
            for (int i = 0; i < length; i++) {
                assertEquals(before[i], after[i], 4e-16); // division and multiplication by the unit round once each
            }
        });
    }

    @Property(tries = 60)
    void aCutWavIsRefused(@ForAll long seed, @ForAll SampleFormat format,
            @ForAll @IntRange(min = 1, max = 50) int missing)
            throws IOException {
        Waveform wave = wave(Unit.G, 1000, 60, seed);
        withFile(".wav", file -> {
            WavFile.write(wave, file, Unit.G, 2, format);
            byte[] bytes = Files.readAllBytes(file);
            Files.write(file, Arrays.copyOf(bytes, bytes.length - missing));
            RecordingFileException refused = assertThrows(RecordingFileException.class,
                    () -> Recordings.read(file, Unit.G));
            assertTrue(refused.getMessage().startsWith(file.getFileName().toString()), refused.getMessage());
        });
    }

    @Property(tries = 60)
    void aTextCellThatIsNoNumberIsRefusedByItsLine(@ForAll long seed, @ForAll @IntRange(min = 3, max = 40) int row)
            throws IOException {
        Waveform wave = wave(Unit.MM_PER_S, 1000, 60, seed);
        withFile(".csv", file -> {
            Recordings.write(wave, file, Unit.MM_PER_S);
            List<String> lines = Files.readAllLines(file);
            lines.set(row, lines.get(row).replaceFirst(",.*", ",oops"));
            Files.write(file, lines);
            RecordingFileException refused = assertThrows(RecordingFileException.class,
                    () -> Recordings.read(file, Unit.MM_PER_S));
            assertTrue(refused.getMessage().contains("line " + (row + 1)), refused.getMessage());
        });
    }

    private static Synthesis machine(double hertz, double level, long seed) {
        return Synthesis.silence(Quantity.ACCELERATION, 6400, 12_800).tone(level, hertz, 0.3)
                .tone(0.5 * level, 2 * hertz, 1.1).tone(0.3 * level, 3 * hertz, 2).noise(0.2 * level, seed);
    }

    private static List<String> doubts(Synthesis signal) {
        RecordingQuality quality = RecordingCheck.of(signal.waveform());
        return quality.remarks().stream().filter(Remark::disqualifying).map(Remark::code).toList();
    }

    /**
     * Segments of a tenth of a second hold four periods and more: they differ by less than a tenth, which is let
     * pass.
     */
    @Property(tries = 25)
    void cleanRecordingsAreSound(@ForAll @DoubleRange(min = 40, max = 100) double hertz,
            @ForAll @DoubleRange(min = 0.5, max = 20) double level, @ForAll long seed) {
        assertEquals(List.of(), doubts(machine(hertz, level, seed)));
    }

    /**
     * Sines crowd at their extremes, as no other sound signal does. Left out are those whose period hits a multiple of
     * a half, quarter or sixth of a sample but for a hundredth, or of which up to 24 are a whole number of samples long
     * but for two thousandths: without any noise they dwell at a few values, now and then at an extreme (380.54 Hz,
     * eleven periods of which are 185.0 samples).
     */
    @Property(tries = 100)
    void cleanSinesAreNotClipped(@ForAll @DoubleRange(min = 10, max = 700) double hertz,
            @ForAll @DoubleRange(min = 0, max = 6.28) double phase,
            @ForAll @DoubleRange(min = 1e-4, max = 1e-3) @Scale(5) double step) {
        for (int parts = 2; parts <= 6; parts += 2) {
            double period = parts * 6400 / hertz;
            Assume.that(Math.abs(period - Math.rint(period)) > 0.02);
        }
        for (int periods = 1; periods <= 24; periods++) {
            double length = periods * 6400 / hertz;
            Assume.that(Math.abs(length - Math.rint(length)) > 0.002);
        }
        Synthesis sine = Synthesis.silence(Quantity.ACCELERATION, 6400, 12_800).tone(3, hertz, phase);
        assertFalse(doubts(sine).contains("clipping"));
        assertFalse(doubts(sine.quantise(step)).contains("clipping"));
    }

    /**
     * As deep as a quarter of a per cent of the samples at one rail, which is 0.8 to 0.9 of the peak of such a signal.
     */
    @Property(tries = 100)
    void clippingIsFound(@ForAll @DoubleRange(min = 24, max = 200) double hertz,
            @ForAll @DoubleRange(min = 0.5, max = 20) double level, @ForAll long seed,
            @ForAll @DoubleRange(min = 0.2, max = 0.99) double share) {
        Synthesis signal = machine(hertz, level, seed);
        double[] x = signal.waveform().samples();
        double limit = share * signal.waveform().peak().si();
        long above = Arrays.stream(x).filter(v -> v > limit).count();
        long below = Arrays.stream(x).filter(v -> v < -limit).count();
        if (Math.max(above, below) >= 32) {
            assertTrue(doubts(signal.clip(limit)).contains("clipping"), above + " above, " + below + " below");
        }
    }

    @Property(tries = 25)
    void dropOutIsFound(@ForAll @DoubleRange(min = 24, max = 100) double hertz, @ForAll long seed,
            @ForAll @DoubleRange(min = 0.1, max = 1.5) double from,
            @ForAll @DoubleRange(min = 0.01, max = 0.05) double seconds) {
        assertTrue(doubts(machine(hertz, 3, seed).dropOut(from, seconds)).contains("drop-out"));
    }

    @Property(tries = 25)
    void coarseQuantisationIsFound(@ForAll @DoubleRange(min = 24, max = 100) double hertz, @ForAll long seed,
            @ForAll @DoubleRange(min = 0.1, max = 0.4) double share) {
        double peak = machine(hertz, 3, seed).waveform().peak().si();
        assertTrue(doubts(machine(hertz, 3, seed).quantise(share * peak)).contains("coarse-quantisation"));
    }

    @Property(tries = 40)
    void sensorEffectsDoWhatTheySay(@ForAll long seed, @ForAll @DoubleRange(min = 0.1, max = 2) double limit,
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double step) {
        Synthesis signal = Synthesis.silence(Quantity.VELOCITY, 1000, 500).noise(1, seed);
        double[] x = signal.waveform().samples();
        double[] clipped = signal.clip(limit).waveform().samples();
        double[] rounded = signal.quantise(step).waveform().samples();
        double[] biased = signal.bias(limit).waveform().samples();
        for (int i = 0; i < x.length; i++) {
            assertEquals(Math.abs(x[i]) <= limit ? x[i] : Math.copySign(limit, x[i]), clipped[i]);
            assertTrue(Math.abs(rounded[i] - x[i]) <= 0.5 * step * (1 + 1e-9));
            assertEquals(Math.rint(rounded[i] / step), rounded[i] / step, 1e-9);
            assertEquals(x[i] + limit, biased[i]);
        }
        assertEquals(signal.waveform(), Synthesis.silence(Quantity.VELOCITY, 1000, 500).noise(1, seed).waveform());
    }

    @Property(tries = 40)
    void synthesisAddsUp(@ForAll long seed, @ForAll @DoubleRange(min = 1, max = 400) double hertz) {
        Synthesis silence = Synthesis.silence(Quantity.ACCELERATION, 1000, 400);
        Waveform tone = silence.tone(2, hertz, 0.7).waveform();
        Waveform noise = silence.noise(0.5, seed).waveform();
        double[] both = silence.plus(tone).plus(noise).waveform().samples();
        Signals.assertClose(Signals.combined(tone.samples(), 1, noise.samples()), both, 1e-14);
    }
}
