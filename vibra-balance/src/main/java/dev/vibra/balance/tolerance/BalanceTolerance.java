package dev.vibra.balance.tolerance;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;

/**
 * Permissible residual unbalance of a rotor: {@code U_per = e_per·m = G·m/Ω}.
 *
 * <p>It holds for rotors with rigid behaviour; Ω is the angular speed at the greatest service speed, m the mass of the
 * rotor.
 *
 * @see "ISO 21940-11:2016, permissible residual unbalance (the first edition under this number; formerly ISO
 *     1940-1:2003)"
 */
public final class BalanceTolerance implements Serializable {
    private static final long serialVersionUID = 1;

    /** Standard that this class follows, as printed with results. */
    public static final String STANDARD = "ISO 21940-11:2016";

    private final BalanceGrade grade;
    private final double massKilograms;
    private final RotationSpeed speed;
    private final Allocation allocation;

    private BalanceTolerance(BalanceGrade grade, double massKilograms, RotationSpeed speed, Allocation allocation) {
        this.grade = Objects.requireNonNull(grade, "grade");
        this.massKilograms = Require.positive("rotor mass", massKilograms, "kg");
        this.speed = Objects.requireNonNull(speed, "speed");
        this.allocation = Objects.requireNonNull(allocation, "allocation");
        Require.positive("permissible residual unbalance", gramMillimetres(), "g·mm");
    }

    private Object readResolve() {
        return new BalanceTolerance(grade, massKilograms, speed, allocation);
    }

    /**
     * Makes the tolerance of a rotor in one plane; see {@link #allocated(Allocation)} for more planes.
     *
     * @param grade grade asked for
     * @param massKilograms mass of the rotor in kg, finite, above zero
     * @param greatestServiceSpeed greatest speed in service
     * @return the tolerance
     * @throws IllegalArgumentException if the mass is out of range
     */
    public static BalanceTolerance of(BalanceGrade grade, double massKilograms, RotationSpeed greatestServiceSpeed) {
        return new BalanceTolerance(grade, massKilograms, greatestServiceSpeed, Allocation.onePlane());
    }

    /**
     * Splits the tolerance between planes.
     *
     * @param newAllocation share of each plane
     * @return a changed copy
     */
    public BalanceTolerance allocated(Allocation newAllocation) {
        return new BalanceTolerance(grade, massKilograms, speed, newAllocation);
    }

    /**
     * Returns the grade asked for.
     *
     * @return the grade
     */
    public BalanceGrade grade() {
        return grade;
    }

    /**
     * Returns the mass of the rotor.
     *
     * @return mass in kg
     */
    public double massKilograms() {
        return massKilograms;
    }

    /**
     * Returns the greatest service speed.
     *
     * @return the speed
     */
    public RotationSpeed speed() {
        return speed;
    }

    /**
     * Returns the shares of the planes.
     *
     * @return the allocation
     */
    public Allocation allocation() {
        return allocation;
    }

    /**
     * Returns the permissible residual specific unbalance {@code e_per}.
     *
     * @return eccentricity in µm, which is g·mm per kg
     */
    public double eccentricityMicrometres() {
        return grade.permissibleEccentricity(speed) * 1e6;
    }

    /**
     * Returns the permissible residual unbalance {@code U_per} of the rotor.
     *
     * @return unbalance in g·mm
     */
    public double gramMillimetres() {
        return eccentricityMicrometres() * massKilograms;
    }

    /**
     * Returns the permissible residual unbalance in one tolerance plane.
     *
     * @param plane index of the plane
     * @return unbalance in g·mm
     * @throws IndexOutOfBoundsException if there is no such plane
     */
    public double gramMillimetresOf(int plane) {
        return gramMillimetres() * allocation.shares().get(Objects.checkIndex(plane, allocation.shares().size()));
    }

    /**
     * Returns the grade that residual unbalances reach: the worst over the planes of {@code U·Ω/(m·share)}.
     *
     * @param residualGramMillimetres one residual per plane in g·mm, finite, zero or more
     * @return the grade reached, with its verdict against the grade asked for
     * @throws IllegalArgumentException if a residual is out of range or their count differs from that of the shares
     */
    public GradeReached reachedBy(double... residualGramMillimetres) {
        Objects.requireNonNull(residualGramMillimetres, "residualGramMillimetres");
        return new GradeReached(Arrays.stream(residualGramMillimetres).boxed().toList(), this);
    }

    /** Two tolerances are equal if grade, mass, speed and allocation are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof BalanceTolerance t && grade.equals(t.grade)
                && Double.compare(massKilograms, t.massKilograms) == 0 && speed.equals(t.speed)
                && allocation.equals(t.allocation);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(grade, massKilograms, speed, allocation);
    }

    /** Returns the tolerance as one writes it, as in {@code G6.3 for 64 kg at 1480 r/min (24.67 Hz): 2602 g·mm}. */
    @Override
    public String toString() {
        return grade + " for " + Digits.compact(massKilograms, 4) + " kg at " + speed + ": "
                + Digits.significant(gramMillimetres(), 4) + " g·mm";
    }
}
