package dev.vibra.benchmarks;

import dev.vibra.benchmarks.work.Meters;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What one second of one channel at 51.2 kHz costs a meter that takes it block by block and is read once.
 *
 * <p>{@code mvn -q -pl benchmarks -am -DskipTests -Pjmh package -Djmh.args=MeterBenchmark}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class MeterBenchmark {
    private final Meters meters = new Meters(Meters.second().samples());

    /** Levels of acceleration and velocity. */
    @Benchmark
    public double[] level() {
        return meters.level();
    }

    /** 3200 lines up to 20 kHz. */
    @Benchmark
    public double[] spectrum() {
        return meters.spectrum();
    }

    /** Envelope of a band and its spectrum. */
    @Benchmark
    public double[] envelope() {
        return meters.envelope();
    }
}
