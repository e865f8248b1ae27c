package dev.vibra.balance.tolerance;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Grade that residual unbalances reach, with the evidence. The plane that uses most of its share decides.
 *
 * @param residualsGramMillimetres one residual per tolerance plane in g·mm, finite, zero or more
 * @param tolerance what they were held against, with as many shares
 * @see "ISO 21940-11:2016, Table 1 and verification of residual unbalance"
 */
public record GradeReached(List<Double> residualsGramMillimetres, BalanceTolerance tolerance) implements Serializable {
    /**
     * Checks and copies the values.
     *
     * @param residualsGramMillimetres one residual per tolerance plane in g·mm, finite, zero or more
     * @param tolerance what they were held against, with as many shares
     */
    public GradeReached {
        residualsGramMillimetres = Require.copy("residualsGramMillimetres", residualsGramMillimetres);
        int planes = Objects.requireNonNull(tolerance, "tolerance").allocation().shares().size();
        if (residualsGramMillimetres.size() != planes) {
            throw new IllegalArgumentException("residual unbalances must be one per plane of the allocation, " + planes
                    + ": " + residualsGramMillimetres.size());
        }
        for (int plane = 0; plane < planes; plane++) {
            double residual = Require.notNegative("residual unbalance", residualsGramMillimetres.get(plane), "g·mm");
            Require.finite("grade reached", residual / tolerance.gramMillimetresOf(plane)
                    * tolerance.grade().millimetresPerSecond());
        }
    }

    /**
     * Returns the plane that decides.
     *
     * @return index of the plane whose residual is the largest part of what is permissible there
     */
    public int worstPlane() {
        int worst = 0;
        for (int i = 1; i < residualsGramMillimetres.size(); i++) {
            if (used(i) > used(worst)) {
                worst = i;
            }
        }
        return worst;
    }

    private double used(int plane) {
        return residualsGramMillimetres.get(plane) / tolerance.gramMillimetresOf(plane);
    }

    /**
     * Returns the residual unbalance of the plane that decides.
     *
     * @return residual in g·mm
     */
    public double gramMillimetres() {
        return residualsGramMillimetres.get(worstPlane());
    }

    /**
     * Returns what is permissible in the plane that decides.
     *
     * @return permissible residual unbalance in g·mm
     */
    public double permissibleGramMillimetres() {
        return tolerance.gramMillimetresOf(worstPlane());
    }

    /**
     * Returns the grade reached as a number: the part of the permissible residual unbalance that the worst plane uses,
     * times the grade asked for. For one plane this is {@code U·Ω/m}.
     *
     * @return specific unbalance times angular speed in mm/s
     */
    public double millimetresPerSecond() {
        return used(worstPlane()) * tolerance.grade().millimetresPerSecond();
    }

    /**
     * Tells whether the grade asked for is held; exactly on the limit it is, and a billionth above it is rounding.
     *
     * @return true if every residual is at or below what is permissible in its plane
     */
    public boolean held() {
        return used(worstPlane()) <= 1 + BalanceGrade.ROUNDING;
    }

    /**
     * Returns the finest grade of the table that is held.
     *
     * @return the grade; empty if the residual is coarser than the whole table
     */
    public Optional<BalanceGrade> finestGrade() {
        return GradeRow.finestHolding(millimetresPerSecond());
    }

    /** Returns the verdict with its evidence. */
    @Override
    public String toString() {
        int planes = residualsGramMillimetres.size();
        return finestGrade().map(BalanceGrade::toString).orElse("no grade") + " reached ("
                + Digits.significant(millimetresPerSecond(), 3) + " mm/s), " + tolerance.grade()
                + (held() ? " held: " : " not held: ") + Digits.significant(gramMillimetres(), 4) + " of "
                + Digits.significant(permissibleGramMillimetres(), 4) + " g·mm"
                + (planes == 1 ? "" : " in tolerance plane " + (worstPlane() + 1) + " of " + planes) + "; "
                + BalanceTolerance.STANDARD + ", Table 1";
    }
}
