package dev.vibra.balance.phaseless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.Caution;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.evidence.Remark;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class AmplitudeRunsTest {
    private static final AngleSense SENSE = AngleSense.AGAINST_ROTATION;

    /** Law of cosines: amplitude with the trial at θ when unbalance U g at u causes 0.4 mm/s per g. */
    private static double amplitude(double unbalance, double u, double trial, double theta) {
        return 0.4 * Math.sqrt(unbalance * unbalance + trial * trial
                + 2 * unbalance * trial * Math.cos(Math.toRadians(theta - u)));
    }

    private static AmplitudeRuns runs(double unbalance, double u, double trial, double... angles) {
        AmplitudeRuns out = AmplitudeRuns.of(0.4 * unbalance, trial, SENSE);
        for (double angle : angles) {
            out = out.trialAt(angle, amplitude(unbalance, u, trial, angle));
        }
        return out;
    }

    @Test
    void fourRunsGiveOneAnswer() {
        PhaselessCorrection c = runs(15, 77, 10, 0, 120, 240).correction();
        assertEquals(15, c.only().grams(), 1e-10);
        assertEquals(257, c.only().angleDegrees(), 1e-9);
        assertEquals(SENSE, c.only().sense());
        assertEquals(0, c.contradiction(), 1e-12);
        assertEquals(List.of(), c.remarks());
        assertEquals(List.of(Caution.values()), c.cautions());
        assertFalse(c.ambiguous());
    }

    /**
     * The handbook's construction: a circle of radius A0, about its points at the trial angles circles of radius A_k;
     * they meet in one point X. Correction: T·A0/|OX| in the direction OX. Here two circles are cut and the third
     * decides.
     */
    @Test
    void fourRunsAgreeWithTheConstructionByCircles() {
        double[] a = {6, 5.2, 8.1, 9.3};
        double[] theta = {0, 0, 110, 230};
        double[][] p = new double[4][];
        for (int k = 1; k < 4; k++) {
            p[k] = new double[] {a[0] * Math.cos(Math.toRadians(theta[k])), a[0] * Math.sin(Math.toRadians(theta[k]))};
        }
        double[] x = cut(p[1], a[1], p[2], a[2], p[3]);
        a[3] = Math.hypot(x[0] - p[3][0], x[1] - p[3][1]); // an exact third circle
        PhaselessCorrection c = AmplitudeRuns.of(a[0], 10, SENSE).trialAt(theta[1], a[1]).trialAt(theta[2], a[2])
                .trialAt(theta[3], a[3]).correction();
        assertEquals(10 * a[0] / Math.hypot(x[0], x[1]), c.only().grams(), 1e-9);
        assertEquals((Math.toDegrees(Math.atan2(x[1], x[0])) + 360) % 360, c.only().angleDegrees(), 1e-9);
    }

    /** Cuts two circles; of the two points the one nearer to {@code near}. */
    private static double[] cut(double[] p, double rp, double[] q, double rq, double[] near) {
        double dx = q[0] - p[0];
        double dy = q[1] - p[1];
        double d = Math.hypot(dx, dy);
        double along = (rp * rp - rq * rq + d * d) / (2 * d);
        double across = Math.sqrt(rp * rp - along * along);
        double[] one = {p[0] + (along * dx - across * dy) / d, p[1] + (along * dy + across * dx) / d};
        double[] two = {p[0] + (along * dx + across * dy) / d, p[1] + (along * dy - across * dx) / d};
        return Math.hypot(one[0] - near[0], one[1] - near[1]) < Math.hypot(two[0] - near[0], two[1] - near[1]) ? one
                : two;
    }

    @Test
    void threeRunsWithOppositeTrialsLeaveAMirrorImage() {
        PhaselessCorrection c = runs(15, 77, 10, 0, 180).correction();
        assertTrue(c.ambiguous());
        assertTrue(c.candidates().stream().anyMatch(m -> is(m, 15, 257)), c.toString());
        assertTrue(c.candidates().stream().anyMatch(m -> is(m, 15, 103)), c.toString());
        assertEquals(2, c.candidates().size());
        String message = assertThrows(IllegalStateException.class, c::only).getMessage();
        assertTrue(message.startsWith("two corrections fit the amplitudes alike: 15.0 g at "), message);
        assertTrue(message.endsWith("; fit one of them and read again, or add a trial at another angle"), message);
        assertTrue(c.toString().endsWith(" against rotation (the amplitudes can't tell which)"), c.toString());
    }

    @Test
    void threeRunsOnTheLineOfTheUnbalanceLeaveNoDoubt() {
        PhaselessCorrection c = runs(15, 0, 10, 0, 180).correction();
        assertTrue(is(c.only(), 15, 180), c.toString());
        PhaselessCorrection opposite = runs(15, 180, 10, 0, 180).correction();
        assertTrue(is(opposite.only(), 15, 0), opposite.toString());
    }

    @Test
    void threeRunsAtOtherAnglesHoldTheTruthToo() {
        for (double second : new double[] {60, 90, 135, 200, 300}) {
            for (double u = 5; u < 360; u += 31) {
                double heavy = u;
                PhaselessCorrection c = runs(15, heavy, 10, 20, 20 + second).correction();
                assertTrue(c.candidates().stream().anyMatch(m -> is(m, 15, (heavy + 180) % 360)),
                        second + " " + u + " " + c);
                assertTrue(c.candidates().size() <= 2);
                for (PlacedMass candidate : c.candidates()) {
                    // Each candidate explains the amplitudes: same influence 6/mass for all runs.
                    double unbalance = candidate.grams();
                    double at = candidate.angleDegrees() + 180;
                    double alpha = 0.4 * 15 / unbalance;
                    assertEquals(amplitude(15, heavy, 10, 20), alpha / 0.4 * amplitude(unbalance, at, 10, 20), 1e-6);
                    assertEquals(amplitude(15, heavy, 10, 20 + second),
                            alpha / 0.4 * amplitude(unbalance, at, 10, 20 + second), 1e-6);
                }
            }
        }
    }

    private static boolean is(PlacedMass mass, double grams, double angle) {
        return Math.abs(mass.grams() - grams) < 1e-5
                && Math.abs(Math.IEEEremainder(mass.angleDegrees() - angle, 360)) < 1e-4;
    }

    @Test
    void manyTrialsAreFitted() {
        PhaselessCorrection c = runs(15, 77, 10, 0, 60, 120, 180, 240, 300).correction();
        assertTrue(is(c.only(), 15, 257));
    }

    @Test
    void contradictingAmplitudesAreDoubtedOrRefused() {
        AmplitudeRuns doubtful = AmplitudeRuns.of(6, 10, SENSE).trialAt(0, 9).trialAt(120, 8).trialAt(240, 4);
        PhaselessCorrection c = doubtful.correction();
        // Equal angles, by hand: q is the mean excess; w = Σ D·(cos θ + i·sin θ)/3.
        double q = (81 + 64 + 16) / 3.0 - 36;
        double re = (2 * 81 - 64 - 16) / 6.0;
        double im = (64 - 16) / (2 * Math.sqrt(3));
        double expected = Math.abs(Math.hypot(re, im) / (Math.sqrt(q) * 6) - 1);
        assertEquals(expected, c.contradiction(), 1e-9);
        assertEquals("amplitudes-contradict", c.remarks().get(0).code());
        assertEquals(0.1, c.remarks().get(0).limit());
        AmplitudeRuns bad = AmplitudeRuns.of(6, 10, SENSE).trialAt(0, 14).trialAt(120, 6).trialAt(240, 0.5);
        assertTrue(state(bad::correction).startsWith("amplitudes must be possible on a linear rotor: they contradict it"
                + " by "));
        AmplitudeRuns line = AmplitudeRuns.of(6, 10, SENSE).trialAt(0, 20).trialAt(180, 1);
        assertTrue(state(line::correction).startsWith("amplitudes must be possible on a linear rotor: they contradict"
                + " it by "));
        AmplitudeRuns right = AmplitudeRuns.of(6, 10, SENSE).trialAt(0, 30).trialAt(90, 1);
        assertTrue(state(right::correction).startsWith("amplitudes must be possible on a linear rotor: they contradict"
                + " it by "));
    }

    // Opposite trials: q = (16² + 2²)/2 − 36 = 94, u = (16² − 2²)/4 = 63; |w|² = 36·q would need 63² ≤ 3384.
    @Test
    void contradictionOfThreeRunsByHand() {
        PhaselessCorrection opposite = AmplitudeRuns.of(6, 10, SENSE).trialAt(0, 16).trialAt(180, 2).correction();
        assertEquals(63.0 * 63 / (36 * 94) - 1, opposite.contradiction(), 1e-12);
        assertEquals("amplitudes-contradict", opposite.remarks().get(0).code());
        assertTrue(opposite.remarks().get(0).text().startsWith("the amplitudes contradict a linear rotor by 17 %"));
        // The nearest rotor has its unbalance on the line of the trials: w/q = 63/94 of 10 g.
        assertEquals(10 * 63.0 / 94, opposite.only().grams(), 1e-9);
        // A quarter turn apart: u = (12² − 36)/2 = 54, v = (2² − 36)/2 = −16, and q²/2 − (36 + 54 − 16)·q + 54² + 16² =
        // 0.
        PhaselessCorrection quarter = AmplitudeRuns.of(6, 10, SENSE).trialAt(0, 12).trialAt(90, 2).correction();
        assertEquals(2 * (54.0 * 54 + 16 * 16) / (74.0 * 74) - 1, quarter.contradiction(), 1e-12);
        assertEquals(1, quarter.candidates().size());
        AmplitudeRuns line = AmplitudeRuns.of(6, 10, SENSE).trialAt(0, 20).trialAt(180, 1);
        assertEquals("amplitudes must be possible on a linear rotor: they contradict it by 68 %, at most 30 % is"
                + " allowed;"
                + " repeat the runs", state(line::correction));
    }

    @Test
    void trialsWithoutEffectAreRefused() {
        String text = "trials must change the amplitudes as a mass on a linear rotor does: these readings leave no"
                + " effect of the trial mass; repeat them, with a larger mass if the force limit allows it";
        AmplitudeRuns none = AmplitudeRuns.of(6, 10, SENSE).trialAt(0, 6).trialAt(120, 6);
        assertEquals(text, state(() -> AmplitudeRuns.of(6, 10, SENSE).trialAt(0, 6).trialAt(180, 6).correction()));
        assertEquals(text, state(() -> none.trialAt(240, 5.9).correction()));
    }

    @Test
    void wordsAndBadInput() {
        assertEquals("initial 6 , 10".replace(" ,", ",") + " g tried at 0°, 120° against rotation",
                AmplitudeRuns.of(6, 10, SENSE).trialAt(0, 5).trialAt(120, 7).toString());
        assertEquals("trials must be at least two to balance without phase: 1",
                state(() -> AmplitudeRuns.of(6, 10, SENSE).trialAt(0, 5).correction()));
        assertEquals("initial amplitude must be finite and > 0: 0.0", message(() -> AmplitudeRuns.of(0, 10, SENSE)));
        assertEquals("trial mass must be finite and > 0 g: NaN", message(() -> AmplitudeRuns.of(1, Double.NaN, SENSE)));
        AmplitudeRuns runs = AmplitudeRuns.of(6, 10, SENSE).trialAt(0, 5);
        assertEquals("amplitude must be finite and >= 0: -1.0", message(() -> runs.trialAt(120, -1)));
        assertEquals("angle in degrees must be finite: NaN", message(() -> runs.trialAt(Double.NaN, 1)));
        for (double near : new double[] {0, 19.9, 341, 360, -19}) {
            assertEquals("angle in degrees must be at least 20° away from the trial at 0°: " + near,
                    message(() -> runs.trialAt(near, 1)));
        }
        assertTrue(runs.trialAt(20, 5).toString().contains("20°"));
    }

    private static String message(Executable code) {
        return assertThrows(IllegalArgumentException.class, code).getMessage();
    }

    /** Unbalance 5, trial 1.5 at 0 and 180°: 1 % on each reading made 4.09 or 6.90 of it, so 3 % leave nothing sure. */
    @Test
    void weakTrialsLeaveAnUncertainAnswer() {
        double u = 5;
        double angle = 100;
        AmplitudeRuns runs = AmplitudeRuns.of(u, 1.5, AngleSense.WITH_ROTATION);
        for (double at : new double[] {0, 180}) {
            runs = runs.trialAt(at, Math.sqrt(u * u + 1.5 * 1.5 + 2 * u * 1.5 * Math.cos(Math.toRadians(angle - at))));
        }
        PhaselessCorrection weak = runs.correction();
        assertEquals(List.of("correction-uncertain"), weak.remarks().stream().map(Remark::code).toList());
        assertTrue(weak.remarks().get(0).value() > 1 && weak.remarks().get(0).limit() == 1, weak.remarks().toString());
        AmplitudeRuns strong = AmplitudeRuns.of(u, 4, AngleSense.WITH_ROTATION);
        for (double at : new double[] {0, 120, 240}) {
            strong = strong.trialAt(at, Math.sqrt(u * u + 16 + 8 * u * Math.cos(Math.toRadians(angle - at))));
        }
        assertEquals(List.of(), strong.correction().remarks());
        assertEquals("candidates must be one or two: 0", assertThrows(IllegalArgumentException.class,
                () -> new PhaselessCorrection(List.of(), 0, List.of())).getMessage());
    }

    private static String state(Executable code) {
        return assertThrows(IllegalStateException.class, code).getMessage();
    }
}
