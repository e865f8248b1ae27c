package dev.vibra.benchmarks;

import dev.vibra.envelope.EnvelopePlan;
import dev.vibra.integration.BandLimitingChain;
import dev.vibra.integration.SpectralIntegration;
import dev.vibra.level.Moments;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.synthesis.Synthesis;
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
 * What one recording of 4 s at 25,600 Hz costs: chain, integration, spectrum, envelope, moments.
 *
 * <p>{@code mvn -q -pl benchmarks -am -DskipTests -Pjmh package -Djmh.args=RecordingBenchmark}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class RecordingBenchmark {
    private static final int LENGTH = 102_400;
    private static final double RATE = 25_600;
    private static final Band SEVERITY = Band.of(10, 1000);

    private final Waveform wave = Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).tone(3, 24.7, 0).noise(1, 1)
            .waveform();
    private final double[] samples = wave.samples();
    private final double[] out = new double[LENGTH];
    private final BandLimitingChain chain =
            BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, SEVERITY, RATE);
    private final SpectralIntegration integration =
            SpectralIntegration.of(LENGTH, RATE, Quantity.ACCELERATION, Quantity.VELOCITY, SEVERITY);
    private final EnvelopePlan envelope = EnvelopePlan.of(LENGTH, RATE, Band.of(2000, 6000));

    /** Integration and band limits by ISO 2954 in the time domain. */
    @Benchmark
    public double[] chain() {
        chain.process(samples, 0, out, 0, LENGTH);
        return out;
    }

    /** Integration of the whole recording in the frequency domain. */
    @Benchmark
    public double[] integration() {
        return integration.process(samples, 0, out);
    }

    /** Averaged spectrum with the default settings, plan included. */
    @Benchmark
    public Spectrum spectrum() {
        return Spectrum.of(wave);
    }

    /** Envelope of a band. */
    @Benchmark
    public double[] envelope() {
        return envelope.process(samples, 0, out);
    }

    /** Mean, extremes and moments. */
    @Benchmark
    public Moments moments() {
        return Moments.of(samples);
    }
}
