package dev.vibra.alarm;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Level;
import java.io.Serializable;
import java.util.Objects;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * An alarm limit from the scatter of readings of a sound machine: mean plus k standard deviations, or the limit that
 * the next reading exceeds with a chosen probability.
 *
 * <p>Defaults (common practice, no source): k = 3, at least 10 readings. With n readings the standard deviation itself
 * is uncertain by about {@code 1/√(2(n−1))}, 24 % at 10. The prediction limit {@code x̄ + t·s·√(1 + 1/n)}, t the
 * quantile of Student's distribution with n − 1 degrees of freedom, allows for that. Both take the readings as
 * independent and near normal, under like conditions. Immutable.
 *
 * @see "JCGM 100:2008, E.4.3 and Table E.1 (uncertainty of a standard deviation); ISO 16269-8:2004 (prediction limits)"
 */
public final class StatisticalRule implements Serializable {
    private static final long serialVersionUID = 1;

    private static final double FACTOR = 3;
    private static final int READINGS = 10;
    /** Part of the mean below which a scatter comes from the sum of like doubles, not from the machine. */
    private static final double ROUNDING = 1e-12;

    private final Double factor; // null where the probability is told
    private final Double falseAlarmProbability; // null where the factor is told
    private final int minimumReadings;

    private StatisticalRule(Double factor, Double falseAlarmProbability, int minimumReadings) {
        if (falseAlarmProbability == null) {
            Require.positive("factor", Objects.requireNonNull(factor, "factor"), "");
        } else if (!(falseAlarmProbability > 0 && falseAlarmProbability <= 0.5)) {
            throw Require.failure("probability", "above 0 and at most 0.5", falseAlarmProbability);
        }
        this.factor = factor;
        this.falseAlarmProbability = falseAlarmProbability;
        this.minimumReadings = Require.atLeast("minimumReadings", minimumReadings, 3);
    }

    private Object readResolve() {
        return new StatisticalRule(factor, falseAlarmProbability, minimumReadings);
    }

    /**
     * Starts with mean plus 3 standard deviations of at least 10 readings.
     *
     * @return the rule
     */
    public static StatisticalRule withDefaults() {
        return new StatisticalRule(FACTOR, null, READINGS);
    }

    /**
     * Takes the mean plus k standard deviations.
     *
     * @param k factor, finite, above zero
     * @return the rule with it
     * @throws IllegalArgumentException if the value is out of range
     */
    public StatisticalRule withFactor(double k) {
        return new StatisticalRule(k, null, minimumReadings);
    }

    /**
     * Takes the limit that the next reading of the sound machine exceeds with a probability.
     *
     * @param probability above 0, at most 0.5
     * @return the rule with it
     * @throws IllegalArgumentException if the value is out of range
     */
    public StatisticalRule withFalseAlarmProbability(double probability) {
        return new StatisticalRule(null, probability, minimumReadings);
    }

    /**
     * Sets how many readings it takes.
     *
     * @param readings at least 3
     * @return the rule with it
     * @throws IllegalArgumentException if the number is out of range
     */
    public StatisticalRule withMinimumReadings(int readings) {
        return new StatisticalRule(factor, falseAlarmProbability, readings);
    }

    /**
     * Computes the limit.
     *
     * @param baseline readings of the sound machine
     * @return the limit, a level of their quantity, detector and band
     * @throws IllegalArgumentException if there are fewer readings than the minimum, or all are alike
     */
    public Level limit(Baseline baseline) {
        Objects.requireNonNull(baseline, "baseline");
        int count = baseline.readings().size();
        if (count < minimumReadings) {
            throw new IllegalArgumentException("a statistical limit must rest on at least " + minimumReadings
                    + " readings: " + count);
        }
        double deviation = Require.positive("standard deviation of the readings",
                baseline.standardDeviation().si(), "(SI)");
        if (deviation < ROUNDING * baseline.level().si()) {
            throw Require.failure("standard deviation of the readings", "above rounding, " + ROUNDING
                    + " of their mean (SI)", deviation);
        }
        return baseline.like(baseline.level().si() + factor(count) * deviation);
    }

    private double factor(int count) {
        if (falseAlarmProbability == null) {
            return factor;
        }
        return new TDistribution(null, count - 1.0).inverseCumulativeProbability(1 - falseAlarmProbability)
                * Math.sqrt(1 + 1.0 / count);
    }

    /** Two rules are equal if all their numbers are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof StatisticalRule rule
                && Objects.equals(factor, rule.factor)
                && Objects.equals(falseAlarmProbability, rule.falseAlarmProbability)
                && minimumReadings == rule.minimumReadings;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(factor, falseAlarmProbability, minimumReadings);
    }

    /** Returns the rule, as in {@code mean + 3 standard deviations of at least 10 readings}. */
    @Override
    public String toString() {
        return (falseAlarmProbability == null ? "mean + " + Digits.compact(factor, 4) + " standard deviations"
                : "prediction limit exceeded by " + Digits.compact(100 * falseAlarmProbability, 3) + " %")
                + " of at least " + minimumReadings + " readings";
    }
}
