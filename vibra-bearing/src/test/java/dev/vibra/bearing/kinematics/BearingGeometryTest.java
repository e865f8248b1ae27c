package dev.vibra.bearing.kinematics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.bearing.testing.Serial;
import dev.vibra.quantity.RotationSpeed;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class BearingGeometryTest {
    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/reference/kinematic-multiples.csv")
    void multiplesAreThePublishedOnes(String name, int elements, double ball, double pitch, double angle,
            double outerRace, double innerRace, double rollingElement, double cage, double tolerance,
            double cageTolerance) {
        KinematicFrequencies multiples = BearingGeometry.of(elements, ball, pitch, angle)
                .multiples(RotatingRing.INNER);
        assertEquals(outerRace, multiples.outerRaceHertz(), tolerance);
        assertEquals(innerRace, multiples.innerRaceHertz(), tolerance);
        assertEquals(rollingElement, multiples.rollingElementHertz(), tolerance);
        assertEquals(cage, multiples.cageHertz(), cageTolerance);
    }

    @Test
    @DisplayName("published millimetre sizes of the 6205 type give the published multiples")
    void millimetresOfThe6205Type() {
        KinematicFrequencies multiples = BearingGeometry.of(9, 7.94, 39.04, 0).multiples(RotatingRing.INNER);
        assertEquals(3.5848, multiples.of(BearingElement.OUTER_RACE), 1e-4);
        assertEquals(5.4152, multiples.of(BearingElement.INNER_RACE), 1e-4);
        assertEquals(4.7135, multiples.of(BearingElement.ROLLING_ELEMENT), 2e-4);
        assertEquals(0.39828, multiples.of(BearingElement.CAGE), 4e-5);
    }

    @Test
    @DisplayName("published example: N 8, 20 mm on 120 mm, 15 degrees, 25 Hz")
    void frequenciesOfThePublishedExample() {
        KinematicFrequencies found = BearingGeometry.of(8, 20, 120, 15)
                .frequencies(RotatingRing.INNER, RotationSpeed.ofHertz(25));
        assertEquals(10.488, found.cageHertz(), 5e-4);
        assertEquals(83.901, found.outerRaceHertz(), 5e-4);
        assertEquals(116.099, found.innerRaceHertz(), 5e-4);
        assertEquals(73.056, found.spinHertz(), 5e-4);
    }

    @Test
    void outerRingTurningKeepsThePassingRatesAndSpeedsUpTheCage() {
        BearingGeometry geometry = BearingGeometry.of(8, 20, 120, 15);
        KinematicFrequencies inner = geometry.frequencies(RotatingRing.INNER, RotationSpeed.ofHertz(25));
        KinematicFrequencies outer = geometry.frequencies(RotatingRing.OUTER, RotationSpeed.ofHertz(25));
        assertEquals(inner.outerRaceHertz(), outer.outerRaceHertz());
        assertEquals(inner.innerRaceHertz(), outer.innerRaceHertz());
        assertEquals(25 * 0.5 * (1 + geometry.diameterRatio()), outer.cageHertz(), 1e-12);
        assertEquals(25, outer.modulationOf(BearingElement.OUTER_RACE));
        assertEquals(0, outer.modulationOf(BearingElement.INNER_RACE));
    }

    @Test
    void modulationIsTheRateThroughTheLoadZone() {
        KinematicFrequencies found = BearingGeometry.of(9, 7.94, 39.04, 0)
                .frequencies(RotatingRing.INNER, RotationSpeed.ofHertz(30));
        assertEquals(0, found.modulationOf(BearingElement.OUTER_RACE));
        assertEquals(30, found.modulationOf(BearingElement.INNER_RACE));
        assertEquals(found.cageHertz(), found.modulationOf(BearingElement.ROLLING_ELEMENT));
        assertEquals(0, found.modulationOf(BearingElement.CAGE));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            2 | 7.94 | 39.04 | 0   | rollingElements must be at least 3: 2
            9 | 0    | 39.04 | 0   | ballDiameterMillimetres must be finite and > 0 mm: 0.0
            9 | NaN  | 39.04 | 0   | ballDiameterMillimetres must be finite and > 0 mm: NaN
            9 | 7.94 | -1    | 0   | pitchDiameterMillimetres must be finite and > 0 mm: -1.0
            9 | 7.94 | 39.04 | 91  | contactAngleDegrees must be within 0.0 to 90.0 degrees: 91.0
            9 | 7.94 | 39.04 | NaN | contactAngleDegrees must be within 0.0 to 90.0 degrees: NaN
            """)
    void wrongNumbersAreNamed(int elements, double ball, double pitch, double angle, String message) {
        IllegalArgumentException failure = assertThrows(IllegalArgumentException.class,
                () -> BearingGeometry.of(elements, ball, pitch, angle));
        assertEquals(message, failure.getMessage());
    }

    @Test
    void elementsThatDoNotFitAreRefused() {
        IllegalArgumentException failure = assertThrows(IllegalArgumentException.class,
                () -> BearingGeometry.of(9, 39.04, 7.94, 0));
        assertEquals("ballDiameter must be at most 2.716 mm, the room that 9 rolling elements leave each other on a"
                + " pitch diameter of 7.940 mm: 39.04", failure.getMessage());
    }

    @Test
    void ringsThatTurnTogetherAreRefused() {
        BearingGeometry geometry = BearingGeometry.of(9, 7.94, 39.04, 0);
        IllegalArgumentException failure = assertThrows(IllegalArgumentException.class,
                () -> geometry.frequencies(20, 20));
        assertEquals("outerRingHertz must be other than innerRingHertz, or nothing rolls: 20.0", failure.getMessage());
        assertThrows(IllegalArgumentException.class, () -> geometry.frequencies(Double.NaN, 20));
    }

    @Test
    void printsAsOneWritesIt() {
        BearingGeometry geometry = BearingGeometry.of(9, 7.94, 39.04, 0);
        assertEquals("9 × 7.94 mm on 39.04 mm, 0°", geometry.toString());
        assertEquals("outer race 107.4, inner race 162.2, rolling element 141.2, cage 11.93 Hz",
                geometry.frequencies(RotatingRing.INNER, RotationSpeed.ofRevolutionsPerMinute(1797)).toString());
        assertEquals("rolling element", BearingElement.ROLLING_ELEMENT.toString());
        assertEquals("inner", RotatingRing.INNER.toString());
    }

    @Test
    void survivesSerialisation() {
        BearingGeometry geometry = BearingGeometry.of(9, 7.94, 39.04, 0);
        assertEquals(geometry, Serial.copy(geometry));
        assertEquals(geometry.multiples(RotatingRing.OUTER), Serial.copy(geometry.multiples(RotatingRing.OUTER)));
    }
}
