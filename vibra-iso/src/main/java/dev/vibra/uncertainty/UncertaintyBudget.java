package dev.vibra.uncertainty;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.RealDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * The uncertainty of a level, put together of independent relative contributions.
 *
 * <p>The level is a product of the reading and of factors near 1 (sensitivity, mounting, chain, estimation), so the
 * relative standard uncertainties add as squares: {@code u_c = √(Σ uᵢ²)}. The expanded uncertainty is {@code U =
 * k·u_c}, k the quantile of Student's distribution for 95 % with the effective degrees of freedom: 1.96 where all
 * contributions are well known, 12.7 for two readings. All values are plain numbers, not percent.
 *
 * <p>Immutable; each {@code with} returns a new budget.
 *
 * @param contributions in the order of their adding; empty for an uncertainty of zero
 * @see "JCGM 100:2008, 5.1.6 (products), 6.2.1 (expanded uncertainty), G.3 and G.4 (coverage factor)"
 */
public record UncertaintyBudget(List<Contribution> contributions) implements Serializable {
    /** Probability with which value ± expanded uncertainty holds the truth. */
    public static final double COVERAGE = 0.95;

    /** Coverage factor of the expanded uncertainties that calibration certificates state. */
    private static final double OF_CERTIFICATES = 2;

    /**
     * Copies the list.
     *
     * @param contributions in the order of their adding
     */
    public UncertaintyBudget {
        contributions = Require.copy("contributions", contributions);
    }

    /**
     * Starts a budget without a contribution; its uncertainty is zero until one is added.
     *
     * @return the empty budget
     */
    public static UncertaintyBudget empty() {
        return new UncertaintyBudget(List.of());
    }

    /**
     * Adds a contribution.
     *
     * @param contribution what it comes from and how large it is, see {@link LevelUncertainty}
     * @return the longer budget
     */
    public UncertaintyBudget with(Contribution contribution) {
        List<Contribution> longer = new ArrayList<>(contributions);
        longer.add(Objects.requireNonNull(contribution, "contribution"));
        return new UncertaintyBudget(longer);
    }

    /**
     * Adds a contribution known by its relative standard uncertainty.
     *
     * @param name what it comes from
     * @param relative relative standard uncertainty, finite, zero or more
     * @return the longer budget
     * @throws IllegalArgumentException if the name is blank or the value out of range
     */
    public UncertaintyBudget withStandard(String name, double relative) {
        return with(new Contribution(name, relative));
    }

    /**
     * Adds a contribution known by its relative expanded uncertainty with k = 2, as calibration certificates state it.
     *
     * @param name what it comes from
     * @param relative relative expanded uncertainty, finite, zero or more
     * @return the longer budget
     * @throws IllegalArgumentException if the name is blank or the value out of range
     * @see "JCGM 100:2008, 4.3.3"
     */
    public UncertaintyBudget withExpanded(String name, double relative) {
        return withStandard(name, checked(name, relative) / OF_CERTIFICATES);
    }

    /**
     * Adds a contribution known only by its bounds, every value between them equally likely: {@code u = a/√3}.
     *
     * @param name what it comes from
     * @param relative half the relative distance of the bounds, finite, zero or more
     * @return the longer budget
     * @throws IllegalArgumentException if the name is blank or the value out of range
     * @see "JCGM 100:2008, 4.3.7"
     */
    public UncertaintyBudget withBounds(String name, double relative) {
        return withStandard(name, checked(name, relative) / Math.sqrt(3));
    }

    /** The value as it was given, before a factor changes it. */
    private static double checked(String name, double relative) {
        return Require.notNegative("relative uncertainty (" + name + ")", relative, "");
    }

    /** {@return the combined standard uncertainty, relative to the value, zero for an empty budget} */
    public double relativeStandard() {
        double combined = 0;
        for (Contribution contribution : contributions) {
            combined = Math.hypot(combined, contribution.relativeStandard());
        }
        return combined;
    }

    /**
     * Returns how well the combined uncertainty itself is known, by the Welch–Satterthwaite formula: {@code ν = u_c⁴ /
     * Σ (uᵢ⁴/νᵢ)}.
     *
     * @return effective degrees of freedom, at least 1; infinite if no contribution has finite ones or all are zero
     * @see "JCGM 100:2008, G.4.1"
     */
    public double effectiveDegreesOfFreedom() {
        double sum = 0;
        for (Contribution contribution : contributions) {
            double share = contribution.relativeStandard() / relativeStandard();
            sum += contribution.relativeStandard() == 0 ? 0 : Math.pow(share, 4) / contribution.degreesOfFreedom();
        }
        return sum == 0 ? Double.POSITIVE_INFINITY : 1 / sum;
    }

