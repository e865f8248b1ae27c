package dev.vibra.balance;

import dev.vibra.balance.influence.CorrectionSolver;
import dev.vibra.balance.remark.Remark;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import java.util.Optional;

/** Doubts about the runs of a job. */
final class JobRemarks {
    /** Common practice, no source: a trial should change the amplitude by 30 % or the phase by 30°. */
    static final double AMPLITUDE_CHANGE = 0.3;
    static final double PHASE_CHANGE_DEGREES = 30;
    /** Common practice, no source: above this, 3 % errors of readings may grow to 30 % in the corrections. */
    static final double CONFLICT = 10;
    /** No reading chain is good to a ten-thousandth: above this, corrections would be made of errors alone. */
    static final double REFUSED = 1e4;

    private JobRemarks() {}

    /** Doubts a trial that changed no reading by 30 % or 30°. */
    static Optional<Remark> weakTrial(String run, Phasor[] before, Phasor[] after) {
        double largest = 0;
        for (int i = 0; i < before.length; i++) {
            largest = Math.max(largest, change(before[i], after[i]));
        }
        if (largest >= 1) {
            return Optional.empty();
        }
        String way = largest > 0 ? "about " + Digits.significant(1 / largest, 2) + " times the mass would do"
                : "nothing changed at all: check that the mass is on and the sensor works";
        return Optional.of(new Remark("trial-too-weak", run + " changed no amplitude by 30 % and no phase by 30°, so"
                + " its coefficients rest on a small difference; " + way + ", if the force limit allows it, or another"
                + " angle (common practice)", largest, 1));
    }

    /** Says that the corrections were held back on purpose. */
    static Remark regularised(double ridge) {
        return new Remark("regularised", "the corrections were damped by " + Digits.compact(ridge, 3)
                + " of the largest singular value to keep them small where planes act alike: more vibration remains"
                + " than could be",
                ridge, 0);
    }

    /** Largest of the two changes, each as a share of what the rule asks for. */
    private static double change(Phasor before, Phasor after) {
        if (before.magnitude() == 0) {
            return after.magnitude() == 0 ? 0 : Double.POSITIVE_INFINITY;
        }
        Phasor ratio = after.dividedBy(before);
        double amplitude = Math.abs(ratio.magnitude() - 1) / AMPLITUDE_CHANGE;
        double phase = Math.toDegrees(Math.abs(ratio.argument())) / PHASE_CHANGE_DEGREES;
        return Math.max(amplitude, phase);
    }

    static Optional<Remark> planesAlike(CorrectionSolver solver) {
        double conflict = solver.planeConflict();
        return conflict <= CONFLICT ? Optional.empty()
                : Optional.of(new Remark("planes-alike", "the planes act nearly alike at the sensors (condition number "
                        + Digits.significant(conflict, 3) + " with columns of equal length): errors of the readings may"
                        + " grow that many times in the corrections; prefer fewer planes, other sensors or speeds, or"
                        + " larger trial masses", conflict, CONFLICT));
    }
}
