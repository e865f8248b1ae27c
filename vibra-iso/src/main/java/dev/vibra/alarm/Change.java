package dev.vibra.alarm;

import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.evidence.Confidence;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Level;
import dev.vibra.severity.Boundary;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.OperatingLimits;
import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * How far a level or a vibration vector has moved from its baseline, and whether that matters: criterion II.
 *
 * <p>A change of more than a quarter of the boundary B/C matters, up or down, sudden or gradual, whatever the zone. A
 * vector can move that far while its amplitude stays: {@code |v − v₀|}. Levels compare steady states under like
 * conditions only; a change that matters calls for diagnosis, not for a certain action.
 *
 * @param criterion criterion compared with, one that says which change matters
 * @param difference in the unit of the criterion: current minus baseline for levels; length of the difference, zero or
 *     more, for vectors
 * @param ofVectors true for vectors
 * @see "ISO 20816-1:2016, criterion II (change of magnitude); ISO 20816-3:2022, 6.5"
 */
public record Change(Criterion criterion, double difference, boolean ofVectors) implements Serializable {
    /** Part of the change that matters which rounding may make: 2.6 − 1.9 is 0.7, though not among doubles. */
    private static final double ROUNDING = 1e-10;

    /**
     * Checks that the criterion says which change matters.
     *
     * @param criterion criterion compared with
     * @param difference in the unit of the criterion
     * @param ofVectors true for vectors
     * @throws IllegalArgumentException if it doesn't, or the difference is out of range
     */
    public Change {
        Objects.requireNonNull(criterion, "criterion");
        Require.finite("difference", difference);
        significant(criterion).orElseThrow(() -> new IllegalArgumentException(lacking(criterion)));
    }

    static String lacking(Criterion criterion) {
        return "criterion must say which change matters, in [operation] of its tables: " + criterion;
    }

    static OptionalDouble significant(Criterion criterion) {
        return criterion.operatingLimits().map(OperatingLimits::significantChange).orElse(OptionalDouble.empty());
    }

    /**
     * Compares two levels.
     *
     * @param criterion criterion of the measuring point
     * @param baseline level in the reference state
     * @param current level now, under like conditions
     * @return the change
     * @throws IllegalArgumentException if a level isn't of the quantity, detector and band of the criterion, or the
     *     criterion doesn't say which change matters
     */
    public static Change of(Criterion criterion, Level baseline, Level current) {
        Objects.requireNonNull(criterion, "criterion");
        Objects.requireNonNull(baseline, "baseline");
        Objects.requireNonNull(current, "current");
        criterion.zoneOf(baseline);
        criterion.zoneOf(current);
        return new Change(criterion, current.in(criterion.unit()) - baseline.in(criterion.unit()), false);
    }

    /**
     * Compares two vectors of one order, usually once per turn.
     *
     * @param criterion criterion of the measuring point
     * @param baseline vector in the reference state
     * @param current vector now, at the same speed
     * @return the change, with the detector of the criterion
     * @throws IllegalArgumentException if a vector isn't of the quantity of the criterion, or the criterion doesn't say
     *     which change matters
     */
    public static Change ofVectors(Criterion criterion, VibrationVector baseline, VibrationVector current) {
        Objects.requireNonNull(criterion, "criterion");
        Objects.requireNonNull(baseline, "baseline");
        Objects.requireNonNull(current, "current");
        VibrationVector from = baseline.in(criterion.unit(), criterion.detector());
        VibrationVector to = current.in(criterion.unit(), criterion.detector());
        double moved = to.peak().minus(from.peak()).magnitude() * criterion.detector().ofUnitSine()
                / criterion.unit().toSi();
        return new Change(criterion, moved, true);
    }

    /**
     * Returns the change that matters.
     *
     * @return change in the unit of the criterion
     */
    public double significantChange() {
        return significant(criterion).orElseThrow();
    }

    /**
     * Tells whether the change matters: whether it is larger than the one that does, up or down. One that equals it, as
     * far as rounding of doubles lets tell, isn't larger.
     *
     * @return true if it matters
     */
    public boolean isSignificant() {
        return matters(difference);
    }

    private boolean matters(double moved) {
        return Math.abs(moved) > significantChange() * (1 + ROUNDING);
    }

    /**
     * {@return the change as a part of the boundary B/C, negative for a fall; empty for a criterion without that
     * boundary}
     */
    public OptionalDouble partOfBoundary() {
        return criterion.boundary("B/C").stream().mapToDouble(boundary -> difference / boundary.limit()).findFirst();
    }

    /** Three digits, and more where the printed value would lie on the other side of the one that matters. */
    private String differenceText() {
        for (int digits = 3; digits < 17; digits++) {
            String text = Digits.significant(difference, digits);
            if (matters(Double.parseDouble(text)) == isSignificant()) {
                return text;
            }
        }
        return Double.toString(difference);
    }

    /**
     * Returns the change in one line, as in {@code +1.10 mm/s rms, matters: more than 0.7 up or down; ISO 20816-3:2022
     * 6.5}.
     */
    @Override
    public String toString() {
        String sign = ofVectors ? "vector change " : difference < 0 ? "" : "+";
        OperatingLimits limits = criterion.operatingLimits().orElseThrow();
        return String.format(Locale.ROOT, "%s%s %s %s, %s %s %s; %s %s%s", sign, differenceText(),
                criterion.unit(), criterion.detector(), isSignificant() ? "matters: more than" : "within",
                Digits.compact(significantChange(), 4), ofVectors ? "in any direction" : "up or down",
                criterion.standard(), limits.clause(),
                limits.confidence() == Confidence.FIRM ? "" : " (" + limits.confidence() + ")");
    }
}
