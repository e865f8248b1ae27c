package dev.vibra.balance;

import static dev.vibra.balance.Balancing.mass;
import static dev.vibra.balance.Balancing.v;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Convention;
import dev.vibra.balance.vector.PhaseSense;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Published example, see the head of two-plane-turbine-rotor.txt. */
class TwoPlaneTurbineRotorTest {
    private static final ReferenceValues RAO = ReferenceValues.read("two-plane-turbine-rotor.txt");

    private static Reading[] readings(String key) {
        double[] x = RAO.all(key);
        return new Reading[] {v(x[0], x[1]), v(x[2], x[3])};
    }

    private static Mass trialMass(String key) {
        return mass(RAO.all(key)[0], RAO.all(key)[1]);
    }

    private static BalancingJob job(Convention convention) {
        return Balancing.inPlanes("left", "right").measuredAt("A", "B").with(convention)
                .initial(readings("initial"))
                .trial("left", trialMass("trial-left"), readings("after-left"))
                .trial("right", trialMass("trial-right"), readings("after-right"));
    }

    // The book treats phases and angles alike, as lag does with angles against and lead with angles along rotation.
    @ParameterizedTest
    @CsvSource({"LAG, AGAINST_ROTATION", "LEAD, WITH_ROTATION"})
    void correctionsAreThoseOfTheBook(PhaseSense phase, AngleSense angle) {
        Corrections corrections = job(Convention.of(phase, angle)).corrections();
        for (String plane : new String[] {"left", "right"}) {
            double[] expected = RAO.all("correction-" + plane);
            assertEquals(expected[0], corrections.in(plane).mass().grams(), 5e-5);
            assertEquals(expected[1], corrections.in(plane).mass().angleDegrees(), 5e-5);
        }
        corrections.predicted().forEach(v -> assertEquals(0, v.amplitude(), 1e-12));
    }

    @ParameterizedTest
    @CsvSource({"LAG, AGAINST_ROTATION", "LEAD, WITH_ROTATION"})
    void coefficientsAreThoseOfTheBook(PhaseSense phase, AngleSense angle) {
        InfluenceCoefficients alpha = job(Convention.of(phase, angle)).coefficients();
        String[][] keys = {{"left-at-a", "right-at-a"}, {"left-at-b", "right-at-b"}};
        for (int row = 0; row < 2; row++) {
            for (int plane = 0; plane < 2; plane++) {
                double[] expected = RAO.all("coefficient-" + keys[row][plane]);
                assertEquals(expected[0], alpha.perGram(row, plane), 5e-6);
                assertEquals(expected[1], alpha.phaseDegrees(row, plane), 5e-4);
            }
        }
    }

    @Test
    void unbalanceIsOppositeToTheCorrection() {
        BalancingJob withRadii = Balancing.inPlanes("left", "right").measuredAt("A", "B")
                .radius("left", 100).radius("right", 200)
                .initial(readings("initial"))
                .trial("left", trialMass("trial-left"), readings("after-left"))
                .trial("right", trialMass("trial-right"), readings("after-right"));
        ResidualUnbalance left = withRadii.corrections().presentUnbalance().get(0);
        ResidualUnbalance right = withRadii.corrections().presentUnbalance().get(1);
        assertEquals(RAO.all("unbalance-left")[0] * 100, left.gramMillimetres(), 5e-3);
        assertEquals(RAO.all("unbalance-left")[1], left.angleDegrees(), 5e-5);
        assertEquals(RAO.all("unbalance-right")[0] * 200, right.gramMillimetres(), 1e-2);
        assertEquals(RAO.all("unbalance-right")[1], right.angleDegrees(), 5e-5);
    }

    // The same numbers seen in one plane: computed from the identities alpha = (V1 - V0)/T and C = -V0/alpha.
    @Test
    void singlePlaneViewOfTheLeftEnd() {
        BalancingJob single = Balancing.inPlanes("left").measuredAt("A").initial(v(8.5, 60))
                .trial("left", mass(10, 270), v(6.0, 125));
        assertEquals(0.80711, single.coefficients().perGram(0, 0), 5e-6);
        assertEquals(287.644, single.coefficients().phaseDegrees(0, 0), 5e-4);
        assertEquals(10.5314, single.corrections().in("left").mass().grams(), 5e-5);
        assertEquals(312.356, single.corrections().in("left").mass().angleDegrees(), 5e-4);
        assertEquals("add left 10.5 g at 312.4° against rotation (phase is lag to the tachometer mark, angles are"
                + " counted against rotation from the mark)", single.corrections().toString());
    }

    // A sheet with lag phases and angles along rotation is the first sheet with the masses read the other way round.
    @Test
    void mixedConventionMirrorsTheMassesOnly() {
        BalancingJob mixed = Balancing.inPlanes("left").measuredAt("A")
                .with(Convention.of(PhaseSense.LAG, AngleSense.WITH_ROTATION)).initial(v(8.5, 60))
                .trial("left", mass(10, 360 - 270), v(6.0, 125));
        assertEquals(360 - 312.356, mixed.corrections().in("left").mass().angleDegrees(), 5e-4);
        assertEquals(287.644, mixed.coefficients().phaseDegrees(0, 0), 5e-4);
    }
}
