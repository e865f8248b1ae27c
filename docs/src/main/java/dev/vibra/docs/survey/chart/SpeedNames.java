package dev.vibra.docs.survey.chart;

import dev.vibra.internal.Digits;

/** Names of orders as they stand in figures and tables. */
public final class SpeedNames {
    private SpeedNames() {}

    /**
     * Names an order.
     *
     * @param order the order
     * @return as {@code 1×} or {@code 0.5×}
     */
    public static String order(double order) {
        return Digits.compact(order, 3) + "\u00d7";
    }
}
