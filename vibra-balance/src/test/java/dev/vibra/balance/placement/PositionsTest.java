package dev.vibra.balance.placement;

import static org.junit.jupiter.api.Assertions.assertEquals;
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

    @Test
    void wordsAndBadInput() {
        assertEquals("12 positions, 1 at the mark, counted against rotation",
                Positions.of(12, AngleSense.AGAINST_ROTATION).toString());
        assertEquals("8.21 g at position 3", new PositionedMass(3, 8.2123).toString());
        assertEquals("count of positions must be at least 3: 2", assertThrows(IllegalArgumentException.class,
                () -> Positions.of(2, AngleSense.WITH_ROTATION)).getMessage());
        Positions three = Positions.of(3, AngleSense.WITH_ROTATION);
        for (int bad : new int[] {0, 4}) {
            assertEquals("position must be within 1 to 3: " + bad, assertThrows(IllegalArgumentException.class,
                    () -> three.angleDegrees(bad)).getMessage());
        }
        assertEquals("position must be at least 1: 0", assertThrows(IllegalArgumentException.class,
                () -> new PositionedMass(0, 1)).getMessage());
        assertEquals("mass in g must be finite: NaN", assertThrows(IllegalArgumentException.class,
                () -> new PositionedMass(1, Double.NaN)).getMessage());
    }
}
