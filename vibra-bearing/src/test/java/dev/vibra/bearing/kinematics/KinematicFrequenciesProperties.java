package dev.vibra.bearing.kinematics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

/** Identities of rolling without slip, for any bearing that can be built and any speeds of its rings. */
class KinematicFrequenciesProperties {
    @Provide
    Arbitrary<BearingGeometry> geometries() {
        return Combinators.combine(Arbitraries.integers().between(3, 40), Arbitraries.doubles().between(0.1, 1),
                Arbitraries.doubles().between(5, 2000), Arbitraries.doubles().between(0, 90))
                .as((count, filling, pitch, angle) ->
                        BearingGeometry.of(count, filling * pitch * Math.sin(Math.PI / count), pitch, angle));
    }

    @Property
    void theRacesTogetherAreStruckByEveryElementOnceARevolution(@ForAll("geometries") BearingGeometry geometry,
            @ForAll @DoubleRange(min = 0.1, max = 500) double inner,
            @ForAll @DoubleRange(min = -500, max = 0) double outer) {
        KinematicFrequencies found = geometry.frequencies(inner, outer);
        assertEquals(geometry.rollingElements() * (inner - outer), found.innerRaceHertz() + found.outerRaceHertz(),
                1e-12 * geometry.rollingElements() * (inner - outer));
    }

    @Property
    void theOuterRaceIsStruckByEveryElementOnceATurnOfTheCage(@ForAll("geometries") BearingGeometry geometry,
            @ForAll @DoubleRange(min = 0.1, max = 500) double speed) {
        KinematicFrequencies found = geometry.frequencies(speed, 0);
        assertEquals(geometry.rollingElements() * found.cageHertz(), found.outerRaceHertz(),
                1e-12 * found.outerRaceHertz());
    }

    @Property
    void onlyTheRelativeSpeedOfTheRingsRollsTheElements(@ForAll("geometries") BearingGeometry geometry,
            @ForAll @DoubleRange(min = 1, max = 500) double relative,
            @ForAll @DoubleRange(min = -500, max = 500) double common) {
        KinematicFrequencies still = geometry.frequencies(relative, 0);
        KinematicFrequencies carried = geometry.frequencies(relative + common, common);
        assertEquals(still.outerRaceHertz(), carried.outerRaceHertz(), 1e-9 * still.outerRaceHertz());
        assertEquals(still.innerRaceHertz(), carried.innerRaceHertz(), 1e-9 * still.innerRaceHertz());
        assertEquals(still.spinHertz(), carried.spinHertz(), 1e-9 * still.spinHertz());
        assertEquals(Math.abs(common + still.cageHertz()), carried.cageHertz(), 1e-9 * (relative + Math.abs(common)));
    }

    /**
     * An element rolls on both races: the surface speeds at its two contacts, seen from the cage, are equal and
     * opposite. Written with surface speeds of the races, not with the formulas under test.
     */
    @Property
    void surfacesMoveTogetherWhereTheyTouch(@ForAll("geometries") BearingGeometry geometry,
            @ForAll @DoubleRange(min = 1, max = 500) double inner,
            @ForAll @DoubleRange(min = 0, max = 0.9) double outerShare) {
        double outer = outerShare * inner;
        KinematicFrequencies found = geometry.frequencies(inner, outer);
        double reach = geometry.ballDiameterMetres() * Math.cos(geometry.contactAngleRadians());
        double innerContact = Math.PI * (geometry.pitchDiameterMetres() - reach) * (inner - found.cageHertz());
        double outerContact = Math.PI * (geometry.pitchDiameterMetres() + reach) * (found.cageHertz() - outer);
        double surface = Math.PI * geometry.ballDiameterMetres() * found.spinHertz();
        assertEquals(surface, innerContact, 1e-9 * surface);
        assertEquals(surface, outerContact, 1e-9 * surface);
    }
}
