package dev.vibra.balance.tolerance;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Errors of a balancing process and of later assembly, combined.
 *
 * <p>Systematic errors whose angle is known are taken out as vectors. Random errors and those of which only the size is
 * known combine to {@code ΔU = √(Σ ΔUᵢ²)}; their sum is the worst case. The principle and the limits below which errors
 * may be ignored, 10 % for the maker and 15 % for the user, are from memory, unverified.
 *
 * @see "ISO 21940-14:2012, procedures for assessing balance errors"
 */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
public final class BalanceErrors implements Serializable {
    private static final long serialVersionUID = 1;

    private final Phasor known; // kg·m
    private final List<Double> sizes; // g·mm

    private BalanceErrors(Phasor known, List<Double> sizes) {
        this.known = Objects.requireNonNull(known, "known error");
        this.sizes = Require.copy("sizes", sizes);
        this.sizes.forEach(size -> Require.notNegative("size of error", size, "g·mm"));
        Require.finite("combined error", combinedGramMillimetres());
    }

    private Object readResolve() {
        return new BalanceErrors(known, sizes);
    }

    /**
     * Starts without errors.
     *
     * @return no errors
     */
    public static BalanceErrors none() {
        return new BalanceErrors(Phasor.ZERO, List.of());
    }

    /**
     * Adds a systematic error of known angle.
     *
     * @param unbalance error in kg·m, argument with rotation
     * @return a changed copy
     */
    public BalanceErrors withKnown(Phasor unbalance) {
        return new BalanceErrors(known.plus(unbalance), sizes);
    }

    /**
     * Adds a random error, or one of which only the size is known.
     *
     * @param gramMillimetres size in g·mm, finite, zero or more
     * @return a changed copy
     * @throws IllegalArgumentException if the size is out of range
     */
    public BalanceErrors withSize(double gramMillimetres) {
        List<Double> more = new ArrayList<>(sizes);
        more.add(gramMillimetres);
        return new BalanceErrors(known, more);
    }

    /**
     * Adds the error of a part that sits eccentrically.
     *
     * @param massKilograms mass of the part in kg, finite, above zero
     * @param eccentricityMicrometres eccentricity in µm, half the run-out, finite, zero or more
     * @return a changed copy, with an error of mass times eccentricity
     * @throws IllegalArgumentException if a value is out of range
     */
    public BalanceErrors withEccentricPart(double massKilograms, double eccentricityMicrometres) {
        return withSize(Require.positive("mass of part", massKilograms, "kg")
                * Require.notNegative("eccentricity", eccentricityMicrometres, "µm"));
    }

    /**
     * Returns the combined error {@code ΔU}.
     *
     * @return root of the sum of squares in g·mm
     */
    public double combinedGramMillimetres() {
        return Math.sqrt(sizes.stream().mapToDouble(s -> s * s).sum());
    }

    /**
     * Returns the worst case.
     *
     * @return sum of the sizes in g·mm
     */
    public double worstCaseGramMillimetres() {
        return sizes.stream().mapToDouble(Double::doubleValue).sum();
    }

    /**
     * Takes the known errors out of a measured unbalance.
     *
     * @param measured measured unbalance in kg·m
     * @return unbalance in kg·m without the known errors
     */
    public Phasor corrected(Phasor measured) {
        Objects.requireNonNull(measured, "measured");
        return measured.minus(known);
    }

    /**
     * Returns the largest measured residual with which the maker may pass the rotor: {@code U_per − ΔU}.
     *
     * @param permissibleGramMillimetres permissible residual unbalance in g·mm, finite, above zero
     * @return limit in g·mm; the permissible value itself where ΔU is below 10 % of it; zero or less means that the
     *     errors are too large to prove the tolerance
     * @throws IllegalArgumentException if the value is out of range
     */
    public double limitForMaker(double permissibleGramMillimetres) {
        Require.positive("permissible residual unbalance", permissibleGramMillimetres, "g·mm");
        double error = combinedGramMillimetres();
        return error < 0.10 * permissibleGramMillimetres ? permissibleGramMillimetres
                : permissibleGramMillimetres - error;
    }

    /**
     * Returns the largest measured residual that a user's check may find without a complaint: {@code U_per + ΔU}.
     *
     * @param permissibleGramMillimetres permissible residual unbalance in g·mm, finite, above zero
     * @return limit in g·mm; the permissible value itself where ΔU is below 15 % of it
     * @throws IllegalArgumentException if the value is out of range
     */
    public double limitForUser(double permissibleGramMillimetres) {
        Require.positive("permissible residual unbalance", permissibleGramMillimetres, "g·mm");
        double error = combinedGramMillimetres();
        return error < 0.15 * permissibleGramMillimetres ? permissibleGramMillimetres : permissibleGramMillimetres
                + error;
    }

    /** Returns the combined error and how many sizes it is made of. */
    @Override
    public String toString() {
        return "balance errors " + Digits.significant(combinedGramMillimetres(), 3) + " g·mm combined of "
                + sizes.size()
                + ", " + Digits.significant(worstCaseGramMillimetres(), 3) + " g·mm at worst (rule from memory,"
                + " unverified)";
    }
}
