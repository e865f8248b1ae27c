package dev.vibra.balance.vector;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class VectorTest {
    @Test
    void phasorArithmeticAgreesWithCommonsMath() {
        Well19937c random = new Well19937c(5);
        for (int i = 0; i < 200; i++) {
            Phasor a = new Phasor(random.nextGaussian(), random.nextGaussian());
            Phasor b = new Phasor(random.nextGaussian(), random.nextGaussian());
            Complex x = new Complex(a.re(), a.im());
            Complex y = new Complex(b.re(), b.im());
            same(x.add(y), a.plus(b));
            same(x.subtract(y), a.minus(b));
            same(x.multiply(y), a.times(b));
            same(x.divide(y), a.dividedBy(b));
            same(x.conjugate(), a.conjugate());
            same(x.negate(), a.negated());
            same(x.multiply(2.5), a.times(2.5));
            assertEquals(x.abs(), a.magnitude(), 1e-15 * x.abs());
            assertEquals(x.getArgument(), a.argument(), 1e-15);
            same(x, Phasor.polar(a.magnitude(), a.argument()));
        }
    }

    private static void same(Complex expected, Phasor actual) {
        double scale = 1e-14 * Math.max(1, expected.abs());
        assertEquals(expected.getReal(), actual.re(), scale);
        assertEquals(expected.getImaginary(), actual.im(), scale);
    }

    @Test
    void divisionKeepsItsRange() {
        Phasor tiny = new Phasor(3e-200, 4e-200);
        assertEquals(0, tiny.dividedBy(tiny).minus(Phasor.ONE).magnitude(), 1e-15);
        Phasor huge = new Phasor(-4e200, 3e200);
        assertEquals(0, huge.dividedBy(huge).minus(Phasor.ONE).magnitude(), 1e-15);
        message("divisor must not be zero: 0 at 0.0°", () -> Phasor.ONE.dividedBy(Phasor.ZERO));
        message("real part must be finite: NaN", () -> new Phasor(Double.NaN, 0));
        message("imaginary part must be finite: -Infinity", () -> new Phasor(0, Double.NEGATIVE_INFINITY));
        assertEquals(0, new Phasor(-0.0, 0.0).argument());
        assertEquals("5.123 at 63.0°", Phasor.polar(5.1231, Math.toRadians(63)).toString());
        assertEquals("1.235 at 297.0°", Phasor.polar(1.23456, Math.toRadians(-63)).toString());
    }

    @Test
    void angleThatRoundsToAFullTurnIsTheMark() {
        assertEquals(0.0, Angles.degrees(-1e-20));
        assertEquals(0.0, Angles.degrees(-0.0));
        assertEquals(0.0, Angles.degrees(2 * Math.PI));
        assertEquals(359.99, Angles.degrees(Math.toRadians(-0.01)), 1e-9);
        assertEquals(1.0 / Angles.degrees(-0.0), Double.POSITIVE_INFINITY);
        assertEquals("0.0°", Angles.text(359.99));
        assertEquals("359.9°", Angles.text(359.94));
    }

    /** The definition: x(t) = A·cos(ωt − φ) for a lag φ, and x(t) = Re(V·exp(iωt)). */
    @Test
    void lagAndLeadFollowTheirDefinition() {
        VibrationVector lag = VibrationVector.of(5, 63, Unit.UM, Detector.ZERO_TO_PEAK, PhaseSense.LAG);
        VibrationVector lead = VibrationVector.of(5, 63, Unit.UM, Detector.ZERO_TO_PEAK, PhaseSense.LEAD);
        for (double wt = 0; wt < 7; wt += 0.5) {
            Phasor turn = Phasor.polar(1, wt);
            assertEquals(5e-6 * Math.cos(wt - Math.toRadians(63)), lag.peak().times(turn).re(), 1e-18);
            assertEquals(5e-6 * Math.cos(wt + Math.toRadians(63)), lead.peak().times(turn).re(), 1e-18);
        }
        assertEquals(297, lag.in(PhaseSense.LEAD).phaseDegrees(), 1e-12);
        assertEquals(63, lag.in(PhaseSense.LEAD).in(PhaseSense.LAG).phaseDegrees(), 1e-12);
        assertEquals(PhaseSense.LEAD, lag.in(PhaseSense.LEAD).sense());
    }

    @Test
    void detectorsAndUnitsShowOneVibration() {
        VibrationVector rms = VibrationVector.of(5.1, 63, Unit.MM_PER_S, Detector.RMS, PhaseSense.LAG);
        assertEquals(5.1, rms.amplitude(), 1e-14);
        assertEquals(63, rms.phaseDegrees(), 1e-12);
        assertEquals(5.1e-3 * Math.sqrt(2), rms.peak().magnitude(), 1e-17);
        VibrationVector pp = rms.in(Unit.IN_PER_S, Detector.PEAK_TO_PEAK);
        assertEquals(5.1 * 2 * Math.sqrt(2) / 25.4, pp.amplitude(), 1e-14);
        assertEquals(5.1, pp.in(Unit.MM_PER_S, Detector.RMS).amplitude(), 1e-14);
        assertEquals(Detector.PEAK_TO_PEAK, pp.detector());
        assertEquals(Unit.IN_PER_S, pp.unit());
        assertEquals(Quantity.VELOCITY, pp.quantity());
        assertEquals(5.1, rms.level().in(Unit.MM_PER_S), 1e-14);
        assertEquals(Detector.RMS, rms.level().detector());
        assertEquals("5.12 mm/s rms at 63.0° lag",
                VibrationVector.of(5.1234, 63, Unit.MM_PER_S, Detector.RMS, PhaseSense.LAG).toString());
        assertEquals("200.8 µm peak-peak at 297.0° lead".replace("200.8", "201"),
                VibrationVector.of(200.8, -63, Unit.UM, Detector.PEAK_TO_PEAK, PhaseSense.LEAD).toString());
        assertEquals(rms.peak(), VibrationVector.ofPeak(rms.peak(), Unit.MM_PER_S, Detector.RMS, PhaseSense.LAG)
                .peak());
    }

    @Test
    void sumsAndDifferencesAreVectorial() {
        VibrationVector a = VibrationVector.of(3, 0, Unit.UM, Detector.RMS, PhaseSense.LAG);
        VibrationVector b = VibrationVector.of(8 * Math.sqrt(2), 270, Unit.UM, Detector.PEAK_TO_PEAK, PhaseSense.LEAD);
        // 8√2 peak-peak is 4 rms; a lead of 270° is a lag of 90°.
        assertEquals(5, a.plus(b).amplitude(), 1e-14);
        assertEquals(Math.toDegrees(Math.atan2(4, 3)), a.plus(b).phaseDegrees(), 1e-12);
        assertEquals(360 - Math.toDegrees(Math.atan2(4, 3)), a.minus(b).phaseDegrees(), 1e-12);
        VibrationVector v = VibrationVector.of(1, 0, Unit.MM_PER_S, Detector.RMS, PhaseSense.LAG);
        message("vibration vectors must measure the same quantity: displacement and velocity", () -> a.plus(v));
        message("vibration vectors must measure the same quantity: displacement and velocity", () -> a.minus(v));
        message("vibration vectors must measure the same quantity: displacement and velocity",
                () -> a.in(Unit.MM_PER_S, Detector.RMS));
    }

    @Test
    void vectorsCompareByAllTheirParts() {
        VibrationVector a = VibrationVector.of(3, 10, Unit.UM, Detector.RMS, PhaseSense.LAG);
        assertEquals(a, VibrationVector.of(3, 10, Unit.UM, Detector.RMS, PhaseSense.LAG));
        assertEquals(a.hashCode(), VibrationVector.of(3, 10, Unit.UM, Detector.RMS, PhaseSense.LAG).hashCode());
        assertNotEquals(a, VibrationVector.of(3, 11, Unit.UM, Detector.RMS, PhaseSense.LAG));
        assertNotEquals(a, a.in(Unit.MM, Detector.RMS));
        assertNotEquals(a, a.in(Unit.UM, Detector.ZERO_TO_PEAK));
        assertNotEquals(a, a.in(PhaseSense.LEAD));
        assertNotEquals(a, "3");
        PlacedMass m = PlacedMass.ofGrams(3, 10, AngleSense.WITH_ROTATION);
        assertEquals(m, PlacedMass.ofGrams(3, 10, AngleSense.WITH_ROTATION));
        assertEquals(m.hashCode(), PlacedMass.ofGrams(3, 10, AngleSense.WITH_ROTATION).hashCode());
        assertNotEquals(m, PlacedMass.ofGrams(4, 10, AngleSense.WITH_ROTATION));
        assertNotEquals(m, m.atRadius(5));
        assertNotEquals(m, m.in(AngleSense.AGAINST_ROTATION));
        assertNotEquals(m, "3");
    }

    /**
     * With rotation, a point at 90° is a quarter turn ahead of the mark: i. Against, it is a quarter turn behind: −i.
     */
    @Test
    void massesStandWhereTheirSenseSays() {
        PlacedMass with = PlacedMass.ofGrams(12, 90, AngleSense.WITH_ROTATION);
        assertEquals(0, with.kilograms().minus(new Phasor(0, 0.012)).magnitude(), 1e-17);
        PlacedMass against = PlacedMass.ofGrams(12, 90, AngleSense.AGAINST_ROTATION);
        assertEquals(0, against.kilograms().minus(new Phasor(0, -0.012)).magnitude(), 1e-17);
        assertEquals(270, with.in(AngleSense.AGAINST_ROTATION).angleDegrees(), 1e-12);
        assertEquals(12, with.grams(), 1e-14);
        assertEquals(AngleSense.AGAINST_ROTATION, against.sense());
    }

    @Test
    void radiusMakesAnUnbalance() {
        PlacedMass open = PlacedMass.ofGrams(12.34, 90, AngleSense.AGAINST_ROTATION);
        assertTrue(open.radiusMillimetres().isEmpty());
        IllegalStateException e = assertThrows(IllegalStateException.class, open::unbalance);
        assertEquals("radius must be known to tell an unbalance: 12.3 g at 90.0° against rotation", e.getMessage());
        PlacedMass placed = open.atRadius(160);
        assertEquals(12.34 * 160, placed.gramMillimetres(), 1e-11);
        assertEquals(160, placed.radiusMillimetres().getAsDouble(), 1e-12);
        assertEquals("12.3 g at 90.0° against rotation, radius 160 mm", placed.toString());
        PlacedMass back = PlacedMass.ofUnbalance(placed.unbalance(), 320, AngleSense.WITH_ROTATION);
        assertEquals(6.17, back.grams(), 1e-13);
        assertEquals(270, back.angleDegrees(), 1e-12);
        assertEquals(320, back.radiusMillimetres().getAsDouble(), 1e-12);
        assertFalse(open.in(AngleSense.WITH_ROTATION).radiusMillimetres().isPresent());
        assertEquals(160, placed.in(AngleSense.WITH_ROTATION).radiusMillimetres().getAsDouble(), 1e-12);
        assertEquals(0.5, PlacedMass.ofPhasor(new Phasor(0.0005, 0), AngleSense.WITH_ROTATION).grams(), 1e-15);
    }

    @Test
    void massesAreMovedCombinedAndRemovedInstead() {
        PlacedMass m = PlacedMass.ofGrams(12, 90, AngleSense.AGAINST_ROTATION).atRadius(160);
        assertEquals(16, m.movedTo(120).grams(), 1e-12);
        assertEquals(90, m.movedTo(120).angleDegrees(), 1e-12);
        assertEquals(120, m.movedTo(120).radiusMillimetres().getAsDouble(), 1e-12);
        assertEquals(12, m.toRemoveInstead().grams(), 1e-12);
        assertEquals(270, m.toRemoveInstead().angleDegrees(), 1e-12);
        assertEquals(160, m.toRemoveInstead().radiusMillimetres().getAsDouble(), 1e-12);
        // 3 g and 4 g at right angles, at 100 and 200 mm: 300 and 800 g·mm.
        PlacedMass sum = PlacedMass.combined(List.of(
                PlacedMass.ofGrams(3, 0, AngleSense.AGAINST_ROTATION).atRadius(100),
                PlacedMass.ofGrams(4, 270, AngleSense.WITH_ROTATION).atRadius(200)), 50);
        assertEquals(Math.hypot(300, 800) / 50, sum.grams(), 1e-11);
        assertEquals(Math.toDegrees(Math.atan2(800, 300)), sum.angleDegrees(), 1e-11);
        assertEquals(AngleSense.AGAINST_ROTATION, sum.sense());
        message("masses must not be empty", () -> PlacedMass.combined(List.of(), 50));
        assertThrows(IllegalStateException.class,
                () -> PlacedMass.ofGrams(3, 0, AngleSense.AGAINST_ROTATION).movedTo(5));
    }

    @Test
    void badValuesAreNamed() {
        message("amplitude must be finite and >= 0 mm/s: -1.0",
                () -> VibrationVector.of(-1, 0, Unit.MM_PER_S, Detector.RMS, PhaseSense.LAG));
        message("phase in degrees must be finite: NaN",
                () -> VibrationVector.of(1, Double.NaN, Unit.MM_PER_S, Detector.RMS, PhaseSense.LAG));
        message("mass must be finite and >= 0 g: -1.0", () -> PlacedMass.ofGrams(-1, 0, AngleSense.WITH_ROTATION));
        message("angle in degrees must be finite: Infinity",
                () -> PlacedMass.ofGrams(1, Double.POSITIVE_INFINITY, AngleSense.WITH_ROTATION));
        PlacedMass mass = PlacedMass.ofGrams(1, 0, AngleSense.WITH_ROTATION);
        message("radius must be finite and > 0 mm: 0.0", () -> mass.atRadius(0));
        message("radius must be finite and > 0 mm: NaN",
                () -> PlacedMass.ofUnbalance(Phasor.ONE, Double.NaN, AngleSense.WITH_ROTATION));
    }

    @Test
    void conventionIsSaidInWords() {
        assertEquals("phase is lag to the tachometer mark, angles are counted against rotation from the mark",
                Convention.LAG_AGAINST_ROTATION.toString());
        assertEquals("phase is lead to the tachometer mark, angles are counted with rotation from the mark",
                Convention.LEAD_WITH_ROTATION.toString());
        assertEquals(Convention.LEAD_WITH_ROTATION, Convention.of(PhaseSense.LEAD, AngleSense.WITH_ROTATION));
        assertEquals("phase", assertThrows(NullPointerException.class,
                () -> Convention.of(null, AngleSense.WITH_ROTATION)).getMessage());
        assertEquals("angle", assertThrows(NullPointerException.class,
                () -> Convention.of(PhaseSense.LAG, null)).getMessage());
        assertEquals(0.5, PhaseSense.LEAD.toLead(0.5));
        assertEquals(-0.5, PhaseSense.LAG.toLead(0.5));
        assertEquals(0.5, AngleSense.WITH_ROTATION.toWithRotation(0.5));
        assertEquals(-0.5, AngleSense.AGAINST_ROTATION.toWithRotation(0.5));
    }

    private static void message(String expected, Executable code) {
        assertEquals(expected, assertThrows(IllegalArgumentException.class, code).getMessage());
    }
}
