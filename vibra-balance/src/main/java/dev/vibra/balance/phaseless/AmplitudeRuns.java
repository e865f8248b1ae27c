package dev.vibra.balance.phaseless;

import dev.vibra.balance.uncertainty.VectorCovariance;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.evidence.Remark;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * Runs with one trial mass at several angles, read as amplitudes: {@code A_k = |α|·|U + T·exp(iθ_k)|}.
 *
 * <p>With {@code q = |α|²T²} and {@code w = |α|²T·U}, each trial gives {@code A_k² − A₀² = q + 2·Re(w·exp(−iθ_k))},
 * which is linear. Three trials (the four-run method) fix q and w; two (the three-run method) need {@code |w|² = q·A₀²}
 * too and leave two answers. The mass stays the same and comes off after each run.
 */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
public final class AmplitudeRuns implements Serializable {
    private static final long serialVersionUID = 1;
    /** Angles closer than this tell too little; the library's own bound. */
    private static final double CLOSEST_DEGREES = 20;
    /** Readings may contradict a linear rotor by this share before they are refused; the library's own bound. */
    private static final double CONTRADICTION = 0.3;

    /** Scatter of amplitudes that is taken; common practice, no source. */
    private static final double SCATTER = 0.03;
    /** Part of an amplitude by which it is moved to see the effect. */
    private static final double STEP = 1e-4;

    private record Trial(double angle, double amplitude) implements Serializable {
        Trial {
            Require.finite("angle in degrees", angle);
            Require.notNegative("amplitude", amplitude, "");
        }
    }

    private final double initial;
    private final PlacedMass mass;
    private final List<Trial> trials;

    private AmplitudeRuns(double initial, PlacedMass mass, List<Trial> trials) {
        this.initial = Require.positive("initial amplitude", initial, "");
        this.mass = Objects.requireNonNull(mass, "mass");
        Require.positive("trial mass", mass.grams(), "g");
        this.trials = Require.copy("trials", trials);
    }

    private Object readResolve() {
        return new AmplitudeRuns(initial, mass, trials);
    }

    /**
     * Starts with the initial run and the trial mass that will be tried.
     *
     * @param initialAmplitude amplitude of the initial run in the unit of all amplitudes, finite, above zero
     * @param trialMassGrams trial mass in g, finite, above zero
     * @param sense sense in which angles are counted
     * @return the runs
     * @throws IllegalArgumentException if a value is out of range
     */
    public static AmplitudeRuns of(double initialAmplitude, double trialMassGrams, AngleSense sense) {
        Require.positive("initial amplitude", initialAmplitude, "");
        Objects.requireNonNull(sense, "sense");
        return new AmplitudeRuns(initialAmplitude,
                PlacedMass.ofGrams(Require.positive("trial mass", trialMassGrams, "g"), 0, sense), List.of());
    }

    /**
     * Notes a run with the trial mass at an angle.
     *
     * @param angleDegrees angle of the trial mass from the mark in degrees, at least 20 away from each other trial
     * @param amplitude amplitude in the unit of the initial one, finite, zero or more
     * @return a changed copy
     * @throws IllegalArgumentException if a value is out of range or the angle too near another one
     */
    public AmplitudeRuns trialAt(double angleDegrees, double amplitude) {
        Trial added = new Trial(angleDegrees, amplitude);
        for (Trial other : trials) {
            double apart = Math.abs(Math.IEEEremainder(angleDegrees - other.angle(), 360));
            if (!(apart >= CLOSEST_DEGREES)) {
                throw Require.failure("angle in degrees", "at least " + Digits.compact(CLOSEST_DEGREES, 2)
                        + "° away from the trial at " + Digits.compact(other.angle(), 4) + "°", angleDegrees);
            }
        }
        List<Trial> more = new ArrayList<>(trials);
        more.add(added);
        return new AmplitudeRuns(initial, mass, more);
    }

