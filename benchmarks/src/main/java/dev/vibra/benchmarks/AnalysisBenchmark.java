package dev.vibra.benchmarks;

import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.bearing.proportion.UnknownBearing;
import dev.vibra.benchmarks.work.Analyses;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.quality.RecordingQuality;
import dev.vibra.rotation.SpeedEstimate;
import dev.vibra.spectrum.PeakList;
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
 * What conclusions cost: whether a route record may be judged by, its speed, peaks and floor, and the diagnosis of a
 * rolling bearing by a recording of ten seconds at 12,000 Hz, 300 turns.
 *
 * <p>{@code mvn -q -pl benchmarks -am -DskipTests -Pjmh package -Djmh.args=AnalysisBenchmark}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class AnalysisBenchmark {
    private final Analyses analyses = new Analyses();

    /** Quality of a route record. */
    @Benchmark
    public RecordingQuality recordingCheck() {
        return analyses.quality();
    }

    /** Verdicts on a sound bearing. */
    @Benchmark
    public BearingDiagnosis soundBearing() {
        return analyses.soundBearing();
    }

    /** Verdicts on a bearing with a defect of its inner race. */
    @Benchmark
    public BearingDiagnosis defectiveBearing() {
        return analyses.defectiveBearing();
    }

    /** Proportions of a bearing that isn't described. */
    @Benchmark
    public UnknownBearing unknownBearing() {
        return analyses.unknownBearing();
    }

    /** Floor of 25,601 lines. */
    @Benchmark
    public NoiseFloor noiseFloor() {
        return analyses.noiseFloor();
    }

    /** The 20 highest peaks of 25,601 lines. */
    @Benchmark
    public PeakList peaks() {
        return analyses.peaks();
    }

    /** Speed of rotation without a tachometer. */
    @Benchmark
    public SpeedEstimate speed() {
        return analyses.speed();
    }
}
