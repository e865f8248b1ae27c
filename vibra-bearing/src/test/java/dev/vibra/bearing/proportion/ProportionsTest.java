package dev.vibra.bearing.proportion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.testing.Serial;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class ProportionsTest {
    private static List<Proportion> inner(ObservedRate... rates) {
        return Proportions.of(List.of(rates), RotatingRing.INNER);
    }

    private static ObservedRate rate(double order) {
        return ObservedRate.of(order);
    }

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/reference/kinematic-multiples.csv")
    @DisplayName("published multiples lead back to the published bearing: both races fix it, one leaves it among few")
    void publishedMultiplesLeadBack(String name, int elements, double ball, double pitch, double angle,
            double outerRace, double innerRace, double rollingElement, double cage) {
        double ratio = BearingGeometry.of(elements, ball, pitch, angle).diameterRatio();
        Proportion both = inner(rate(outerRace), rate(innerRace)).get(0);
        assertEquals(BearingElement.OUTER_RACE, both.element());
        assertEquals(elements, both.fewest());
        assertEquals(elements, both.most());
        assertEquals(ratio, both.ratio(), 2e-4);
        for (double order : new double[] {outerRace, innerRace, rollingElement}) {
            BearingElement element = order == outerRace ? BearingElement.OUTER_RACE : order == innerRace
                    ? BearingElement.INNER_RACE : BearingElement.ROLLING_ELEMENT;
            List<Proportion> alone = inner(rate(order));
            assertTrue(alone.size() <= 7, alone::toString);
            assertTrue(alone.stream().anyMatch(one -> one.element() == element && one.admits(elements, ratio)),
                    alone::toString);
        }
        Proportion rolling = inner(rate(rollingElement).withSidebands(cage, 0.6)).stream()
                .filter(one -> one.element() == BearingElement.ROLLING_ELEMENT).findFirst().orElseThrow();
        assertTrue(rolling.admits(elements, ratio), rolling::toString);
        assertEquals(ratio, rolling.ratio(), 0.011);
    }

    @Test
    @DisplayName("3.5848x of the 6205 type: outer race of 9 or 10, an inner race of 6 only at a steep contact angle")
    void ambiguityOfOneRateIsListed() {
        List<Proportion> found = inner(rate(3.5848));
        assertEquals("outer race of 9 elements, d/D·cos α 0.203 ± 0.012", found.get(0).toString());
        assertEquals(List.of(ProportionClue.STEADY, ProportionClue.DEEP_GROOVE), found.get(0).clues());
        assertEquals(0.39831, found.get(0).cageOrder(), 5e-5);
        assertEquals("outer race of 9 or 10 elements, or rolling element of 6 to 16 elements, or inner race of 6"
                + " elements", Candidates.inWords(found));
        assertTrue(found.get(3).clues().contains(ProportionClue.SPARSE));
    }

    @Test
    @DisplayName("sidebands at the speed put the race that turns first; which race that is depends on the ring")
    void sidebandsTellTheTurningRace() {
        assertEquals(BearingElement.INNER_RACE, inner(rate(5.4152).withSidebands(1, 0.6)).get(0).element());
        Proportion outer = Proportions.of(List.of(rate(3.5848).withSidebands(1, 0.6)), RotatingRing.OUTER).get(0);
        assertEquals(BearingElement.OUTER_RACE, outer.element());
        assertTrue(outer.clues().contains(ProportionClue.SWINGS_WITH_SPEED));
        assertEquals(0.5 * (1 + outer.ratio()), outer.cageOrder(), 1e-12);
        assertTrue(outer.toString().endsWith("outer ring turning"));
    }

    @Test
    void faintSidebandsSpeakForNeither() {
        List<ProportionClue> clues = inner(rate(4.1).withSidebands(1, 0.2)).stream()
                .filter(one -> one.element() != BearingElement.ROLLING_ELEMENT).flatMap(one -> one.clues().stream())
                .filter(clue -> clue != ProportionClue.DEEP_GROOVE && clue != ProportionClue.SPARSE).toList();
        assertEquals(List.of(), clues);
    }

    @Test
    @DisplayName("a rate of the cage parts outer races: 3.5848/0.39828 is 9.001")
    void cageFixesTheNumber() {
        List<Proportion> found = inner(rate(3.5848), rate(0.39828));
        assertTrue(found.get(0).clues().contains(ProportionClue.CAGE_AGREES));
        assertEquals(9, found.get(0).fewest());
        Proportion ten = found.stream().filter(one -> one.fewest() == 10).findFirst().orElseThrow();
        assertTrue(ten.clues().contains(ProportionClue.CAGE_DISAGREES));
    }

    @Test
    @DisplayName("a cage alone: rolling element or cage, its ratio known, its number not")
    void cageAlone() {
        List<Proportion> found = inner(rate(0.39828));
        assertEquals(List.of(BearingElement.ROLLING_ELEMENT, BearingElement.CAGE),
                found.stream().map(Proportion::element).toList());
        assertTrue(found.stream().allMatch(one -> one.admits(9, 0.2034) && one.most() > one.fewest()));
    }

    @Test
    void whatNoBearingMakesHasNoCandidate() {
        assertEquals(List.of(), inner());
        assertEquals(List.of(), inner(rate(1.2)));
        assertEquals(List.of(), inner(rate(60)));
    }

    @Test
    @DisplayName("a second pulsation that no candidate explains speaks against none")
    void foreignSecondRateIsLeftOut() {
        assertTrue(inner(rate(3.5848), rate(14.2)).stream()
                .noneMatch(one -> one.clues().contains(ProportionClue.SECOND_RATE_LEFT)));
    }

    @Test
    void clueSaysOnWhichSideItIs() {
        assertTrue(ProportionClue.SECOND_RACE.supports());
        assertFalse(ProportionClue.TURNS_THOUGH_STEADY.supports());
        Proportion inner = inner(rate(3.5848)).get(3);
        assertTrue(inner.describe().contains("; against it: "), inner::describe);
    }

    @Test
    void valuesSurviveSerialisation() {
        Proportion one = inner(rate(3.5848).withSidebands(1, 0.5)).get(0);
        assertEquals(one, Serial.copy(one));
    }

    @Test
    void badInputIsNamed() {
        Stream.<org.junit.jupiter.api.function.Executable>of(() -> rate(Double.NaN), () -> rate(0),
                () -> rate(3).withSidebands(-1, 0.5), () -> rate(3).withSidebands(1, Double.NaN),
                () -> Proportions.of(List.of(rate(3)), RotatingRing.INNER, 0.2),
                () -> new Proportion(BearingElement.CAGE, RotatingRing.INNER, 9, 8, 0.2, 0, List.of(), List.of()),
                () -> new Proportion(BearingElement.CAGE, RotatingRing.INNER, 9, 9, 1, 0, List.of(), List.of()))
                .forEach(call -> assertThrows(IllegalArgumentException.class, call));
    }
}
