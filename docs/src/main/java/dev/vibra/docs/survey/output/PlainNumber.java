package dev.vibra.docs.survey.output;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Numbers in files: plain digits, no exponent, nine significant ones, the same on every machine. */
final class PlainNumber {
    private static final MathContext DIGITS = new MathContext(9);

    private PlainNumber() {}

    static String of(double value) {
        if (!(Math.abs(value) < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("number for a file must be finite: " + value);
        }
        BigDecimal rounded = new BigDecimal(value).round(DIGITS);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** Writes a number for people: three significant digits, trailing zeros kept. */
    static String forPeople(double value) {
        return withPlacesOf(value, value);
    }

    /**
     * Writes a number with as many places as another one has by three significant digits, as an uncertainty with its
     * value.
     */
    static String withPlacesOf(double value, double leading) {
        if (!Double.isFinite(value)) {
            return Double.isNaN(value) ? "not determined" : "infinite";
        }
        double size = Math.abs(leading);
        // What rounds up to the next power of ten has a digit more before the point.
        int places = size == 0 ? 0 : Math.max(0, 2 - (int) Math.floor(Math.log10(1.0005 * size)));
        return String.format(Locale.ROOT, "%." + places + "f", value);
    }
}
