package dev.vibra.benchmarks;

import dev.vibra.benchmarks.work.Filters;
import dev.vibra.benchmarks.work.RouteRecord;
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
 * What filters in the time domain cost for a recording of 102,400 samples.
 *
 * <p>{@code mvn -q -pl benchmarks -am -DskipTests -Pjmh package -Djmh.args=FilterBenchmark}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class FilterBenchmark {
    private final Filters filters = new Filters(RouteRecord.waveform().samples());

    /** Four second-order sections. */
    @Benchmark
    public double[] cascade() {
        return filters.cascade();
    }

    /** Integration and band limits of a severity instrument. */
    @Benchmark
    public double[] chain() {
        return filters.chain();
    }

    /** 128 taps, signal as a whole. */
    @Benchmark
    public double[] wholeFir() {
        return filters.wholeFir();
    }

    /** 128 taps, as of a stream. */
    @Benchmark
    public double[] fir() {
        return filters.fir();
    }
}
