package dev.vibra.balance;

import dev.vibra.balance.influence.CorrectionSolver;
import dev.vibra.balance.placement.Positions;
import dev.vibra.balance.remark.Remark;
import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.RotationSpeed;
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

    /** Scatter of readings that is taken where none was told; common practice, no source. */
    static final ReadingScatter ASSUMED = ReadingScatter.of(0.03, 2);
    /** Common practice, no source (the sheet of a trial mass has the same): share of the weight that a bearing carries. */
    static final double FORCE_SHARE = 0.10;

    private JobRemarks() {}

    /** Requires that a trial changed some reading by more than rounding and noise of the best chain could. */
    static void requireEffect(String run, Phasor[] before, Phasor[] after) {
        double largest = 0;
        for (int i = 0; i < before.length; i++) {
            double size = Math.max(before[i].magnitude(), after[i].magnitude());
            if (size > 0) {
                largest = Math.max(largest, after[i].minus(before[i]).magnitude() / size);
            }
        }
        if (!(largest > 1 / REFUSED)) {
            throw new IllegalStateException(run + " must change a reading by more than a ten-thousandth: the largest"
                    + " change is " + Digits.significant(largest, 2) + " of it; check that the mass was on and that"
                    + " sensor and tachometer work, then try a larger mass if the force limit allows it");
        }
    }

    /** Doubts the safety of a trial whose centrifugal force is a large part of the weight that a bearing carries. */
    static Optional<Remark> strongTrial(String run, double unbalance, double rotorKilograms, RotationSpeed speed) {
        double share = unbalance * Math.pow(speed.radiansPerSecond(), 2)
                / (rotorKilograms * TrialMass.STANDARD_GRAVITY / 2);
        return share <= FORCE_SHARE * (1 + 1e-9) ? Optional.empty()
                : Optional.of(new Remark("trial-force-high", run + " threw with "
                        + Digits.significant(share * 100, 2) + " % of the weight that each of two bearings carries at "
                        + speed + ", usual are 10 % (common practice): make sure that bearings, foundation and"
                        + " fastening stand it", share, FORCE_SHARE));
    }

    /** Doubts a correction that may be off by as much as the largest one. */
    static Optional<Remark> uncertain(String plane, double share, ReadingScatter scatter, boolean assumed) {
        return share < 1 ? Optional.empty()
                : Optional.of(new Remark("correction-uncertain", "the correction in plane " + plane + " may be off by "
                        + Digits.significant(share, 2) + " times the largest correction (95 %), so it may do more harm"
                        + " than good, if readings scatter by " + Digits.compact(scatter.amplitudeShare() * 100, 3) + " % and "
                        + Digits.compact(scatter.phaseDegrees(), 3) + "° (one standard deviation"
                        + (assumed ? ", assumed: none was told" : "") + ")", share, 1));
    }

    /** Doubts a trial that changed no reading by 30 % or 30°. */
    static Optional<Remark> weakTrial(String run, Phasor[] before, Phasor[] after) {
        double largest = 0;
        for (int i = 0; i < before.length; i++) {
            largest = Math.max(largest, change(before[i], after[i]));
        }
        if (largest >= 1) {
            return Optional.empty();
        }
        return Optional.of(new Remark("trial-too-weak", run + " changed no amplitude by 30 % and no phase by 30°, so"
                + " its coefficients rest on a small difference; about " + Digits.significant(1 / largest, 2)
                + " times the mass would do, if the force limit allows it, or another"
                + " angle (common practice)", largest, 1));
    }

    /** Says that a correction is not split, for no two free positions lie beside it. */
    static Remark unreached(String plane, PlacedMass mass, Positions positions) {
        return new Remark("positions-apart", "the correction in plane " + plane + " lies in a gap of half a turn or"
                + " more between free positions and is not split: fit within the positions (fitting(...)), take another"
                + " radius or remove on the opposite side", mass.angleDegrees(), positions.free().size());
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
