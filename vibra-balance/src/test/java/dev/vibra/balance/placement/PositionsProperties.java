package dev.vibra.balance.placement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.PlacedMass;
import java.util.List;
import java.util.stream.IntStream;
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

    @Property
    void soItDoesOnUnevenCirclesWithTakenPositions(@ForAll @IntRange(min = 8, max = 40) int count,
            @ForAll AngleSense sense, @ForAll @DoubleRange(min = 0, max = 360) double start,
            @ForAll @DoubleRange(min = -0.4, max = 0.4) double uneven, @ForAll @IntRange(min = 1, max = 8) int taken,
            @ForAll @DoubleRange(min = -720, max = 720) double angle) {
        double[] angles = IntStream.range(0, count).mapToDouble(i -> (i + uneven * (i % 2)) * 360 / count).toArray();
        Positions positions = Positions.at(sense, angles).startingAt(start).without(taken);
        PlacedMass mass = PlacedMass.ofGrams(10, angle, sense);
        List<PositionedMass> parts = positions.split(mass);
        parts.forEach(part -> assertTrue(part.grams() > 0 && part.position() != taken, part.toString()));
        assertEquals(0, positions.combined(parts).kilograms().minus(mass.kilograms()).magnitude(), 1e-9);
    }
}
