package dev.vibra.balance.placement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.PlacedMass;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PositionsTest {
    // Parallelogram by hand: 10 g midway between two of four places is 10/√2 g on each.
    @ParameterizedTest
    @EnumSource(AngleSense.class)
    void midwayBetweenTwoOfFour(AngleSense sense) {
        List<PositionedMass> parts = Positions.of(4, sense).split(PlacedMass.ofGrams(10, 45, sense));
        assertEquals(List.of(1, 2), parts.stream().map(PositionedMass::position).toList());
        parts.forEach(part -> assertEquals(10 / Math.sqrt(2), part.grams(), 1e-12));
    }

    // Sine rule by hand: 12 places, 30° apart; 20° from the first of the two, 10° from the second.
    @Test
    void unevenSplitFollowsTheSineRule() {
        List<PositionedMass> parts = Positions.of(12, AngleSense.AGAINST_ROTATION)
                .split(PlacedMass.ofGrams(9, 80, AngleSense.AGAINST_ROTATION));
        assertEquals(List.of(3, 4), parts.stream().map(PositionedMass::position).toList());
        assertEquals(9 * Math.sin(Math.toRadians(10)) / 0.5, parts.get(0).grams(), 1e-12);
        assertEquals(9 * Math.sin(Math.toRadians(20)) / 0.5, parts.get(1).grams(), 1e-12);
    }

    @Test
    void wrapsFromTheLastPositionToTheFirst() {
        Positions twelve = Positions.of(12, AngleSense.WITH_ROTATION);
        List<PositionedMass> parts = twelve.split(PlacedMass.ofGrams(9, 345, AngleSense.WITH_ROTATION));
        assertEquals(List.of(12, 1), parts.stream().map(PositionedMass::position).toList());
        assertEquals(parts.get(0).grams(), parts.get(1).grams(), 1e-12);
    }

    @Test
    void onAPositionTheMassStaysWhole() {
        for (AngleSense sense : AngleSense.values()) {
            Positions twelve = Positions.of(12, sense);
            for (int position = 1; position <= 12; position++) {
                List<PositionedMass> parts = twelve.split(PlacedMass.ofGrams(7, 30.0 * (position - 1), sense));
                assertEquals(1, parts.size());
                assertEquals(position, parts.get(0).position());
                assertEquals(7, parts.get(0).grams(), 1e-9);
                assertEquals(30.0 * (position - 1), twelve.angleDegrees(position));
            }
        }
        assertTrue(Positions.of(5, AngleSense.WITH_ROTATION).split(PlacedMass.ofGrams(0, 7, AngleSense.WITH_ROTATION))
                .isEmpty());
    }

    @Test
    void aMassShownInTheOtherSenseLandsInTheSamePlace() {
        PlacedMass mass = PlacedMass.ofGrams(9, 80, AngleSense.WITH_ROTATION);
        assertEquals(Positions.of(12, AngleSense.WITH_ROTATION).split(mass),
                Positions.of(12, AngleSense.WITH_ROTATION).split(mass.in(AngleSense.AGAINST_ROTATION)));
        PlacedMass sum = Positions.of(12, AngleSense.AGAINST_ROTATION).combined(List.of(new PositionedMass(4, 5)));
        assertEquals(90, sum.angleDegrees(), 1e-12);
        assertEquals(5, sum.grams(), 1e-12);
        assertEquals(270, sum.in(AngleSense.WITH_ROTATION).angleDegrees(), 1e-12);
    }

    // Sine rule by hand: holes at 0, 40, 100, 200 and 300°; 70° is 30° behind 40 and 30° before 100.
    @Test
    void positionsAtAnglesOfTheirOwn() {
        for (AngleSense sense : AngleSense.values()) {
            Positions holes = Positions.at(sense, 300, 0, 40, 100, 560);
            assertEquals(List.of(2, 3, 4, 5, 1), holes.free());
            assertEquals(200, holes.angleDegrees(5), 1e-12);
            List<PositionedMass> parts = holes.split(PlacedMass.ofGrams(9, 70, sense));
            assertEquals(List.of(3, 4), parts.stream().map(PositionedMass::position).toList());
            parts.forEach(part -> assertEquals(9 * Math.sin(Math.PI / 6) / Math.sin(Math.PI / 3), part.grams(), 1e-12));
            // 330° is midway between hole 1 at 300° and hole 2 at 0°.
            assertEquals(List.of(1, 2), holes.split(PlacedMass.ofGrams(9, 330, sense)).stream()
                    .map(PositionedMass::position).toList());
            assertEquals(List.of(new PositionedMass(5, 9)), holes.split(PlacedMass.ofGrams(9, -160, sense)).stream()
                    .map(m -> new PositionedMass(m.position(), Math.rint(m.grams() * 1e9) / 1e9)).toList());
        }
    }

    @Test
    void aMarkThatIsNotAtTheFirstPosition() {
        Positions four = Positions.of(4, AngleSense.AGAINST_ROTATION).startingAt(30);
        assertEquals(30, four.angleDegrees(1), 1e-12);
        assertEquals(300, four.angleDegrees(4), 1e-12);
        List<PositionedMass> parts = four.split(PlacedMass.ofGrams(10, 75, AngleSense.AGAINST_ROTATION));
        assertEquals(List.of(1, 2), parts.stream().map(PositionedMass::position).toList());
        parts.forEach(part -> assertEquals(10 / Math.sqrt(2), part.grams(), 1e-12));
        assertEquals(List.of(4, 1), four.split(PlacedMass.ofGrams(10, 345, AngleSense.AGAINST_ROTATION)).stream()
                .map(PositionedMass::position).toList());
        assertEquals("4 position(s), 1 at 30°, counted against rotation", four.toString());
        assertEquals(Positions.of(4, AngleSense.AGAINST_ROTATION), four.startingAt(0).startingAt(360));
        assertEquals(350, four.startingAt(-10).angleDegrees(1), 1e-12);
    }

    @Test
    void takenPositionsAreLeftOut() {
        Positions eight = Positions.of(8, AngleSense.WITH_ROTATION).without(2, 3);
        // 45° is taken and so is 90°: 60° goes between 0° and 135°.
        List<PositionedMass> parts = eight.split(PlacedMass.ofGrams(6, 60, AngleSense.WITH_ROTATION));
        assertEquals(List.of(1, 4), parts.stream().map(PositionedMass::position).toList());
        assertEquals(6 * Math.sin(Math.toRadians(75)) / Math.sin(Math.toRadians(135)), parts.get(0).grams(), 1e-12);
        assertEquals(6 * Math.sin(Math.toRadians(60)) / Math.sin(Math.toRadians(135)), parts.get(1).grams(), 1e-12);
        assertEquals("8 position(s), 1 at the mark, counted with rotation, 6 free", eight.toString());
        assertEquals(8, eight.count());
        Positions half = eight.without(4);
        assertEquals("mass must lie between free positions less than half a turn apart: 6.00 g at 60.0° with rotation"
                + " between positions 1 and 5", assertThrows(IllegalArgumentException.class,
                () -> half.split(PlacedMass.ofGrams(6, 60, AngleSense.WITH_ROTATION))).getMessage());
        assertEquals(1, half.split(PlacedMass.ofGrams(6, 180, AngleSense.WITH_ROTATION)).size());
        Positions only = Positions.at(AngleSense.WITH_ROTATION, 20);
        assertEquals(6, only.split(PlacedMass.ofGrams(6, 20, AngleSense.WITH_ROTATION)).get(0).grams(), 1e-12);
        assertThrows(IllegalArgumentException.class,
                () -> only.split(PlacedMass.ofGrams(6, 21, AngleSense.WITH_ROTATION)));
    }

    @Test
    void circlesAreComparedByWhatTheyOffer() {
        Positions six = Positions.of(6, AngleSense.WITH_ROTATION);
        assertEquals(six, Positions.at(AngleSense.WITH_ROTATION, 0, 60, 120, 180, 240, 300));
        assertEquals(six.hashCode(), Positions.of(6, AngleSense.WITH_ROTATION).hashCode());
        assertNotEquals(six, Positions.of(6, AngleSense.AGAINST_ROTATION));
        assertNotEquals(six, six.without(1));
        assertNotEquals(six, six.startingAt(1));
        assertEquals(AngleSense.WITH_ROTATION, six.sense());
    }

    @Test
    void wordsAndBadInput() {
        assertEquals("12 position(s), 1 at the mark, counted against rotation",
                Positions.of(12, AngleSense.AGAINST_ROTATION).toString());
        assertEquals("8.21 g at position 3", new PositionedMass(3, 8.2123).toString());
        assertEquals("count of positions must be at least 3: 2", assertThrows(IllegalArgumentException.class,
                () -> Positions.of(2, AngleSense.WITH_ROTATION)).getMessage());
        Positions three = Positions.of(3, AngleSense.WITH_ROTATION);
        for (int bad : new int[] {0, 4}) {
            assertEquals("position must be within 1 to 3: " + bad, assertThrows(IllegalArgumentException.class,
                    () -> three.angleDegrees(bad)).getMessage());
        }
        assertEquals("at least one position must be left: without [1, 2, 3] of 3", assertThrows(
                IllegalArgumentException.class, () -> three.without(1, 2, 3)).getMessage());
        assertEquals("position must be within 1 to 3: 4", assertThrows(IllegalArgumentException.class,
                () -> three.without(4)).getMessage());
        assertEquals("angle of position 1 in degrees must be finite: NaN", assertThrows(IllegalArgumentException.class,
                () -> three.startingAt(Double.NaN)).getMessage());
        assertEquals("anglesDegrees[1] must be away from anglesDegrees[0], 10.0: 370.0", assertThrows(
                IllegalArgumentException.class, () -> Positions.at(AngleSense.WITH_ROTATION, 10, 370)).getMessage());
        assertEquals("anglesDegrees[1] must be finite: NaN", assertThrows(IllegalArgumentException.class,
                () -> Positions.at(AngleSense.WITH_ROTATION, 10, Double.NaN)).getMessage());
        assertEquals("count of positions must be at least 1: 0", assertThrows(IllegalArgumentException.class,
                () -> Positions.at(AngleSense.WITH_ROTATION)).getMessage());
        assertEquals("position must be at least 1: 0", assertThrows(IllegalArgumentException.class,
                () -> new PositionedMass(0, 1)).getMessage());
        assertEquals("mass in g must be finite: NaN", assertThrows(IllegalArgumentException.class,
                () -> new PositionedMass(1, Double.NaN)).getMessage());
    }
}
