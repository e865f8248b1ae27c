package dev.vibra.docs.survey.chart;

import dev.vibra.internal.Printable;
import java.util.ArrayList;
import java.util.List;

/**
 * How a text looks, and where it lies about its point on the base line.
 *
 * @param size height of the letters in CSS pixels
 * @param bold true for strong letters
 * @param colour red, green and blue in the three low bytes
 * @param anchor which end of the text the point is
 * @param upright true if the text runs upwards
 */
record Lettering(int size, boolean bold, int colour, Anchor anchor, boolean upright) {
    enum Anchor { START, MIDDLE, END }

    /**
     * Widths of letters from the blank on, in hundredths of the size: the larger one of DejaVu Sans and Liberation Sans
     * (which is as wide as Arial and Helvetica), so that a text needs no more than this in any of them.
     */
    private static final int[] WIDTHS = {32, 40, 46, 84, 64, 95, 78, 27, 39, 39, 50, 84, 32, 36, 32, 34, 64, 64, 64, 64,
        64, 64, 64, 64, 64, 64, 34, 34, 84, 84, 84, 56, 102, 68, 69, 72, 77, 67, 61, 78, 75, 29, 50, 67, 56, 86, 75, 79,
        67, 79, 72, 67, 61, 73, 68, 99, 69, 67, 69, 39, 34, 39, 84, 56, 50, 61, 63, 56, 63, 62, 35, 63, 63, 28, 28, 58,
        28, 97, 63, 61, 63, 63, 41, 52, 39, 63, 59, 82, 59, 59, 52, 64, 34, 64, 84};
    /** Any other letter; those of East Asia fill their square. */
    private static final int OTHER = 84;
    private static final int WIDE = 100;
    private static final int WIDE_FROM = 0x2026;
    private static final double BOLD = 1.13;
    /** No text of a figure needs more letters. */
    private static final int MOST = 400;

    static final Lettering TEXT = new Lettering(14, false, Look.INK, Anchor.START, false);
    static final Lettering SMALL = new Lettering(13, false, Look.INK, Anchor.START, false);
    static final Lettering STRONG = new Lettering(14, true, Look.INK, Anchor.START, false);

    Lettering middle() {
        return new Lettering(size, bold, colour, Anchor.MIDDLE, upright);
    }

    Lettering end() {
        return new Lettering(size, bold, colour, Anchor.END, upright);
    }

    Lettering in(int newColour) {
        return new Lettering(size, bold, newColour, anchor, upright);
    }

    Lettering upwards() {
        return new Lettering(size, bold, colour, anchor, true);
    }

    /** Returns the room that a text needs at most, in CSS pixels. */
    double width(String text) {
        int sum = Printable.of(text).codePoints().map(Lettering::width).sum();
        return sum * size * (bold ? BOLD : 1) / 100;
    }

    private static int width(int letter) {
        if (letter >= ' ' && letter < ' ' + WIDTHS.length) {
            return WIDTHS[letter - ' '];
        }
        return letter >= WIDE_FROM && letter != '\u2212' ? WIDE : OTHER;
    }

    /** From the base line to the middle of its digits. */
    double half() {
        return 0.36 * size;
    }

    /** Where the text begins to the right of its point; negative if it begins left of it. */
    double offset(String text) {
        return switch (anchor) {
            case START -> 0;
            case MIDDLE -> -width(text) / 2;
            case END -> -width(text);
        };
    }

    /** Cuts a text that needs more room than there is, and says so by an ellipsis. */
    String fitting(String whole, double room) {
        String text = Printable.shortened(whole, MOST);
        if (width(text) <= room) {
            return text;
        }
        int end = text.length();
        while (end > 0 && width(text.substring(0, end) + "\u2026") > room) {
            end = text.offsetByCodePoints(end, -1);
        }
        return text.substring(0, end).stripTrailing() + "\u2026";
    }

    /** Breaks a text between words, so that each line fits; what is left of the last line allowed is cut. */
    List<String> wrapped(String text, double room, int most) {
        List<String> lines = new ArrayList<>();
        String rest = Printable.shortened(text.strip(), MOST);
        while (lines.size() < most - 1 && width(rest) > room) {
            int end = rest.length();
            do {
                end = rest.lastIndexOf(' ', end - 1);
            } while (end > 0 && width(rest.substring(0, end)) > room);
            if (end <= 0) {
                break;
            }
            lines.add(rest.substring(0, end));
            rest = rest.substring(end + 1);
        }
        lines.add(fitting(rest, room));
        return lines;
    }
}
