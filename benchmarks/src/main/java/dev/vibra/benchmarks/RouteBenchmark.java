package dev.vibra.benchmarks;

import dev.vibra.benchmarks.work.Route;
import dev.vibra.benchmarks.work.RouteRecord;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What one recording of a measuring route costs, stage by stage and whole: 4 s at 25,600 Hz, with plans made
 * beforehand and with immutable values.
 *
 * <p>{@code mvn -q -pl benchmarks -am -DskipTests -Pjmh package -Djmh.args=RouteBenchmark}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class RouteBenchmark {
    /** Layer of the library. */
    @Param({"plans", "values"})
    public String layer;

    private final double[] figures = new double[Route.FIGURES];
    private Route route;

    /** Makes the recording, and the plans. */
    @Setup
    public void setUp() {
        route = Route.of(layer, RouteRecord.waveform());
    }

    /** Mean, extremes and moments. */
    @Benchmark
    public double[] moments() {
        return route.moments();
    }

    /** Averaged Hann spectrum of 8192-point blocks. */
    @Benchmark
    public double[] spectrum() {
        return route.spectrum();
    }

    /** The 20 highest peaks between the lines. */
    @Benchmark
    public double[] peaks() {
        return route.peaks();
    }

    /** Rms of the velocity. */
    @Benchmark
    public double[] velocity() {
        return route.velocity();
    }

    /** Peak-to-peak value of the displacement. */
    @Benchmark
    public double[] displacement() {
        return route.displacement();
    }

    /** Envelope spectrum of a band. */
    @Benchmark
    public double[] envelope() {
        return route.envelope();
    }

    /** Spectral kurtosis of 126 bands. */
    @Benchmark
    public double[] bandSearch() {
        return route.bandSearch();
    }

    /** The one transform of the record. */
    @Benchmark
    public Object transform() {
        return route.transform();
    }

    /** All of it. */
    @Benchmark
    public double[] record() {
        return route.record(figures);
    }
}
