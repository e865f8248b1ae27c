package dev.vibra.balance.vector;

import java.util.Locale;

/** Angles of a full turn, as the balancing sheet counts them. */
final class Angles {
    private Angles() {}

    /** Turns radians into degrees from 0 up to, not including, 360. */
    static double degrees(double radians) {
        double wrapped = Math.toDegrees(radians) % 360;
        double positive = wrapped < 0 ? wrapped + 360 : wrapped;
        // A tiny negative angle plus 360 rounds to 360; and -0.0 is 0. Both are the mark itself.
        return positive >= 360 || positive == 0 ? 0 : positive;
    }

    /** Writes degrees with one decimal; what rounds to a full turn is written as zero. */
    static String text(double degrees) {
        String text = String.format(Locale.ROOT, "%.1f", degrees);
        return ("360.0".equals(text) ? "0.0" : text) + "°";
    }
}
