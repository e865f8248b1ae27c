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
        double size = Math.abs(leading);
        if (size > 0 && size < 0.0001) {
            return String.format(Locale.ROOT, "%.2e", value);
        }
        int places = size >= 99.95 || size == 0 ? 0 : size >= 9.995 ? 1 : size >= 0.9995 ? 2 : size >= 0.09995 ? 3 : 4;
        return String.format(Locale.ROOT, "%." + places + "f", value);
    }
}
