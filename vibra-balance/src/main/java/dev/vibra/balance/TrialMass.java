package dev.vibra.balance;

import dev.vibra.evidence.Remark;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Suggestion for a trial mass: its centrifugal force is a share of the weight that a bearing carries, {@code m =
 * share·(M·g/bearings)/(r·Ω²)}.
 *
 * <p>Defaults: two bearings that carry the same, and a share of 10 %, common practice (one public source).
 *
 * @see "ISO 21940-13:2012 asks for a trial mass that is safe and yet changes the vibration enough"
 */
public final class TrialMass implements Serializable {
    private static final long serialVersionUID = 1;
    static final double STANDARD_GRAVITY = 9.80665;
    static final double USUAL_SHARE = 0.10;
    /** The library's own bound against slips of the pen; no source. */
    private static final double LARGEST_SHARE = 0.25;
    /** A trial mass above this part of the rotor's is an odd thing; no source. */
    private static final double LARGEST_PART = 0.01;

    private final double rotorKilograms;
    private final RotationSpeed speed;
    private final double radiusMillimetres;
    private final int bearings;
    private final double forceShare;

    private TrialMass(double rotorKilograms, RotationSpeed speed, double radiusMillimetres, int bearings,
            double forceShare) {
        this.rotorKilograms = Require.positive("rotor mass", rotorKilograms, "kg");
        this.speed = Objects.requireNonNull(speed, "speed");
        this.radiusMillimetres = Require.positive("radius", radiusMillimetres, "mm");
        this.bearings = Require.atLeast("bearings", bearings, 1);
        if (!(forceShare > 0 && forceShare <= LARGEST_SHARE)) {
            throw Require.failure("force share", "above 0 and at most " + LARGEST_SHARE, forceShare);
        }
        this.forceShare = forceShare;
        if (!(grams() < Double.POSITIVE_INFINITY && gramMillimetres() < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("speed must be high enough for a trial mass to throw at all: " + speed);
        }
    }

    private Object readResolve() {
        return new TrialMass(rotorKilograms, speed, radiusMillimetres, bearings, forceShare);
    }

    /**
     * Makes a suggestion with the defaults.
     *
     * @param rotorKilograms mass of the rotor in kg, finite, above zero
     * @param speed highest speed of the trial run
     * @param radiusMillimetres radius at which the mass goes on in mm, finite, above zero
     * @return the suggestion
     * @throws IllegalArgumentException if a value is out of range
     */
    public static TrialMass of(double rotorKilograms, RotationSpeed speed, double radiusMillimetres) {
        return new TrialMass(rotorKilograms, speed, radiusMillimetres, 2, USUAL_SHARE);
    }

    /**
     * Sets the share of the weight per bearing that the centrifugal force may reach.
     *
     * @param newShare share, above 0 up to 0.25; 0.10 is common practice
     * @return a changed copy
     * @throws IllegalArgumentException if the share is out of range
     */
    public TrialMass withForceShare(double newShare) {
        return new TrialMass(rotorKilograms, speed, radiusMillimetres, bearings, newShare);
    }

    /**
     * Sets how many bearings carry the weight.
     *
     * @param count number of bearings, at least 1
     * @return a changed copy
     * @throws IllegalArgumentException if below 1
     */
    public TrialMass withBearings(int count) {
        return new TrialMass(rotorKilograms, speed, radiusMillimetres, count, forceShare);
    }

    /**
     * Returns the centrifugal force that the mass will have.
     *
     * @return force in N
     */
    public double forceNewtons() {
        return forceShare * rotorKilograms * STANDARD_GRAVITY / bearings;
    }

    /**
     * Returns the suggested mass.
     *
     * @return mass in g
     */
    public double grams() {
        return forceNewtons() / (radiusMillimetres / 1000 * Math.pow(speed.radiansPerSecond(), 2)) * 1000;
    }

    /**
     * Returns the suggested mass times its radius.
     *
     * @return unbalance in g·mm
     */
    public double gramMillimetres() {
        return grams() * radiusMillimetres;
    }

    /**
     * Returns what to mind with this mass.
     *
     * @return remarks; empty with the usual share or less and a mass that is small beside the rotor
     */
    public List<Remark> remarks() {
        List<Remark> out = new ArrayList<>();
        if (forceShare > USUAL_SHARE) {
            out.add(Remark.note("force-share-high", "the force is above the usual 10 % of the weight per bearing: make"
                    + " sure that bearings, foundation and fastening stand it, also if it adds to the"
                    + " unbalance", forceShare,
                    USUAL_SHARE));
        }
        double ofRotor = grams() / 1000 / rotorKilograms;
        if (ofRotor > LARGEST_PART) {
            out.add(Remark.note("trial-mass-heavy", "the mass is " + Digits.significant(ofRotor * 100, 2) + " % of the"
                    + " rotor's: at this speed unbalance hardly throws, and less may do", ofRotor, LARGEST_PART));
        }
        return List.copyOf(out);
    }

    /**
     * Returns the cautions that go with trial masses.
     *
     * @return all cautions
     */
    public List<Caution> cautions() {
        return List.of(Caution.values());
    }

    /** Returns mass, radius and force in one line. */
    @Override
    public String toString() {
        return "trial mass " + Digits.significant(grams(), 2) + " g at " + Digits.compact(radiusMillimetres, 4)
                + " mm: " + Digits.significant(forceNewtons(), 2) + " N at " + speed + ", "
                + Digits.compact(forceShare * 100, 3) + " % of the weight per bearing";
    }
}
