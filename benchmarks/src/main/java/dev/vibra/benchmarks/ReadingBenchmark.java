package dev.vibra.benchmarks;

import dev.vibra.benchmarks.work.Reading;
import dev.vibra.benchmarks.work.RouteRecord;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.CountConversion;
import dev.vibra.signal.Waveform;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What the reading of a file of 102,400 samples costs.
 *
 * <p>{@code mvn -q -pl benchmarks -am -DskipTests -Pjmh package -Djmh.args=ReadingBenchmark}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class ReadingBenchmark {
    private Path folder;
    private Reading files;
    private final CountConversion conversion = CountConversion.of(Unit.M_PER_S2, 50 / 0x1p15);
    private final short[] counts = new short[RouteRecord.LENGTH];
    private final double[] converted = new double[RouteRecord.LENGTH];

    /** Writes the files. */
    @Setup
    public void setUp() throws IOException {
        folder = Files.createTempDirectory("reading");
        files = new Reading(folder);
        Waveform wave = RouteRecord.waveform();
        files.write(wave);
        for (int i = 0; i < counts.length; i++) {
            counts[i] = (short) (wave.at(i) / 50 * 0x1p15);
        }
    }

    /** Deletes the files. */
    @TearDown
    public void tearDown() throws IOException {
        try (Stream<Path> written = Files.list(folder)) {
            for (Path file : written.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }

    /** Numbers of a converter, without a file. */
    @Benchmark
    public double[] counts() {
        return conversion.toSi(counts, 0, converted, 0, counts.length);
    }

    /** CSV, time and value. */
    @Benchmark
    public Waveform csv() {
        return files.csv();
    }

    /** CSV, time and value with all digits. */
    @Benchmark
    public Waveform csvAllDigits() {
        return files.csvAllDigits();
    }

    /** CSV, values only. */
    @Benchmark
    public Waveform csvColumn() {
        return files.csvColumn();
    }

    /** WAV, 16 bits. */
    @Benchmark
    public Waveform wav16() {
        return files.wav16();
    }

    /** WAV, 64 bits. */
    @Benchmark
    public Waveform wav64() {
        return files.wav64();
    }

    /** WAV, 16 bits, by a loop that checks nothing. */
    @Benchmark
    public double[] plainWav16() {
        return files.plainWav16();
    }
}
