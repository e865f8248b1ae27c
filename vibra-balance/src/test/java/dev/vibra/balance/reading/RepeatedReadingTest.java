package dev.vibra.balance.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.evidence.Remark;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class RepeatedReadingTest {
    private static VibrationVector v(double amplitude, double phase) {
        return VibrationVector.of(amplitude, phase, Unit.MM_PER_S, Detector.RMS, PhaseSense.LAG);
    }

    @Test
    void meanIsVectorial() {
        // 3 at 0° and 3 at 90°: 3/√2 at 45°.
        RepeatedReading r = RepeatedReading.of(v(3, 0), v(3, 90));
        assertEquals(3 / Math.sqrt(2), r.mean().amplitude(), 1e-12);
        assertEquals(45, r.mean().phaseDegrees(), 1e-12);
        assertEquals(2, r.count());
        assertEquals(List.of(v(3, 0), v(3, 90)), r.readings());
    }

    @Test
    void scatterByHand() {
        // Along: 4.9, 5.0, 5.1, standard deviation 0.1 of 5; across nothing.
        RepeatedReading along = RepeatedReading.of(v(4.9, 70), v(5.0, 70), v(5.1, 70));
        assertEquals(0.02, along.amplitudeScatter(), 1e-12);
        assertEquals(0, along.phaseScatterDegrees(), 1e-10);
        // Across: ±0.1 rad about the mean of amplitude cos 0.1: tan 0.1, three readings.
        RepeatedReading across = RepeatedReading.of(v(5, 70 + Math.toDegrees(0.1)), v(5, 70 - Math.toDegrees(0.1)));
        assertEquals(Math.toDegrees(Math.sqrt(2) * Math.tan(0.1)), across.phaseScatterDegrees(), 1e-10);
        assertEquals(0, across.amplitudeScatter(), 1e-12);
        assertTrue(along.toString().startsWith("5.00 mm/s rms at 70.0° lag, mean of 3 (scatter 2.0 %, "),
                along.toString());
    }

    // JCGM 100:2008, 4.2.3: the standard uncertainty of a mean of n is that of one over √n.
    @Test
    void scatterForTheJob() {
        RepeatedReading four = RepeatedReading.of(v(4.9, 70), v(5.1, 70), v(5, 71), v(5, 69));
        assertEquals(four.amplitudeScatter(), four.scatter().amplitudeShare());
        assertEquals(four.phaseScatterDegrees(), four.scatter().phaseDegrees());
        assertEquals(four.amplitudeScatter() / 2, four.scatterOfMean().amplitudeShare(), 1e-15);
        assertEquals(four.phaseScatterDegrees() / 2, four.scatterOfMean().phaseDegrees(), 1e-12);
        assertEquals(0, four.scatter().floor());
    }

    @Test
    void unsteadyReadingsAreNamed() {
        assertEquals(List.of(), RepeatedReading.of(v(5, 70), v(5.4, 73), v(4.6, 67)).remarks());
        assertEquals(List.of("amplitude-unsteady"), codes(RepeatedReading.of(v(5, 70), v(5.8, 70), v(4.2, 70))));
        assertEquals(List.of("phase-unsteady"), codes(RepeatedReading.of(v(5, 70), v(5, 81), v(5, 59))));
        RepeatedReading drift = RepeatedReading.of(v(5, 70), v(5, 70), v(5.6, 70), v(5.6, 70));
        assertEquals(List.of("vector-drifting"), codes(drift));
        assertEquals(0.6 / 5.3, drift.remarks().get(0).value(), 1e-12);
        assertEquals(0.1, drift.remarks().get(0).limit(), 1e-12);
        assertTrue(drift.remarks().get(0).text().startsWith(
                "the mean of the later readings lies 11.3 % of the amplitude away from that of the earlier ones"));
        assertEquals(List.of(), RepeatedReading.of(v(5, 70), v(5.6, 70), v(5, 70), v(5.6, 70)).remarks());
        // The middle reading of five belongs to neither half.
        assertEquals(List.of("vector-drifting"),
                codes(RepeatedReading.of(v(5, 70), v(5, 70), v(5.3, 70), v(5.6, 70), v(5.6, 70))));
        assertEquals(List.of(), RepeatedReading.of(v(5, 70), v(5.8, 70), v(4.2, 70))
                .remarks(new ScatterLimits(0.17, 10, 0)));
        Remark phase = RepeatedReading.of(v(5, 70), v(5, 81), v(5, 59)).remarks().get(0);
        assertEquals(11, phase.value(), 1e-9);
        assertEquals("a reading lies 11.0° from the mean phase", phase.text());
    }

    @Test
    void aFloorKeepsSmallVectorsSteady() {
        // After a good balance: 0.10 mm/s with 0.03 mm/s of other machines on it.
        RepeatedReading small = RepeatedReading.of(v(0.1, 70), v(0.13, 70), v(0.1, 85), v(0.08, 60));
        assertEquals(List.of("amplitude-unsteady", "phase-unsteady", "vector-drifting"), codes(small));
        ScatterLimits limits = ScatterLimits.withDefaults().withFloor(0.05);
        assertEquals(List.of(), small.remarks(limits));
        assertEquals(small.mean(), small.steadyMean(limits));
        // A drift of 0.2 mm/s is beyond a floor of 0.15, and within one of 0.25.
        RepeatedReading drift = RepeatedReading.of(v(0.1, 0), v(0.1, 0), v(0.3, 0), v(0.3, 0));
        assertEquals(List.of("vector-drifting"), drift.remarks(new ScatterLimits(0.8, 180, 0.15)).stream()
                .map(Remark::code).toList());
        assertEquals(List.of(), drift.remarks(new ScatterLimits(0.8, 180, 0.25)));
        assertEquals("within 10 % and 10°, or 0.05", limits.toString());
        assertEquals("floor must be finite and >= 0: NaN", message(() -> limits.withFloor(Double.NaN)));
        assertTrue(RepeatedReading.of(v(5, 0), v(5, 180.1)).toString().endsWith(
                "mean of 2 (they scatter by more than their mean)"));
    }

    private static List<String> codes(RepeatedReading r) {
        return r.remarks().stream().map(Remark::code).toList();
    }

    @Test
    void steadyMeanRefusesWithTheReason() {
        assertEquals(5, RepeatedReading.of(v(5, 70), v(5, 70)).steadyMean().amplitude(), 1e-12);
        IllegalStateException e = assertThrows(IllegalStateException.class,
                () -> RepeatedReading.of(v(4, 70), v(6, 70)).steadyMean());
        assertTrue(e.getMessage().matches("readings must be steady: a reading lies 20(\\.0)? % from the mean"
                + " amplitude"),
                e.getMessage());
    }

    @Test
    void badInputIsNamed() {
        assertEquals("readings must be at least two to tell their scatter: 1", message(() -> RepeatedReading.of(v(1,
                0))));
        assertEquals("vibration vectors must measure the same quantity: velocity and displacement",
                message(() -> RepeatedReading.of(v(1, 0),
                        VibrationVector.of(1, 0, Unit.UM, Detector.RMS, PhaseSense.LAG))));
        RepeatedReading zero = RepeatedReading.of(v(0, 0), v(0, 0));
        assertEquals("mean of the readings must not be zero to tell a scatter",
                assertThrows(IllegalStateException.class, zero::amplitudeScatter).getMessage());
        assertEquals("0 mm/s rms, mean of 2", zero.toString());
        assertEquals("allowed share of the amplitude must be finite and > 0: NaN",
                message(() -> new ScatterLimits(Double.NaN, 1, 0)));
        for (double bad : new double[] {0, 181, Double.NaN}) {
            assertEquals("allowed phase must be above 0 and at most 180°: " + bad, message(() -> new ScatterLimits(0.1,
                    bad, 0)));
        }
        assertEquals(180, new ScatterLimits(0.1, 180, 0).phaseDegrees());
        assertEquals("within 10 % and 10°", ScatterLimits.withDefaults().toString());
    }

    // 1 mm/s rms at 159.155 Hz is 1 µm rms and 1 m/s² rms; displacement lags velocity by 90°, acceleration leads by
    // 90°.
    @Test
    void motionsConvertAtTheRotationFrequency() {
        RotationSpeed speed = RotationSpeed.ofHertz(1000 / (2 * Math.PI));
        VibrationVector s = v(1, 70).as(Unit.UM, speed);
        assertEquals(1, s.amplitude(), 1e-12);
        assertEquals(160, s.phaseDegrees(), 1e-9);
        VibrationVector a = v(1, 70).as(Unit.M_PER_S2, speed);
        assertEquals(1, a.amplitude(), 1e-12);
        assertEquals(340, a.phaseDegrees(), 1e-9);
        assertEquals(70, a.as(Unit.UM, speed).as(Unit.MM_PER_S, speed).phaseDegrees(), 1e-9);
    }

    private static String message(Executable code) {
        return assertThrows(IllegalArgumentException.class, code).getMessage();
    }
}
