package dev.vibra.measuring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Unit;
import java.util.List;
import org.junit.jupiter.api.Test;

class MountingTest {
    /** Undamped system of one degree of freedom: 4.2 % at fr/5, 9.9 % at 0.3 fr, 12.5 % at fr/3. */
    @Test
    void deviationBelowTheResonance() {
        MountedResonance resonance = MountedResonance.ofHertz(30_000);
        assertEquals(0.042, resonance.deviationAt(6000), 5e-4);
        assertEquals(0.099, resonance.deviationAt(9000), 5e-4);
        assertEquals(0.125, resonance.deviationAt(10_000), 1e-12);
        assertEquals(0, resonance.deviationAt(0));
        for (double deviation : new double[] {0.01, 0.05, 0.1, 1}) {
            assertEquals(deviation, resonance.deviationAt(resonance.highestHertz(deviation)), 1e-12);
        }
        assertEquals("mounted resonance 25000 Hz, within 5 % up to 5455 Hz",
                MountedResonance.ofHertz(25_000).toString());
        assertEquals("mounted resonance 12649 Hz, within 5 % up to 2760 Hz",
                MountedResonance.ofHertz(20_000).loaded(30, 45).toString(), "20 kHz times the root of 30/75");
        assertTrue(resonance.isHighEnoughFor(Band.of(10, 6000)));
        assertFalse(resonance.isHighEnoughFor(Band.of(10, 6000.1)));
    }

    /** Three times the mass added makes four times the mass: half the frequency. */
    @Test
    void massLowersTheResonance() {
        assertEquals(10_000, MountedResonance.ofHertz(20_000).loaded(25, 75).hertz(), 1e-9);
        assertEquals(20_000, MountedResonance.ofHertz(20_000).loaded(25, 0).hertz(), 1e-9);
    }

    @Test
    void figuresThatDisagreeGiveWarningsOnly() {
        assertEquals(List.of(), Mounting.MAGNET.warnings(Band.of(10, 2000)));
        assertEquals(List.of("magnet is said to be usable up to 2000 Hz to 7000 Hz (sources disagree): find the mounted"
                + " resonance to be sure of 10\u20135000 Hz"), Mounting.MAGNET.warnings(Band.of(10, 5000)));
        assertEquals(1, Mounting.MAGNET.warnings(Band.of(10, 7000)).size());
        assertEquals(List.of("magnet is said to be usable up to 2000 Hz to 7000 Hz (sources disagree): 10\u20138000 Hz"
                + " reaches beyond all of them"), Mounting.MAGNET.warnings(Band.of(10, 8000)));
        assertEquals(2, Mounting.HAND_HELD.warnings(Band.of(10, 1000)).size());
        assertEquals(List.of(), Mounting.HAND_HELD.warnings(Band.of(10, 500)));
        for (Mounting mounting : Mounting.values()) {
            assertTrue(mounting.lowestFigureHertz() >= 500);
            assertTrue(mounting.lowestFigureHertz() < mounting.highestFigureHertz());
            assertEquals(mounting, Mounting.ofName(mounting.toString()));
        }
        assertEquals("mounting must be one of stud, adhesive, wax, tape, magnet, hand-held:"
                + " glue",
                assertThrows(IllegalArgumentException.class, () -> Mounting.ofName("glue")).getMessage());
    }

    /** 5 V over three times 10 g is 167 mV/g, so 100; over three times 100 g 16.7 mV/g, so 10. */
    @Test
    void sensorByPeakAndBand() {
        SensorAdvice advice = advice(10, Band.of(10, 5000));
        assertEquals(166.7, advice.highestSensitivityMillivoltsPerG(), 0.05);
        assertEquals(100, advice.usualSensitivityMillivoltsPerG());
        assertEquals(25_000, advice.wantedResonance().hertz());
        assertEquals("sensitivity 100 mV/g (at most 167 mV/g for peaks of 10 g with a margin of three at ±5 V); mounted"
                + " resonance at least 25000 Hz", advice.toString());
        assertEquals(10, advice(100, Band.of(10, 1000)).usualSensitivityMillivoltsPerG());
        assertEquals(500, advice(10 / 3.0, Band.of(10, 1000)).usualSensitivityMillivoltsPerG());
        assertEquals(50, advice(33, Band.of(10, 1000)).usualSensitivityMillivoltsPerG());
        assertEquals("even 10 mV/g leaves less than the margin: take a sensor for shock",
                advice(200, Band.of(10, 1000)).hints().get(1));
        assertTrue(advice(1, Band.of(0.5,
                1000)).hints().get(2).startsWith("lower limit of the sensor (3 dB) at or below"
                + " 0.25 Hz"));
        assertEquals("a sensor that measures from 0 Hz on: piezoelectric ones don't",
                advice(1, Band.of(0, 1000)).hints().get(2));
        assertEquals(2, advice(1, Band.of(2, 1000)).hints().size());
        assertEquals(advice(10, Band.of(10, 5000)), advice);
        assertEquals(advice(10, Band.of(10, 5000)).hashCode(), advice.hashCode());
        assertNotEquals(advice(11, Band.of(10, 5000)), advice);
    }

    private static SensorAdvice advice(double peakG, Band band) {
        return SensorAdvice.of(Level.of(peakG, Unit.G, Detector.ZERO_TO_PEAK), band);
    }

    @Test
    void lightEnough() {
        assertTrue(SensorAdvice.isLightEnough(10, 100));
        assertFalse(SensorAdvice.isLightEnough(10.1, 100));
    }

    @Test
    void badInputIsNamed() {
        MountedResonance resonance = MountedResonance.ofHertz(1000);
        assertEquals("mounted resonance must be finite and > 0 Hz: 0.0", message(() -> MountedResonance.ofHertz(0)));
        assertEquals("frequency must be from 0 to below the resonance, 1000.0 Hz: 1000.0",
                message(() -> resonance.deviationAt(1000)));
        assertThrows(IllegalArgumentException.class, () -> resonance.deviationAt(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> resonance.deviationAt(-1));
        assertEquals("deviation must be finite and > 0: 0.0", message(() -> resonance.highestHertz(0)));
        assertEquals("sensor mass must be finite and > 0 g: 0.0", message(() -> resonance.loaded(0, 1)));
        assertEquals("added mass must be finite and >= 0 g: -1.0", message(() -> resonance.loaded(1, -1)));
        assertEquals("structure mass must be finite and > 0 g: NaN",
                message(() -> SensorAdvice.isLightEnough(1, Double.NaN)));
        assertEquals("highest must be an acceleration, zero to peak: 1.00 m/s² rms",
                message(() -> SensorAdvice.of(Level.of(1, Unit.M_PER_S2, Detector.RMS), Band.of(1, 2))));
        assertEquals("highest must be an acceleration, zero to peak: 1.00 mm/s 0-peak",
                message(() -> SensorAdvice.of(Level.of(1, Unit.MM_PER_S, Detector.ZERO_TO_PEAK), Band.of(1, 2))));
        assertEquals("highest must be finite and > 0 g: 0.0", message(() -> advice(0, Band.of(1, 2))));
    }

    private static String message(Runnable call) {
        return assertThrows(IllegalArgumentException.class, call::run).getMessage();
    }
}
