package dev.vibra.bearing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.testing.Serial;
import dev.vibra.quantity.Band;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class DiagnosisSettingsTest {
    private static final DiagnosisSettings DEFAULTS = DiagnosisSettings.withDefaults();

    @Test
    void eachStepChangesOneThing() {
        DiagnosisSettings all = DEFAULTS.withBand(Band.of(2000, 4000)).withFrequencyTolerance(0.03)
                .withSpeedTolerance(0.02).withHarmonics(4)
                .withFalseAlarmProbability(0.01).withPresentDepth(0.5).withAbsentDepth(0.3)
                .withRevolutionsPerBlock(60).withOtherRates(12.5, 40);
        assertEquals(List.of(Band.of(2000, 4000)), all.bands());
        assertEquals(0.03, all.frequencyTolerance());
        assertEquals(0.02, all.speedTolerance());
        assertEquals(4, all.harmonics());
        assertEquals(0.01, all.falseAlarmProbability());
        assertEquals(0.5, all.presentDepth());
        assertEquals(0.3, all.absentDepth());
        assertEquals(60, all.revolutionsPerBlock());
        assertEquals(List.of(12.5, 40.0), all.otherRatesHertz());
        assertEquals("2000–4000 Hz, ±3 %, 4 harmonics, false alarm 0.010, present from depth 0.50, absent if 0.30"
                + " would have been found", all.toString());
        assertEquals(all, Serial.copy(all));
    }

    @Test
    void defaultsAreThoseOfTheTable() {
        assertTrue(DEFAULTS.bands().isEmpty());
        assertEquals("candidate bands, ±2 %, 5 harmonics, false alarm 0.0010, present from depth 0.33, absent if 0.080"
                + " would have been found", DEFAULTS.toString());
        assertEquals(0.01, DEFAULTS.speedTolerance());
        assertEquals(300, DEFAULTS.revolutionsPerBlock());
        assertEquals(List.of(), DEFAULTS.otherRatesHertz());
    }

    @Test
    void badValuesAreNamed() {
        assertMessage("frequencyTolerance must be within 1.0E-4 to 0.05: 0.06",
                () -> DEFAULTS.withFrequencyTolerance(0.06));
        assertMessage("speedTolerance must be within 0.0 to 0.05: NaN", () -> DEFAULTS.withSpeedTolerance(Double.NaN));
        assertMessage("harmonics must be within 2.0 to 20.0: 1.0", () -> DEFAULTS.withHarmonics(1));
        assertMessage("falseAlarmProbability must be within 1.0E-12 to 0.1: 0.0",
                () -> DEFAULTS.withFalseAlarmProbability(0));
        assertMessage("presentDepth must be within 0.01 to 2.0: 2.1", () -> DEFAULTS.withPresentDepth(2.1));
        assertMessage("absentDepth must be at most presentDepth, 0.3333333333333333: 0.4",
                () -> DEFAULTS.withAbsentDepth(0.4));
        assertMessage("revolutionsPerBlock must be within 20.0 to 1000000.0: 19.0",
                () -> DEFAULTS.withRevolutionsPerBlock(19));
        assertMessage("otherRatesHertz must be finite and > 0 Hz: 0.0", () -> DEFAULTS.withOtherRates(0));
        assertThrows(NullPointerException.class, () -> DEFAULTS.withBand(null));
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
