package dev.vibra.balance;

import static dev.vibra.balance.Balancing.mass;
import static dev.vibra.balance.Balancing.v;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.Sensor;
import dev.vibra.balance.placement.FittedMasses;
import dev.vibra.balance.placement.PlaneFitting;
import dev.vibra.balance.placement.PositionedMass;
import dev.vibra.balance.placement.Positions;
import dev.vibra.balance.tolerance.Allocation;
import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.tolerance.GradeReached;
import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Convention;
import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.evidence.Remark;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class BalancingJobTest {
    /** One plane, influence 0.5 mm/s per gram at a lag of 40°; heavy spot 10 g at 30°: initial 5 mm/s at 70°. */
    private static BalancingJob fan() {
        return Balancing.inPlanes("fan").measuredAt("DE-H").radius("fan", 200);
    }

    private static BalancingJob fanAfterTrial() {
        // 10 g at 30° and 10 g at 150° together are 10 g at 90°: 5 mm/s at 130°.
        return fan().initial(v(5, 70)).trial("fan", mass(10, 150), v(5, 130));
    }

    @Test
    void singlePlaneByHand() {
        Corrections c = fanAfterTrial().corrections();
        assertEquals(10, c.in("fan").mass().grams(), 1e-12);
        assertEquals(210, c.in("fan").mass().angleDegrees(), 1e-12);
        assertEquals(0, c.predicted().get(0).amplitude(), 1e-12);
        assertEquals(5, c.present().get(0).amplitude(), 1e-12);
        assertEquals(2000, c.presentUnbalance().get(0).gramMillimetres(), 1e-9);
        assertEquals(30, c.presentUnbalance().get(0).angleDegrees(), 1e-9);
        assertTrue(c.presentUnbalance().get(0).permissibleGramMillimetres().isEmpty());
        assertEquals(1, c.conditionNumber(), 1e-12);
        assertEquals(List.of(Caution.values()), c.cautions());
        assertEquals(List.of(), c.remarks());
        assertEquals(Convention.LAG_AGAINST_ROTATION, c.convention());
        InfluenceCoefficients alpha = fanAfterTrial().coefficients();
        assertEquals(0.5, alpha.perGram(0, 0), 1e-12);
        assertEquals(40, alpha.phaseDegrees(0, 0), 1e-9);
    }

    @Test
    void coefficientsComeBackFromTheSheet() {
        for (Convention convention : List.of(Convention.LAG_AGAINST_ROTATION, Convention.LEAD_WITH_ROTATION)) {
            BalancingJob two = Balancing.inPlanes("a", "b").radius("a", 100).measuredAt(
                    new Sensor("1", Unit.MM_PER_S, Detector.RMS), new Sensor("2", Unit.UM, Detector.PEAK_TO_PEAK))
                    .with(convention);
            double[][] perGram = {{0.5, 2}, {3, 0.1}};
            double[][] phases = {{40, 350}, {0, 181}};
            InfluenceCoefficients alpha = InfluenceCoefficients.ofSheet(two.layout(), perGram, phases);
            for (int i = 0; i < 2; i++) {
                for (int j = 0; j < 2; j++) {
                    assertEquals(perGram[i][j], alpha.perGram(i, j), 1e-12);
                    assertEquals(0, Math.IEEEremainder(phases[i][j] - alpha.phaseDegrees(i, j), 360), 1e-9);
                }
            }
            // 0.5 mm/s rms per g at 100 mm: √2·0.5e-3 m/s per 1e-4 kg·m; b has no radius: per kg.
            assertEquals(Math.sqrt(2) * 0.5e-3 / 1e-4, alpha.at(0, 0).magnitude(), 1e-9);
            assertEquals(0.1 * 0.5e-6 / 1e-3, alpha.at(1, 1).magnitude(), 1e-12);
            assertEquals("magnitudes must have 2 rows of 2 elements: 1 rows of [2]", message(
                    IllegalArgumentException.class, () -> InfluenceCoefficients.ofSheet(two.layout(),
                    new double[][] {{1, 2}}, phases)));
            assertEquals("phases must have 2 rows of 2 elements: 2 rows of [1, 2]", message(
                    IllegalArgumentException.class, () -> InfluenceCoefficients.ofSheet(two.layout(), perGram,
                    new double[][] {{1}, {1, 2}})));
            assertEquals("magnitude of a coefficient must be finite and >= 0: -1.0", message(
                    IllegalArgumentException.class, () -> InfluenceCoefficients.ofSheet(two.layout(),
                    new double[][] {{0, -1}, {0, 0}}, phases)));
            assertEquals("phase of a coefficient in degrees must be finite: NaN", message(
                    IllegalArgumentException.class, () -> InfluenceCoefficients.ofSheet(two.layout(), perGram,
                    new double[][] {{0, 0}, {Double.NaN, 0}})));
        }
    }

    @Test
    void trialMassLeftOnGivesTheCorrectionOnTopOfIt() {
        BalancingJob job = fan().trialsLeftOn().initial(v(5, 70)).trial("fan", mass(10, 150), v(5, 130));
        Corrections c = job.corrections();
        // The rotor now carries 10 g at 90°.
        assertEquals(10, c.in("fan").mass().grams(), 1e-12);
        assertEquals(270, c.in("fan").mass().angleDegrees(), 1e-12);
        assertEquals("to the rotor as it is now, with all masses of the earlier runs left on", c.addedTo());
        assertEquals("to the rotor with the trial masses taken off", fanAfterTrial().corrections().addedTo());
    }

    @Test
    void trialAtItsOwnRadius() {
        Corrections c = fan().initial(v(5, 70)).trial("fan", mass(20, 150).atRadius(100), v(5, 130)).corrections();
        assertEquals(10, c.in("fan").mass().grams(), 1e-12);
        assertEquals(200, c.in("fan").mass().radiusMillimetres().getAsDouble(), 1e-12);
    }

    @Test
    void repeatedInitialRunsAreAveraged() {
        Corrections c = fan().initial(v(4, 70)).initial(v(6, 70)).trial("fan", mass(10, 150), v(5, 130)).corrections();
        assertEquals(10, c.in("fan").mass().grams(), 1e-12);
        assertEquals(210, c.in("fan").mass().angleDegrees(), 1e-12);
    }

    @Test
    void positionsSplitTheCorrection() {
        Corrections c = fan().positions("fan", 4).initial(v(5, 70)).trial("fan", mass(10, 150), v(5, 130))
                .corrections();
        // 10 g at 210° between position 3 (180°) and 4 (270°): 10·cos 30° and 10·sin 30°.
        assertEquals(3, c.in("fan").split().get(0).position());
        assertEquals(10 * Math.cos(Math.PI / 6), c.in("fan").split().get(0).grams(), 1e-9);
        assertEquals(4, c.in("fan").split().get(1).position());
        assertEquals(5, c.in("fan").split().get(1).grams(), 1e-9);
        assertTrue(c.in("fan").toString().contains(" (8.66 g at position 3 + 5.00 g at position 4)"),
                c.in("fan").toString());
        assertEquals(List.of(), c.remarks());
    }

    @Test
    void positionsOfTheirOwnSplitTheCorrection() {
        // 10 g at 210°: holes at 200 and 230°, 10° and 20° away: by the sine rule 10·sin 20°/sin 30° and 10·sin 10°/sin
        // 30°.
        Positions holes = Positions.at(AngleSense.AGAINST_ROTATION, 0, 90, 200, 230, 300);
        List<PositionedMass> split = fanAfterTrial().positions("fan", holes).corrections().in("fan").split();
        assertEquals(List.of(3, 4), split.stream().map(PositionedMass::position).toList());
        assertEquals(10 * Math.sin(Math.toRadians(20)) / 0.5, split.get(0).grams(), 1e-9);
        assertEquals(10 * Math.sin(Math.toRadians(10)) / 0.5, split.get(1).grams(), 1e-9);
        // The last word counts: twelve even ones again, 210° is position 8.
        assertEquals(8, fanAfterTrial().positions("fan", holes).positions("fan", 12).corrections().in("fan").split()
                .get(0).position());
        Corrections apart = fanAfterTrial().positions("fan", holes.without(3, 4)).corrections();
        assertEquals(List.of(), apart.in("fan").split());
        assertEquals("positions-apart", apart.remarks().get(0).code());
        assertTrue(apart.remarks().get(0).text()
                .startsWith("the correction in plane fan lies in a gap of half a turn"));
        assertEquals(210, apart.remarks().get(0).value(), 1e-9);
        assertEquals("positions-apart", fanAfterTrial().positions("fan", holes.without(3, 4)).minimaxCorrections()
                .remarks().get(0).code());
        assertEquals("plane must be one of fan: x", message(IllegalArgumentException.class,
                () -> fan().positions("x", holes)));
    }

    @Test
    void gradeBeforeTheCorrectionTellsWhetherItIsNeeded() {
        BalanceTolerance tolerance = BalanceTolerance.of(BalanceGrade.of(6.3), 30, RotationSpeed.ofHertz(24));
        // 10 g at 200 mm: 2000 g·mm of 1253, and 2000e-6/30·2π·24 = 10.05 mm/s.
        GradeReached now = fanAfterTrial().toTolerance(tolerance).corrections().presentGrade().orElseThrow();
        assertFalse(now.held());
        assertEquals(2000e-6 / 30 * 2 * Math.PI * 24 * 1000, now.millimetresPerSecond(), 1e-9);
        assertTrue(fanAfterTrial().toTolerance(tolerance).corrections().page().contains(
                "Before: G16 reached (10.1 mm/s), G6.3 not held: 2000 of 1253 g·mm; "));
        assertTrue(fanAfterTrial().corrections().presentGrade().isEmpty());
        assertTrue(Balancing.inPlanes("x").measuredAt("y").initial(v(5, 70)).trial("x", mass(10, 150), v(5, 130))
                .toTolerance(tolerance).corrections().presentGrade().isEmpty());
    }

    @Test
    void finalRunProvesTheGrade() {
        BalanceTolerance tolerance = BalanceTolerance.of(BalanceGrade.of(6.3), 30, RotationSpeed.ofHertz(24));
        BalancingJob job = fanAfterTrial().toTolerance(tolerance);
        Verification proof = job.finalRun(v(0.5, 100)).verification();
        assertEquals(0.1, proof.remainingShare().orElseThrow(), 1e-12);
        // 0.5 mm/s is 1 g at 100° − 40°.
        assertEquals(200, proof.residualUnbalance().get(0).gramMillimetres(), 1e-9);
        assertEquals(60, proof.residualUnbalance().get(0).angleDegrees(), 1e-9);
        assertEquals(tolerance.gramMillimetres(),
                proof.residualUnbalance().get(0).permissibleGramMillimetres().orElseThrow());
        double mmPerSecond = 200e-6 / 30 * 2 * Math.PI * 24 * 1000;
        assertEquals(mmPerSecond, proof.gradeReached().orElseThrow().millimetresPerSecond(), 1e-9);
        assertTrue(proof.gradeReached().orElseThrow().held());
        assertEquals(0.5, proof.after().get(0).amplitude(), 1e-12);
        assertEquals(5, proof.before().get(0).amplitude(), 1e-12);
        assertEquals(0, proof.predicted().get(0).amplitude(), 1e-12);
        assertEquals(List.of(), proof.remarks());
        assertEquals(Convention.LAG_AGAINST_ROTATION, proof.convention());
        assertTrue(proof.toString().matches("10(\\.0)? % of the vibration remains; G2.5 reached \\(1.01 mm/s\\), .*"),
                proof.toString());
        assertEquals(tolerance, job.tolerance().orElseThrow());
    }

    @Test
    void trimAfterTheFinalRunUsesTheSameCoefficients() {
        BalancingJob job = fanAfterTrial().finalRun(v(0.5, 100));
        Corrections trim = job.corrections();
        assertEquals(1, trim.in("fan").mass().grams(), 1e-12);
        assertEquals(240, trim.in("fan").mass().angleDegrees(), 1e-9);
        Verification proof = job.finalRun(v(0.05, 10)).verification();
        assertEquals(0.1, proof.remainingShare().orElseThrow(), 1e-9);
        assertEquals(0.5, proof.before().get(0).amplitude(), 1e-12);
        assertEquals(4, job.finalRun(v(0.05, 10)).runs().size());
    }

    @Test
    void storedCoefficientsNeedNoTrial() {
        InfluenceCoefficients stored = fanAfterTrial().coefficients();
        BalancingJob job = Balancing.inPlanes("fan").measuredAt("DE-H").in(Unit.IN_PER_S, Detector.PEAK_TO_PEAK)
                .radius("fan", 200).withCoefficients(stored).initial(v(2.5 * 2 * Math.sqrt(2) / 25.4, 130));
        assertEquals(5, job.corrections().in("fan").mass().grams(), 1e-12);
        assertEquals(270, job.corrections().in("fan").mass().angleDegrees(), 1e-9);
        String expected = "stored coefficients must have the planes, radii, sensors and speeds of the job: ";
        for (BalancingJob other : List.of(Balancing.inPlanes("fan").measuredAt("DE-H"),
                Balancing.inPlanes("fan").measuredAt("DE-V").radius("fan", 200),
                Balancing.inPlanes("rotor").measuredAt("DE-H").radius("rotor", 200),
                Balancing.inPlanes("fan").measuredAt("DE-H").radius("fan", 201),
                fan().in(Unit.UM, Detector.RMS), fan().at(RotationSpeed.ofHertz(25)))) {
            assertTrue(message(IllegalArgumentException.class, () -> other.withCoefficients(stored))
                    .startsWith(expected));
        }
        assertEquals(expected + "radii [200 mm] and [open]", message(IllegalArgumentException.class,
                () -> Balancing.inPlanes("fan").measuredAt("DE-H").withCoefficients(stored)));
        assertEquals(expected + "sensors [DE-H velocity] and [DE-H displacement]", message(
                IllegalArgumentException.class, () -> fan().in(Unit.UM, Detector.RMS).withCoefficients(stored)));
        assertEquals(expected + "planes [fan] and [rotor]", message(IllegalArgumentException.class,
                () -> Balancing.inPlanes("rotor").measuredAt("DE-H").withCoefficients(stored)));
        assertEquals(expected + "speeds [] and [1500 r/min (25.00 Hz)]", message(IllegalArgumentException.class,
                () -> fan().at(RotationSpeed.ofHertz(25)).withCoefficients(stored)));
    }

    @Test
    void weakTrialIsDoubted() {
        Corrections weak = fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(5.5, 80)).corrections();
        Remark remark = weak.remarks().get(0);
        assertEquals("trial-too-weak", remark.code());
        assertEquals(10.0 / 30, remark.value(), 0.01);
        assertEquals(1, remark.limit());
        assertTrue(remark.toString().startsWith("trial-too-weak: trial run in plane fan changed no amplitude that"
                + " counts by 30 % and no phase by 30°, so its coefficients"), remark.toString());
        assertTrue(remark.text().contains("about 3.0 times the mass would do, if the force limit allows it"),
                remark.text());
        assertTrue(fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(5, 70)).coefficients().perGram(0, 0) < 1e-12);
        assertEquals(List.of(), fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(6.51, 70)).corrections()
                .remarks());
        assertEquals(1, fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(6.49, 70)).corrections().remarks().size());
        assertEquals(List.of(), fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(3.49, 70)).corrections()
                .remarks());
        assertEquals(List.of(), fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(5, 39.9)).corrections().remarks());
        assertEquals(1, fan().initial(v(5, 10)).trial("fan", mass(1, 150), v(5, 340.1)).corrections().remarks().size());
        assertEquals(List.of("no-vibration"), codes(fan().initial(v(0, 0)).trial("fan", mass(1, 150), v(1, 0))
                .corrections().remarks()));
    }

    @Test
    void aTrialWithoutEffectIsRefused() {
        BalancingJob none = fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(5, 70));
        BalancingJob hardly = fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(5.004, 70));
        for (Executable step : List.<Executable>of(none::corrections, none::minimaxCorrections, hardly::corrections,
                none.regularised(0.1)::corrections,
                () -> none.fitting(PlaneFitting.on(Positions.of(4, AngleSense.AGAINST_ROTATION)).atMostEach(1)),
                () -> none.finalRun(List.of(PlacedMass.ofGrams(1, 0, AngleSense.AGAINST_ROTATION)),
                        none.vectors(v(4, 70))).verification())) {
            String message = message(IllegalStateException.class, step);
            assertTrue(message.startsWith("trial run in plane fan must change the readings by more than a thousandth:"
                    + " the change is "), message);
        }
        assertTrue(message(IllegalStateException.class, hardly::corrections).contains(" is 0.00080 of them; check that"
                + " the mass was on and that sensor and tachometer work"), message(IllegalStateException.class,
                hardly::corrections));
        Corrections weak = fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(5.01, 70)).corrections();
        assertEquals(List.of("trial-too-weak", "far-beyond-trial", "correction-uncertain"), codes(weak.remarks()));
        assertTrue(weak.remarks().get(0).text().endsWith("; look for a sensor, a plane or a speed where more shows"
                + " (common practice)"), weak.remarks().get(0).text());
        assertEquals(500, weak.remarks().get(1).value(), 1e-6);
        assertTrue(weak.toString().endsWith("; doubts: trial-too-weak, far-beyond-trial, correction-uncertain"),
                weak.toString());
        // A sensor that hardly sees anything doesn't silence the doubt.
        Corrections masked = Balancing.inPlanes("a").measuredAt("s", "dead").initial(v(5, 10), v(0.01, 10))
                .trial("a", mass(1, 0), v(5.02, 10.1), v(0.01, 60)).corrections();
        assertTrue(codes(masked.remarks()).contains("trial-too-weak"), masked.toString());
        // One that reads a tenth of the other and doubles tells enough of its plane.
        Corrections small = Balancing.inPlanes("a", "b").measuredAt("s", "t").initial(v(10, 0), v(1, 0))
                .trial("a", mass(10, 0), v(14, 30), v(1.2, 5)).trial("b", mass(10, 0), v(10.3, 1), v(2, 0))
                .corrections();
        assertEquals(List.of(), codes(small.remarks()));
        assertEquals(List.of(), codes(Balancing.inPlanes("a").measuredAt("s", "t").initial(v(5, 10), v(1, 10))
                .trial("a", mass(1, 0), v(5.02, 10.1), v(2, 60)).corrections().remarks()).stream()
                .filter("trial-too-weak"::equals).toList());
        // Stored coefficients of zero have no answer either.
        InfluenceCoefficients zero = InfluenceCoefficients.ofSheet(fan().layout(), new double[][] {{0}},
                new double[][] {{0}});
        for (BalancingJob job : List.of(fan(), fan().regularised(0.1))) {
            assertEquals("plane fan must act at the sensors to be balanced: its coefficients are zero at every sensor"
                    + " that counts", message(IllegalStateException.class,
                    () -> job.withCoefficients(zero).initial(v(1, 0)).corrections()));
        }
        BalancingJob both = Balancing.inPlanes("a", "b").measuredAt("1", "2").regularised(0.1);
        InfluenceCoefficients none2 = InfluenceCoefficients.ofSheet(both.layout(), new double[2][2], new double[2][2]);
        assertEquals("planes must act at the sensors to be balanced: all coefficients are zero at every sensor that"
                + " counts", message(IllegalStateException.class,
                () -> both.withCoefficients(none2).initial(v(1, 0), v(1, 0)).corrections()));
    }

    @Test
    void aTrialThatThrowsTooHardIsDoubted() {
        // 10 g at 200 mm and 24 Hz: 45.48 N; 10 % of the weight per bearing is 0.1·M·g/2, the same for M = 92.75 kg.
        double limit = 0.010 * 0.2 * Math.pow(2 * Math.PI * 24, 2) / (0.1 * 9.80665 / 2);
        assertEquals(92.75, limit, 0.01);
        RotationSpeed speed = RotationSpeed.ofHertz(24);
        BalancingJob heavy = fanAfterTrial().toTolerance(BalanceTolerance.of(BalanceGrade.of(6.3), limit, speed));
        assertEquals(List.of(), heavy.corrections().remarks());
        BalancingJob light = fanAfterTrial().toTolerance(BalanceTolerance.of(BalanceGrade.of(6.3), limit / 2, speed));
        Remark remark = light.corrections().remarks().get(0);
        assertEquals("trial-force-high", remark.code());
        assertEquals(0.2, remark.value(), 1e-9);
        assertEquals(0.1, remark.limit());
        assertEquals("trial run in plane fan threw with 20 % of the weight that each of two bearings carries at 1440"
                + " r/min (24.00 Hz), usual are 10 % (common practice): make sure that bearings, foundation and"
                + " fastening stand it", remark.text());
        // The speed of the runs counts where it is known: at twice the speed four times the force.
        BalancingJob faster = fan().at(RotationSpeed.ofHertz(48)).initial(v(5, 70)).trial("fan", mass(10, 150),
                v(5, 130)).toTolerance(BalanceTolerance.of(BalanceGrade.of(6.3), limit, speed));
        assertEquals(0.4, faster.corrections().remarks().get(0).value(), 1e-9);
        // The mass of the rotor may be told alone, and comes before that of the tolerance.
        BalancingJob told = fan().rotor(limit / 4).at(speed).initial(v(5, 70)).trial("fan", mass(10, 150), v(5, 130));
        assertEquals(0.4, told.corrections().remarks().get(0).value(), 1e-9);
        assertEquals(0.4, told.toTolerance(BalanceTolerance.of(BalanceGrade.of(6.3), limit, speed)).corrections()
                .remarks().get(0).value(), 1e-9);
        assertEquals("rotor mass must be finite and > 0 kg: 0.0",
                message(IllegalArgumentException.class, () -> fan().rotor(0)));
        // Without a radius no force is known.
        assertEquals(List.of(), Balancing.inPlanes("fan").measuredAt("DE-H").initial(v(5, 70)).trial("fan",
                mass(10, 150), v(5, 130)).toTolerance(BalanceTolerance.of(BalanceGrade.of(6.3), 1, speed)).corrections()
                .remarks());
    }

    // Rao's turbine rotor (see TwoPlaneTurbineRotorTest): a static and a couple pair tell the same as two single
    // trials.
    @Test
    void trialsInPairsTellTheSame() {
        BalancingJob start = Balancing.inPlanes("a", "b").measuredAt("1", "2").initial(v(8.5, 60), v(6.5, 205));
        BalancingJob single = start.trial("a", mass(10, 270), v(6, 125), v(4.5, 230)).trial("b", mass(12, 180),
                v(6, 35), v(10.5, 160));
        InfluenceCoefficients alpha = single.coefficients();
        BalancingJob pairs = start;
        for (double opposite : new double[] {0, 180}) {
            Phasor one = PlacedMass.ofGrams(5, 40, AngleSense.AGAINST_ROTATION).kilograms();
            Phasor other = PlacedMass.ofGrams(5, 40 + opposite, AngleSense.AGAINST_ROTATION).kilograms();
            List<Phasor> initial = start.runs().get(0).readings();
            Reading[] read = new Reading[2];
            for (int i = 0; i < 2; i++) {
                VibrationVector seen = VibrationVector.ofPeak(initial.get(i).plus(alpha.response(one, other)[i]),
                        Unit.MM_PER_S, Detector.RMS, PhaseSense.LAG);
                read[i] = v(seen.amplitude(), seen.phaseDegrees());
            }
            pairs = pairs.trial(List.of(mass(5, 40), mass(5, 40 + opposite)), read);
        }
        for (String plane : List.of("a", "b")) {
            assertEquals(0, single.corrections().in(plane).mass().kilograms().minus(pairs.corrections().in(plane).mass()
                    .kilograms()).magnitude(), 1e-12);
        }
        assertEquals("trial run in planes a, b", pairs.runs().get(1).name());
        assertEquals("masses must be one per plane, 2: 1", message(IllegalArgumentException.class,
                () -> start.trial(List.of(mass(1, 0)), v(1, 0), v(1, 0))));
        assertEquals("trial masses must not all be zero: [0 g at 0°, 0 g at 5°]", message(
                IllegalArgumentException.class, () -> start.trial(List.of(mass(0, 0), mass(0, 5)), v(1, 0), v(1, 0))));
        BalancingJob stays = Balancing.inPlanes("a", "b").measuredAt("1", "2").trialsLeftOn().initial(v(1, 0), v(1, 0))
                .trial(List.of(mass(1, 0), mass(0, 0)), v(2, 0), v(1, 0))
                .trial(List.of(mass(0, 0), mass(2, 0)), v(2, 0), v(2, 0));
        // 1 mm/s per g in a, 0.5 in b; 1 and 2 g are on already, so 2 and 4 g have to be cancelled.
        assertEquals(2, stays.corrections().in("a").mass().grams(), 1e-12);
        assertEquals(4, stays.corrections().in("b").mass().grams(), 1e-12);
    }

    @Test
    void planesThatActNearlyAlikeAreDoubted() {
        BalancingJob job = Balancing.inPlanes("a", "b").measuredAt("1", "2").initial(v(5, 0), v(5, 0))
                .trial("a", mass(1, 0), v(15, 0), v(15, 0)).trial("b", mass(1, 0), v(15, 0), v(16, 0));
        Remark remark = job.corrections().remarks().get(0);
        assertEquals("planes-alike", remark.code());
        assertEquals(10, remark.limit());
        // Columns (10, 10) and (10, 11): of equal length, cos γ = 21/√442, condition number √((1+cos γ)/(1−cos γ)).
        double cos = 21 / Math.sqrt(442);
        assertEquals(Math.sqrt((1 + cos) / (1 - cos)), remark.value(), 1e-9);
        assertTrue(job.corrections().page().contains("Doubt: planes-alike: the planes act nearly alike at the sensors"
                + " (condition number 42.0 with columns of equal length)"), job.corrections().page());
    }

    @Test
    void wrongFittingIsExplained() {
        BalancingJob two = Balancing.inPlanes("a", "b").measuredAt("1", "2").initial(v(5, 0), v(3, 90))
                .trial("a", mass(1, 0), v(10, 0), v(3, 90)).trial("b", mass(1, 0), v(5, 0), v(6, 90));
        // Corrections: 1 g at 180° in both planes; 5 mm/s per g in a, 3 mm/s per g at 90° in b.
        List<PlacedMass> planned = List.of(PlacedMass.ofGrams(1, 180, AngleSense.AGAINST_ROTATION),
                PlacedMass.ofGrams(0.5, 90, AngleSense.AGAINST_ROTATION));
        assertEquals("planes-swapped-suspected", only(two.finalRun(planned, two.vectors(v(Math.hypot(5, 2.5),
                Math.toDegrees(Math.atan2(2.5, 5))), v(0, 0))).verification()));
        assertEquals("prediction-missed", only(two.finalRun(planned, two.vectors(v(4, 90), v(3, 20))).verification()));
        // Missed by the full change of 0.5 g in b (1.5 mm/s) and by 4 at 90° instead of 0: shares of the change
        // planned.
        double planned2 = Math.sqrt(5 * 5 + 1.5 * 1.5);
        Verification missed = two.finalRun(planned, two.vectors(v(4, 90), v(3, 90))).verification();
        assertEquals(Math.sqrt(4 * 4 + 1.5 * 1.5) / planned2, missed.remarks().get(0).value(), 1e-9);
        assertEquals(0.3, missed.remarks().get(0).limit());
        Verification fine = two.finalRun(planned, two.vectors(v(0.1, 0), v(Math.hypot(3, 1.5),
                90 + Math.toDegrees(Math.atan2(1.5, 3))))).verification();
        assertEquals(List.of(), fine.remarks());
        Verification worse = two.finalRun(v(10, 0), v(6, 90)).verification();
        assertEquals(List.of("worse-than-before", "opposite-side-suspected"),
                worse.remarks().stream().map(Remark::code).toList());
        assertTrue(worse.toString().endsWith("; worse-than-before; opposite-side-suspected"), worse.toString());
        assertEquals(2, worse.remainingShare().orElseThrow(), 1e-12);
        assertTrue(worse.residualUnbalance().isEmpty());
        assertTrue(worse.gradeReached().isEmpty());
    }

    /** The planes exchanged with their radii: what was meant for one plane went on at the other's radius. */
    @Test
    void swappedPlanesAreNamedWhateverTheirRadii() {
        for (double radius : new double[] {100, 150, 200, 300}) {
            BalancingJob two = Balancing.inPlanes("a", "b").measuredAt("1", "2").radius("a", 100).radius("b", radius)
                    .initial(v(5, 0), v(30, 90)).trial("a", mass(1, 0), v(10, 0), v(30, 90))
                    .trial("b", mass(1, 0), v(5, 0), v(60, 90));
            List<PlacedMass> planned = List.of(PlacedMass.ofGrams(1, 180, AngleSense.AGAINST_ROTATION),
                    PlacedMass.ofGrams(0.5, 90, AngleSense.AGAINST_ROTATION));
            // 0.5 g at 90° in a and 1 g at 180° in b, each at the radius of the plane it went on.
            assertEquals("planes-swapped-suspected", only(two.finalRun(planned, two.vectors(v(Math.hypot(5, 2.5),
                    Math.toDegrees(Math.atan2(2.5, 5))), v(0, 0))).verification()));
        }
    }

    @Test
    void smallStepsAreJudgedBesideTheScatter() {
        List<PlacedMass> nothing = List.of(PlacedMass.ofGrams(0, 0, AngleSense.AGAINST_ROTATION));
        BalancingJob balanced = fanAfterTrial().finalRun(v(0.10, 100));
        // Read again with nothing fitted: 1 % more is no news, three times as much is, without a guess at the angle.
        assertEquals(List.of(), codes(balanced.finalRun(nothing, balanced.vectors(v(0.101, 100))).verification()
                .remarks()));
        Verification moved = balanced.finalRun(nothing, balanced.vectors(v(0.3, 10))).verification();
        assertEquals(List.of("worse-than-before", "prediction-missed"), codes(moved.remarks()));
        // √(0.1² + 0.3²) of the 0.3 read.
        assertEquals(Math.sqrt(0.1) / 0.3, moved.remarks().get(1).value(), 1e-9);
        // Trimmed: 0.1 to 0.06 instead of 0. With a floor of 0.05 mm/s that is scatter, without one it is a miss.
        assertEquals(List.of("prediction-missed"), codes(balanced.finalRun(v(0.06, 20)).verification().remarks()));
        assertEquals(List.of(), codes(balanced.scatter(ReadingScatter.of(0.03, 2).withFloor(0.05))
                .finalRun(v(0.06, 20)).verification().remarks()));
    }

    @Test
    void aFinalRunWithNothingFittedIsNotMixedWithTheRunBefore() {
        List<PlacedMass> nothing = List.of(PlacedMass.ofGrams(0, 0, AngleSense.AGAINST_ROTATION));
        BalancingJob job = fanAfterTrial();
        Verification proof = job.finalRun(nothing, job.vectors(v(1, 50))).verification();
        assertEquals(5, proof.before().get(0).amplitude(), 1e-12);
        assertEquals(1, proof.after().get(0).amplitude(), 1e-12);
        assertEquals(0.2, proof.remainingShare().orElseThrow(), 1e-12);
        // On, off again, read: what was read now counts, not the mean with the initial run.
        List<PlacedMass> on = List.of(PlacedMass.ofGrams(3, 20, AngleSense.AGAINST_ROTATION));
        List<PlacedMass> off = List.of(PlacedMass.ofGrams(3, 200, AngleSense.AGAINST_ROTATION));
        BalancingJob twice = job.finalRun(on, job.vectors(v(4, 60))).finalRun(off, job.vectors(v(5.2, 71)));
        assertEquals(5.2, twice.verification().after().get(0).amplitude(), 1e-12);
        assertEquals(4, twice.verification().before().get(0).amplitude(), 1e-12);
        assertEquals(5.4, twice.readAgain(v(5.6, 71)).verification().after().get(0).amplitude(), 1e-12);
        assertEquals("to the rotor as it is after the final run, its corrections left on and the trial masses off",
                twice.corrections().addedTo());
    }

    @Test
    void dampingNeverMakesTheProofLookBetter() {
        BalanceTolerance tolerance = BalanceTolerance.of(BalanceGrade.of(6.3), 30, RotationSpeed.ofHertz(24));
        BalancingJob job = Balancing.inPlanes("a", "b").measuredAt("1", "2").radius("a", 100).radius("b", 100)
                .toTolerance(tolerance.allocated(Allocation.equalShares(2)))
                .initial(v(5, 0), v(5, 0)).trial("a", mass(10, 0), v(15, 0), v(15, 0))
                .trial("b", mass(10, 0), v(15, 0), v(16, 0));
        // (10, 10) and (10, 11) for 10 g; a couple of 20 g at 0° in a and 180° in b reads 0 and −2 mm/s.
        List<PlacedMass> nothing = job.corrections().list().stream().map(c -> PlacedMass.ofGrams(0, 0,
                AngleSense.AGAINST_ROTATION)).toList();
        for (double ridge : new double[] {0, 0.05, 0.3}) {
            BalancingJob damped = ridge > 0 ? job.regularised(ridge) : job;
            Verification proof = damped.finalRun(nothing, job.vectors(v(0, 0), v(2, 180))).verification();
            proof.residualUnbalance().forEach(r -> assertEquals(2000, r.gramMillimetres(), 1e-6));
            assertFalse(proof.gradeReached().orElseThrow().held());
            assertTrue(codes(proof.remarks()).contains("planes-alike"));
            assertEquals(500, damped.corrections().presentUnbalance().get(0).gramMillimetres(), 1e-6);
        }
        BalancingJob alike = Balancing.inPlanes("a", "b").measuredAt("1", "2").radius("a", 100).radius("b", 100)
                .toTolerance(tolerance.allocated(Allocation.equalShares(2))).scatter(ReadingScatter.of(0.01, 1))
                .initial(v(5, 0), v(5, 0)).trial("a", mass(10, 0), v(15, 0), v(15, 0))
                .trial("b", mass(10, 0), v(15, 0), v(15.0001, 0)).regularised(0.05);
        Verification open = alike.finalRun(v(1, 0), v(1, 0)).verification();
        assertEquals(List.of(), open.residualUnbalance());
        assertEquals(List.of(), open.bearingUnbalance());
        assertTrue(open.gradeReached().isEmpty() && open.gradeProbability().isEmpty());
        assertTrue(codes(open.remarks()).contains("residual-not-determined"), open.toString());
        assertTrue(alike.corrections().uncertainty().isEmpty());
        assertEquals(BalanceGrade.of(6.3),
                alike.finalRun(v(1, 0), v(1, 0)).toRecord().gradeRequired().orElseThrow());
    }

    @Test
    void theOrderOfTheSettingUpDoesNotMatter() {
        BalancingJob bare = Balancing.inPlanes("disc").measuredAt("s").in(Unit.UM, Detector.PEAK_TO_PEAK);
        BalancingJob late = bare.runout(v(20, 90)).with(Convention.LEAD_WITH_ROTATION);
        BalancingJob early = bare.with(Convention.LEAD_WITH_ROTATION).runout(v(20, 90));
        for (BalancingJob job : List.of(late, early)) {
            // 50 at 30° lead less 20 at 90° lead, by the law of cosines √(2500 + 400 − 2000·cos 60°).
            assertEquals(Math.sqrt(1900) * 0.5e-6, job.initial(v(50, 30)).runs().get(0).readings().get(0).magnitude(),
                    1e-15);
        }
        BalancingJob weights = Balancing.inPlanes("a").measuredAt("s", "t").weight("s", 0).measuredAt("t", "s")
                .initial(v(6, 50), v(9, 10)).trial("a", mass(4, 300), v(7.2111, 83.69), v(2, 1));
        assertEquals(6, weights.corrections().in("a").mass().grams(), 1e-3);
        RotationSpeed p = RotationSpeed.ofHertz(10);
        RotationSpeed q = RotationSpeed.ofHertz(20);
        BalancingJob speeds = Balancing.inPlanes("a").measuredAt("s").at(p, q).weight(p, 0).at(q, p)
                .initial(v(6, 50), v(9, 10)).trial("a", mass(4, 300), v(7.2111, 83.69), v(2, 1));
        assertEquals(6, speeds.corrections().in("a").mass().grams(), 1e-3);
        assertEquals("sensors must keep s, which has a weight: [t]", message(IllegalArgumentException.class,
                () -> Balancing.inPlanes("a").measuredAt("s").weight("s", 2).measuredAt("t")));
        assertTrue(message(IllegalArgumentException.class, () -> Balancing.inPlanes("a").measuredAt("s").at(p)
                .weight(p, 2).at(q)).startsWith("speeds must keep 600 r/min (10.00 Hz), which has a weight: [1200"));
        assertEquals("sensors must be those whose runout was read, [s]: [s, t]", message(
                IllegalArgumentException.class, () -> late.measuredAt(new Sensor("s", Unit.UM, Detector.RMS),
                new Sensor("t", Unit.UM, Detector.RMS))));
        assertEquals("runout must be read by a displacement sensor: s in mm/s rms", message(
                IllegalArgumentException.class, () -> late.in(Unit.MM_PER_S, Detector.RMS)));
    }

    @Test
    void runsThatContradictEachOtherAreDoubted() {
        Corrections opposite = fan().initial(v(6, 50)).initial(v(6, 230)).trial("fan", mass(4, 300), v(7, 80))
                .corrections();
        assertTrue(codes(opposite.remarks()).contains("runs-contradict"), opposite.toString());
        Corrections trials = fan().initial(v(6, 50)).trial("fan", mass(4, 300), v(7.2, 84)).trial("fan", mass(4, 120),
                v(9, 80)).corrections();
        assertTrue(codes(trials.remarks()).contains("runs-contradict"), trials.toString());
        // 6 at 50° ± 5 %: nothing to doubt.
        assertEquals(List.of(), codes(fan().initial(v(6.3, 50)).initial(v(5.7, 50)).trial("fan", mass(4, 300),
                v(7.2111, 83.69)).corrections().remarks()));
        InfluenceCoefficients stored = fanAfterTrial().coefficients();
        BalancingJob again = fan().withCoefficients(stored).initial(v(5, 70));
        assertEquals(List.of(), codes(again.trial("fan", mass(10, 150), v(5, 130)).corrections().remarks()));
        Remark contradicted = again.trial("fan", mass(10, 150), v(5, 10)).corrections().remarks().get(0);
        assertEquals("stored-coefficients-contradicted", contradicted.code());
        // The stored ones say a change of 5 at 190°, seen is 5 at 310°: √3 of it apart.
        assertEquals(Math.sqrt(3), contradicted.value(), 1e-9);
    }

    @Test
    void aRecordIsKeptWhateverTheReadingsTell() {
        JobRecord alike = Balancing.inPlanes("a", "b").measuredAt("1", "2").initial(v(5, 0), v(5, 0))
                .trial("a", mass(1, 0), v(15, 0), v(15, 0)).trial("b", mass(1, 0), v(15, 0), v(15.001, 0)).toRecord();
        assertEquals(3, alike.runs().size());
        assertTrue(alike.corrections().isEmpty());
        assertEquals("not-determined", alike.remarks().get(0).code());
        assertTrue(alike.remarks().get(0).text().startsWith("planes must act differently"));
        JobRecord few = Balancing.inPlanes("a", "b").measuredAt("1").initial(v(5, 0)).trial("a", mass(1, 0), v(9, 0))
                .trial("b", mass(1, 0), v(7, 0)).toRecord();
        assertTrue(few.remarks().get(0).text().startsWith("readings that count must be at least as many as planes"));
    }

    /** What is asked first is what would be thrown. */
    @Test
    void theObstacleToCorrectionsIsToldBeforeTheyAreAskedFor() {
        BalancingJob two = Balancing.inPlanes("a", "b").measuredAt("1", "2");
        InfluenceCoefficients zero = InfluenceCoefficients.ofSheet(two.layout(), new double[2][2], new double[2][2]);
        BalancingJob start = two.initial(v(1, 0), v(1, 0));
        for (BalancingJob job : List.of(fan(), fan().trial("fan", mass(1, 0), v(2, 0)).initial(v(1, 0)),
                fan().initial(v(1, 0)), fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(5, 70)),
                start.trial("a", mass(1, 0), v(2, 0), v(1, 0)).trial("a", mass(2, 0), v(3, 0), v(1, 0)),
                start.trial("a", mass(1, 0), v(3, 0), v(3, 0)).trial("b", mass(1, 0), v(3, 0), v(3, 0)),
                start.trial("a", mass(1, 0), v(2, 0), v(1, 0)).trial("b", mass(1, 0), v(1, 0), v(2, 0)).weight("1", 0),
                two.withCoefficients(zero).initial(v(1, 0), v(1, 0)),
                two.withCoefficients(zero).regularised(0.1).initial(v(1, 0), v(1, 0)),
                Balancing.inPlanes("a").measuredAt(new Sensor("1", Unit.MM_PER_S, Detector.RMS),
                        new Sensor("2", Unit.UM, Detector.RMS)).initial(v(4, 0), v(0, 0)))) {
            String obstacle = job.obstacle().orElseThrow();
            assertEquals(obstacle, message(IllegalStateException.class, job::corrections));
            assertEquals(obstacle, message(IllegalStateException.class, () -> job.finalRun(job.runs().isEmpty()
                    ? new Reading[] {v(1, 0)} : new Reading[] {v(1, 0), v(1, 0)})));
        }
        assertEquals(Optional.empty(), fanAfterTrial().obstacle());
        assertEquals(Optional.empty(), fanAfterTrial().finalRun(v(0.5, 100)).obstacle());
    }

    /** Masses that went on for a final run tell of their planes as trial masses do, once an initial run follows. */
    @Test
    void aRecordHasWhateverCorrectionsThereAre() {
        BalancingJob start = Balancing.inPlanes("a", "b").measuredAt("1", "2").initial(v(9, 0), v(9, 90))
                .trial("a", mass(1, 0), v(8, 0), v(9, 90));
        BalancingJob job = start.finalRun(List.of(PlacedMass.ofGrams(0, 0, AngleSense.AGAINST_ROTATION),
                PlacedMass.ofGrams(1, 0, AngleSense.AGAINST_ROTATION)), start.vectors(v(9, 0), v(8, 90)))
                .initial(v(9, 0), v(8, 90));
        assertEquals(List.of(9.0, 8.0), job.toRecord().corrections().orElseThrow().list().stream()
                .map(one -> Math.rint(one.mass().grams() * 1e9) / 1e9).toList());
        assertTrue(start.toRecord().corrections().isEmpty() && start.toRecord().remarks().isEmpty());
    }

    @Test
    void beforeItsFinalRunTheJobIsWhatItWas() {
        BalancingJob job = fanAfterTrial();
        BalancingJob first = job.finalRun(v(0.5, 100));
        BalancingJob second = first.readAgain(v(0.5, 100)).finalRun(v(0.1, 100)).readAgain(v(0.1, 100));
        assertEquals(List.of(3, 4, 2), List.of(first.runs().size(), second.beforeFinalRun().runs().size(),
                second.beforeFinalRun().beforeFinalRun().runs().size()));
        assertEquals(10, first.beforeFinalRun().corrections().in("fan").mass().grams(), 1e-12);
        assertEquals(first.corrections().in("fan").mass(), second.beforeFinalRun().corrections().in("fan").mass());
        assertEquals(job.corrections().addedTo(), job.beforeFinalRun().corrections().addedTo());
        assertTrue(first.endsWithFinalRun() && !first.beforeFinalRun().endsWithFinalRun());
    }

    private static List<String> codes(List<Remark> remarks) {
        return remarks.stream().map(Remark::code).toList();
    }

    private static String only(Verification proof) {
        assertEquals(1, proof.remarks().size(), proof.toString());
        assertFalse(proof.remarks().get(0).text().isEmpty());
        return proof.remarks().get(0).code();
    }

    @Test
    void weightsDecideWhatRemainsWhere() {
        BalancingJob job = Balancing.inPlanes("a").measuredAt("1", "2").initial(v(4, 0), v(4, 180))
                .trial("a", mass(1, 0), v(5, 0), v(5, 180));
        // One row answers by 1, the other by −1 mm/s per g: both want −4 g.
        assertEquals(4, job.corrections().in("a").mass().grams(), 1e-12);
        BalancingJob conflict = Balancing.inPlanes("a").measuredAt("1", "2").initial(v(4, 0), v(0, 0))
                .trial("a", mass(1, 0), v(5, 0), v(1, 0));
        assertEquals(2, conflict.corrections().in("a").mass().grams(), 1e-12);
        assertEquals(4, conflict.weight("2", 0).corrections().in("a").mass().grams(), 1e-12);
        // w = 1 and 2: minimum of (4 − m)² + 4·m² at m = 4/5.
        assertEquals(0.8, conflict.weight("2", 2).corrections().in("a").mass().grams(), 1e-12);
    }

    @Test
    void sensorsOfDifferentQuantitiesNeedWeights() {
        BalancingJob job = Balancing.inPlanes("a").measuredAt(new Sensor("1", Unit.MM_PER_S, Detector.ZERO_TO_PEAK),
                new Sensor("2", Unit.UM, Detector.ZERO_TO_PEAK)).initial(v(4, 0), v(0, 0))
                .trial("a", mass(1, 0), v(5, 0), v(1, 0));
        assertEquals("sensors that measure different quantities must each have a weight: 1 has none",
                message(IllegalStateException.class, job::corrections));
        assertEquals("sensors that measure different quantities must each have a weight: 2 has none",
                message(IllegalStateException.class, () -> job.weight("1", 1).corrections()));
        // Compared in mm/s and µm: the same numbers as two sensors of one quantity.
        assertEquals(2, job.weight("1", 1).weight("2", 1).corrections().in("a").mass().grams(), 1e-12);
    }

    @Test
    void severalSpeedsAreBalancedTogether() {
        BalancingJob job = Balancing.inPlanes("a").measuredAt("1").at(RotationSpeed.ofHertz(10),
                RotationSpeed.ofHertz(20))
                .initial(v(4, 0), v(0, 0)).trial("a", mass(1, 0), v(5, 0), v(1, 0));
        assertEquals(2, job.corrections().in("a").mass().grams(), 1e-12);
        assertEquals("1 at 600 r/min", job.layout().rowName(0).replaceAll(" \\(.*", ""));
        assertEquals("1 at 1200 r/min", job.layout().rowName(1).replaceAll(" \\(.*", ""));
        assertEquals("DE-H", fan().layout().rowName(0));
    }

    @Test
    void planesThatActAlikeAreRefusedUnlessRegularised() {
        BalancingJob job = Balancing.inPlanes("a", "b").measuredAt("1", "2").initial(v(5, 0), v(5, 0))
                .trial("a", mass(1, 0), v(15, 0), v(15, 0)).trial("b", mass(1, 0), v(15, 0), v(15.001, 0));
        assertEquals("planes must act differently at the sensors to be balanced together: condition number 40000 with"
                + " columns of equal length, limit 10000; balance fewer planes, add sensors or speeds, or have"
                + " the corrections damped (regularised)", message(IllegalStateException.class, job::corrections));
        // Within limits there is an answer all the same; what the rotor has stays open.
        Positions four = Positions.of(4, AngleSense.AGAINST_ROTATION);
        for (Executable unlimited : List.<Executable>of(job::minimaxCorrections, () -> job.fitting(
                PlaneFitting.on(four), PlaneFitting.on(four).atMostEach(1)))) {
            assertTrue(message(IllegalStateException.class, unlimited).startsWith("planes must act differently"));
        }
        FittedMasses fitted = job.fitting(PlaneFitting.on(Positions.of(4, AngleSense.AGAINST_ROTATION)).atMostEach(1),
                PlaneFitting.on(Positions.of(4, AngleSense.AGAINST_ROTATION)).atMostEach(1)).leastSquares();
        assertEquals(0, job.corrections(fitted).predicted().get(0).amplitude(), 1e-3);
        assertEquals(List.of(), job.corrections(fitted).presentUnbalance());
        Corrections held = job.regularised(0.01).corrections();
        assertEquals(0.25, held.in("a").mass().grams(), 1e-3);
        assertEquals(0.25, held.in("b").mass().grams(), 1e-3);
        assertEquals(180, held.in("b").mass().angleDegrees(), 0.1);
        Remark remark = held.remarks().stream().filter(r -> r.code().equals("regularised")).findFirst().orElseThrow();
        assertEquals(0.01, remark.value());
        assertEquals("the corrections were damped by 0.01 of the largest singular value to keep them small where planes"
                + " act alike: more vibration remains than could be", remark.text());
        for (double bad : new double[] {0, 1.5, Double.NaN}) {
            assertEquals("ridge must be above 0 and at most 1: " + bad,
                    message(IllegalArgumentException.class, () -> job.regularised(bad)));
        }
        assertTrue(job.regularised(1).corrections().in("a").mass().grams() < 0.25);
    }

    @Test
    void correctionsAreFittedWithinLimits() {
        Positions four = Positions.of(4, AngleSense.AGAINST_ROTATION);
        // 10 g at 210°: 8.66 g at 180° and 5 g at 270°; at most 6 g each, and the rest stays.
        FittedMasses free = fanAfterTrial().fitting(PlaneFitting.on(four)).leastSquares();
        assertEquals(8.660254, free.in("fan").get(0).grams(), 1e-5);
        assertEquals(5, free.in("fan").get(1).grams(), 1e-5);
        FittedMasses limited = fanAfterTrial().fitting(PlaneFitting.on(four).atMostEach(6)).leastSquares();
        assertEquals(6, limited.in("fan").get(0).grams(), 1e-6);
        assertEquals(2.660254 * 0.5e-3 * Math.sqrt(2), limited.left().get(0).magnitude(), 1e-9);
        // The same in the units of the job: 2.66 g at 180° stay, 0.5 mm/s each; the rotor had 10 g at 200 mm.
        Corrections told = fanAfterTrial().corrections(limited);
        assertEquals(2.660254 * 0.5, told.predicted().get(0).amplitude(), 1e-6);
        assertEquals(limited.in("fan"), told.in("fan").split());
        assertEquals(Math.hypot(6, 5), told.in("fan").mass().grams(), 1e-6);
        assertEquals(200, told.in("fan").mass().radiusMillimetres().getAsDouble(), 1e-9);
        assertEquals(2000, told.presentUnbalance().get(0).gramMillimetres(), 1e-9);
        assertTrue(told.uncertainty().isEmpty());
        BalanceTolerance wide = BalanceTolerance.of(BalanceGrade.of(6.3), 30, RotationSpeed.ofHertz(24));
        // 532 g·mm stay of 1253 permissible: surely within; with at most 1 g each 1800 stay and more: surely not.
        BalancingJob judged = fanAfterTrial().scatter(ReadingScatter.of(0.03, 2)).toTolerance(wide);
        assertTrue(judged.corrections(limited).uncertainty().orElseThrow().gradeProbability().orElseThrow().proved());
        assertEquals(0, judged.corrections(fanAfterTrial().fitting(PlaneFitting.on(four).atMostEach(1)).leastSquares())
                .uncertainty().orElseThrow().gradeProbability().orElseThrow().probability(), 0.01);
        assertEquals("masses must be for the planes of the job, [other]: [fan]", message(IllegalArgumentException.class,
                () -> Balancing.inPlanes("other").measuredAt("DE-H").corrections(limited)));
        assertEquals("masses must be for the planes of the job, [other]: [fan]", message(IllegalArgumentException.class,
                () -> Balancing.inPlanes("other").measuredAt("DE-H").finalRun(limited, v(1, 0))));
        Verification proof = fanAfterTrial().finalRun(limited, v(2.660254 * 0.5, 40)).verification();
        assertEquals(told.predicted().get(0).amplitude(), proof.predicted().get(0).amplitude(), 1e-9);
        assertEquals(2.660254 * 200, proof.residualUnbalance().get(0).gramMillimetres(), 1e-3);
        assertEquals("fittings must be one per plane, 1: 0",
                message(IllegalArgumentException.class, () -> fanAfterTrial().fitting()));
    }

    @Test
    void recordHoldsTheWholeJob() {
        BalanceTolerance tolerance = BalanceTolerance.of(BalanceGrade.of(6.3), 30, RotationSpeed.ofHertz(24));
        BalancingJob job = fan().at(RotationSpeed.ofHertz(24)).toTolerance(tolerance).initial(v(5, 70));
        JobRecord early = job.toRecord();
        assertEquals(1, early.runs().size());
        assertTrue(early.corrections().isEmpty());
        assertEquals(List.of(), early.coefficients());
        assertTrue(early.verification().isEmpty());
        assertEquals(BalanceGrade.of(6.3), early.gradeRequired().orElseThrow());
        assertEquals(List.of(1440.0), early.speedsRevolutionsPerMinute());
        assertEquals("balancing record: 1 run(s), 0 correction(s)", early.toString());
        assertEquals(0, fan().toRecord().runs().size());
        job = job.trial("fan", mass(10, 150), v(5, 130));
        assertEquals(job.corrections().page(), job.toRecord().corrections().orElseThrow().page());
        assertEquals(0.5, job.toRecord().coefficients().get(0).amplitudePerGram(), 1e-12);
        assertEquals(40, job.toRecord().coefficients().get(0).phaseDegrees(), 1e-9);
        assertEquals("DE-H", job.toRecord().coefficients().get(0).sensor());
        assertEquals("fan", job.toRecord().coefficients().get(0).plane());
        JobRecord record = job.finalRun(v(0.5, 100)).toRecord();
        assertEquals("trial run in plane fan", record.runs().get(1).name());
        assertEquals(List.of(), record.runs().get(0).masses());
        assertEquals(150, record.runs().get(1).masses().get(0).mass().angleDegrees(), 1e-9);
        JobRecord.ReadingEntry reading = record.runs().get(2).readings().get(0);
        assertEquals("DE-H", reading.sensor());
        assertEquals(0.5, reading.amplitude(), 1e-12);
        assertEquals(100, reading.phaseDegrees(), 1e-9);
        assertEquals("mm/s", reading.unit());
        assertEquals("rms", reading.detector());
        Verification proof = record.verification().orElseThrow();
        assertEquals(0.1, proof.remainingShare().orElseThrow(), 1e-12);
        assertEquals(200, proof.residualUnbalance().get(0).gramMillimetres(), 1e-9);
        assertTrue(record.toString().contains(", G2.5 reached (1.01 mm/s), G6.3 held: "), record.toString());
        assertEquals(List.of(Caution.values()), record.cautions());
        assertTrue(record.reliance().get(0).startsWith("The coefficients hold for this rotor in these bearings"));
        assertTrue(record.convention().startsWith("phase is lag"));
        assertTrue(record.toString().startsWith("balancing record: 3 run(s), 1 correction(s), G2.5 reached"));
        JobRecord stored = fan().withCoefficients(fanAfterTrial().coefficients()).initial(v(5, 70)).toRecord();
        assertEquals(10, stored.corrections().orElseThrow().in("fan").mass().grams(), 1e-9);
        assertTrue(stored.reliance().get(0).startsWith("The coefficients are those of an earlier job"));
        assertTrue(stored.gradeRequired().isEmpty());
        JobRecord doubtful = fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(5.5, 80)).finalRun(v(9, 0))
                .toRecord();
        assertEquals(List.of("trial-too-weak", "worse-than-before", "prediction-missed"),
                doubtful.remarks().stream().map(Remark::code).toList());
    }

    @Test
    void twoPlanesTellStaticAndCouple() {
        BalancingJob job = Balancing.inPlanes("a", "b").measuredAt("1", "2").radius("a", 100).radius("b", 200)
                .initial(v(6, 0), v(1, 0)).trial("a", mass(1, 0), v(7, 0), v(1, 0))
                .trial("b", mass(1, 0), v(6, 0), v(2, 0));
        // 6 g at 100 mm and 1 g at 200 mm, both at 0°: 600 and 200 g·mm.
        assertEquals(400e-6, job.corrections().staticCouple().orElseThrow().staticPart().re(), 1e-12);
        assertEquals(200e-6, job.corrections().staticCouple().orElseThrow().couplePart().re(), 1e-12);
        assertTrue(fanAfterTrial().corrections().staticCouple().isEmpty());
    }

    @Test
    void storedCoefficientsAreShownInTheConventionOfTheJob() {
        InfluenceCoefficients stored = fanAfterTrial().coefficients();
        InfluenceCoefficients lead = fan().in(Unit.MM_PER_S, Detector.PEAK_TO_PEAK).with(Convention.LEAD_WITH_ROTATION)
                .withCoefficients(stored).coefficients();
        assertEquals(320, lead.phaseDegrees(0, 0), 1e-9);
        assertEquals(0.5 * 2 * Math.sqrt(2), lead.perGram(0, 0), 1e-12);
        assertEquals("layout must have the same planes, radii, sensors and speeds: planes [fan] and [x]",
                message(IllegalArgumentException.class, () -> stored.shownAs(Balancing.inPlanes("x").layout())));
    }

    @Test
    void speedsAreWeighted() {
        RotationSpeed slow = RotationSpeed.ofHertz(10);
        RotationSpeed fast = RotationSpeed.ofHertz(20);
        BalancingJob job = Balancing.inPlanes("a").measuredAt("1", "2").at(slow, fast)
                .initial(v(4, 0), v(4, 0), v(0, 0), v(0, 0)).trial("a", mass(1, 0), v(5, 0), v(5, 0), v(1, 0), v(1, 0));
        assertEquals(2, job.corrections().in("a").mass().grams(), 1e-12);
        // w = 1 and 2: minimum of (4 − m)² + 4·m² at m = 4/5; the other way round 16/5.
        assertEquals(0.8, job.weight(fast, 2).corrections().in("a").mass().grams(), 1e-12);
        assertEquals(3.2, job.weight(slow, 2).corrections().in("a").mass().grams(), 1e-12);
        assertEquals(4, job.weight(fast, 0).corrections().in("a").mass().grams(), 1e-12);
        assertEquals("1 at 600 r/min", job.layout().rowName(0).replaceAll(" \\(.*", ""));
        assertEquals("2 at 600 r/min", job.layout().rowName(1).replaceAll(" \\(.*", ""));
        assertEquals("1 at 1200 r/min", job.layout().rowName(2).replaceAll(" \\(.*", ""));
        assertTrue(message(IllegalArgumentException.class, () -> job.weight(RotationSpeed.ofHertz(30), 1))
                .startsWith("speed must be one of [600 r/min ("));
        assertTrue(message(IllegalArgumentException.class, () -> job.weight(slow, Double.NaN))
                .startsWith("weight of speed 600 r/min ("));
    }

    @Test
    void largestResidualIsMadeLeast() {
        BalancingJob job = Balancing.inPlanes("a").measuredAt("1", "2", "3").initial(v(4, 50), v(0, 0), v(0, 0))
                .trial("a", mass(1, 0), v(6, 50), v(2, 50), v(2, 50));
        // Least squares take a third of it, the largest residual is least halfway.
        assertEquals(2.0 / 3, job.corrections().in("a").mass().grams(), 1e-9);
        Corrections minimax = job.minimaxCorrections();
        assertEquals(1, minimax.in("a").mass().grams(), 1e-6);
        assertEquals(180, minimax.in("a").mass().angleDegrees(), 1e-4);
        minimax.predicted().forEach(r -> assertEquals(2, r.amplitude(), 1e-6));
        // The right correction is the same ellipse, whichever aim chose the masses.
        assertEquals(job.scatter(ReadingScatter.of(0.1, 1)).corrections().uncertainty().orElseThrow().ofCorrection("a"),
                job.scatter(ReadingScatter.of(0.1, 1)).minimaxCorrections().uncertainty().orElseThrow()
                        .ofCorrection("a"));
    }

    @Test
    void gradeIsJudgedInTheBearingPlanes() {
        // Overhung: bearings at 0 and 400 mm, plane at 600 mm; 100 g·mm there are −50 and 150 at the bearings.
        BalanceTolerance tolerance = BalanceTolerance.of(BalanceGrade.of(6.3), 30, RotationSpeed.ofHertz(24));
        BalancingJob job = fanAfterTrial().alongTheAxis(0, 400, 600)
                .toTolerance(tolerance.allocated(Allocation.byLever(0, 400, 450)));
        assertTrue(job.knowsBearings() && !fan().knowsBearings());
        Verification proof = job.finalRun(v(0.25, 100)).verification();
        assertEquals(100, proof.residualUnbalance().get(0).gramMillimetres(), 1e-9);
        assertTrue(proof.residualUnbalance().get(0).permissibleGramMillimetres().isEmpty());
        ResidualUnbalance first = proof.bearingUnbalance().get(0);
        ResidualUnbalance second = proof.bearingUnbalance().get(1);
        assertEquals(50, first.gramMillimetres(), 1e-9);
        assertEquals(240, first.angleDegrees(), 1e-9);
        assertEquals(150, second.gramMillimetres(), 1e-9);
        assertEquals(60, second.angleDegrees(), 1e-9);
        // Shares 0.125, held up to 0.3, and 1.125.
        assertEquals(0.3 * tolerance.gramMillimetres(), first.permissibleGramMillimetres().orElseThrow(), 1e-9);
        assertEquals(1.125 * tolerance.gramMillimetres(), second.permissibleGramMillimetres().orElseThrow(), 1e-9);
        assertEquals("first bearing", first.plane());
        assertEquals("second bearing 150.0 g·mm of 1410 g·mm", second.toString());
        // 50/0.3 is more than 150/1.125: the first bearing decides.
        assertEquals(0, proof.gradeReached().orElseThrow().worstPlane());
        assertEquals(50, proof.gradeReached().orElseThrow().gramMillimetres(), 1e-9);
        assertEquals(first.permissibleGramMillimetres().orElseThrow(), proof.gradeReached().orElseThrow()
                .permissibleGramMillimetres(), 1e-9);
        assertEquals(List.of(), fanAfterTrial().finalRun(v(0.25, 100)).verification().bearingUnbalance());
        ResidualUnbalance bare = fanAfterTrial().alongTheAxis(0, 400, 600).finalRun(v(0.25, 100)).verification()
                .bearingUnbalance().get(1);
        assertEquals("second bearing 150.0 g·mm", bare.toString());
        assertEquals(List.of(), Balancing.inPlanes("x").measuredAt("y").alongTheAxis(0, 1, 2).initial(v(1, 0))
                .trial("x", mass(1, 0), v(2, 0)).finalRun(v(0, 0)).verification().bearingUnbalance());
        GradeProbability sure = job.scatter(ReadingScatter.of(0.05, 5)).finalRun(v(0.25, 100)).verification()
                .gradeProbability().orElseThrow();
        assertTrue(sure.proved(), sure.toString());
    }

    @Test
    void placesAlongTheAxisAreChecked() {
        BalanceTolerance one = BalanceTolerance.of(BalanceGrade.of(6.3), 30, RotationSpeed.ofHertz(24));
        assertEquals("tolerance must be allocated to the bearing planes, 2: 1 share(s)", message(
                IllegalArgumentException.class, () -> fan().alongTheAxis(0, 400, 600).toTolerance(one)));
        assertEquals("tolerance must be allocated to the bearing planes, 2: 1 share(s)", message(
                IllegalArgumentException.class, () -> fan().toTolerance(one).alongTheAxis(0, 400, 600)));
        assertEquals("places must be one per plane, 1: 2",
                message(IllegalArgumentException.class, () -> fan().alongTheAxis(0, 400, 600, 700)));
        assertEquals("place of the second bearing must be apart from that of the first: 5.0",
                message(IllegalArgumentException.class, () -> fan().alongTheAxis(5, 5, 600)));
        assertEquals("place of the first bearing must be finite: NaN",
                message(IllegalArgumentException.class, () -> fan().alongTheAxis(Double.NaN, 5, 600)));
        assertEquals("place of the second bearing must be finite: NaN",
                message(IllegalArgumentException.class, () -> fan().alongTheAxis(1, Double.NaN, 600)));
        assertEquals("places of the planes[0] must be finite: NaN",
                message(IllegalArgumentException.class, () -> fan().alongTheAxis(1, 5, Double.NaN)));
        BalancingJob two = Balancing.inPlanes("a", "b").measuredAt("1", "2").radius("a", 100).radius("b", 100)
                .alongTheAxis(0, 1000, 250, 500).initial(v(6, 0), v(1, 0)).trial("a", mass(1, 0), v(7, 0), v(1, 0))
                .trial("b", mass(1, 0), v(6, 0), v(2, 0)).finalRun(v(4, 0), v(1, 0));
        // 400 g·mm at a quarter and 100 g·mm at half: 300 + 50 and 100 + 50.
        assertEquals(350, two.verification().bearingUnbalance().get(0).gramMillimetres(), 1e-9);
        assertEquals(150, two.verification().bearingUnbalance().get(1).gramMillimetres(), 1e-9);
    }

    @Test
    void roundingIsNoMassEither() {
        // (5, 5) mm/s is cancelled by half a gram in a alone; b at another radius has nothing but rounding.
        Corrections c = Balancing.inPlanes("a", "b").measuredAt("1", "2").radius("a", 100).radius("b", 2000)
                .initial(v(5, 0), v(5, 0)).trial("a", mass(1, 0), v(15, 0), v(15, 0))
                .trial("b", mass(1, 0), v(15, 0), v(25, 0)).corrections();
        assertEquals(0, c.in("b").mass().grams());
        assertEquals("b 0 g", c.in("b").toString());
        assertEquals(0.5, c.in("a").mass().grams(), 1e-9);
        // A millionth of the other is a mass.
        Corrections tiny = Balancing.inPlanes("a", "b").measuredAt("1", "2").radius("a", 100).radius("b", 2000)
                .initial(v(5, 0), v(1e-6, 0)).trial("a", mass(1, 0), v(10, 0), v(1e-6, 0))
                .trial("b", mass(1, 0), v(5, 0), v(1 + 1e-6, 0)).corrections();
        assertEquals(1e-6, tiny.in("b").mass().grams(), 1e-12);
    }

    @Test
    void roundingIsNoResidual() {
        assertEquals(0, fanAfterTrial().corrections().predicted().get(0).amplitude());
        assertTrue(fanAfterTrial().corrections().page().contains(" to 0 mm/s rms, predicted"));
    }

    @Test
    void vectorsAreCountedToo() {
        assertEquals("readings must be one per sensor and speed, 1: 2", message(IllegalArgumentException.class,
                () -> fan().initial(Balancing.inPlanes("x").measuredAt("1", "2").vectors(v(1, 0), v(2, 0)))));
    }

    @Test
    void residualsInWords() {
        BalancingJob job = fanAfterTrial();
        assertEquals("fan 2000 g·mm", job.corrections().presentUnbalance().get(0).toString());
        ResidualUnbalance r = job.toTolerance(BalanceTolerance.of(BalanceGrade.of(6.3), 30, RotationSpeed.ofHertz(24)))
                .finalRun(v(0.5, 100)).verification().residualUnbalance().get(0);
        assertEquals("fan 200.0 g·mm of 1253 g·mm", r.toString());
    }

    @Test
    void theRotorIsReadAgainAsItIs() {
        BalancingJob twice = fanAfterTrial().finalRun(v(0.4, 100)).readAgain(v(0.6, 100));
        Verification proof = twice.verification();
        assertEquals(0.5, proof.after().get(0).amplitude(), 1e-12);
        assertEquals(5, proof.before().get(0).amplitude(), 1e-12);
        assertEquals(0, proof.predicted().get(0).amplitude(), 1e-12);
        assertEquals(1, twice.corrections().in("fan").mass().grams(), 1e-12);
        assertEquals(4, twice.runs().size());
        assertEquals(10, fan().initial(v(4, 70)).readAgain(v(6, 70)).trial("fan", mass(10, 150), v(5, 130))
                .corrections()
                .in("fan").mass().grams(), 1e-12);
        assertEquals(0.5, fan().trialsLeftOn().initial(v(5, 70)).trial("fan", mass(10, 150), v(4, 130))
                .readAgain(v(6, 130)).coefficients().perGram(0, 0), 1e-12);
        assertEquals(1, fan().trialsLeftOn().initial(v(5, 70)).trial("fan", mass(1, 150), v(5.4, 80)).readAgain(v(5.6,
                80))
                .corrections().remarks().size());
        assertEquals("there must be a run to be read again: initial(...)",
                message(IllegalStateException.class, () -> fan().readAgain(v(1, 0))));
        String off = "the rotor must be as it was in the last run to be read again: the trial mass is off";
        assertEquals(off, message(IllegalStateException.class, () -> fanAfterTrial().readAgain(v(1, 0))));
    }

    @Test
    void runoutIsTakenOffEveryReading() {
        BalancingJob bare = Balancing.inPlanes("fan").measuredAt("P1", "P2").in(Unit.UM, Detector.PEAK_TO_PEAK);
        BalancingJob job = bare.runout(v(8, 0), v(3, 90)).at(RotationSpeed.ofHertz(10), RotationSpeed.ofHertz(20));
        BalancingJob read = job.initial(v(20, 0), v(3, 90), v(8, 0), v(7, 90));
        assertEquals(List.of(v(8, 0), v(3, 90)), job.runout());
        assertEquals(List.of(), bare.runout());
        assertEquals(12e-6 / 2, read.runs().get(0).readings().get(0).magnitude(), 1e-18);
        assertEquals(0, read.runs().get(0).readings().get(1).magnitude(), 1e-18);
        assertEquals(0, read.runs().get(0).readings().get(2).magnitude(), 1e-18);
        assertEquals(4e-6 / 2, read.runs().get(0).readings().get(3).magnitude(), 1e-18);
        assertEquals("runout must be one reading per sensor, 2: 1",
                message(IllegalArgumentException.class, () -> bare.runout(v(1, 0))));
        assertEquals("runout must be read by a displacement sensor: DE-H in mm/s rms",
                message(IllegalArgumentException.class, () -> fan().runout(v(1, 0))));
        assertEquals("runout must be set before the first run", message(IllegalStateException.class,
                () -> bare.initial(v(1, 0), v(1, 0)).runout(v(1, 0), v(1, 0))));
    }

    @Test
    void pageSaysEverything() {
        String page = fanAfterTrial().corrections().page();
        assertTrue(page.startsWith("Add to the rotor with the trial masses taken off:\n  fan "), page);
        assertTrue(page.contains("\nConvention: phase is lag to the tachometer mark, angles are counted against"
                + " rotation from the mark.\n"), page);
        assertTrue(page.contains(", predicted\n  unbalance now: fan 2000 g·mm\nCondition number "), page);
        assertTrue(fanAfterTrial().toTolerance(BalanceTolerance.of(BalanceGrade.of(6.3), 30, RotationSpeed.ofHertz(24)))
                .corrections().page().contains("unbalance now: fan 2000 g·mm of 1253 g·mm permissible\n"));
        assertTrue(page.contains("\n  DE-H from 5"), page);
        assertTrue(page.contains("Caution: Stop, isolate and lock out the drive, wait for standstill"), page);
        for (Caution caution : Caution.values()) {
            assertTrue(page.contains("Caution: " + caution.text() + "\n"), page);
        }
    }

    @Test
    void badStepsAreNamed() {
        BalancingJob bare = Balancing.inPlanes("fan");
        assertEquals("sensors must be set before the first run: measuredAt(...)",
                message(IllegalStateException.class, () -> bare.initial(v(1, 0))));
        assertEquals("readings must be one per sensor and speed, 1: 2",
                message(IllegalArgumentException.class, () -> fan().initial(v(1, 0), v(2, 0))));
        for (Executable late : List.<Executable>of(() -> fanAfterTrial().radius("fan", 3),
                () -> fanAfterTrial().with(Convention.LEAD_WITH_ROTATION), () -> fanAfterTrial().measuredAt("x"),
                () -> fanAfterTrial().at(RotationSpeed.ofHertz(1)), () -> fanAfterTrial().trialsLeftOn(),
                () -> fanAfterTrial().in(Unit.UM, Detector.RMS))) {
            assertTrue(message(IllegalStateException.class, late).endsWith(" must be set before the first run"));
        }
        assertEquals("trial mass in plane fan must be above zero: 0 g",
                message(IllegalArgumentException.class, () -> fan().initial(v(1, 0)).trial("fan", mass(0, 0), v(1,
                        0))));
        assertEquals("plane must be one of fan: rotor",
                message(IllegalArgumentException.class, () -> fan().trial("rotor", mass(1, 0), v(1, 0))));
        assertEquals("plane must be one of fan: rotor",
                message(IllegalArgumentException.class, () -> fanAfterTrial().corrections().in("rotor")));
        assertEquals("sensor must be one of DE-H: x",
                message(IllegalArgumentException.class, () -> fan().weight("x", 1)));
        assertEquals("weight of sensor DE-H must be finite and >= 0: -1.0",
                message(IllegalArgumentException.class, () -> fan().weight("DE-H", -1)));
        assertEquals("count of positions in plane fan must be at least 3: 2",
                message(IllegalArgumentException.class, () -> fan().positions("fan", 2)));
        assertEquals("an initial run must be read first: initial(...)", message(IllegalStateException.class,
                () -> fan().withCoefficients(fanAfterTrial().coefficients()).corrections()));
        assertEquals("runs must be at least one initial run and one trial run per plane, 2: 1",
                message(IllegalStateException.class, () -> fan().initial(v(1, 0)).corrections()));
        assertEquals("a final run must be read first: finalRun(...)",
                message(IllegalStateException.class, () -> fanAfterTrial().verification()));
        assertEquals("a final run must be read first: finalRun(...)",
                message(IllegalStateException.class, () -> fan().verification()));
        assertEquals("masses must be one per plane, 1: 0", message(IllegalArgumentException.class,
                () -> fanAfterTrial().finalRun(List.of(), fan().vectors(v(1, 0)))));
        assertEquals("tolerance must be allocated to the planes of the job, 1: 2 share(s)",
                message(IllegalArgumentException.class, () -> fan().toTolerance(BalanceTolerance.of(BalanceGrade.of(1),
                        1,
                        RotationSpeed.ofHertz(1)).allocated(Allocation.equalShares(2)))));
        assertTrue(message(IllegalArgumentException.class, () -> fan().initial(
                Balancing.inPlanes("x").measuredAt("y").in(Unit.UM, Detector.RMS).vectors(v(1, 0))))
                .startsWith("reading of DE-H must be a velocity: 1"));
        assertTrue(message(IllegalArgumentException.class, () -> Balancing.inPlanes("x").measuredAt("y").initial(v(1,
                0))
                .trial("x", mass(1, 0).atRadius(5), v(2, 0)))
                .startsWith("radius of plane x must be set to use a mass with a radius: 1"));
        BalancingJob two = Balancing.inPlanes("a", "b").measuredAt("1", "2").initial(v(1, 0), v(1, 0))
                .trial("a", mass(1, 0), v(2, 0), v(1, 0)).trial("a", mass(2, 0), v(3, 0), v(1, 0));
        assertEquals("trial masses must tell the planes apart: each plane needs a run in which its mass alone changed,"
                + " or runs that differ in its mass", message(IllegalStateException.class, two::corrections));
    }

    @Test
    void badNumbersAreNamed() {
        assertEquals("amplitude of a reading must be finite and >= 0: NaN",
                message(IllegalArgumentException.class, () -> v(Double.NaN, 0)));
        assertEquals("phase of a reading in degrees must be finite: Infinity",
                message(IllegalArgumentException.class, () -> v(1, Double.POSITIVE_INFINITY)));
        assertEquals("mass must be finite and >= 0 g: -1.0", message(IllegalArgumentException.class, () -> mass(-1,
                0)));
        assertEquals("angle of a mass in degrees must be finite: NaN",
                message(IllegalArgumentException.class, () -> mass(1, Double.NaN)));
        assertEquals("radius of a mass must be finite and > 0 mm: 0.0",
                message(IllegalArgumentException.class, () -> mass(1, 0).atRadius(0)));
        assertEquals("radius of a mass must be finite and > 0 mm: NaN",
                message(IllegalArgumentException.class, () -> mass(1, 0).atRadius(Double.NaN)));
        assertEquals("radius of plane fan must be finite and > 0 mm: -1.0",
                message(IllegalArgumentException.class, () -> fan().radius("fan", -1)));
        assertEquals("planes must not be empty", message(IllegalArgumentException.class, Balancing::inPlanes));
        assertEquals("planes must all be different: a comes twice",
                message(IllegalArgumentException.class, () -> Balancing.inPlanes("a", "a")));
        assertEquals("sensors must all be different: a comes twice",
                message(IllegalArgumentException.class, () -> fan().measuredAt("a", "a")));
        assertEquals("5.1 at 63°", v(5.1, 63).toString());
        assertEquals("12 g at 0°", mass(12, 0).toString());
        assertEquals("12 g at 0°, radius 160 mm", mass(12, 0).atRadius(160).toString());
        assertEquals("balancing job: 1 plane(s), 1 sensor(s), 1 speed(s); phase is lag to the tachometer mark, angles"
                + " are counted against rotation from the mark; 2 run(s)", fanAfterTrial().toString());
        assertEquals("DE-H in mm/s rms", fan().layout().sensors().get(0).toString());
    }

    @Test
    void jobsAndResultsTravel() throws IOException, ClassNotFoundException {
        BalancingJob job = fanAfterTrial().toTolerance(BalanceTolerance.of(BalanceGrade.of(6.3), 30,
                RotationSpeed.ofHertz(24)));
        BalancingJob copy = (BalancingJob) copied(job);
        assertEquals(job.corrections().toString(), copy.corrections().toString());
        assertEquals(job.corrections().page(), ((Corrections) copied(job.corrections())).page());
        Verification proof = job.finalRun(v(0.5, 100)).verification();
        assertEquals(proof.toString(), copied(proof).toString());
    }

    private static Object copied(Object value) throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(value);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return in.readObject();
        }
    }

    private static String message(Class<? extends Exception> type, Executable code) {
        return assertThrows(type, code).getMessage();
    }
}
