package dev.vibra.io;

import java.nio.charset.StandardCharsets;

/**
 * Numbers as text: sign, digits with a point or a comma among, before or behind them, exponent. Looked at byte by byte,
 * once, so that no text costs more than its length.
 */
final class NumberText {
    /** Whole numbers up to here are exact, and so are these powers of ten: one division or product rounds rightly. */
    private static final long EXACT = 1L << 53;
    private static final double[] TENS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14,
        1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
    private static final int MOST_EXPONENT = 100_000;
    /** As many digits fit into 64 bits. */
    private static final int MOST_DIGITS = 19;

    private final DecimalScale scale = new DecimalScale();
    private double value;
    private int exponent;

    /** The number of the last scan. */
    double value() {
        return value;
    }

    static double parse(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
        return new NumberText().parse(bytes, 0, bytes.length);
    }

    /**
     * Reads a number, rounded as {@link Double#parseDouble} does; NaN if the text isn't one, infinite if it is too
     * large.
     */
    double parse(byte[] text, int from, int end) {
        return scan(text, from, end, true) == end ? value : Double.NaN;
    }

    /**
     * Reads the number that a text begins with.
     *
     * @param decimalComma whether a comma may stand for the point
     * @return index behind the number; -1 if there is none
     */
    int scan(byte[] text, int from, int limit, boolean decimalComma) {
        int first = from < limit && (text[from] == '-' || text[from] == '+') ? from + 1 : from;
        int at = first;
        long digits = 0;
        for (; at < limit && isDigit(text[at]); at++) {
            digits = 10 * digits + text[at] - '0';
        }
        int count = at - first;
        int decimals = 0;
        if (at < limit && (text[at] == '.' || text[at] == ',' && decimalComma)) {
            int point = at++;
            for (; at < limit && isDigit(text[at]); at++) {
                digits = 10 * digits + text[at] - '0';
            }
            decimals = at - point - 1;
            count += decimals;
        }
        if (count == 0) {
            return -1;
        }
        int tens = -decimals;
        if (at < limit && (text[at] | 0x20) == 'e') {
            at = takeExponent(text, at, limit);
            tens += exponent;
        }
        boolean isWhole = count <= MOST_DIGITS || count - leadingZeros(text, first, at) <= MOST_DIGITS;
        double magnitude = isWhole ? product(digits, tens) : Double.NaN;
        if (Double.isNaN(magnitude)) {
            magnitude = Double.parseDouble(new String(text, first, at - first, StandardCharsets.ISO_8859_1)
                    .replace(',', '.'));
        }
        value = text[from] == '-' ? -magnitude : magnitude;
        return at;
    }

    /** An exponent without digits isn't one: the index stays at its letter. */
    private int takeExponent(byte[] text, int letter, int limit) {
        int at = letter + 1;
        boolean negative = at < limit && text[at] == '-';
        at += negative || at < limit && text[at] == '+' ? 1 : 0;
        int digits = at;
        int number = 0;
        for (; at < limit && isDigit(text[at]); at++) {
            number = Math.min(MOST_EXPONENT, 10 * number + text[at] - '0');
        }
        exponent = negative ? -number : number;
        return at > digits ? at : letter;
    }

    private static int leadingZeros(byte[] text, int first, int end) {
        int zeros = 0;
        for (int at = first; at < end && (text[at] == '0' || !isDigit(text[at])); at++) {
            zeros += text[at] == '0' ? 1 : 0;
        }
        return zeros;
    }

    /**
     * Whole digits, not negative if read without a sign, times a power of ten; NaN if that can't be told without more
     * digits.
     *
     * @see "W. D. Clinger, How to read floating point numbers accurately, ACM SIGPLAN Notices 25 (1990), 92-101"
     */
    private double product(long digits, int tens) {
        if (digits >= 0 && digits <= EXACT && Math.abs(tens) < TENS.length) {
            return tens < 0 ? digits / TENS[-tens] : digits * TENS[tens];
        }
        return scale.product(digits, tens);
    }

    /** Tells whether a text is of digits, points, commas, signs and exponents only, with a digit among them. */
    static boolean isLikeNumber(String text) {
        boolean hasDigit = false;
        for (int i = 0; i < text.length(); i++) {
            boolean isDigit = isDigit(text.charAt(i));
            if (!isDigit && ".,+-eE".indexOf(text.charAt(i)) < 0) {
                return false;
            }
            hasDigit |= isDigit;
        }
        return hasDigit;
    }

    /** Tells whether a text is two whole numbers with a comma between. */
    static boolean isPair(byte[] text, int from, int end) {
        int comma = from;
        while (comma < end && isDigit(text[comma])) {
            comma++;
        }
        int last = comma + 1;
        while (last < end && isDigit(text[last])) {
            last++;
        }
        return comma > from && last > comma + 1 && last == end && text[comma] == ',';
    }

    private static boolean isDigit(int character) {
        return character >= '0' && character <= '9';
    }
}
