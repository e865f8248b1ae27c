package dev.vibra.benchmarks;

import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.proportion.UnknownBearing;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
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
 * What the diagnosis of a rolling bearing costs: a recording of ten seconds at 12,000 Hz, 300 turns.
 *
 * <p>{@code mvn -q -pl benchmarks -am -DskipTests -Pjmh package -Djmh.args=BearingBenchmark}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class BearingBenchmark {
    private static final KinematicFrequencies RATES = BearingGeometry.of(9, 7.94, 39.04, 0).frequencies(30, 0);

    private final Waveform sound = BearingSignal.of(RATES).withShaftTones(1).waveform(12_000, 120_000, 1);
    private final Waveform defective = BearingSignal.of(RATES).withShaftTones(1)
            .withDefect(BearingElement.INNER_RACE, 10).waveform(12_000, 120_000, 1);

    /** Verdicts on a sound bearing. */
    @Benchmark
    public BearingDiagnosis soundBearing() {
        return BearingDiagnosis.of(sound, RATES);
    }

    /** Verdicts on a bearing with a defect of its inner race. */
    @Benchmark
    public BearingDiagnosis defectiveBearing() {
        return BearingDiagnosis.of(defective, RATES);
    }

    /** Proportions of a bearing that isn't described. */
    @Benchmark
    public UnknownBearing unknownBearing() {
        return UnknownBearing.of(defective, RotationSpeed.ofHertz(30));
    }
}
