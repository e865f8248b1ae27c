package dev.vibra.balance;

import static dev.vibra.balance.Balancing.mass;
import static dev.vibra.balance.Balancing.v;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.Sensor;
import dev.vibra.balance.remark.Caution;
import dev.vibra.balance.remark.Remark;
import dev.vibra.balance.tolerance.Allocation;
import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Convention;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
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
        assertEquals(30, c.presentUnbalance().get(0).unbalance().angleDegrees(), 1e-9);
        assertTrue(Double.isNaN(c.presentUnbalance().get(0).permissibleGramMillimetres()));
        assertEquals(1, c.conditionNumber(), 1e-12);
        assertEquals(List.of(Caution.values()), c.cautions());
        assertEquals(List.of(), c.remarks());
        assertEquals(Convention.LAG_AGAINST_ROTATION, c.convention());
        InfluenceCoefficients alpha = fanAfterTrial().coefficients();
        assertEquals(0.5, alpha.perGram(0, 0), 1e-12);
        assertEquals(40, alpha.phaseDegrees(0, 0), 1e-9);
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
    }

    @Test
    void finalRunProvesTheGrade() {
        BalanceTolerance tolerance = BalanceTolerance.of(BalanceGrade.of(6.3), 30, RotationSpeed.ofHertz(24));
        BalancingJob job = fanAfterTrial().toTolerance(tolerance);
        Verification proof = job.finalRun(v(0.5, 100)).verification();
        assertEquals(0.1, proof.remainingShare(), 1e-12);
        // 0.5 mm/s is 1 g at 100° − 40°.
        assertEquals(200, proof.residualUnbalance().get(0).gramMillimetres(), 1e-9);
        assertEquals(60, proof.residualUnbalance().get(0).unbalance().angleDegrees(), 1e-9);
        assertEquals(tolerance.gramMillimetres(), proof.residualUnbalance().get(0).permissibleGramMillimetres());
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
        assertEquals(0.1, proof.remainingShare(), 1e-9);
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
    }

    @Test
    void weakTrialIsDoubted() {
        Corrections weak = fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(5.5, 80)).corrections();
        Remark remark = weak.remarks().get(0);
        assertEquals("trial-too-weak", remark.code());
        assertEquals(10.0 / 30, remark.value(), 0.01);
        assertEquals(1, remark.limit());
        assertTrue(remark.toString().startsWith("trial-too-weak: trial run in plane fan changed no amplitude by 30 %"));
        assertEquals(List.of(), fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(6.51, 70)).corrections()
                .remarks());
        assertEquals(1, fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(6.49, 70)).corrections().remarks().size());
        assertEquals(List.of(), fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(3.49, 70)).corrections()
                .remarks());
        assertEquals(List.of(), fan().initial(v(5, 70)).trial("fan", mass(1, 150), v(5, 39.9)).corrections().remarks());
        assertEquals(1, fan().initial(v(5, 10)).trial("fan", mass(1, 150), v(5, 340.1)).corrections().remarks().size());
        assertEquals(List.of(), fan().initial(v(0, 0)).trial("fan", mass(1, 150), v(1, 0)).corrections().remarks());
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
        Verification fine = two.finalRun(planned, two.vectors(v(0.1, 0), v(Math.hypot(3, 1.5),
                90 + Math.toDegrees(Math.atan2(1.5, 3))))).verification();
        assertEquals(List.of(), fine.remarks());
        Verification worse = two.finalRun(v(10, 0), v(6, 90)).verification();
        assertEquals(List.of("worse-than-before", "opposite-side-suspected"),
                worse.remarks().stream().map(Remark::code).toList());
        assertTrue(worse.toString().endsWith("; worse-than-before; opposite-side-suspected"), worse.toString());
        assertEquals(2, worse.remainingShare(), 1e-12);
        assertTrue(worse.residualUnbalance().isEmpty());
        assertTrue(worse.gradeReached().isEmpty());
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
        assertEquals("1 at 10 r/min".replace("10 r", "600 r"), job.layout().rowName(0).replaceAll(" \\(.*", ""));
        assertEquals("1 at 1200 r/min", job.layout().rowName(1).replaceAll(" \\(.*", ""));
        assertEquals("DE-H", fan().layout().rowName(0));
    }

    @Test
    void pageSaysEverything() {
        String page = fanAfterTrial().corrections().page();
        assertTrue(page.startsWith("Add to the rotor with the trial masses taken off:\n  fan "), page);
        assertTrue(page.contains("\nConvention: phase is lag to the tachometer mark, angles are counted against"
                + " rotation from"
                + " the mark.\n"), page);
        assertTrue(page.contains(", predicted\nCondition number "), page);
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
        assertEquals("trial mass in plane fan must be above zero: 0 g at 0.0° against rotation",
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
                message(IllegalArgumentException.class, () -> fan().initial(v(1, 0)).corrections()));
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
                + " or runs"
                + " that differ in its mass", message(IllegalArgumentException.class, two::corrections));
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
                + " are"
                + " counted against rotation from the mark; 2 run(s)", fanAfterTrial().toString());
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
