package dev.vibra.symptom;

import static dev.vibra.symptom.Bench.fan;
import static dev.vibra.symptom.Bench.line;
import static dev.vibra.symptom.Bench.orders;
import static dev.vibra.symptom.Bench.quiet;
import static dev.vibra.symptom.Site.Kind.SHAFT;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.measuring.Direction;
import dev.vibra.point.PointExamination;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Multiples of the speed; sizes are those of the sines that the recordings are made of. */
class OrderQuestionsTest {
    private static Bench fanWith(String id, Synthesis signal) {
        return Bench.of(fan()).with(id, signal);
    }

    /** Of 2.8 mm/s seven tenths are 1.96. */
    @Test
    void aLineIsHighFromSevenTenthsOfTheBoundaryOn() {
        fanWith("P-H", orders(2.05)).seen("high 1 radial", SHAFT, "P-H");
        fanWith("P-H", orders(1.85)).notSeen("high 1 radial", SHAFT);
        fanWith("P-A", orders(2.05)).notMeasured("high 1 radial", SHAFT);
        fanWith("P-A", orders(2.05)).seen("high 1 axial", SHAFT, "P-A");
        fanWith("P-H", orders(1.5, 2.05)).seen("high 2 any", SHAFT, "P-H");
        Bench.of(MachineDescription.of("unknown")).with("P-H", orders(2.05)).notMeasured("high 1 radial", SHAFT);
        assertEquals("P-H: 1\u00d7 of 2.05 mm/s rms is 0.732 of the boundary B/C (2.8 mm/s rms)",
                fanWith("P-H", orders(2.05)).ask("high 1 radial", SHAFT).words());
    }

    @Test
    void thePointWithTheLargestLineDecidesWhichLineLeads() {
        Bench.of(fan()).with("P-H", orders(1, 0.2)).with("P-V", orders(0.1, 0.5)).seen("leads 1 radial", SHAFT, "P-H");
        Bench.of(fan()).with("P-H", orders(1, 0.2)).with("P-V", orders(0.1, 1.5)).notSeen("leads 1 radial", SHAFT);
        fanWith("P-H", line(orders(1), 61.3, 2, 0)).notSeen("leads 1 radial", SHAFT);
        fanWith("P-A", orders(1)).notMeasured("leads 1 radial", SHAFT);
    }

    @Test
    void aRatioCountsWhereTheLineMatters() {
        fanWith("P-H", orders(1, 0.55)).seen("ratio 2 1 0.5", SHAFT, "P-H");
        fanWith("P-H", orders(1, 0.45)).notSeen("ratio 2 1 0.5", SHAFT);
        fanWith("P-H", orders(0.1, 0.08, 2)).notSeen("ratio 2 1 0.5", SHAFT);
        fanWith("P-H", orders(0, 0.4)).seen("ratio 2 1 1", SHAFT, "P-H");
        fanWith("P-H", quiet(5)).notSeen("ratio 2 1 0.5", SHAFT);
        // Far below the boundary B/C of 2.8 mm/s no ratio matters.
        fanWith("P-H", orders(0.2, 0.2)).notSeen("ratio 2 1 0.5", SHAFT);
        assertTrue(fanWith("P-H", orders(1.6, 2.1)).ask("ratio 2 1 0.5", SHAFT).words()
                .startsWith("P-H: 2\u00d7 is 1.31 of 1\u00d7, 2.10 mm/s rms"));
    }

    /** A motor of two poles at 49.97 Hz: 2× lies 0.06 Hz beside twice the line frequency, which 8 s don't part. */
    @Test
    void twoLinesThatAreNotPartedSayNothingOfEither() {
        MachineDescription machine = fan().withTrain(DriveTrain.plain().withLineHertz(Bench.SHAFT + 0.03));
        Bench.of(machine).with("P-H", orders(1, 0.8)).notMeasured("ratio 2 1 0.5", SHAFT);
        Bench.of(machine).with("P-H", orders(1, 0.3)).notSeen("ratio 2 1 0.5", SHAFT);
    }

    @Test
    void aRowAsksForSeveralMultiplesThatBladesDoNotMake() {
        fanWith("P-H", orders(1, 0, 0.2, 0.2, 0.2)).seen("row 3 0.1", SHAFT, "P-H");
        fanWith("P-H", orders(1, 0, 0.2, 0.2, 0.05)).notSeen("row 3 0.1", SHAFT);
        fanWith("P-H", orders(1, 0, 0.2, 0.2, 0.2)).notSeen("row 6 0.1", SHAFT);
        MachineDescription bladed = fan().withTrain(DriveTrain.plain().withBlades(5));
        Bench.of(bladed).with("P-H", orders(1, 0, 0.2, 0.2, 0.2)).notSeen("row 3 0.1", SHAFT);
        Synthesis slow = line(Synthesis.silence(Quantity.ACCELERATION, 256, 2048).noise(0.001, 1), 25, 1, 0);
        fanWith("P-H", slow).notMeasured("row 3 0.1", SHAFT);
    }

