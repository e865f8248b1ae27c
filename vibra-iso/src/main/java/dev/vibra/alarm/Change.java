package dev.vibra.alarm;

import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.evidence.Confidence;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Level;
import dev.vibra.severity.Boundary;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.OperatingLimits;
import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;

/**
 * How far a level or a vibration vector has moved from its baseline, and whether that matters: criterion II.
 *
 * <p>A change of more than a quarter of the boundary B/C matters, up or down, sudden or gradual, whatever the zone. A
 * vector can move that far while its amplitude stays: {@code |v − v₀|}. Levels compare steady states under like
 * conditions only; a change that matters calls for diagnosis, not for a certain action.
 *
 * @see "ISO 20816-1:2016, criterion II (change of magnitude); ISO 20816-3:2022, 6.5"
 */
public final class Change implements Serializable {
    private static final long serialVersionUID = 1;

    private final Criterion criterion;
    private final double difference;
    private final boolean ofVectors;
    private final double significant;
    private final double boundary;
    /** Rounding that the difference may carry: 2.6 − 1.9 is 0.7, though not among doubles. */
    private final double rounding;

    /** {@code largest} is the largest of the values that were subtracted. */
    private Change(Criterion criterion, double difference, double largest, boolean ofVectors) {
        this.criterion = criterion;
        this.difference = difference;
        this.rounding = 8 * Math.ulp(largest);
        this.ofVectors = ofVectors;
        this.significant = criterion.operatingLimits().map(OperatingLimits::significantChange)
                .filter(change -> change.isPresent())
                .orElseThrow(() -> new IllegalArgumentException(
                        "criterion must say which change matters, in [operation] of its tables: " + criterion))
                .getAsDouble();
        this.boundary = criterion.boundary("B/C").map(Boundary::limit).orElse(Double.NaN);
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
        criterion.zoneOf(baseline);
        criterion.zoneOf(current);
        double from = baseline.in(criterion.unit());
        double to = current.in(criterion.unit());
        return new Change(criterion, to - from, Math.max(from, to), false);
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
        VibrationVector from = baseline.in(criterion.unit(), criterion.detector());
        VibrationVector to = current.in(criterion.unit(), criterion.detector());
        double moved = to.peak().minus(from.peak()).magnitude() * criterion.detector().ofUnitSine()
                / criterion.unit().toSi();
        double largest = Math.max(from.peak().magnitude(), to.peak().magnitude()) * criterion.detector().ofUnitSine()
                / criterion.unit().toSi();
        return new Change(criterion, moved, largest, true);
    }

    /**
     * Returns the change in the unit of the criterion.
     *
     * @return current minus baseline for levels; length of the difference, zero or more, for vectors
     */
    public double difference() {
        return difference;
    }

    /**
     * Returns the change that matters.
     *
     * @return change in the unit of the criterion
     */
    public double significantChange() {
        return significant;
    }

    /**
     * Tells whether the change matters: whether it is larger than the one that does, up or down. One that equals it, as
     * far as rounding of doubles lets tell, isn't larger.
     *
     * @return true if it matters
     */
    public boolean isSignificant() {
        return Math.abs(difference) > significant + rounding;
    }

    /**
     * Returns the change as a part of the boundary B/C.
     *
     * @return part, negative for a fall; NaN for a criterion without that boundary
     */
    public double partOfBoundary() {
        return difference / boundary;
    }

    /**
     * Returns the criterion compared with.
     *
     * @return the criterion
     */
    public Criterion criterion() {
        return criterion;
    }

    /** Three digits, and more where the printed value would lie on the other side of the one that matters. */
    private String differenceText() {
        for (int digits = 3; digits < 17; digits++) {
            String text = Digits.significant(difference, digits);
            if (Math.abs(Double.parseDouble(text)) > significant + rounding == isSignificant()) {
                return text;
            }
        }
        return Double.toString(difference);
    }

    /** Two changes are equal if criterion and difference are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Change change
                && Double.compare(difference, change.difference) == 0
                && ofVectors == change.ofVectors
                && criterion.equals(change.criterion);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(criterion, difference, ofVectors);
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
                Digits.compact(significant, 4), ofVectors ? "in any direction" : "up or down", criterion.standard(),
                limits.clause(), limits.confidence() == Confidence.FIRM ? "" : " (" + limits.confidence() + ")");
    }
}
