package dev.vibra.benchmarks;

import dev.vibra.benchmarks.work.RouteRecord;
import dev.vibra.envelope.EnvelopePlan;
import dev.vibra.integration.SpectralIntegration;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.record.BandLevel;
import dev.vibra.record.WholeRecord;
import dev.vibra.signal.Waveform;
import dev.vibra.transform.PlanCache;
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
 * What a motion or an envelope of a whole route record costs sample by sample, and a level with and without a cache of
 * plans.
 *
 * <p>{@code mvn -q -pl benchmarks -am -DskipTests -Pjmh package -Djmh.args=MotionBenchmark}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class MotionBenchmark {
    private final Waveform wave = RouteRecord.waveform();
    private final double[] samples = wave.samples();
    private final double[] out = new double[RouteRecord.LENGTH];
    private final PlanCache plans = PlanCache.ofSize(4);
    private final SpectralIntegration integration = newIntegration();
    private final EnvelopePlan envelope =
            EnvelopePlan.of(RouteRecord.LENGTH, RouteRecord.RATE, RouteRecord.ENVELOPE);

    private static SpectralIntegration newIntegration() {
        return SpectralIntegration.of(RouteRecord.LENGTH, RouteRecord.RATE, Quantity.ACCELERATION, Quantity.VELOCITY,
                RouteRecord.VELOCITY);
    }

    /** Making of a plan of integration. */
    @Benchmark
    public SpectralIntegration integrationPlan() {
        return newIntegration();
    }

    /** Velocity of the whole record. */
    @Benchmark
    public double[] integration() {
        return integration.process(samples, 0, out);
    }

    /** Envelope of a band. */
    @Benchmark
    public double[] envelope() {
        return envelope.process(samples, 0, out);
    }

    /** Rms of the velocity sample by sample, plan included. */
    @Benchmark
    public Level velocity() {
        return wave.velocity(RouteRecord.VELOCITY).rms();
    }

    /** The same with a cache of plans. */
    @Benchmark
    public Level velocityWithPlans() {
        return wave.velocity(RouteRecord.VELOCITY, plans).rms();
    }

    /** Rms of the velocity by the transform of the record, plans included. */
    @Benchmark
    public BandLevel level() {
        return WholeRecord.of(wave).rms(Quantity.VELOCITY, RouteRecord.VELOCITY);
    }

    /** The same with a cache of plans. */
    @Benchmark
    public BandLevel levelWithPlans() {
        return WholeRecord.of(wave, plans).rms(Quantity.VELOCITY, RouteRecord.VELOCITY);
    }
}