    /**
     * Finds the correction.
     *
     * @return one correction, or two of which one more run tells the right one
     * @throws IllegalStateException if there are fewer than two trials, or no linear rotor could give these amplitudes
     */
    public PhaselessCorrection correction() {
        if (trials.size() < 2) {
            throw new IllegalStateException("trials must be at least two to balance without phase: " + trials.size());
        }
        Answer answer = answer();
        List<PlacedMass> masses = masses(answer.unbalances());
        List<Remark> remarks = new ArrayList<>(doubts(answer.contradiction()));
        uncertainty(answer.unbalances()).ifPresent(remarks::add);
        return new PhaselessCorrection(masses, answer.contradiction(), remarks);
    }

    /** Unbalances as multiples of the trial mass, and how far the amplitudes are from those of a linear rotor. */
    private record Answer(List<Phasor> unbalances, double contradiction) {}

    private Answer answer() {
        return trials.size() == 2 ? fromTwo() : fromMany();
    }

    /** What 3 % of scatter on each amplitude do to the answer, by differences; 95 %, as a share of the answer. */
    private Optional<Remark> uncertainty(List<Phasor> found) {
        double largest = 0;
        for (Phasor unbalance : found) {
            List<Phasor[]> effects = new ArrayList<>();
            for (int k = -1; k < trials.size(); k++) {
                Phasor up = nearest(with(k, 1 + STEP), unbalance);
                Phasor down = nearest(with(k, 1 - STEP), unbalance);
                effects.add(new Phasor[] {up.minus(down).times(SCATTER / (2 * STEP))});
            }
            double major = VectorCovariance.ofEffects(1, effects).ellipse(0, unbalance, 0.95).major();
            largest = Math.max(largest, unbalance.magnitude() > 0 ? major / unbalance.magnitude() : 0);
        }
        return largest < 1 ? Optional.empty() : Optional.of(Remark.note("correction-uncertain",
                "the correction may be off by " + Digits.significant(largest, 2) + " times itself (95 %), if amplitudes"
                + " scatter by 3 % (one standard deviation, assumed): take a larger trial mass if the force limit"
                + " allows it, or more angles", largest, 1));
    }

    /** The same runs with one amplitude changed; -1 is the initial one. */
    private AmplitudeRuns with(int trial, double factor) {
        if (trial < 0) {
            return new AmplitudeRuns(initial * factor, mass, trials);
        }
        List<Trial> changed = new ArrayList<>(trials);
        changed.set(trial, new Trial(trials.get(trial).angle(), trials.get(trial).amplitude() * factor));
        return new AmplitudeRuns(initial, mass, changed);
    }

    /** The answer nearest to another one; where a small change leaves none, the answer is worth nothing: zero. */
    private static Phasor nearest(AmplitudeRuns runs, Phasor wanted) {
        try {
            return runs.answer().unbalances().stream().min(Comparator.comparingDouble(
                    u -> u.minus(wanted).magnitude())).orElse(Phasor.ZERO);
        } catch (IllegalStateException e) {
            return Phasor.ZERO;
        }
    }

    private double excess(int k) {
        return Math.pow(trials.get(k).amplitude(), 2) - initial * initial;
    }

    private Phasor direction(int k) {
        return Phasor.polar(1, mass.sense().toWithRotation(Math.toRadians(trials.get(k).angle())));
    }

    private Answer fromMany() {
        int n = trials.size();
        double[][] design = new double[n][];
        double[] right = new double[n];
        for (int k = 0; k < n; k++) {
            Phasor d = direction(k);
            design[k] = new double[] {1, 2 * d.re(), 2 * d.im()};
            right[k] = excess(k);
        }
        double[] x = new SingularValueDecomposition(new Array2DRowRealMatrix(design, false)).getSolver()
                .solve(new ArrayRealVector(right, false)).toArray();
        requireEffect(x[0]);
        Phasor w = new Phasor(x[1], x[2]);
        // Noise-free amplitudes have |w|² = q·A₀²: what is left over tells how far to trust them.
        double contradiction = Math.abs(w.magnitude() / (Math.sqrt(x[0]) * initial) - 1);
        requireConsistent(contradiction);
        return new Answer(List.of(w.times(1 / x[0])), contradiction);
    }

