package dev.vibra.point;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.Machine;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A point against its reference: ratios, their uncertainty, and when the two can't be compared. */
class PointChangeTest {
    private static final int RATE = 3200;
    private static final double HERTZ = 24.7;
    private static final MeasuringPoint POINT = MeasuringPoint.of("P").withExpandedUncertaintyPercent(0);

    private static MachineDescription machine(MeasuringPoint point) {
        return MachineDescription.of("fan").withPoint(point)
                .withMachine(Machine.unknown().withSpeed(RotationSpeed.ofHertz(25)));
    }

    private static Waveform wave(double hertz, double once, double third, double noise, long seed) {
        double omega = 2 * Math.PI * hertz;
        return Synthesis.silence(Quantity.ACCELERATION, RATE, 6 * RATE).noise(noise, seed)
                .tone(Math.sqrt(2) * 1e-3 * once * omega, hertz, 1)
                .tone(Math.sqrt(2) * 1e-3 * third * 3 * omega, 3 * hertz, 2).waveform();
    }

    private static PointSurvey then(MeasuringPoint point, Waveform wave) {
        return PointExamination.of(machine(point)).reference(point, wave, Optional.empty());
    }

    private static PointSurvey now(MeasuringPoint point, Waveform wave) {
        return PointExamination.of(machine(point)).examine(point, wave, Optional.empty());
    }

    private static PointChange.LineChange line(PointChange change, int order) {
        return change.lines().stream().filter(one -> one.now().order() == order).findFirst().orElseThrow();
    }

    @Test
    void eachLineAndOctaveIsHeldAgainstItsReference() {
        PointChange change = PointChange.of(now(POINT, wave(HERTZ, 2, 0.9, 0.04, 1)),
                then(POINT, wave(HERTZ, 1, 0.0001, 0.02, 2)));
        assertEquals("", change.obstacle());
        assertEquals(List.of(1, 3), change.lines().stream().map(one -> one.now().order()).toList());
        assertEquals(2, line(change, 1).ratio().orElseThrow(), 0.02);
        assertTrue(line(change, 3).ratio().orElseThrow() > 50, line(change, 3).toString());
        assertTrue(line(change, 3).relativeExpanded() > 1, "what stood in the noise is known to no better");
        PointChange.NoiseChange octave = change.noise().get(change.noise().size() - 1);
        assertEquals(2, octave.ratio().orElseThrow(), 2 * 2 * octave.relativeExpanded());
    }

    /** Two days of a sound machine differ by some tenths; 3× is new, and what is smaller than a tenth of 1× is left. */
    @Test
    void whatDoubledOrHalvedIsLarge() {
        PointChange rose = PointChange.of(now(POINT, wave(HERTZ, 2.5, 0.9, 0.045, 1)),
                then(POINT, wave(HERTZ, 1, 0.0001, 0.02, 2)));
        assertEquals(List.of(1, 3), rose.largeLines().stream().map(one -> one.now().order()).toList());
        assertTrue(rose.largeNoise().size() >= 5, () -> "" + rose.largeNoise());
        assertTrue(line(rose, 3).toString().contains(" after at most "), () -> "" + line(rose, 3));
        PointChange fell = PointChange.of(now(POINT, wave(HERTZ, 1, 0.0001, 0.02, 2)),
                then(POINT, wave(HERTZ, 1.5, 0.9, 0.02, 1)));
        assertEquals(List.of(3), fell.largeLines().stream().map(one -> one.now().order()).toList());
        PointChange small = PointChange.of(now(POINT, wave(HERTZ, 2.5, 0.2, 0.02, 1)),
                then(POINT, wave(HERTZ, 2.4, 0.0001, 0.02, 2)));
        assertEquals(List.of(), small.largeLines());
        assertEquals(List.of(), small.largeNoise());
    }

    /** A sensor of which nothing is told has 10 % (k = 2) in either: 1.96·√2·5 % = 13.9 %. */
    @Test
    void theSensorOfEitherRecordingCounts() {
        MeasuringPoint untold = MeasuringPoint.of("P");
        PointChange change = PointChange.of(now(untold, wave(HERTZ, 2, 0, 1e-4, 1)),
                then(untold, wave(HERTZ, 1, 0, 1e-4, 2)));
        assertEquals(0.139, line(change, 1).relativeExpanded(), 0.001);
    }

    /** Noise as strong as lines: the interval holds the true ratio of 1.5 in 95 of 100; 400 draws scatter by 1.1. */
    @Test
    void theIntervalHoldsTheTruth() {
        int held = 0;
        int draws = 400;
        for (int i = 0; i < draws; i++) {
            PointChange change = PointChange.of(now(POINT, wave(HERTZ, 0.15, 0, 0.15, 2 * i)),
                    then(POINT, wave(HERTZ, 0.1, 0, 0.15, 2 * i + 1)));
            PointChange.LineChange line = line(change, 1);
            assertTrue(line.now().stands() && line.then().stands(), line.toString());
            double ratio = line.ratio().orElseThrow();
            held += Math.abs(ratio - 1.5) <= line.relativeExpanded() * ratio ? 1 : 0;
        }
        assertTrue(held >= 0.92 * draws && held <= 0.99 * draws, held + " of " + draws);
    }

    @Test
    void anotherSpeedIsAnotherState() {
        PointChange change = PointChange.of(now(POINT, wave(HERTZ, 2, 0, 0.02, 1)),
                then(POINT, wave(25.4, 1, 0, 0.02, 2)));
        assertTrue(change.obstacle().startsWith("the reference was recorded at another speed"), change.obstacle());
        assertEquals(List.of(), change.lines());
    }

    @Test
    void aReferenceIsNotJudgedAndWhatCannotBeComparedIsSaid() {
        Waveform sound = wave(HERTZ, 1, 0, 0.02, 2);
        MachineSurvey survey = Survey.of(machine(POINT), Map.of("P", wave(HERTZ, 2, 0, 0.02, 1)), Map.of(),
                Map.of("P", sound));
        assertEquals(2, survey.changes().get(0).lines().get(0).ratio().orElseThrow(), 0.02);
        assertTrue(survey.references().get(0).severity().isEmpty());
        assertTrue(survey.omissions().stream().noneMatch(one -> one.subject() == Omission.Subject.CHANGE));
        MachineSurvey broken = Survey.of(machine(POINT), Map.of("P", wave(HERTZ, 2, 0, 0.02, 1)), Map.of(),
                Map.of("P", Waveform.ofSi(Quantity.ACCELERATION, RATE, new double[6 * RATE])));
        Omission omission = broken.omissions().stream().filter(one -> one.subject() == Omission.Subject.CHANGE)
                .findFirst().orElseThrow();
        assertEquals("change of P against its reference", omission.part());
    }
}
