package dev.vibra.bearing.proportion;

import dev.vibra.bearing.kinematics.RotatingRing;

/**
 * Bearings that exist. Elements must fit round the pitch circle: neighbours have the chord {@code D·sin(π/N)} between
 * them. The other ranges are common practice, no source: 6 to 26 elements; d/D·cos α of 0.1 to 0.42; contact angles up
 * to 45° (bearings for axial load aside); elements that fill at least 45 % of the circle, or the bearing would carry
 * little for its size.
 */
final class Plausible {
    static final int FEWEST = 6;
    static final int MOST = 26;
    static final Interval RATIO = new Interval(0.1, 0.42);
    /** Six elements of the largest ratio pass a spot of the outer race 1.74 times a turn; slip taken off. */
    static final double LOWEST_STRIKE = 1.7;
    static final double COS_STEEPEST = Math.sqrt(0.5);
    private static final double LEAST_FILLING = 0.45;
    private static final double SPARSE_FILLING = 0.45;
    /** Rounding of printed sizes that a full complement of touching elements may show. */
    private static final double ROUNDING = 1.01;
    /**
     * Elements that displaced rings let in reach over about 186° from the first to the last (literature on deep-groove
     * bearings, from memory, unverified; the bearings of this module's reference file: 185° to 192°).
     */
    private static final double DEEP_GROOVE_FROM = 180;
    private static final double DEEP_GROOVE_TO = 196;

    private Plausible() {}

    record Interval(double low, double high) {
        static Interval around(double value, double reach) {
            return new Interval(value - reach, value + reach);
        }

        boolean isEmpty() {
            return !(low <= high);
        }

        Interval and(Interval other) {
            return new Interval(Math.max(low, other.low), Math.min(high, other.high));
        }

        boolean holds(double value) {
            return low <= value && value <= high;
        }

        double middle() {
            return 0.5 * (low + high);
        }

        double reach() {
            return 0.5 * (high - low);
        }
    }

    /** Whether so many elements of a ratio in the interval fit, and fill enough, at some contact angle. */
    static boolean fits(int elements, Interval ratio) {
        double chord = Math.sin(Math.PI / elements);
        return !ratio.isEmpty() && ratio.low() <= ROUNDING * chord
                && ratio.high() / COS_STEEPEST >= Math.sin(LEAST_FILLING * Math.PI / elements);
    }

    /** Whether so few elements would leave more than half of the circle empty without a contact angle. */
    static boolean isSparse(int elements, double ratio) {
        return ratio < Math.sin(SPARSE_FILLING * Math.PI / elements);
    }

    /** Ratios at which displaced rings take so many elements and no more. */
    static Interval deepGroove(int elements) {
        return new Interval(Math.sin(Math.toRadians(0.5 * DEEP_GROOVE_FROM / (elements - 1))),
                Math.sin(Math.toRadians(0.5 * DEEP_GROOVE_TO / (elements - 1))));
    }

    /** Rates of the cage, as multiples of the speed. */
    static Interval cage(RotatingRing turning) {
        return turning == RotatingRing.INNER ? new Interval(0.5 * (1 - RATIO.high()), 0.5 * (1 - RATIO.low()))
                : new Interval(0.5 * (1 + RATIO.low()), 0.5 * (1 + RATIO.high()));
    }

    static double cage(RotatingRing turning, double ratio) {
        return turning == RotatingRing.INNER ? 0.5 * (1 - ratio) : 0.5 * (1 + ratio);
    }

    static double ratioOfCage(RotatingRing turning, double cage) {
        return turning == RotatingRing.INNER ? 1 - 2 * cage : 2 * cage - 1;
    }

    /** The ratio at which an element of contact angle zero strikes with a multiple of the speed: q = (1 − r²)/r. */
    static double ratioOfRolling(double order) {
        return 0.5 * (Math.sqrt(order * order + 4) - order);
    }
}
