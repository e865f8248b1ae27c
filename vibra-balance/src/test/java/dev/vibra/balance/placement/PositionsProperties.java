package dev.vibra.balance.placement;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.PlacedMass;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

class PositionsProperties {
    @Property
    void splittingKeepsTheVectorSum(@ForAll @IntRange(min = 3, max = 60) int count, @ForAll AngleSense sense,
            @ForAll @DoubleRange(min = 0.01, max = 1000) double grams,
            @ForAll @DoubleRange(min = -720, max = 720) double angle) {
        PlacedMass mass = PlacedMass.ofGrams(grams, angle, sense);
        Positions positions = Positions.of(count, sense);
        PlacedMass sum = positions.combined(positions.split(mass));
        assertEquals(0, sum.kilograms().minus(mass.kilograms()).magnitude(), 1e-8 * grams / 1000);
    }
}
