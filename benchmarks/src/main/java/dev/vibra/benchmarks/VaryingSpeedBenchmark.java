package dev.vibra.benchmarks;

import dev.vibra.envelope.Envelope;
import dev.vibra.envelope.SquaredEnvelope;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.rotation.SynchronousResidual;
import dev.vibra.rotation.Tachometer;
import dev.vibra.rotation.TrackedAngle;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.SpeedProfile;
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
 * What a varying speed costs: a recording of 4 s at 25,600 Hz of a shaft that runs from 24 Hz to 25.2 Hz.
 *
 * <p>{@code mvn -q -pl benchmarks -am -DskipTests -Pjmh package -Djmh.args=VaryingSpeedBenchmark}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class VaryingSpeedBenchmark {
    private static final double RATE = 25_600;

    private final SpeedProfile profile = new SpeedProfile(RotationSpeed.ofHertz(24), RotationSpeed.ofHertz(25.2), 4);
    private final Waveform wave = Synthesis.silence(Quantity.ACCELERATION, RATE, 102_400).noise(1, 1)
            .order(1, 1, profile, 0).order(0.5, 2, profile, 0).waveform();
    private final ShaftAngle angle = angle();
    private final SquaredEnvelope envelope = Envelope.squared(wave, Band.of(2000, 4000));

    private ShaftAngle angle() {
        Waveform pulses = profile.tachometer(RATE, 1);
        return ShaftAngle.of(Tachometer.fitting(pulses).pulses(pulses), 1);
    }

    /** Angle by the first ten multiples of the speed. */
    @Benchmark
    public TrackedAngle tracked() {
        return TrackedAngle.of(wave, profile.meanSpeed());
    }

    /** Whole recording at mean speed. */
    @Benchmark
    public Waveform waveformAtMeanSpeed() {
        return angle.atMeanSpeed(wave);
    }

    /** Squared envelope of an octave at mean speed. */
    @Benchmark
    public SquaredEnvelope envelopeAtMeanSpeed() {
        return angle.atMeanSpeed(envelope);
    }

    /** What repeats with no shaft. */
    @Benchmark
    public SynchronousResidual residual() {
        return SynchronousResidual.of(wave, angle);
    }
}
