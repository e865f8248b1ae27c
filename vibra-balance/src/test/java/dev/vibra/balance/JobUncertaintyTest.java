package dev.vibra.balance;

import static dev.vibra.balance.Balancing.mass;
import static dev.vibra.balance.Balancing.v;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.influence.CoefficientErrors;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.uncertainty.Ellipse;
import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.vector.Convention;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.evidence.Remark;
import dev.vibra.quantity.RotationSpeed;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class JobUncertaintyTest {
    private static final OptionalInt SETTLED = OptionalInt.of(0);

    private static BalancingJob fan() {
        return Balancing.inPlanes("fan").measuredAt("DE-H").radius("fan", 200);
    }

    /**
     * By hand: C = −V₀·T/(V₁−V₀). With V₀ = 1 and V₁ = 1 + i, dC = −T·(dV₀·V₁ − dV₁·V₀)/(V₁−V₀)²: relative errors of
     * both readings alike.
     */
    @Test
    void singlePlanePropagatedByHand() {
        BalancingJob job = fan().with(Convention.LEAD_WITH_ROTATION)
                .scatter(ReadingScatter.of(0.02, 0)).initial(v(1, 0))
                .trial("fan", mass(10, 0), v(Math.sqrt(2), 45));
        Ellipse e = job.corrections().uncertainty().orElseThrow().ofCorrection("fan");
        // dV₀ = 0.02·a, dV₁ = 0.02·(1+i)·b: dC = 10·0.02·(1+i)·(a − b) in g: only along 45°.
        assertEquals(10 * 0.02 * Math.sqrt(2) * Math.sqrt(2) * Math.sqrt(-2 * Math.log(0.05)), e.major(), 1e-5);
        assertEquals(0, e.minor(), 1e-5);
        assertEquals(Math.PI / 4, e.majorRadians(), 1e-5);
        assertEquals(0, e.centre().minus(Phasor.polar(10, Math.PI / 2)).magnitude(), 1e-9);
        // At the sensor α = i/10 per g: the same ellipse, a tenth, turned by 90°.
        Ellipse at = job.corrections().uncertainty().orElseThrow().ofPredicted().get(0);
        assertEquals(e.major() / 10, at.major(), 1e-6);
        assertEquals(-Math.PI / 4, at.majorRadians(), 1e-5);
        assertTrue(fan().initial(v(1, 0)).trial("fan", mass(10, 0), v(2, 45)).corrections().uncertainty().isEmpty());
        assertEquals("plane must be one of fan: x", assertThrows(IllegalArgumentException.class,
                () -> job.corrections().uncertainty().orElseThrow().ofCorrection("x")).getMessage());
        assertTrue(job.corrections().page().contains("\nUncertainty: fan ± 0.98 g and ± "), job.corrections().page());
        assertTrue(job.corrections().uncertainty().orElseThrow().gradeProbability().isEmpty());
    }

    /** A floor of 0.3 mm/s and coefficients of 4 % and 0.03 rad on top: three independent sources each way. */
    @Test
    void floorAndAgeOfCoefficientsAddUp() {
        InfluenceCoefficients stored = fan().initial(v(5, 70)).trial("fan", mass(10, 150), v(5, 130)).coefficients();
        BalancingJob job = fan().withCoefficients(stored, ReadingScatter.of(0.04, Math.toDegrees(0.03)))
                .scatter(ReadingScatter.of(0.02, Math.toDegrees(0.01)).withFloor(0.3)).initial(v(5, 70));
        Ellipse e = job.corrections().uncertainty().orElseThrow().ofCorrection("fan");
        double quantile = Math.sqrt(-2 * Math.log(0.05));
        // 10 g for 5 mm/s: 0.1 and 0.3 mm/s along the reading are 0.2 and 0.6 g, 4 % of 10 g are 0.4 g.
        double along = quantile * Math.sqrt(0.2 * 0.2 + 0.6 * 0.6 + 0.4 * 0.4);
        double across = quantile * Math.sqrt(0.1 * 0.1 + 0.6 * 0.6 + 0.3 * 0.3);
        assertEquals(along, e.major(), 1e-5);
        assertEquals(across, e.minor(), 1e-5);
        // The scatter of coefficients can't be settled by more readings of this state.
        assertEquals("floor of the scatter of coefficients must be zero: 0.1", assertThrows(
                IllegalArgumentException.class, () -> fan().withCoefficients(stored,
                ReadingScatter.of(0.1, 1).withFloor(0.1))).getMessage());
    }

    @Test
    void errorsOfCoefficientsForTheNextJob() {
        // V₀ = 3, V₁ = 3 + 4i: dα = (dV₁ − dV₀)/T, with 0.02·3 and 0.02·5 each way: √(3² + 5²)·0.02/10 per g.
        BalancingJob job = fan().with(Convention.LEAD_WITH_ROTATION).scatter(ReadingScatter.of(0.02,
                Math.toDegrees(0.02))).initial(v(3, 0)).trial("fan", mass(10, 0), v(5, Math.toDegrees(Math.atan2(4,
                3))));
        CoefficientErrors found = job.coefficientErrors().orElseThrow();
        assertEquals(0.002 * Math.sqrt(34), found.perGram(0, 0), 1e-9);
        assertTrue(fan().initial(v(1, 0)).trial("fan", mass(1, 0), v(2, 0)).coefficientErrors().isEmpty());
        BalancingJob next = fan().scatter(ReadingScatter.of(0.02, 1)).initial(v(3, 0));
        assertEquals(found, next.withCoefficients(job.coefficients(), found).coefficientErrors().orElseThrow());
        assertEquals(List.of("coefficients-taken-as-exact"), next.withCoefficients(job.coefficients()).corrections()
                .remarks().stream().map(Remark::code).toList());
        assertEquals(List.of(), next.withCoefficients(job.coefficients(), found).corrections().remarks());
        // Told per gram on a sheet they do the same.
        CoefficientErrors typed = CoefficientErrors.ofSheet(fan().layout(), new double[][] {{0.002 * Math.sqrt(34)}});
        assertEquals(0.002 * Math.sqrt(34), typed.perGram(0, 0), 1e-15);
        assertEquals(next.withCoefficients(job.coefficients(), found).corrections().uncertainty().orElseThrow()
                .ofCorrection("fan").major(), next.withCoefficients(job.coefficients(), typed).corrections()
                .uncertainty().orElseThrow().ofCorrection("fan").major(), 1e-6);
        assertEquals("standard deviations must have 1 rows of 1 elements: 1 rows of [2]", assertThrows(
                IllegalArgumentException.class, () -> CoefficientErrors.ofSheet(fan().layout(),
                new double[][] {{1, 2}})).getMessage());
        assertEquals("standard deviation of a coefficient must be finite and >= 0: NaN", assertThrows(
                IllegalArgumentException.class, () -> CoefficientErrors.ofSheet(fan().layout(),
                new double[][] {{Double.NaN}})).getMessage());
        assertEquals("errors of 1 x 1 coefficients", found.toString());
    }

    /**
     * Rao's turbine rotor, planes of different radius: σ = s·√(|V₁|² + |V₀|²)/T per gram, for each coefficient its
     * own.
     */
    @Test
    void eachCoefficientHasItsOwnError() {
        double[][] magnitudes = {{8.5, 6, 6}, {6.5, 4.5, 10.5}}; // initial, trial left, trial right; by sensor
        double[] trialGrams = {10, 12};
        CoefficientErrors found = Balancing.inPlanes("a", "b").measuredAt("1", "2").radius("b", 300)
                .scatter(ReadingScatter.of(0.01, Math.toDegrees(0.01))).initial(v(8.5, 60), v(6.5, 205))
                .trial("a", mass(10, 270), v(6, 125), v(4.5, 230)).trial("b", mass(12, 180), v(6, 35), v(10.5, 160))
                .coefficientErrors().orElseThrow();
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                assertEquals(0.01 * Math.hypot(magnitudes[i][0], magnitudes[i][j + 1]) / trialGrams[j],
                        found.perGram(i, j), 1e-8);
            }
        }
    }

    /**
     * Small cross coupling must not spoil a trim: with errors of each, the ellipse of the trim is about that of the
     * first job, and it holds the truth.
     */
    @Test
    void smallCrossCouplingDoesNotSpoilATrim() {
        BalancingJob start = Balancing.inPlanes("a", "b").measuredAt("1", "2").with(Convention.LEAD_WITH_ROTATION)
                .scatter(ReadingScatter.of(0.02, 1.5));
        // 0.7 mm/s per g at the own end, 0.04 at the other; 7 g in each plane; trials of 5 g.
        BalancingJob first = start.initial(v(5.18, 0), v(5.18, 0)).trial("a", mass(5, 0), v(8.68, 0), v(5.38, 0))
                .trial("b", mass(5, 0), v(5.38, 0), v(8.68, 0));
        double inFirst = first.corrections().uncertainty().orElseThrow().ofCorrection("a").major();
        Corrections trim = start.withCoefficients(first.coefficients(), first.coefficientErrors().orElseThrow())
                .initial(v(2.22, 0), v(2.22, 0)).corrections();
        assertEquals(List.of(), trim.remarks());
        assertEquals(3, trim.in("a").mass().grams(), 1e-9);
        double inTrim = trim.uncertainty().orElseThrow().ofCorrection("a").major();
        assertTrue(inTrim < inFirst && inTrim > 0.2 * inFirst, inTrim + " and " + inFirst);
    }

    /** However large the scatter, its effect is the derivative times it. */
    @Test
    void scatterFarBeyondTheReadingsStaysLinear() {
        Ellipse small = ofFloor(1);
        Ellipse huge = ofFloor(1e9);
        assertEquals(1e9, huge.major() / small.major(), 1e3);
    }

    private static Ellipse ofFloor(double floor) {
        return fan().scatter(ReadingScatter.of(0, 0).withFloor(floor)).initial(v(5, 70)).trial("fan", mass(10, 150),
                v(5, 130)).corrections().uncertainty().orElseThrow().ofCorrection("fan");
    }

    @Test
    void moreReadingsDoNotMendOldCoefficients() {
        InfluenceCoefficients stored = fan().initial(v(5, 70)).trial("fan", mass(10, 150), v(5, 130)).coefficients();
        BalancingJob job = fan().scatter(ReadingScatter.of(0, 0)).toTolerance(tolerance(60)).initial(v(5, 70));
        assertTrue(job.withCoefficients(stored).corrections().uncertainty().orElseThrow().gradeProbability()
                .orElseThrow().proved());
        GradeProbability old = job.withCoefficients(stored, ReadingScatter.of(0.02, Math.toDegrees(0.02)))
                .corrections().uncertainty().orElseThrow().gradeProbability().orElseThrow();
        assertEquals(1 - Math.exp(-60.0 * 60 / (2 * 40 * 40)), old.probability(), 0.003);
        assertTrue(old.moreReadings().isEmpty());
    }

    @Test
    void correctionThatMayPointAnywhereIsDoubted() {
        // Planes that differ by a tenth: 3 % and 2° of 5 and 15 mm/s are no longer small beside the difference.
        BalancingJob job = Balancing.inPlanes("a", "b").measuredAt("1", "2").initial(v(5, 0), v(5, 0))
                .trial("a", mass(1, 0), v(15, 0), v(15, 0)).trial("b", mass(1, 0), v(15, 0), v(16, 0));
        List<Remark> assumed = job.corrections().remarks().stream().filter(r -> r.code().equals("correction-uncertain"))
                .toList();
        assertEquals(2, assumed.size());
        assertEquals(1, assumed.get(0).limit());
        assertTrue(assumed.get(0).value() > 1, assumed.toString());
        assertTrue(assumed.get(0).text().endsWith(" times the largest correction (95 %), so it may do more harm than"
                + " good, if readings scatter by 3 % and 2° (one standard deviation, assumed: none was told)"),
                assumed.get(0).text());
        // The remark is the ellipse over the mass; with a hundredth of the scatter it goes.
        Corrections told = job.scatter(ReadingScatter.of(0.03, 2)).corrections();
        Ellipse e = told.uncertainty().orElseThrow().ofCorrection("a");
        Remark remark = told.remarks().get(1);
        // Plane b needs nothing: (5, 5) is cancelled by half a gram in a alone.
        assertEquals(0.5, told.in("a").mass().grams(), 1e-9);
        assertEquals(e.major() / 0.5, remark.value(), 1e-9 * remark.value());
        assertTrue(remark.text().endsWith("3 % and 2° (one standard deviation)"), remark.text());
        assertEquals(List.of("planes-alike"), job.scatter(ReadingScatter.of(0.0003, 0.02)).corrections().remarks()
                .stream().map(Remark::code).toList());
    }

    /**
     * Stored coefficients are taken as exact: what remains is a reading over α, and its scatter is round for 0.02 rad.
     */
    @Test
    void probabilityOfTheGradeByTheRayleighDistribution() {
        InfluenceCoefficients stored = fan().initial(v(5, 70)).trial("fan", mass(10, 150), v(5, 130)).coefficients();
        // 5 mm/s are 10 g at 200 mm; 2 % and 0.02 rad of that are 40 g·mm each way.
        ReadingScatter round = ReadingScatter.of(0.02, Math.toDegrees(0.02));
        BalanceTolerance tolerance = tolerance(60);
        BalancingJob job = fan().withCoefficients(stored).scatter(round).toTolerance(tolerance).initial(v(5, 70));
        GradeProbability p = job.corrections().uncertainty().orElseThrow().gradeProbability().orElseThrow();
        assertEquals(1 - Math.exp(-60.0 * 60 / (2 * 40 * 40)), p.probability(), 0.003);
        assertFalse(p.proved());
        // n readings: 1 − exp(−60²·n/(2·40²)) ≥ 0.95 from n = 3 (0.966); that is 2 more.
        assertEquals(OptionalInt.of(2), p.moreReadings());
        assertTrue(p.toString().matches("within tolerance with probability 0.67., 2 more reading\\(s\\) of this state"
                + " would settle it"), p.toString());
        BalancingJob twice = job.initial(v(5, 70)).initial(v(5, 70));
        GradeProbability settled = twice.corrections().uncertainty().orElseThrow().gradeProbability().orElseThrow();
        assertEquals(1 - Math.exp(-60.0 * 60 * 3 / (2 * 40 * 40)), settled.probability(), 0.003);
        assertTrue(settled.proved());
        assertEquals(SETTLED, settled.moreReadings());
        assertTrue(twice.corrections().uncertainty().orElseThrow().toString().contains(
                " (95 % ellipses); then within tolerance with probability 0.96"));
        assertTrue(settled.toString().startsWith("within tolerance with probability 0.96"), settled.toString());
    }

    @Test
    void finalRunSaysHowSureTheGradeIs() {
        BalancingJob job = fan().scatter(ReadingScatter.of(0.05, 5)).toTolerance(tolerance(150)).initial(v(5, 70))
                .trial("fan", mass(10, 150), v(5, 130));
        // 0.25 mm/s are about 100 g·mm: surely within 150. 0.5 mm/s are 200: surely not.
        GradeProbability fine = job.finalRun(v(0.25, 100)).verification().gradeProbability().orElseThrow();
        assertTrue(fine.proved(), fine.toString());
        GradeProbability bad = job.finalRun(v(0.5, 100)).verification().gradeProbability().orElseThrow();
        assertTrue(bad.probability() < 0.05 && bad.moreReadings().equals(SETTLED), bad.toString());
        // Exactly on the limit no number of readings helps.
        GradeProbability edge = job.finalRun(v(0.375, 100)).verification().gradeProbability().orElseThrow();
        assertEquals(0.5, edge.probability(), 0.05);
        assertTrue(edge.moreReadings().isEmpty());
        assertTrue(edge.toString().endsWith(", not settled by more readings of this state alone"), edge.toString());
        assertTrue(job.finalRun(v(0.25, 100)).verification().toString().contains("; within tolerance with probability"
                + " "));
        assertTrue(fan().initial(v(5, 70)).trial("fan", mass(10, 150), v(5, 130)).finalRun(v(1, 1)).verification()
                .gradeProbability().isEmpty());
        assertEquals("within tolerance with probability above 0.99", new GradeProbability(1, SETTLED).toString());
        assertEquals("within tolerance with probability below 0.01", new GradeProbability(0, SETTLED).toString());
        assertTrue(new GradeProbability(0.99, SETTLED).toString().startsWith("within tolerance with probability 0.99"));
        assertTrue(new GradeProbability(0.95, SETTLED).proved());
        assertFalse(new GradeProbability(0.9499, SETTLED).proved());
        assertThrows(IllegalArgumentException.class, () -> new GradeProbability(1.1, SETTLED));
        assertThrows(IllegalArgumentException.class, () -> new GradeProbability(0.5, OptionalInt.of(-1)));
    }

    private static BalanceTolerance tolerance(double gramMillimetres) {
        // G·m/Ω with Ω = 100 rad/s and m = 1 kg: G = U·Ω/(1000·m).
        return BalanceTolerance.of(BalanceGrade.of(gramMillimetres * 100 / 1000), 1,
                RotationSpeed.ofHertz(100 / (2 * Math.PI)));
    }
}
