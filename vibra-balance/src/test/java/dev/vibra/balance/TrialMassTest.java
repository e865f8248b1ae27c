package dev.vibra.balance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.RotationSpeed;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class TrialMassTest {
    private static final TrialMass FAN = TrialMass.of(64, RotationSpeed.ofRevolutionsPerMinute(1480), 160);

    // By hand: 10 % of 64 kg · 9.80665 m/s² / 2 = 31.381 N; Ω = 154.985 rad/s; 31.381/(0.16·24020.3) = 8.165 g.
    @Test
    void forceIsAShareOfTheWeightPerBearing() {
        assertEquals(31.38128, FAN.forceNewtons(), 1e-5);
        assertEquals(8.165, FAN.grams(), 5e-4);
        assertEquals(8.165 * 160, FAN.gramMillimetres(), 0.1);
        assertEquals(2 * FAN.grams(), FAN.withBearings(1).grams(), 1e-12);
        assertEquals(FAN.grams() / 2, FAN.withForceShare(0.05).grams(), 1e-12);
        assertEquals("trial mass 8.2 g at 160 mm: 31 N at 1480 r/min (24.67 Hz), 10 % of the weight per bearing",
                FAN.toString());
    }

    @Test
    void whatToMind() {
        assertEquals(List.of(), FAN.remarks());
        assertEquals("force-share-high", FAN.withForceShare(0.2).remarks().get(0).code());
        assertEquals(0.2, FAN.withForceShare(0.2).remarks().get(0).value());
        assertEquals(0.1, FAN.withForceShare(0.2).remarks().get(0).limit());
        assertEquals(List.of(Caution.values()), FAN.cautions());
    }

    @Test
    void badInputIsNamed() {
        assertEquals("rotor mass must be finite and > 0 kg: NaN",
                message(() -> TrialMass.of(Double.NaN, RotationSpeed.ofHertz(1), 1)));
        assertEquals("radius must be finite and > 0 mm: 0.0", message(() -> TrialMass.of(1, RotationSpeed.ofHertz(1),
                0)));
        assertEquals("bearings must be at least 1: 0", message(() -> FAN.withBearings(0)));
        for (double bad : new double[] {0, 0.26, Double.NaN}) {
            assertEquals("force share must be above 0 and at most 0.25: " + bad, message(() ->
                    FAN.withForceShare(bad)));
        }
        assertEquals(0.25 * 64 * 9.80665 / 2, FAN.withForceShare(0.25).forceNewtons(), 1e-9);
    }

    private static String message(Executable code) {
        return assertThrows(IllegalArgumentException.class, code).getMessage();
    }

    @Test
    void oddMassesAreDoubted() {
        // 1 r/min: 10 % of the weight of 1000 kg per bearing would take 2.2e8 g at 200 mm.
        TrialMass slow = TrialMass.of(1000, RotationSpeed.ofRevolutionsPerMinute(1), 200);
        assertEquals("trial-mass-heavy", slow.remarks().get(0).code());
        assertEquals(0.01, slow.remarks().get(0).limit());
        assertEquals(slow.grams() / 1e6, slow.remarks().get(0).value(), 1e-9);
        assertTrue(assertThrows(IllegalArgumentException.class, () -> TrialMass.of(1000,
                RotationSpeed.ofRevolutionsPerMinute(1e-200), 200)).getMessage()
                .startsWith("speed must be high enough for a trial mass to throw at all: "));
    }
}
