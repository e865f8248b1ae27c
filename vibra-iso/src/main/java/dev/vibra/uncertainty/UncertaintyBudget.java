package dev.vibra.uncertainty;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * The uncertainty of a level, put together of independent relative contributions.
 *
 * <p>The level is a product of the reading and of factors near 1 (sensitivity, mounting, band limiting, estimation), so
 * the relative standard uncertainties add as squares: {@code u_c = √(Σ uᵢ²)}; the expanded uncertainty is {@code U =
 * k·u_c} with {@code k = 2}, a coverage of about 95 % where the result is near normal. All values are plain numbers,
 * not percent.
 *
 * <p>Immutable; each {@code with} returns a new budget.
 *
 * @see "JCGM 100:2008, 5.1.6 (products), 6.2.1 (expanded uncertainty), 6.3.3 (k = 2)"
 */
public final class UncertaintyBudget implements Serializable {
    private static final long serialVersionUID = 1;

    /** Coverage factor of every expanded uncertainty that this class returns: 2. */
    public static final double COVERAGE_FACTOR = 2;

    private final List<Contribution> contributions;

    private UncertaintyBudget(List<Contribution> contributions) {
        this.contributions = List.copyOf(contributions);
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
     * Adds a contribution.
     *
     * @param contribution what it comes from and how large it is, see {@link LevelContributions}
     * @return the longer budget
     */
    public UncertaintyBudget with(Contribution contribution) {
        List<Contribution> longer = new ArrayList<>(contributions);
        longer.add(Objects.requireNonNull(contribution, "contribution"));
        return new UncertaintyBudget(longer);
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
        return withStandard(name, checked(name, relative) / COVERAGE_FACTOR);
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

    /**
     * Returns the contributions in the order of their adding.
     *
     * @return unmodifiable list
     */
    public List<Contribution> contributions() {
        return contributions;
    }

    /**
     * Returns the combined standard uncertainty, relative to the value.
     *
     * @return relative standard uncertainty, zero for an empty budget
     */
    public double relativeStandard() {
        double combined = 0;
        for (Contribution contribution : contributions) {
            combined = Math.hypot(combined, contribution.relativeStandard());
        }
        return combined;
    }

    /**
     * Returns the expanded uncertainty with k = 2, relative to the value.
     *
     * @return relative expanded uncertainty, zero for an empty budget
     */
    public double relativeExpanded() {
        return COVERAGE_FACTOR * relativeStandard();
    }

    /**
     * Returns how well the combined uncertainty itself is known, by the Welch–Satterthwaite formula: {@code ν = u_c⁴ /
     * Σ (uᵢ⁴/νᵢ)}.
     *
     * @return effective degrees of freedom; infinite if no contribution has finite ones or all are zero
     * @see "JCGM 100:2008, G.4.1"
     */
    public double effectiveDegreesOfFreedom() {
        double sum = 0;
        for (Contribution contribution : contributions) {
            sum += Math.pow(contribution.relativeStandard(), 4) / contribution.degreesOfFreedom();
        }
        return sum == 0 ? Double.POSITIVE_INFINITY : Math.pow(relativeStandard(), 4) / sum;
    }

    /**
     * Returns the coverage factor for a level of confidence: the quantile of Student's distribution with the effective
     * degrees of freedom, cut to a whole number; of the normal distribution where they are infinite.
     *
     * @param probability level of confidence, above 0 and below 1, as in 0.95
     * @return coverage factor
     * @throws IllegalArgumentException if the probability is out of range or the degrees of freedom are below 1
     * @see "JCGM 100:2008, G.3.4 and G.4.1"
     */
    public double coverageFactor(double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw Require.failure("probability", "above 0 and below 1", probability);
        }
        double freedom = Math.floor(effectiveDegreesOfFreedom());
        double quantile = 0.5 + probability / 2;
        // From a million degrees of freedom on Student's distribution is the normal one to six digits.
        return freedom > 1e6 ? new NormalDistribution(null, 0, 1).inverseCumulativeProbability(quantile)
                : new TDistribution(null, Require.positive("effective degrees of freedom", freedom, ""))
                        .inverseCumulativeProbability(quantile);
    }

    /**
     * Returns the expanded uncertainty of a value, in the unit of the value.
     *
     * @param value value, finite, zero or more
     * @return expanded uncertainty with k = 2
     * @throws IllegalArgumentException if the value is out of range
     */
    public double expandedOf(double value) {
        return relativeExpanded() * Require.notNegative("value", value, "");
    }

    /** Two budgets are equal if their contributions are, in the same order. */
    @Override
    public boolean equals(Object other) {
        return other instanceof UncertaintyBudget budget && contributions.equals(budget.contributions);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return contributions.hashCode();
    }

    /**
     * Returns the sum and its parts, as in {@code 5.4 % (k = 2), of standard uncertainties sensor 2.5 %, mounting 1 %}.
     */
    @Override
    public String toString() {
        if (contributions.isEmpty()) {
            return "no contribution";
        }
        return Digits.compact(100 * relativeExpanded(), 2) + " % (k = 2), of standard uncertainties "
                + contributions.stream().map(Contribution::toString).collect(Collectors.joining(", "));
    }
}
