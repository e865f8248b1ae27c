package dev.vibra.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as one writes them in a notebook, the same on every JDK and in every locale. */
public final class Digits {
    private Digits() {}

    /**
     * Writes a number with a given count of significant digits, without an exponent between 1e-4 and 1e7.
     *
     * @param value number to write; NaN and infinities are written as such
     * @param digits significant digits, at least 1
     * @return the text, for example {@code 4.31} or {@code 1480}
     */
    public static String significant(double value, int digits) {
        if (Double.isNaN(value) || Double.isInfinite(value)) {
            return Double.toString(value);
        }
        if (value == 0) {
            return "0";
        }
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
        double magnitude = Math.abs(rounded.doubleValue());
        if (magnitude < 1e-4 || magnitude >= 1e7) {
            return String.format(Locale.ROOT, "%." + (digits - 1) + "e", value);
        }
        int decimals = digits - (rounded.precision() - rounded.scale());
        return rounded.setScale(Math.max(0, decimals)).toPlainString();
    }

    /**
     * Writes a number with up to a given count of significant digits, whole numbers below 1e7 in full and trailing
     * zeros dropped: {@code 1000}, {@code 12.5}.
     *
     * @param value number to write
     * @param digits significant digits, at least 1
     * @return the text
     */
    public static String compact(double value, int digits) {
        if (value == Math.rint(value) && Math.abs(value) < 1e7) {
            return Long.toString((long) value);
        }
        String text = significant(value, digits);
        if (text.indexOf('.') < 0 || text.indexOf('e') >= 0) {
            return text;
        }
        int end = text.length();
        while (text.charAt(end - 1) == '0') {
            end--;
        }
        return text.substring(0, text.charAt(end - 1) == '.' ? end - 1 : end);
    }
}
