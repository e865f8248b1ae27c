package dev.vibra.balance;

import dev.vibra.balance.influence.CorrectionSolver;
import dev.vibra.balance.placement.Positions;
import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.evidence.Remark;
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
    /** What laboratory scales can tell; common practice, no source. */
    private static final double WEIGHED_GRAMS = 1e-4;
    /** No balancing reading is good to a thousandth: a smaller change is none. */
    private static final double NO_CHANGE = 1e-3;
    /**
     * The library's own bound: a correction that many times the trial rests on a small difference of large readings.
     */
    private static final double BEYOND_TRIAL = 10;
    /** Common practice, no source (the same as for unsteady readings): distance of a run from what all of them say. */
    private static final double MISFIT = 0.1;
    /** Sensors that read less than this share of the loudest tell nothing of a trial. */
    private static final double QUIET = 0.05;

    private JobRemarks() {}

    /** Says that a trial did not change the readings by more than rounding and noise of the best chain could. */
    static Optional<String> withoutEffect(String run, double change, double size) {
        double share = size > 0 ? change / size : 0;
        return share > NO_CHANGE ? Optional.empty()
                : Optional.of(run + " must change the readings by more than a thousandth: the change is "
                        + Digits.significant(share, 2) + " of them; check that the mass was on and that sensor and"
                        + " tachometer work, then try a larger mass if the force limit allows it");
    }

    /** Says that ellipses and probabilities leave the age of coefficients out. */
    static Remark takenAsExact() {
        return Remark.note("coefficients-taken-as-exact", "the stored coefficients are taken as exact: ellipses and"
                + " probabilities hold the scatter of the readings only; say how far the coefficients may have moved",
                0, 0);
    }

    /** Says that there is nothing to cancel. */
    static Remark noVibration() {
        return Remark.note("no-vibration", "no vibration at rotation frequency was read: is the sensor connected?",
                0, 0);
    }

    /** Doubts a trial mass that no scales could have weighed: its number is likely in another unit. */
    static Optional<Remark> lightTrial(String run, double grams) {
        return grams >= WEIGHED_GRAMS ? Optional.empty()
                : Optional.of(Remark.note("trial-mass-light", run + " carried " + Digits.significant(grams, 2)
                        + " g, less than scales can tell (0.1 mg, common practice): check the unit of the mass,"
                        + " since corrections are scaled from it", grams, WEIGHED_GRAMS));
    }

    /** Doubts a correction that was scaled up far. */
    static Optional<Remark> farBeyondTrial(String plane, double times) {
        return times <= BEYOND_TRIAL ? Optional.empty()
                : Optional.of(Remark.note("far-beyond-trial", "the correction in plane " + plane + " is "
                        + Digits.significant(times, 2) + " times the trial mass: the coefficients rest on a small"
                        + " change; fit a part of it and read again", times, BEYOND_TRIAL));
    }

    /** Doubts runs that contradict each other. */
    static Optional<Remark> contradictory(double misfit) {
        return misfit <= MISFIT ? Optional.empty()
                : Optional.of(Remark.note("runs-contradict", "a run lies " + Digits.significant(misfit * 100, 2)
                        + " % away from what all initial and trial runs together say of it: repeat the runs (warm"
                        + " bearings, steady speed and load, tight masses)", misfit, MISFIT));
    }

    /** Doubts stored coefficients that a trial run speaks against. */
    static Optional<Remark> storedContradicted(String run, double miss) {
        return miss <= FittingCheck.MISSED ? Optional.empty()
                : Optional.of(Remark.note("stored-coefficients-contradicted", run + " misses what the stored"
                        + " coefficients say of it by " + Digits.significant(miss * 100, 2)
                        + " %: the machine no longer answers as it did; balance without them", miss,
                        FittingCheck.MISSED));
    }

    /** Says why no residual unbalance is told. */
    static Remark residualOpen(CorrectionSolver solver) {
        return Remark.note("residual-not-determined", "the planes act so alike that no residual unbalance of each can be"
                + " told, and no grade", finite(solver.planeConflict()), REFUSED);
    }

    /** Doubts the safety of a trial whose centrifugal force is a large part of the weight that a bearing carries. */
    static Optional<Remark> strongTrial(String run, double unbalance, double rotorKilograms, RotationSpeed speed) {
        double share = unbalance * Math.pow(speed.radiansPerSecond(), 2)
                / (rotorKilograms * TrialMass.STANDARD_GRAVITY / 2);
        return share <= TrialMass.USUAL_SHARE * (1 + 1e-9) ? Optional.empty()
                : Optional.of(Remark.note("trial-force-high", run + " threw with "
                        + Digits.significant(share * 100, 2) + " % of the weight that each of two bearings carries at "
                        + speed + ", usual are 10 % (common practice): make sure that bearings, foundation and"
                        + " fastening stand it", share, TrialMass.USUAL_SHARE));
    }

    /** Doubts a correction that may be off by as much as the largest one. */
    static Optional<Remark> uncertain(String plane, double share, ReadingScatter scatter, boolean assumed,
            boolean aged) {
        return share < 1 ? Optional.empty()
                : Optional.of(Remark.note("correction-uncertain", "the correction in plane " + plane + " may be off by "
                        + Digits.significant(share, 2) + " times the largest correction (95 %), so it may do more harm"
                        + " than good, if readings scatter by " + Digits.compact(scatter.amplitudeShare() * 100, 3)
                        + " % and " + Digits.compact(scatter.phaseDegrees(), 3) + "° (one standard deviation"
                        + (assumed ? ", assumed: none was told" : "") + ")"
                        + (aged ? " and the stored coefficients as was told" : ""), share, 1));
    }

    /** Doubts a trial that changed no reading that matters by 30 % or 30°. */
    static Optional<Remark> weakTrial(String run, Phasor[] before, Phasor[] after, Setup setup) {
        double[] weights = setup.rowWeights();
        double loudest = 0;
        for (int i = 0; i < before.length; i++) {
            loudest = Math.max(loudest, size(before[i], after[i]) * weights[i]);
        }
        double largest = 0;
        for (int i = 0; i < before.length; i++) {
            boolean counts = size(before[i], after[i]) * weights[i] >= QUIET * loudest
                    && after[i].minus(before[i]).magnitude() > setup.allowance(i, before[i], after[i]);
            if (counts) {
                largest = Math.max(largest, change(before[i], after[i]));
            }
        }
        if (largest >= 1) {
            return Optional.empty();
        }
        String way = largest * BEYOND_TRIAL < 1 ? "look for a sensor, a plane or a speed where more shows"
                : "about " + Digits.significant(1 / largest, 2) + " times the mass would do, if the force limit allows"
                + " it, or another angle";
        return Optional.of(Remark.note("trial-too-weak", run
                + " changed no amplitude that counts by 30 % and no phase by 30°, so its coefficients rest on a small"
                + " difference; " + way + " (common practice)", largest, 1));
    }

    private static double size(Phasor before, Phasor after) {
        return Math.max(before.magnitude(), after.magnitude());
    }

    /** Says that a correction is not split, for no two free positions lie beside it. */
    static Remark unreached(String plane, PlacedMass mass, Positions positions) {
        return Remark.note("positions-apart", "the correction in plane " + plane + " lies in a gap of half a turn or"
                + " more between free positions and is not split: fit within the positions (fitting(...)), take another"
                + " radius or remove on the opposite side", mass.angleDegrees(), positions.free().size());
    }

    /** Says that the corrections were held back on purpose. */
    static Remark regularised(double ridge) {
        return Remark.note("regularised", "the corrections were damped by " + Digits.compact(ridge, 3)
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
                : Optional.of(Remark.note("planes-alike", "the planes act nearly alike at the sensors (condition number "
                        + CorrectionSolver.inWords(conflict) + " with columns of equal length): errors of the readings"
                        + " may grow that many times in the corrections, and ellipses come out too small; prefer fewer"
                        + " planes, other sensors or speeds, or larger trial masses", finite(conflict), CONFLICT));
    }

    /** A condition number without bound, as a number that files can hold. */
    private static double finite(double conflict) {
        return Math.min(conflict, 1e18);
    }
}
