package dev.vibra.benchmarks;

import dev.vibra.transform.RealTransform;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.jtransforms.fft.DoubleFFT_1D;
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
 * The composed transform against JTransforms' own of the same length.
 *
 * <p>{@code mvn -q -pl benchmarks -am -DskipTests -Pjmh package -Djmh.args=TransformBenchmark}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class TransformBenchmark {
    /** Block lengths and a whole recording of 4 s; 121,991 has large prime factors. */
    @Param({"1024", "4096", "12000", "25600", "65536", "102400", "131072", "121991"})
    public int length;

    private double[] samples;
    private double[] spectrum;
    private RealTransform composed;
    private DoubleFFT_1D direct;

    /** Makes the input of a fixed seed. */
    @Setup
    public void setUp() {
        samples = new Random(1).doubles(length, -1, 1).toArray();
        composed = RealTransform.of(length);
        spectrum = new double[2 * composed.lines()];
        direct = new DoubleFFT_1D(length);
    }

    /** The library's transform. */
    @Benchmark
    public double[] composed() {
        return composed.forward(samples, 0, spectrum);
    }

    /** JTransforms with the threads of its default settings; includes the copy that an in-place transform needs. */
    @Benchmark
    public double[] direct() {
        System.arraycopy(samples, 0, spectrum, 0, length);
        direct.realForward(spectrum);
        return spectrum;
    }
}
