package dev.vibra.docs.fuzz;

import java.util.List;

/** Values that break what was written for measurements only. */
final class Hostile {
    /** Numbers as text, among them what only looks like one. */
    private static final List<String> NUMBERS = List.of("0", "-0.0", "-1", "1e-322", "4.9e-324", "1e-200", "1e-9",
            "1e9",
            "1e77", "1e155", "1e308", "-1e308", "1.7976931348623157e308", "9.2e18", "2147483647", "2147483648",
            "-2147483648", "9223372036854775807", "1e400", "-1e400", "1e-400", "1e2147483648", "1E-2147483649", "NaN",
            "Infinity", "-Infinity", "0x10", "1_000", "1e", "1e+", "--1", "+-1", "+1", ".5", "5.", ".", "-", "1.2.3",
            "1,234.5", "1.234,5", "00000000012", "1d", "1f", "\u0661\u0662", "1e5e5", "3,14", "0.1e-5", "1'000");
    private static final double[] DOUBLES = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 0.0, -0.0,
        Double.MIN_VALUE, -Double.MIN_VALUE, 1e-200, 1e-100, -1, 1e-6, 1e100, 1e155, 1e300, 1e308, -1e308,
        Double.MAX_VALUE, 9.2e18};
    private static final int[] INTS = {0, -1, 1, Integer.MAX_VALUE, Integer.MIN_VALUE, Integer.MAX_VALUE - 1, 1 << 30,
            -4096};
    private static final List<String> TEXTS = List.of("", " ", "\t", "\n", "a\nb", "\r\n", "\u0000", "a\u0007b",
            "\u001b]0;t\u0007",
            "\u001b[2J", "\u202egnp.exe", "a\u2066b", "\u200f", "\ufeff", "\u2028", "\u0085", "\u009b31m", "\u061c",
            "=1+2",
            "=cmd|' /C calc'!A0", "@SUM(A1)", "+1", "-2+3", "<script>alert(7)</script>",
            "\"><img src=x onerror=alert(7)>",
            "&amp;", "]]>", "'", "\"", "\\", "../x", "/etc/passwd", "a/../../b", "%s%n", "${x}", "{0}", ":", ": {",
            "a:b:c",
            "\ud83d\ude00", "\u00e9", "e\u0301", "\ud800", "x\udc00", "\ufffe", "\uffff", "1", "true", "nul", "{}",
            "[]");

    private Hostile() {}

    static String number(Dice dice) {
        return switch (dice.below(12)) {
            case 0 -> digits(dice, 40);
            case 1 -> "1e" + dice.between(-400, 400);
            case 2 -> Double.toString(Double.longBitsToDouble(dice.bits()));
            case 3 -> Long.toString(dice.bits());
            default -> dice.pick(NUMBERS);
        };
    }

    static double real(Dice dice) {
        return dice.oneIn(6) ? Double.longBitsToDouble(dice.bits()) : DOUBLES[dice.below(DOUBLES.length)];
    }

    static int integer(Dice dice) {
        return dice.oneIn(6) ? dice.between(-10, 300) : INTS[dice.below(INTS.length)];
    }

    static String text(Dice dice) {
        return switch (dice.below(8)) {
            case 0 -> dice.pick("a", "9", "\"", " ", "\u00e4", "=", "-", "\u202e").repeat(dice.size(300));
            case 1 -> dice.pick(TEXTS) + dice.pick(TEXTS);
            default -> dice.pick(TEXTS);
        };
    }

    /** A long token of what a pattern can stumble over. */
    static String token(Dice dice, int longest) {
        int length = dice.between(longest / 8, longest);
        return switch (dice.below(7)) {
            case 0 -> digits(dice, length);
            case 1 -> digits(dice, length) + "x";
            case 2 -> " ".repeat(length);
            case 3 -> "\"".repeat(length);
            case 4 -> "1,".repeat(length / 2) + "x";
            case 5 -> "1e".repeat(length / 2) + "-";
            default -> String.valueOf((char) dice.between(1, 255)).repeat(length);
        };
    }

    private static String digits(Dice dice, int length) {
        return String.valueOf((char) dice.between('0', '9')).repeat(length);
    }
}
