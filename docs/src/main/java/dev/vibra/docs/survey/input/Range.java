package dev.vibra.docs.survey.input;

import dev.vibra.internal.Digits;

/**
 * Range that a number must lie in; NaN and infinities lie in none.
 *
 * @param lowest lower end
 * @param withLowest true if the lower end is allowed
 * @param highest upper end
 * @param withHighest true if the upper end is allowed
 * @param unit unit symbol for the message; empty for a plain number
 */
record Range(double lowest, boolean withLowest, double highest, boolean withHighest, String unit) {
    static Range above(double limit, String unit) {
        return new Range(limit, false, Double.POSITIVE_INFINITY, false, unit);
    }

    static Range atLeast(double limit, String unit) {
        return new Range(limit, true, Double.POSITIVE_INFINITY, false, unit);
    }

    static Range finite(String unit) {
        return new Range(Double.NEGATIVE_INFINITY, false, Double.POSITIVE_INFINITY, false, unit);
    }

    static Range within(double lowest, double highest, String unit) {
        return new Range(lowest, true, highest, true, unit);
    }

    boolean contains(double value) {
        return (value > lowest || withLowest && value == lowest) && (value < highest || withHighest
                && value == highest);
    }

    @Override
    public String toString() {
        String lower = lowest == Double.NEGATIVE_INFINITY ? "" : (withLowest ? ">= " : "> ") + written(lowest);
        String upper = highest == Double.POSITIVE_INFINITY ? "" : (withHighest ? "<= " : "< ") + written(highest);
        if (upper.isEmpty()) {
            return lower.isEmpty() ? "a finite number" : "finite and " + lower;
        }
        return lower.isEmpty() ? upper : lower + " and " + upper;
    }

    /** Powers of ten as {@code 1e9}. */
    private String written(double limit) {
        String number = Digits.compact(limit, 6).replaceAll("(\\.0+)?e([+-])0*", "e$2").replace("e+", "e");
        return number + (unit.isEmpty() ? "" : " " + unit);
    }
}
