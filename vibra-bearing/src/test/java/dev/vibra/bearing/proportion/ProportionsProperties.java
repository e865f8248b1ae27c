package dev.vibra.bearing.proportion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

/** Closes the loop on the arithmetic: rates of a bearing, slip included, lead back to it. */
class ProportionsProperties {
    @Provide
    Arbitrary<BearingGeometry> bearings() {
        return Combinators.combine(Arbitraries.integers().between(7, 20), Arbitraries.doubles().between(0.5, 0.95),
                Arbitraries.doubles().between(0, 40))
                .as((count, filling, angle) -> BearingGeometry.of(count, 50 * filling * Math.sin(Math.PI / count), 50,
                        angle))
                .filter(bearing -> bearing.diameterRatio() > 0.1 && bearing.diameterRatio() < 0.42);
    }

    private static ObservedRate rate(KinematicFrequencies multiples, BearingElement element, double slip) {
        return ObservedRate.of(multiples.of(element) * (1 + slip));
    }

    private static boolean admits(Proportion one, BearingElement element, BearingGeometry bearing) {
        return one.element() == element && one.admits(bearing.rollingElements(), bearing.diameterRatio());
    }

    @Property(tries = 400, seed = "1984")
    void oneRateLeavesTheBearingAmongTheCandidates(@ForAll("bearings") BearingGeometry bearing,
            @ForAll BearingElement element, @ForAll RotatingRing turning,
            @ForAll @Scale(4) @DoubleRange(min = -0.0145, max = 0.0145) double slip) {
        List<Proportion> found = Proportions.of(List.of(rate(bearing.multiples(turning), element, slip)), turning);
        assertTrue(found.stream().anyMatch(one -> admits(one, element, bearing)), found::toString);
        for (Proportion one : found) {
            double room = Math.sin(Math.PI / one.fewest()) * 1.01;
            assertTrue(one.ratio() - one.ratioReach() <= room + 1e-9, one::toString);
        }
    }

    /** What a cage that slips does: one race is passed less often, the other more; their sum stays. */
    @Property(tries = 400, seed = "1984")
    void bothRacesFixTheBearing(@ForAll("bearings") BearingGeometry bearing, @ForAll boolean outerFirst,
            @ForAll RotatingRing turning, @ForAll @Scale(4) @DoubleRange(min = -0.0145, max = 0.0145) double slip) {
        KinematicFrequencies multiples = bearing.multiples(turning);
        ObservedRate outer = rate(multiples, BearingElement.OUTER_RACE, slip);
        ObservedRate inner = ObservedRate.of(bearing.rollingElements() - outer.order());
        List<Proportion> found = Proportions.of(outerFirst ? List.of(outer, inner) : List.of(inner, outer), turning);
        assertTrue(admits(found.get(0), outerFirst ? BearingElement.OUTER_RACE : BearingElement.INNER_RACE, bearing),
                found::toString);
        assertEquals(2, found.get(0).explains().size());
    }

    @Property(tries = 400, seed = "1984")
    void cageAgreesWithTheBearing(@ForAll("bearings") BearingGeometry bearing, @ForAll RotatingRing turning,
            @ForAll @Scale(4) @DoubleRange(min = -0.0145, max = 0.0145) double slip) {
        KinematicFrequencies multiples = bearing.multiples(turning);
        BearingElement standing = turning == RotatingRing.INNER ? BearingElement.OUTER_RACE
                : BearingElement.INNER_RACE;
        List<Proportion> found = Proportions.of(List.of(rate(multiples, standing, slip),
                rate(multiples, BearingElement.CAGE, slip)), turning);
        assertTrue(found.stream().anyMatch(one -> admits(one, standing, bearing)
                && one.clues().contains(ProportionClue.CAGE_AGREES)), found::toString);
    }
}