    /** {@return the coverage factor of every expanded uncertainty of this budget: that for 95 %, 1.96 or more} */
    public double coverageFactor() {
        return coverageFactor(COVERAGE);
    }

    /**
     * Returns the coverage factor for a level of confidence: the quantile of Student's distribution with the effective
     * degrees of freedom, cut to a whole number; of the normal distribution where they are infinite.
     *
     * @param probability level of confidence, above 0 and below 1, as in 0.95
     * @return coverage factor
     * @throws IllegalArgumentException if the probability is out of range
     * @see "JCGM 100:2008, G.3.4 and G.4.1"
     */
    public double coverageFactor(double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw Require.failure("probability", "above 0 and below 1", probability);
        }
        return distribution().inverseCumulativeProbability(0.5 + probability / 2);
    }

    /** From a million degrees of freedom on Student's distribution is the normal one to six digits. */
    private RealDistribution distribution() {
        // 1/(1/ν) may fall short of a whole number by rounding.
        double freedom = Math.floor(effectiveDegreesOfFreedom() * (1 + 1e-12));
        return freedom > 1e6 ? new NormalDistribution(null, 0, 1) : new TDistribution(null, freedom);
    }

    /** {@return the expanded uncertainty, relative to the value, zero for an empty budget} */
    public double relativeExpanded() {
        return coverageFactor() * relativeStandard();
    }

    /**
     * Returns the expanded uncertainty of a value, in the unit of the value.
     *
     * @param value value, finite, zero or more
     * @return expanded uncertainty
     * @throws IllegalArgumentException if the value is out of range
     */
    public double expandedOf(double value) {
        return Require.finite("expanded uncertainty", relativeExpanded() * Require.notNegative("value", value, ""));
    }

    /**
     * Takes the known mean effects off a reading. Intervals and probabilities lie about the corrected value.
     *
     * @param reading reading, finite, zero or more
     * @return the best estimate of the true value
     * @throws IllegalArgumentException if the value is out of range
     * @see "JCGM 100:2008, 3.2.4"
     */
    public double corrected(double reading) {
        double value = Require.notNegative("reading", reading, "");
        for (Contribution contribution : contributions) {
            value /= 1 + contribution.relativeEffect();
        }
        return value;
    }

    /**
     * Returns the probability that the true value lies between two limits: that of Student's distribution with the
     * effective degrees of freedom about the corrected value. What falls below zero counts to a lower limit of zero.
     *
     * @param reading reading, finite, zero or more
     * @param lower lower limit, zero or more
     * @param upper upper limit, above the lower one, may be infinite
     * @return probability, 0 to 1; small ones keep their digits
     * @throws IllegalArgumentException if the reading is out of range, or the limits don't rise
     * @see "JCGM 100:2008, G.3.2; JCGM 106:2012, clause 7"
     */
    public double probabilityBetween(double reading, double lower, double upper) {
        if (!(lower >= 0 && upper > lower)) {
            throw Require.failure("upper", "above the lower limit, " + lower + ", which must be zero or more", upper);
        }
        double value = corrected(reading);
        double from = lower == 0 ? Double.NEGATIVE_INFINITY : lower;
        double standard = Require.finite("standard uncertainty", relativeStandard() * value);
        if (standard == 0) {
            return value > from && value <= upper ? 1 : 0;
        }
        RealDistribution distribution = distribution();
        double low = (from - value) / standard;
        double high = (upper - value) / standard;
        // Taken from the tail on the far side of the value.
        return low > 0 ? distribution.cumulativeProbability(-low) - distribution.cumulativeProbability(-high)
                : distribution.cumulativeProbability(high) - distribution.cumulativeProbability(low);
    }

    /**
     * Returns the sum and its parts, as in {@code 5.3 % (k = 1.96), of standard uncertainties sensor 2.5 %, mounting 1
     * %}.
     */
    @Override
    public String toString() {
        if (contributions.isEmpty()) {
            return "no contribution";
        }
        return Digits.compact(100 * relativeExpanded(), 2) + " % (k = " + Digits.compact(coverageFactor(), 3)
                + "), of standard uncertainties "
                + contributions.stream().map(Contribution::toString).collect(Collectors.joining(", "));
    }
}