    @Test
    void halvesStandBetweenTheMultiples() {
        fanWith("P-H", line(line(orders(1), 12.5, 0.2, 0), 37.5, 0.2, 0)).seen("halves 2 0.05", SHAFT, "P-H");
        fanWith("P-H", line(orders(1), 37.5, 0.2, 0)).notSeen("halves 2 0.05", SHAFT);
        fanWith("P-H", line(line(orders(1), 12.5, 0.03, 0), 37.5, 0.03, 0)).notSeen("halves 2 0.05", SHAFT);
        Synthesis brief = line(Synthesis.silence(Quantity.ACCELERATION, 6400, 1600).noise(0.01, 1), 25, 1, 0);
        fanWith("P-H", brief).notMeasured("halves 2 0.05", SHAFT);
    }

    @Test
    void aLineRoseWhereItDoubledAndMatters() {
        fanWith("P-H", orders(2.2)).before("P-H", orders(1)).seen("rose 1", SHAFT, "P-H");
        fanWith("P-H", orders(1.8)).before("P-H", orders(1)).notSeen("rose 1", SHAFT);
        fanWith("P-H", orders(2, 0.6)).before("P-H", orders(2)).seen("rose 2", SHAFT, "P-H");
        fanWith("P-H", orders(2, 0.1)).before("P-H", orders(2, 0.02)).notSeen("rose 2", SHAFT);
        fanWith("P-H", orders(2.2)).notMeasured("rose 1", SHAFT);
    }

    @Test
    void aReferenceAtAnotherSpeedIsNone() {
        Evidence now = fanWith("P-H", orders(2.2)).evidence();
        MachineDescription slower = Bench.fan().withMachine(now.machine().machine().withSpeed(
                RotationSpeed.ofHertz(24))).withPoint(Bench.point("P-H"));
        Evidence then = new Evidence(now.machine(), now.points(), List.of(PointExamination.of(slower).examine(
                Bench.point("P-H"), line(quiet(1), 24, 1, 0).waveform(), Optional.empty())));
        assertEquals(Answer.State.NOT_MEASURED, Questions.parse("once-rose", "rose 1").ask(then,
                Sites.of(now.machine()).get(1)).state());
    }

    /** A clipped recording is refused; even insisted on, it shows nothing. */
    @Test
    void anUnsoundRecordingDoesNotAnswer() {
        MeasuringPoint point = MeasuringPoint.of("P").withDirection(Direction.HORIZONTAL);
        MachineDescription machine = fan().withPoint(point);
        Waveform clipped = orders(3).clip(0.3).waveform();
        PointExamination plain = PointExamination.of(machine);
        for (PointExamination examination : List.of(plain, plain.insisting())) {
            Evidence evidence = Evidence.of(machine, List.of(examination.examine(point, clipped, Optional.empty())));
            assertEquals(Answer.State.NOT_MEASURED, Questions.parse("once-high", "high 1 radial").ask(evidence,
                    Sites.of(machine).get(1)).state());
        }
    }

    @Test
    void aNaturalFrequencyIsHeldAgainstTheSpeed() {
        Bench.of(fan().withNaturalHertz(80).withNaturalHertz(27)).with("P-H", orders(1)).seen("natural 1 0.1", SHAFT);
        Bench.of(fan().withNaturalHertz(28)).with("P-H", orders(1)).notSeen("natural 1 0.1", SHAFT);
        Bench.of(fan()).with("P-H", orders(1)).notMeasured("natural 1 0.1", SHAFT);
    }

    /** {@code a·cos t + b·cos 2t} has the skewness {@code 3/4·a²b / ((a² + b²)/2)^1.5}, 0.76 here; a sine has none. */
    @Test
    void aWaveCutAtOneSideIsSkewed() {
        Synthesis cut = line(line(quiet(1), 25, 2, 0), 50, 1, 0);
        fanWith("P-H", cut).seen("flattened 0.5", SHAFT, "P-H");
        fanWith("P-H", line(line(quiet(1), 25, 2, 0), 50, 1, 90)).notSeen("flattened 0.5", SHAFT);
        Synthesis brief = line(Synthesis.silence(Quantity.ACCELERATION, 6400, 3200).noise(0.01, 1), 25, 1, 0);
        fanWith("P-H", brief).notMeasured("flattened 0.5", SHAFT);
    }

    /** Two lines 1/4 Hz apart beat: with a second one of 40 % the size wanders by 0.4/√2. */
    @Test
    void aLineThatBeatsWanders() {
        fanWith("P-H", line(orders(1), 25.25, 0.4, 0)).seen("wanders 0.15", SHAFT, "P-H");
        fanWith("P-H", orders(1)).notSeen("wanders 0.15", SHAFT);
        Synthesis brief = line(Synthesis.silence(Quantity.ACCELERATION, 6400, 6400).noise(0.01, 1), 25, 1, 0);
        fanWith("P-H", brief).notMeasured("wanders 0.15", SHAFT);
    }
}
