package dev.vibra.io;

/**
 * Numbers as text: sign, digits with a point or a comma among, before or behind them, exponent. Looked at character by
 * character, once, so that no text costs more than its length.
 */
final class NumberText {
    /** Whole numbers up to here are exact, and so are these powers of ten: one division or product rounds rightly. */
    private static final long EXACT = 1L << 53;
    private static final double[] TENS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14,
        1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
    private static final int MOST_EXPONENT = 100_000;

    private char[] text;
    private int end;
    private int at;
    private long digits;
    private int count;
    private int decimals;
    private boolean exact;

    /**
     * Reads a number, rounded as {@link Double#parseDouble} does; NaN if the text isn't one, infinite if it is too
     * large.
     *
     * @see "W. D. Clinger, How to read floating point numbers accurately, ACM SIGPLAN Notices 25 (1990), 92-101"
     */
    double parse(char[] newText, int from, int newEnd) {
        text = newText;
        at = from;
        end = newEnd;
        digits = 0;
        count = 0;
        decimals = 0;
        exact = true;
        return parse(from);
    }

    static double parse(String text) {
        return new NumberText().parse(text.toCharArray(), 0, text.length());
    }

    private double parse(int from) {
        boolean negative = at < end && text[at] == '-';
        at += negative || at < end && text[at] == '+' ? 1 : 0;
        takeDigits(false);
        if (at < end && (text[at] == '.' || text[at] == ',')) {
            at++;
            takeDigits(true);
        }
        if (count == 0) {
            return Double.NaN;
        }
        int exponent = at < end && (text[at] | 0x20) == 'e' ? exponent() : 0;
        if (at < end) {
            return Double.NaN;
        }
        int tens = exponent - decimals;
        if (!exact || digits > EXACT || Math.abs(tens) >= TENS.length) {
            return Double.parseDouble(new String(text, from, end - from).replace(',', '.'));
        }
        double value = tens < 0 ? digits / TENS[-tens] : digits * TENS[tens];
        return negative ? -value : value;
    }

    private void takeDigits(boolean afterPoint) {
        for (; at < end && isDigit(text[at]); at++) {
            exact &= digits <= EXACT;
            digits = exact ? 10 * digits + text[at] - '0' : digits;
            decimals += afterPoint ? 1 : 0;
            count++;
        }
    }

    /** An exponent without digits leaves the position at its letter: it isn't one. */
    private int exponent() {
        int place = at + 1;
        boolean negative = place < end && text[place] == '-';
        place += negative || place < end && text[place] == '+' ? 1 : 0;
        int value = 0;
        for (; place < end && isDigit(text[place]); place++) {
            value = Math.min(MOST_EXPONENT, 10 * value + text[place] - '0');
            at = place + 1;
        }
        return negative ? -value : value;
    }

    /** Tells whether a text is of digits, points, commas, signs and exponents only, with a digit among them. */
    static boolean isLikeNumber(String text) {
        return text.chars().anyMatch(NumberText::isDigit)
                && text.chars().allMatch(c -> isDigit(c) || ".,+-eE".indexOf(c) >= 0);
    }

    /** Tells whether a text is two whole numbers with a comma between. */
    static boolean isPair(char[] text, int from, int end) {
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
