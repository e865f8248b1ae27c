package dev.vibra.bearing.proportion;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Distance of sidebands about the harmonics of a rate, and how strong they are: the strength of the impacts swings at
 * that rate.
 *
 * @param order distance over the speed of rotation, finite, above zero: 1 at the speed, about 0.4 at the rate of a cage
 * @param share depth of the weaker line of the strongest pair over that of the line between them, zero or more
 */
public record SidebandSpacing(double order, double share) implements Serializable {
    private static final long serialVersionUID = 1;
    /** A reading of a distance is good to this share of it once the speed is known. */
    private static final double REACH = 0.015;
    /**
     * A load zone that takes half of a turn or less makes sidebands of more than this; weaker ones prove neither that a
     * defect passes it nor that none does. Common practice, no source.
     */
    private static final double PLAIN_SHARE = 0.35;

    /**
     * Checks the values.
     *
     * @param order see the record
     * @param share see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public SidebandSpacing {
        Require.positive("order", order, "");
        Require.within("share", share, 0, 1e9, "");
    }

    boolean isSpeed() {
        return Math.abs(order - 1) < REACH;
    }

    boolean isPlain() {
        return share >= PLAIN_SHARE;
    }

    /** Returns distance and strength, as in {@code sidebands of 57 % at 1x}. */
    @Override
    public String toString() {
        return "sidebands of " + Digits.significant(100 * share, 2) + " % at " + Digits.compact(order, 3) + "x";
    }
}
