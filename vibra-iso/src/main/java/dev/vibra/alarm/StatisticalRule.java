package dev.vibra.alarm;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.internal.SerialCorrelation;
import dev.vibra.quantity.Level;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * An alarm limit from the scatter of readings of a sound machine: mean plus k standard deviations, or the limit that
 * the next reading exceeds with a chosen probability.
 *
 * <p>Defaults (common practice, no source): k = 3, at least 10 readings. With n readings the standard deviation itself
 * is uncertain by about {@code 1/√(2(n−1))}, 24 % at 10. The prediction limit {@code x̄ + t·s·√(1 + 1/n)}, t the
 * quantile of Student's distribution with n − 1 degrees of freedom, allows for that. Both take the readings as
 * independent and near normal, under like conditions; {@link #forMonitoring} doesn't. Immutable.
 *
 * @see "JCGM 100:2008, E.4.3 and Table E.1 (uncertainty of a standard deviation); ISO 16269-8:2004 (prediction limits)"
 */
public final class StatisticalRule implements Serializable {
    private static final long serialVersionUID = 1;

    private static final double FACTOR = 3;
    private static final int READINGS = 10;
    /** Part of the mean below which a scatter comes from the sum of like doubles, not from the machine. */
    private static final double ROUNDING = 1e-12;

    /** A lasting doubling calls somebody; common practice, no source. */
    private static final double DOUBLING = 2;
    /** Beyond it the readings of a baseline say next to nothing of their scatter. */
    private static final double MOST_CORRELATED = 0.9;
    /** Two-sided probability of 1 % under the normal law. */
    private static final double ONE_PERCENT = 2.576;

    private final Double factor; // null where the probability is told
    private final Double falseAlarmProbability; // null where the factor is told
    private final int minimumReadings;
    private final double leastRatio;
    private final boolean monitoring;

    private StatisticalRule(Double factor, Double falseAlarmProbability, int minimumReadings, double leastRatio,
            boolean monitoring) {
        if (falseAlarmProbability == null) {
            Require.positive("factor", Objects.requireNonNull(factor, "factor"), "");
        } else if (!(falseAlarmProbability > 0 && falseAlarmProbability <= 0.5)) {
            throw Require.failure("probability", "above 0 and at most 0.5", falseAlarmProbability);
        }
        this.factor = factor;
        this.falseAlarmProbability = falseAlarmProbability;
        this.minimumReadings = Require.atLeast("minimumReadings", minimumReadings, 3);
        this.leastRatio = Require.within("leastRatio", leastRatio, 1, 100, "");
        this.monitoring = monitoring;
    }

    private Object readResolve() {
        return new StatisticalRule(factor, falseAlarmProbability, minimumReadings, leastRatio, monitoring);
    }

    /**
     * Starts with mean plus 3 standard deviations of at least 10 readings.
     *
     * @return the rule
     */
    public static StatisticalRule withDefaults() {
        return new StatisticalRule(FACTOR, null, READINGS, 1, false);
    }

    /**
     * Starts with what is fit for watching a machine by readings that hang together and may run in: mean plus 3 standard
     * deviations, these made larger for the correlation of neighbouring readings, but at least twice the mean; a baseline
     * that still rises or falls is refused.
     *
     * @return the rule
     * @see "G. E. P. Box, G. M. Jenkins, G. C. Reinsel, Time Series Analysis (variance of the mean of an AR(1) process);
     *     M. G. Kendall, Rank Correlation Methods (test of a trend)"
     */
    public static StatisticalRule forMonitoring() {
        return new StatisticalRule(FACTOR, null, READINGS, DOUBLING, true);
    }

    /**
     * Sets how far above the mean the limit lies at least: smaller lasting changes are for a comparison with the baseline
     * or a trend, not for an alarm.
     *
     * @param ratio multiple of the mean, from 1 to 100
     * @return the rule with it
     * @throws IllegalArgumentException if the value is out of range
     */
    public StatisticalRule withLeastRatio(double ratio) {
        return new StatisticalRule(factor, falseAlarmProbability, minimumReadings, ratio, monitoring);
    }

    /**
     * Takes the mean plus k standard deviations.
     *
     * @param k factor, finite, above zero
     * @return the rule with it
     * @throws IllegalArgumentException if the value is out of range
     */
    public StatisticalRule withFactor(double k) {
        return new StatisticalRule(k, null, minimumReadings, leastRatio, monitoring);
    }

    /**
     * Takes the limit that the next reading of the sound machine exceeds with a probability.
     *
     * @param probability above 0, at most 0.5
     * @return the rule with it
     * @throws IllegalArgumentException if the value is out of range
     */
    public StatisticalRule withFalseAlarmProbability(double probability) {
        return new StatisticalRule(null, probability, minimumReadings, leastRatio, monitoring);
    }

    /**
     * Sets how many readings it takes.
     *
     * @param readings at least 3
     * @return the rule with it
     * @throws IllegalArgumentException if the number is out of range
     */
    public StatisticalRule withMinimumReadings(int readings) {
        return new StatisticalRule(factor, falseAlarmProbability, readings, leastRatio, monitoring);
    }

    /**
     * Says why readings give no limit.
     *
     * @param baseline readings of the sound machine, in the order of time
     * @return the reason; empty if {@link #limit} gives one
     */
    public Optional<String> objectionTo(Baseline baseline) {
        int count = Objects.requireNonNull(baseline, "baseline").readings().size();
        if (count < minimumReadings) {
            return Optional.of("a statistical limit must rest on at least " + minimumReadings + " readings: " + count);
        }
        double deviation = baseline.standardDeviation().si();
        if (!(deviation > 0)) {
            return Optional.of("standard deviation of the readings must be finite and > 0 (SI): " + deviation);
        }
        if (deviation < ROUNDING * baseline.level().si()) {
            return Optional.of("standard deviation of the readings must be above rounding, " + ROUNDING
                    + " of their mean (SI): " + deviation);
        }
        double trend = monitoring ? trend(values(baseline)) : 0;
        return Math.abs(trend) < ONE_PERCENT ? Optional.empty() : Optional.of("the readings of the baseline "
                + (trend < 0 ? "fall still, as while running in" : "rise already")
                + ": take later ones, or look for the reason");
    }

    /**
     * Computes the limit.
     *
     * @param baseline readings of the sound machine, in the order of time
     * @return the limit, a level of their quantity, detector and band
     * @throws IllegalArgumentException if there is an {@linkplain #objectionTo objection}
     */
    public Level limit(Baseline baseline) {
        objectionTo(baseline).ifPresent(objection -> {
            throw new IllegalArgumentException(objection);
        });
        double mean = baseline.level().si();
        int count = baseline.readings().size();
        double spread = monitoring ? correlatedSpread(baseline) : factor(count);
        return baseline.like(Math.max(leastRatio * mean, mean + spread * baseline.standardDeviation().si()));
    }

    /**
     * The factor on the standard deviation where neighbours correlate by r: n readings tell as much as n·(1 − r)/(1 + r)
     * would that don't hang together, and their own scatter is too small by √(1 − 1/that number).
     */
    private double correlatedSpread(Baseline baseline) {
        int count = baseline.readings().size();
        double r = correlation(values(baseline));
        double alone = Math.max(2, count * (1 - r) / (1 + r));
        double known = falseAlarmProbability == null ? factor
                : new TDistribution(null, alone - 1).inverseCumulativeProbability(1 - falseAlarmProbability);
        return known * Math.sqrt(1 + 1 / alone) * Math.sqrt((count - 1.0) / count / (1 - 1 / alone));
    }

    /** Correlation of neighbours, corrected for the mean that is taken off; 0 to 0.9. */
    private static double correlation(double[] values) {
        int count = values.length;
        double mean = DoubleStream.of(values).average().orElseThrow();
        double found = SerialCorrelation.of(DoubleStream.of(values).map(value -> value - mean).toArray());
        return Math.max(0, Math.min(MOST_CORRELATED, count > 3 ? (count * found + 1) / (count - 3) : found));
    }

    /** Kendall's statistic of the order of the readings, over its standard deviation by chance. */
    private static double trend(double[] values) {
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            for (int j = 0; j < i; j++) {
                sum += Math.signum(values[i] - values[j]);
            }
        }
        double n = values.length;
        return sum / Math.sqrt(n * (n - 1) * (2 * n + 5) / 18);
    }

    private static double[] values(Baseline baseline) {
        return baseline.readings().stream().mapToDouble(Level::si).toArray();
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
                && minimumReadings == rule.minimumReadings && leastRatio == rule.leastRatio
                && monitoring == rule.monitoring;
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(factor, falseAlarmProbability, minimumReadings, leastRatio, monitoring);
    }

    /** Returns the rule, as in {@code mean + 3 standard deviations of at least 10 readings}. */
    @Override
    public String toString() {
        return (falseAlarmProbability == null ? "mean + " + Digits.compact(factor, 4) + " standard deviations"
                : "prediction limit exceeded by " + Digits.compact(100 * falseAlarmProbability, 3) + " %")
                + " of at least " + minimumReadings + " readings" + (monitoring ? " that may hang together" : "")
                + (leastRatio > 1 ? ", at least " + Digits.compact(leastRatio, 3) + " times the mean" : "");
    }
}
