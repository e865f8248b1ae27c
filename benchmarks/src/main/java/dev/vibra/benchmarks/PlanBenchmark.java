package dev.vibra.benchmarks;

import dev.vibra.benchmarks.work.Filters;
import dev.vibra.benchmarks.work.Route;
import dev.vibra.benchmarks.work.RouteRecord;
import dev.vibra.integration.BandLimitingChain;
import dev.vibra.signal.Waveform;
import dev.vibra.transform.RealTransform;
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
 * What the making of plans costs that values make for each call.
 *
 * <p>{@code mvn -q -pl benchmarks -am -DskipTests -Pjmh package -Djmh.args=PlanBenchmark}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class PlanBenchmark {
    private final Waveform wave = RouteRecord.waveform();

    /** Tables for a record of 102,400 samples. */
    @Benchmark
    public RealTransform transform() {
        return RealTransform.of(RouteRecord.LENGTH);
    }

    /** Design of the chain of a severity instrument. */
    @Benchmark
    public BandLimitingChain chain() {
        return Filters.newChain();
    }

    /** All plans of a route record, and one averaged spectrum. */
    @Benchmark
    public Route route() {
        return Route.of("plans", wave);
    }
}
