package dev.vibra.uncertainty;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * How the uncertainty of a value is counted when it is compared with a limit.
 *
 * <p>The value is moved by a guard band {@code w = g·U}, U the expanded uncertainty for 95 %, before it is compared:
 * {@code g = 0} shares the risk, {@code g = 1} keeps it from whoever relies on the good verdict, {@code g = −1} from
 * whoever pays for a bad one.
 *
 * @param guardFactor g, from −1 to 1
 * @see "JCGM 106:2012, 8.2 (simple acceptance), 8.3.2 (guarded acceptance), 8.3.3 (guarded rejection)"
 */
public record DecisionRule(double guardFactor) implements Serializable {
    /**
     * Checks the factor.
     *
     * @param guardFactor g, from −1 to 1
     * @throws IllegalArgumentException if the factor is out of range
     */
    public DecisionRule {
        Require.within("guardFactor", guardFactor, -1, 1, "");
    }

    /**
     * Compares the value as it is: near a limit either side is wrong half of the time.
     *
     * @return the rule with g = 0
     */
    public static DecisionRule simple() {
        return new DecisionRule(0);
    }

    /**
     * Counts the value as larger by its expanded uncertainty: what passes is below the limit with about 97.5 %.
     *
     * @return the rule with g = 1
     */
    public static DecisionRule guardedAcceptance() {
        return new DecisionRule(1);
    }

    /**
     * Counts the value as smaller by its expanded uncertainty: what fails is above the limit with about 97.5 %.
     *
     * @return the rule with g = −1
     */
    public static DecisionRule guardedRejection() {
        return new DecisionRule(-1);
    }

    /**
     * Moves a value by the guard band.
     *
     * @param value value, finite, zero or more
     * @param expandedUncertainty U for 95 % in the same unit, finite, zero or more
     * @return the value to compare with the limits, zero or more
     * @throws IllegalArgumentException if a number is out of range
     */
    public double moved(double value, double expandedUncertainty) {
        Require.notNegative("value", value, "");
        double moved = value + guardFactor * Require.notNegative("expandedUncertainty", expandedUncertainty, "");
        return Math.max(0, Require.finite("moved value", moved));
    }

    /** Returns the rule in words, as in {@code guarded acceptance (value + U)}. */
    @Override
    public String toString() {
        if (guardFactor == 0) {
            return "simple acceptance";
        }
        String factor = Math.abs(guardFactor) == 1 ? "" : Digits.compact(Math.abs(guardFactor), 3) + "·";
        return guardFactor > 0 ? "guarded acceptance (value + " + factor + "U)"
                : "guarded rejection (value - " + factor + "U)";
    }
}
