package dev.vibra.bearing.proportion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.bearing.testing.Serial;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class UnknownBearingTest {
    private static final RotationSpeed SPEED = RotationSpeed.ofRevolutionsPerMinute(1797);
    private static final UnknownBearingSettings DEFAULTS = UnknownBearingSettings.withDefaults();

    private static Waveform wave(RotatingRing turning, BearingElement element, int length) {
        return BearingSignal.of(BearingGeometry.of(9, 7.94, 39.04, 0).frequencies(turning, SPEED))
                .withDefect(element, 8).withSlip(-0.005, 0.01).withResonance(3200, 0.04).withNoise(0.6)
                .waveform(12_000, length, 7);
    }

    private static UnknownBearing searched(BearingElement element) {
        return UnknownBearing.of(wave(RotatingRing.INNER, element, 60_000), SPEED);
    }

    @Test
    @DisplayName("each element of a deep-groove bearing is named with nine elements, first or among the first")
    void knownBearingIsFound() {
        assertEquals("3.562x: outer race of 9 or 10 elements", searched(BearingElement.OUTER_RACE).toString());
        UnknownBearing inner = searched(BearingElement.INNER_RACE);
        assertEquals(BearingElement.INNER_RACE, inner.candidates().get(0).element());
        assertTrue(inner.candidates().get(0).admits(9, 0.2034), inner::describe);
        UnknownBearing rolling = searched(BearingElement.ROLLING_ELEMENT);
        assertEquals(BearingElement.ROLLING_ELEMENT, rolling.candidates().get(0).element());
        assertTrue(rolling.candidates().get(0).admits(9, 0.2034), rolling::describe);
    }

    @Test
    @DisplayName("the outer ring may turn: its race then is the one with sidebands")
    void outerRingTurning() {
        Waveform wave = wave(RotatingRing.OUTER, BearingElement.OUTER_RACE, 60_000);
        UnknownBearing found = UnknownBearing.of(wave, SPEED, DEFAULTS.withTurning(RotatingRing.OUTER));
        assertEquals(BearingElement.OUTER_RACE, found.candidates().get(0).element());
        assertTrue(found.candidates().get(0).admits(9, 0.2034), found::describe);
        UnknownBearing either = UnknownBearing.of(wave, SPEED, DEFAULTS.withTurning(RotatingRing.values()));
        assertEquals(2, either.candidates().stream().map(Proportion::turning).distinct().count());
        assertTrue(either.candidates().contains(found.candidates().get(0)), either::describe);
    }

    @Test
    void describesInSixLinesAtMost() {
        UnknownBearing found = searched(BearingElement.OUTER_RACE);
        List<String> lines = found.describe().lines().toList();
        assertEquals(6, lines.size());
        assertTrue(lines.get(0).endsWith("; a candidate is no verdict"));
        assertEquals("decided by: " + String.join("; ", found.decidedBy()), lines.get(5));
        assertEquals(found.likely().get(0), found.candidates().get(0));
    }

    @Test
    void givenRateIsSetAside() {
        Waveform wave = wave(RotatingRing.INNER, BearingElement.OUTER_RACE, 60_000);
        UnknownBearing found = UnknownBearing.of(wave, SPEED, DEFAULTS.withOtherRates(106.83));
        assertEquals(List.of(), found.candidates());
        assertEquals("the given rate of 106.83 Hz", found.elsewhere().get(0).cause());
        assertEquals(List.of(), found.decidedBy());
    }

    @Test
    void shallowPulsationHasNoCandidate() {
        Waveform wave = wave(RotatingRing.INNER, BearingElement.OUTER_RACE, 60_000);
        UnknownBearing found = UnknownBearing.of(wave, SPEED, DEFAULTS.withDepth(2));
        assertEquals(List.of(), found.candidates());
        assertEquals("no pulsation that a bearing would explain", found.describe());
    }

    @Test
    @DisplayName("19.97 revolutions are too few, 20.03 are searched")
    void fewRevolutionsAreRefused() {
        UnknownBearing few = UnknownBearing.of(wave(RotatingRing.INNER, BearingElement.OUTER_RACE, 8_000), SPEED);
        assertEquals("the recording holds 20.0 revolutions, 20 are needed", few.obstacle().orElseThrow());
        assertEquals("not searched: " + few.obstacle().orElseThrow(), few.toString());
        UnknownBearing enough = UnknownBearing.of(wave(RotatingRing.INNER, BearingElement.OUTER_RACE, 8_025), SPEED);
        assertTrue(enough.obstacle().isEmpty());
    }

    @Test
    void silenceAndLowRatesAreRefused() {
        Waveform silent = Waveform.ofSi(Quantity.ACCELERATION, 12_000, new double[12_000]);
        assertEquals("no band is wide enough or holds vibration",
                UnknownBearing.of(silent, SPEED).obstacle().orElseThrow());
        Waveform slow = Waveform.ofSi(Quantity.ACCELERATION, 1_000, new double[12_000]);
        assertEquals("no band is wide enough or holds vibration",
                UnknownBearing.of(slow, SPEED).obstacle().orElseThrow());
    }

    @Test
    void valuesSurviveSerialisation() {
        UnknownBearing found = searched(BearingElement.INNER_RACE);
        UnknownBearing copy = Serial.copy(found);
        assertEquals(found.describe(), copy.describe());
        assertEquals(found.pulsations(), copy.pulsations());
        assertEquals(found.elsewhere(), copy.elsewhere());
        assertEquals(found.speed(), copy.speed());
        assertEquals(DEFAULTS, Serial.copy(DEFAULTS));
    }

    @Test
    void badSettingsAreNamed() {
        Stream.<Executable>of(() -> DEFAULTS.withTurning(), () -> DEFAULTS.withDepth(Double.NaN),
                () -> DEFAULTS.withSlip(0.06), () -> DEFAULTS.withSpeedTolerance(-0.01),
                () -> DEFAULTS.withFalseAlarmProbability(0), () -> DEFAULTS.withOtherRates(0),
                () -> DEFAULTS.withLineFrequencies(Double.NaN))
                .forEach(call -> assertThrows(IllegalArgumentException.class, call));
        assertEquals("inner ring turning, depth 0.33, 1 other rates", DEFAULTS.withOtherRates(12).toString());
    }
}
