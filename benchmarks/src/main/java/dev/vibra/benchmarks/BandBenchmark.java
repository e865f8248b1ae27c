package dev.vibra.benchmarks;

import dev.vibra.bandmap.BandCriterion;
import dev.vibra.bandmap.BandMap;
import dev.vibra.bandmap.BandMapPlan;
import dev.vibra.cyclic.SpectralCoherencePlan;
import dev.vibra.quantity.Quantity;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
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
 * What the choice of a band costs for one recording at 25,600 Hz: maps of 108 bands down to 400 Hz, and the spectral
 * coherence of 64 and 128 carriers for cyclic frequencies up to 1000 Hz. Plans are made beforehand.
 *
 * <p>{@code mvn -q -pl benchmarks -am -DskipTests -Pjmh package -Djmh.args=BandBenchmark}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class BandBenchmark {
    private static final double RATE = 25_600;

    /** Recordings of 4 s and of a little more. */
    @Param({"102400", "120000"})
    public int length;

    private double[] samples;
    private BandMapPlan map;
    private SpectralCoherencePlan coarse;
    private SpectralCoherencePlan fine;
    private double[] out;

    /** Makes the input of a fixed seed. */
    @Setup
    public void setUp() {
        samples = Synthesis.silence(Quantity.ACCELERATION, RATE, length).noise(1, 1)
                .impacts(ImpactTrain.of(87.3, 3, 4200, 0.05), 1).waveform().samples();
        map = BandMapPlan.of(length, RATE, 400);
        double least = 8 * RATE / length;
        coarse = SpectralCoherencePlan.of(length, RATE, Math.max(184, least), 1000);
        fine = SpectralCoherencePlan.of(length, RATE, Math.max(92, least), 1000);
        out = new double[fine.carriers() * fine.lines()];
    }

    /** Map of spectral kurtosis. */
    @Benchmark
    public BandMap kurtosis() {
        return map.map(samples, 0, BandCriterion.SPECTRAL_KURTOSIS);
    }

    /** Map of the negentropy of the squared envelope's lines. */
    @Benchmark
    public BandMap lines() {
        return map.map(samples, 0, BandCriterion.ENVELOPE_SPECTRUM_NEGENTROPY);
    }

    /** Maps of all criteria. */
    @Benchmark
    public List<BandMap> all() {
        return map.maps(samples, 0, List.of(BandCriterion.values()));
    }

    /** Coherence of 64 carriers. */
    @Benchmark
    public double[] coherenceOf64() {
        return coarse.process(samples, 0, out);
    }

    /** Coherence of 128 carriers. */
    @Benchmark
    public double[] coherenceOf128() {
        return fine.process(samples, 0, out);
    }
}
