package dev.vibra.balance.tolerance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ErrorsAndKeysTest {
    // A rotor free to move: displacement amplitude e, velocity amplitude e·Ω, so 4.4548 mm/s rms is G6.3.
    @Test
    void indicatedGradeIsThePeakVelocity() {
        IndicatedGrade grade = IndicatedGrade.of(Level.of(6.3 / Math.sqrt(2), Unit.MM_PER_S, Detector.RMS),
                RotationSpeed.ofRevolutionsPerMinute(1480));
        assertEquals(6.3, grade.millimetresPerSecond(), 1e-12);
        assertEquals("indicated grade G6.3 at 1480 r/min (24.67 Hz) (for a rotor free to move; no acceptance)",
                grade.toString());
        assertTrue(IndicatedGrade.WARNING.contains("It is no acceptance."));
        assertEquals("velocity must be a velocity: 6.31 µm rms", message(() -> IndicatedGrade.of(
                Level.of(6.3123, Unit.UM, Detector.RMS), RotationSpeed.ofHertz(1))));
    }

    @Test
    void indexingByHalfATurnSeparatesRotorAndPart() {
        Phasor rotor = new Phasor(3e-6, 1e-6);
        Phasor part = new Phasor(-1e-6, 2e-6);
        IndexMethod found = IndexMethod.of(rotor.plus(part), rotor.minus(part));
        assertEquals(0, found.rotor().minus(rotor).magnitude(), 1e-20);
        assertEquals(0, found.part().minus(part).magnitude(), 1e-20);
        assertEquals("rotor 3.16 g·mm, part 2.24 g·mm", found.toString());
    }

    @ParameterizedTest
    @ValueSource(doubles = {30, 90, 180, -120, 330})
    void indexingByAnyAngle(double turn) {
        Phasor rotor = new Phasor(3e-6, 1e-6);
        Phasor part = new Phasor(-1e-6, 2e-6);
        IndexMethod found = IndexMethod.of(rotor.plus(part),
                rotor.plus(part.times(Phasor.polar(1, Math.toRadians(turn)))), turn);
        assertEquals(0, found.rotor().minus(rotor).magnitude(), 1e-18);
        assertEquals(0, found.part().minus(part).magnitude(), 1e-18);
    }

    @Test
    void tooSmallATurnIsRefused() {
        for (double turn : new double[] {0, 29.9, 360, 331}) {
            assertEquals("turn must be at least 30° away from a full turn: " + turn,
                    message(() -> IndexMethod.of(Phasor.ONE, Phasor.ZERO, turn)));
        }
        assertEquals("turn must be finite: NaN", message(() -> IndexMethod.of(Phasor.ONE, Phasor.ZERO, Double.NaN)));
    }

    // ISO 21940-32: a whole key is in the assembly; half and half, or full and none, add up to it.
    @ParameterizedTest
    @CsvSource({"HALF_KEY, HALF_KEY, 0", "FULL_KEY, NO_KEY, 0", "NO_KEY, FULL_KEY, 0", "FULL_KEY, HALF_KEY, -1200",
            "HALF_KEY, NO_KEY, 1200", "NO_KEY, NO_KEY, 2400", "FULL_KEY, FULL_KEY, -2400"})
    void keysThatDoNotAddUp(KeyConvention shaft, KeyConvention hub, double expected) {
        assertEquals(expected, KeyConvention.assemblyGramMillimetres(shaft, hub, 80, 30), 1e-12);
    }

    @Test
    void keyMarks() {
        assertEquals("H (half key)", KeyConvention.HALF_KEY.toString());
        assertEquals("F", KeyConvention.FULL_KEY.mark());
        assertEquals("N (no key)", KeyConvention.NO_KEY.toString());
        assertEquals("mass of key must be finite and >= 0 g: -1.0", message(() -> KeyConvention
                .assemblyGramMillimetres(KeyConvention.NO_KEY, KeyConvention.NO_KEY, -1, 1)));
        assertEquals("radius of key must be finite and >= 0 mm: NaN", message(() -> KeyConvention
                .assemblyGramMillimetres(KeyConvention.NO_KEY, KeyConvention.NO_KEY, 1, Double.NaN)));
    }

    @Test
    void errorsCombineAsRootOfSquares() {
        BalanceErrors errors = BalanceErrors.none().withSize(30).withEccentricPart(2, 20);
        assertEquals(50, errors.combinedGramMillimetres(), 1e-12);
        assertEquals(70, errors.worstCaseGramMillimetres(), 1e-12);
        assertEquals(350, errors.limitForMaker(400), 1e-12);
        assertEquals(400 - 50, errors.limitForMaker(400), 1e-12);
        assertEquals(501, errors.limitForMaker(501), 1e-12);
        assertEquals(450, errors.limitForMaker(500), 1e-12);
        assertEquals(350, errors.limitForUser(300), 1e-12);
        assertEquals(340, errors.limitForUser(340), 1e-12);
        assertEquals(250 + 50, errors.limitForUser(250), 1e-12);
        assertEquals(-10, errors.limitForMaker(40), 1e-12);
        Phasor corrected = errors.withKnown(new Phasor(1e-6, 0)).withKnown(new Phasor(0, 2e-6))
                .corrected(new Phasor(5e-6, 5e-6));
        assertEquals(0, corrected.minus(new Phasor(4e-6, 3e-6)).magnitude(), 1e-20);
        assertEquals(0, BalanceErrors.none().combinedGramMillimetres());
        assertEquals("balance errors 42.4 g·mm combined of 2, 60.0 g·mm at worst (rule from memory, unverified)"
                .replaceAll(", 60.* at", ", X at"), BalanceErrors.none().withSize(30).withSize(30).toString()
                .replaceAll(", 60.* at", ", X at"));
        assertEquals("size of error must be finite and >= 0 g·mm: -1.0", message(() -> errors.withSize(-1)));
        assertEquals("mass of part must be finite and > 0 kg: 0.0", message(() -> errors.withEccentricPart(0, 1)));
        assertEquals("eccentricity must be finite and >= 0 µm: NaN",
                message(() -> errors.withEccentricPart(1, Double.NaN)));
        assertEquals("permissible residual unbalance must be finite and > 0 g·mm: 0.0",
                message(() -> errors.limitForMaker(0)));
        assertEquals("permissible residual unbalance must be finite and > 0 g·mm: NaN",
                message(() -> errors.limitForUser(Double.NaN)));
    }

    private static String message(Executable code) {
        return assertThrows(IllegalArgumentException.class, code).getMessage();
    }
}
