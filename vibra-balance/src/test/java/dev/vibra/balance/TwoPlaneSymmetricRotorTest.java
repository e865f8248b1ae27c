package dev.vibra.balance;

import static dev.vibra.balance.Balancing.mass;
import static dev.vibra.balance.Balancing.v;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.balance.vector.Convention;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Unit;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

/** Published example, see the head of two-plane-symmetric-rotor.txt. */
class TwoPlaneSymmetricRotorTest {
    private static final ReferenceValues NOTES = ReferenceValues.read("two-plane-symmetric-rotor.txt");

    private static Phasor polar(String key, int pair) {
        double[] x = NOTES.all(key);
        return Phasor.polar(x[2 * pair], Math.toRadians(x[2 * pair + 1]));
    }

    private static Reading sum(Phasor a, Phasor b) {
        Phasor s = a.plus(b);
        return v(s.magnitude(), Math.toDegrees(s.argument()));
    }

    private static BalancingJob job() {
        Phasor v1 = polar("initial", 0);
        Phasor v2 = polar("initial", 1);
        Phasor near = polar("change-near", 0);
        Phasor far = polar("change-far", 0);
        Mass trial = mass(NOTES.one("trial") * 1000, NOTES.all("trial")[1]);
        return Balancing.inPlanes("1", "2").measuredAt("1", "2").in(Unit.UM, Detector.ZERO_TO_PEAK)
                .with(Convention.LEAD_WITH_ROTATION).initial(sum(v1, Phasor.ZERO), sum(v2, Phasor.ZERO))
                .trial("1", trial, sum(v1, near), sum(v2, far)).trial("2", trial, sum(v1, far), sum(v2, near));
    }

    @Test
    void coefficientsAndCorrections() {
        BalancingJob job = job();
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                double[] expected = NOTES.all(i == j ? "coefficient-near" : "coefficient-far");
                assertEquals(expected[0], job.coefficients().perGram(i, j) * 1000, 5e-3);
                assertEquals(expected[1], job.coefficients().phaseDegrees(i, j), 1e-9);
            }
            double[] correction = NOTES.all("correction-" + (i + 1));
            assertEquals(correction[0], job.corrections().list().get(i).mass().grams() / 1000, 5e-5);
            assertEquals(correction[1], job.corrections().list().get(i).mass().angleDegrees(), 5e-3);
        }
    }

    /** Symmetry by hand: both ends alike answer with α₁₁ + α₁₂, both ends opposite with α₁₁ − α₁₂. */
    @Test
    void staticAndCoupleModesWithCommonsMath() {
        Complex near = new Complex(0, Math.toRadians(31)).exp().multiply(50 / 0.3);
        Complex far = new Complex(0, Math.toRadians(100)).exp().multiply(42 / 0.3);
        Complex v1 = new Complex(0, Math.toRadians(230)).exp().multiply(30);
        Complex v2 = new Complex(0, Math.toRadians(330)).exp().multiply(70);
        Complex alike = v1.add(v2).divide(near.add(far)).multiply(-0.5);
        Complex opposite = v1.subtract(v2).divide(near.subtract(far)).multiply(-0.5);
        Complex first = alike.add(opposite);
        Phasor found = job().corrections().in("1").mass().kilograms();
        assertEquals(first.getReal(), found.re(), 1e-12);
        assertEquals(first.getImaginary(), found.im(), 1e-12);
    }
}
