package dev.vibra.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTest {
    /** Exact by definition: standard gravity 9.80665 m/s² (3rd CGPM 1901), the inch 25.4 mm (1959). */
    @ParameterizedTest
    @CsvSource({"g, 9.80665", "mg, 0.00980665", "m/s2, 1", "mm/s2, 0.001", "in/s2, 0.0254", "m/s, 1", "mm/s, 0.001",
        "in/s, 0.0254", "m, 1", "mm, 0.001", "um, 0.000001", "in, 0.0254", "mil, 0.0000254", "V, 1", "mV, 0.001"})
    void unitsHaveTheirDefinedSize(String symbol, double si) {
        Unit unit = Unit.ofSymbol(symbol);
        assertEquals(symbol, unit.plainSymbol());
        assertEquals(si, unit.toSi(), 1e-15 * si);
    }

    @ParameterizedTest
    @EnumSource(Unit.class)
    void everyUnitIsFoundByBothSymbols(Unit unit) {
        assertEquals(unit, Unit.ofSymbol(unit.symbol()));
        assertEquals(unit, Unit.ofSymbol(unit.plainSymbol()));
        assertEquals(unit.symbol(), unit.toString());
    }

    @Test
    void microSignAndGreekMuAreOne() {
        assertEquals(Unit.UM, Unit.ofSymbol("\u00b5m"));
        assertEquals(Unit.UM, Unit.ofSymbol("\u03bcm"));
        assertMessage("unit must be one of m/s2, g, mg, mm/s2, in/s2, m/s, mm/s, in/s, m, mm, um, in, mil, V, mV:"
                + " furlong",
                () -> Unit.ofSymbol("furlong"));
    }

    /** 1 mm/s rms at these frequencies, computed by hand from v = ω·s and a = ω·v. */
    @ParameterizedTest
    @CsvSource({"2, 225.08, 0.01257", "10, 45.016, 0.06283", "12.5, 36.013, 0.07854", "16.667, 27.009, 0.10472",
        "25, 18.006, 0.15708", "50, 9.003, 0.31416", "100, 4.502, 0.62832", "159.155, 2.828, 1.00000",
        "500, 0.900, 3.14159",
        "1000, 0.450, 6.28319"})
    void sineRelationsAgreeWithHandValues(double hertz, double micrometresPeakToPeak, double metresPerSecondSquared) {
        Level velocity = Level.of(1, Unit.MM_PER_S, Detector.RMS);
        assertEquals(micrometresPeakToPeak,
                velocity.sineAs(Quantity.DISPLACEMENT, Detector.PEAK_TO_PEAK, hertz).in(Unit.UM), 0.0006
                + 1e-5 * micrometresPeakToPeak);
        assertEquals(metresPerSecondSquared,
                velocity.sineAs(Quantity.ACCELERATION, Detector.RMS, hertz).si(),
                0.000006 + 2e-6 * metresPerSecondSquared);
    }

    /** 1 in/s zero-to-peak is 25.4/√2 = 17.961 mm/s rms. */
    @Test
    void detectorsOfASineConvert() {
        Level peak = Level.of(1, Unit.IN_PER_S, Detector.ZERO_TO_PEAK);
        assertEquals(17.961, peak.sineAs(Quantity.VELOCITY, Detector.RMS, 50).in(Unit.MM_PER_S), 0.0005);
        assertEquals(2, peak.sineAs(Quantity.VELOCITY, Detector.PEAK_TO_PEAK, 50).in(Unit.IN_PER_S), 1e-15);
    }

    @Test
    void levelsAreValuesThatPrintWell() {
        Level level = Level.of(4.3071, Unit.MM_PER_S, Detector.RMS).within(Band.of(10, 1000));
        assertEquals("4.31 mm/s rms (10\u20131000 Hz)", level.toString());
        assertEquals("12.3 m/s\u00b2 0-peak", Level.of(12.345, Unit.M_PER_S2, Detector.ZERO_TO_PEAK).toString());
        assertEquals("4.00 \u00b5m peak-peak", Level.of(4, Unit.UM, Detector.PEAK_TO_PEAK).toString());
        assertEquals(Optional.of(Band.of(10, 1000)), level.band());
        assertEquals(level, Level.ofSi(level.si(), Quantity.VELOCITY, Detector.RMS).within(Band.of(10, 1000)));
        assertEquals(level.hashCode(),
                Level.ofSi(level.si(), Quantity.VELOCITY, Detector.RMS).within(Band.of(10, 1000)).hashCode());
        assertNotEquals(level, Level.ofSi(level.si(), Quantity.VELOCITY, Detector.RMS));
        assertNotEquals(level, Level.ofSi(level.si(), Quantity.VELOCITY, Detector.ZERO_TO_PEAK)
                .within(Band.of(10, 1000)));
        assertNotEquals(level, Level.ofSi(level.si(), Quantity.DISPLACEMENT, Detector.RMS).within(Band.of(10, 1000)));
        assertEquals(4.3071e-3, level.si(), 1e-18);
    }

    @Test
    void levelsTellHowTheyWereMeasured() {
        Level stated = Level.of(1, Unit.MM_PER_S, Detector.RMS).within(Band.of(10, 1000));
        assertEquals(LevelMethod.STATED, stated.method());
        Level measured = stated.by(LevelMethod.ZERO_PHASE_BAND);
        assertEquals("1.00 mm/s rms (10\u20131000 Hz, zero-phase)", measured.toString());
        assertNotEquals(stated, measured);
        assertTrue(stated.isLike(measured));
        assertEquals(measured, measured.within(Band.of(10, 1000)));
        assertMessage("level must be stated by the caller to be given the band 2\u20131000 Hz: 1.00 mm/s rms"
                + " (10\u20131000 Hz, zero-phase), zero-phase band", () -> measured.within(Band.of(2, 1000)));
        assertEquals(Optional.of(Band.of(2, 1000)), stated.within(Band.of(2, 1000)).band());
    }

    @Test
    void conversionsKeepTheMethodWhereTheyHoldForAllSignals() {
        Level measured = Level.of(1, Unit.MM_PER_S, Detector.RMS).by(LevelMethod.SEVERITY_CHAIN);
        Level peak = measured.derivedPeak();
        assertEquals(LevelMethod.SEVERITY_CHAIN, peak.method());
        Level back = peak.sineAs(Quantity.VELOCITY, Detector.RMS, 50);
        assertEquals(LevelMethod.SEVERITY_CHAIN, back.method());
        assertEquals(measured.si(), back.si(), 1e-18);
        assertEquals(LevelMethod.SINE_CONVERSION,
                measured.sineAs(Quantity.VELOCITY, Detector.ZERO_TO_PEAK, 50).method());
        assertEquals("3.18 \u00b5m rms (as one sine)",
                measured.sineAs(Quantity.DISPLACEMENT, Detector.RMS, 50).toString());
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1e-9})
    void levelsHoldNoNonsense(double value) {
        assertMessage("level must be finite and >= 0 (acceleration in SI units): " + value,
                () -> Level.ofSi(value, Quantity.ACCELERATION, Detector.RMS));
    }

    @Test
    void quantitiesAreNotMixed() {
        assertMessage("unit must measure velocity: g measures acceleration",
                () -> Level.of(1, Unit.MM_PER_S, Detector.RMS).in(Unit.G));
        assertMessage("quantity must be a motion to be integrated or differentiated: voltage to velocity",
                () -> Level.of(1, Unit.V, Detector.RMS).sineAs(Quantity.VELOCITY, Detector.RMS, 10));
        assertEquals(2, Quantity.ACCELERATION.integrationsTo(Quantity.DISPLACEMENT));
        assertEquals(-1, Quantity.VELOCITY.integrationsTo(Quantity.ACCELERATION));
        assertFalse(Quantity.VOLTAGE.isMotion());
        assertTrue(Quantity.DISPLACEMENT.isMotion());
    }

    @Test
    void bandsKnowTheirEnds() {
        Band band = Band.of(10, 1000);
        assertTrue(band.contains(10));
        assertTrue(band.contains(1000));
        assertFalse(band.contains(Math.nextDown(10.0)));
        assertFalse(band.contains(Math.nextUp(1000.0)));
        assertFalse(band.contains(Double.NaN));
        assertEquals(505, band.centreHertz());
        assertEquals(990, band.widthHertz());
        assertEquals("0.5\u201312.5 Hz", Band.of(0.5, 12.5).toString());
        assertEquals(band, band.requireBelowNyquist(2000));
        assertMessage("band must be at or below half the sample rate, 999.5 Hz: 1000.0",
                () -> band.requireBelowNyquist(1999));
        assertMessage("highestHertz must be finite and above the lower end of the band, 10.0 Hz: 10.0",
                () -> Band.of(10, 10));
        assertMessage("highestHertz must be finite and above the lower end of the band, 10.0 Hz: NaN",
                () -> Band.of(10, Double.NaN));
        assertMessage("lowestHertz must be finite and >= 0 Hz: -1.0", () -> Band.of(-1, 10));
    }

    @Test
    void speedsConvert() {
        RotationSpeed speed = RotationSpeed.ofRevolutionsPerMinute(1480);
        assertEquals(1480 / 60.0, speed.hertz(), 1e-14);
        assertEquals(1480, speed.revolutionsPerMinute(), 1e-11);
        assertEquals(154.985, speed.radiansPerSecond(), 0.0005);
        assertEquals(74, speed.hertzOfOrder(3), 1e-12);
        assertEquals("1480 r/min (24.67 Hz)", speed.toString());
        assertEquals("1478.2 r/min (24.64 Hz)", RotationSpeed.ofRevolutionsPerMinute(1478.23).toString());
        assertMessage("rotation speed must be finite and > 0 r/min: 0.0",
                () -> RotationSpeed.ofRevolutionsPerMinute(0));
        assertMessage("rotation speed must be finite and > 0 Hz: NaN", () -> RotationSpeed.ofHertz(Double.NaN));
    }

    private static void assertMessage(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }
}
