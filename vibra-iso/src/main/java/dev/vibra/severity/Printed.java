package dev.vibra.severity;

import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** A level written so that it agrees with its zone: never "2.80" in zone C above a limit of 2.8. */
final class Printed {
    private static final int VALUE_DIGITS = 3;
    private static final int UNCERTAINTY_DIGITS = 2;
    private static final int MOST_DECIMALS = 9;
    /** Decimals of the last resort: from 18 on a limit of 1 and the next double above differ in print. */
    private static final int LAST_DECIMALS = 24;
    /** Uncertainties from here on are written with an exponent. */
    private static final double LARGE = 1e7;

    private Printed() {}

    /**
     * Writes the value, with its expanded uncertainty to two digits where there is one (JCGM 100:2008, 7.2.6).
     *
     * @param uncertainty expanded uncertainty in the same unit; zero if not stated
     */
    static String value(Criterion criterion, double si, double uncertainty) {
        BigDecimal value = new BigDecimal(si / criterion.unit().toSi());
        if (uncertainty >= LARGE) {
            return value(criterion, si, 0) + " ± " + uncertainty(uncertainty);
        }
        int wanted = uncertainty > 0
                ? decimalsOf(new BigDecimal(uncertainty), UNCERTAINTY_DIGITS) : decimalsOf(value, VALUE_DIGITS);
        int decimals = decimals(criterion, si, value, wanted);
        return fixed(value, decimals) + (uncertainty > 0 ? " ± " + fixed(new BigDecimal(uncertainty), decimals) : "");
    }

    /** A band, in full where it looks like the one that it is compared with but isn't. */
    static String band(Band shown, Band against) {
        return shown.toString().equals(against.toString()) && !shown.equals(against)
                ? shown.lowestHertz() + " Hz to " + shown.highestHertz() + " Hz" : shown.toString();
    }

    static String uncertainty(double uncertainty) {
        if (uncertainty >= LARGE) {
            return Digits.significant(uncertainty, UNCERTAINTY_DIGITS);
        }
        BigDecimal value = new BigDecimal(uncertainty);
        return fixed(value, decimalsOf(value, UNCERTAINTY_DIGITS));
    }

    /**
     * The fewest decimals, from the wanted number on, at which the printed value lies on the true side of each limit.
     */
    private static int decimals(Criterion criterion, double si, BigDecimal value, int wanted) {
        for (int decimals = wanted; decimals <= LAST_DECIMALS; decimals++) {
            if (agrees(criterion, si, value.setScale(decimals, RoundingMode.HALF_EVEN))) {
                return decimals;
            }
        }
        return wanted;
    }

    private static boolean agrees(Criterion criterion, double si, BigDecimal printed) {
        for (Boundary boundary : criterion.boundaries()) {
            boolean within = si <= criterion.limitSi(boundary);
            if (within != printed.compareTo(BigDecimal.valueOf(boundary.limit())) <= 0) {
                return false;
            }
        }
        return true;
    }

    /** Decimals that show the given count of significant digits, not more than the most. */
    private static int decimalsOf(BigDecimal value, int digits) {
        BigDecimal rounded = value.round(new MathContext(digits, RoundingMode.HALF_EVEN));
        int exponent = rounded.precision() - rounded.scale() - 1;
        return Math.min(MOST_DECIMALS, Math.max(0, digits - 1 - exponent));
    }

    private static String fixed(BigDecimal value, int decimals) {
        return value.setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
    }
}
