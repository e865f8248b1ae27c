package dev.vibra.docs.survey.meter;

import dev.vibra.internal.Digits;

/** Numbers in messages, as in {@code 0.1}, {@code 25600}, {@code 1e12}. */
final class Shown {
    private Shown() {}

    static String number(double value) {
        return Digits.compact(value, 6).replaceFirst("\\.?0*e\\+?(-?)0*", "e$1");
    }
}