    private Answer fromTwo() {
        Phasor a = direction(0);
        Phasor b = direction(1);
        // With w = u·a + v·(i·a): trial a tells u, trial b tells cos δ·u + sin δ·v, both less q/2.
        double cos = a.re() * b.re() + a.im() * b.im();
        double sin = a.re() * b.im() - a.im() * b.re();
        double square = initial * initial;
        List<Phasor> found = new ArrayList<>();
        double contradiction = 0;
        if (Math.abs(sin) < 1e-9) {
            double q = (excess(0) + excess(1)) / 2;
            requireEffect(q);
            double u = (excess(0) - excess(1)) / 4;
            double rest = q * square - u * u;
            contradiction = Math.max(0, -rest / (q * square));
            requireConsistent(contradiction);
            double v = Math.sqrt(Math.max(0, rest));
            found.add(new Phasor(u, v).times(a).times(1 / q));
            found.add(new Phasor(u, -v).times(a).times(1 / q));
        } else {
            // u = (D₀ − q)/2, v = ((D₁ − q)/2 − cos·u)/sin, and u² + v² = q·A₀²: quadratic in q.
            double u0 = excess(0) / 2;
            double v0 = (excess(1) / 2 - cos * u0) / sin;
            double v1 = (-0.5 + 0.5 * cos) / sin;
            double c2 = 0.25 + v1 * v1;
            double c1 = -u0 + 2 * v0 * v1 - square;
            double c0 = u0 * u0 + v0 * v0;
            double discriminant = c1 * c1 - 4 * c2 * c0;
            contradiction = Math.max(0, -discriminant / (c1 * c1));
            requireConsistent(contradiction);
            double root = Math.sqrt(Math.max(0, discriminant));
            for (double q : new double[] {(-c1 + root) / (2 * c2), (-c1 - root) / (2 * c2)}) {
                if (q > 0) {
                    found.add(new Phasor(u0 - q / 2, v0 + v1 * q).times(a).times(1 / q));
                }
            }
            requireEffect(found.isEmpty() ? 0 : 1);
        }
        return new Answer(found, contradiction);
    }

    private static void requireEffect(double q) {
        if (!(q > 0)) {
            throw new IllegalStateException("trials must change the amplitudes as a mass on a linear rotor does: these"
                    + " readings leave no effect of the trial mass; repeat them, with a larger mass if the force limit"
                    + " allows it");
        }
    }

    private static void requireConsistent(double contradiction) {
        if (!(contradiction <= CONTRADICTION)) {
            throw new IllegalStateException("amplitudes must be possible on a linear rotor: they contradict it by "
                    + Digits.significant(contradiction * 100, 2) + " %, at most "
                    + Digits.significant(CONTRADICTION * 100, 2) + " % is allowed; repeat the runs");
        }
    }

    private static List<Remark> doubts(double contradiction) {
        double usual = 0.1;
        return contradiction <= usual ? List.of()
                : List.of(Remark.note("amplitudes-contradict", "the amplitudes contradict a linear rotor by "
                        + Digits.significant(contradiction * 100, 2) + " %: repeat the runs", contradiction, usual));
    }

    /** Turns unbalances as multiples of the trial mass into corrections; equal ones count once. */
    private List<PlacedMass> masses(List<Phasor> unbalances) {
        List<PlacedMass> masses = new ArrayList<>();
        for (Phasor u : unbalances) {
            PlacedMass candidate = PlacedMass.ofPhasor(u.negated().times(mass.grams() / 1000), mass.sense());
            boolean known = masses.stream().anyMatch(m -> m.kilograms().minus(candidate.kilograms()).magnitude()
                    <= 1e-6 * candidate.kilograms().magnitude());
            if (!known) {
                masses.add(candidate);
            }
        }
        return masses;
    }

    /** Returns the runs in one line. */
    @Override
    public String toString() {
        return "initial " + Digits.compact(initial, 4) + ", " + Digits.compact(mass.grams(), 4) + " g tried at "
                + String.join(", ", trials.stream().map(t -> Digits.compact(t.angle(), 4) + "°").toList()) + " "
                + mass.sense();
    }
}
