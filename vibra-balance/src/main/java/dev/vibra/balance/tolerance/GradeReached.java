package dev.vibra.balance.tolerance;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/**
 * Grade that a residual unbalance reaches, with the evidence.
 *
 * @param millimetresPerSecond specific unbalance times angular speed in mm/s, of the worst plane related to its share
 * @param gramMillimetres residual unbalance in g·mm, of the worst plane over its share
 * @param tolerance what it was held against
 * @see "ISO 21940-11:2016, Table 1 and verification of residual unbalance"
 */
public record GradeReached(double millimetresPerSecond, double gramMillimetres, BalanceTolerance tolerance)
        implements Serializable {
    /**
     * Checks the values.
     *
     * @param millimetresPerSecond specific unbalance times angular speed in mm/s, of the worst plane related to its
     * share
     * @param gramMillimetres residual unbalance in g·mm, of the worst plane over its share
     * @param tolerance what it was held against
     */
    public GradeReached {
        Require.notNegative("specific unbalance times speed", millimetresPerSecond, "mm/s");
        Require.notNegative("residual unbalance", gramMillimetres, "g·mm");
        Objects.requireNonNull(tolerance, "tolerance");
    }

    /**
     * Tells whether the grade asked for is held; exactly on the limit it is.
     *
     * @return true if the residual is at or below the permissible one
     */
    public boolean held() {
        return gramMillimetres <= tolerance.gramMillimetres();
    }

    /**
     * Returns the finest grade of the table that is held.
     *
     * @return the grade; empty if the residual is coarser than the whole table
     */
    public Optional<BalanceGrade> finestGrade() {
        return GradeRow.finestHolding(millimetresPerSecond);
    }

    /** Returns the verdict with its evidence. */
    @Override
    public String toString() {
        return finestGrade().map(BalanceGrade::toString).orElse("no grade") + " reached ("
                + Digits.significant(millimetresPerSecond, 3) + " mm/s), " + tolerance.grade()
                + (held() ? " held: " : " not held: ") + Digits.significant(gramMillimetres, 4) + " of "
                + Digits.significant(tolerance.gramMillimetres(), 4) + " g·mm; " + BalanceTolerance.STANDARD
                + ", Table 1";
    }
}
