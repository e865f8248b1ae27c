package dev.vibra.docs.fuzz;

/** Texts that reach terminals and logs. */
final class Shown {
    private Shown() {}

    /** Complains of a text that is empty, too long, or holds what can't be seen but moves, hides or turns others. */
    static void require(String what, String text, int longest) {
        if (text == null || text.isBlank()) {
            throw new AssertionError(what + " says nothing");
        }
        if (text.length() > longest) {
            throw new AssertionError(what + " is " + text.length() + " characters long, allowed are " + longest + ": "
                    + escaped(text, 200));
        }
        int at = firstUnprintable(text);
        if (at >= 0) {
            throw new AssertionError(what + " holds an unprintable character: "
                    + escaped(text.substring(Math.max(0, at - 100)), 300));
        }
    }

    /** Place of the first character that is not for reading, new lines included; -1 without one. */
    static int firstUnprintable(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (isUnprintable(text, i)) {
                return i;
            }
        }
        return -1;
    }

    private static boolean isUnprintable(String text, int at) {
        char c = text.charAt(at);
        if (c >= ' ' && c < 0x7f) {
            return false;
        }
        int type = Character.getType(c);
        boolean half = Character.isHighSurrogate(c) ? at + 1 == text.length()
                || !Character.isLowSurrogate(text.charAt(at + 1))
                : Character.isLowSurrogate(c) && (at == 0 || !Character.isHighSurrogate(text.charAt(at - 1)));
        return half || type == Character.CONTROL || type == Character.FORMAT || type == Character.LINE_SEPARATOR
                || type == Character.PARAGRAPH_SEPARATOR;
    }

    /** One line of printable letters, cut where it gets long. */
    static String escaped(String text, int longest) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < text.length() && out.length() < longest; i++) {
            char c = text.charAt(i);
            out.append(c == '\n' ? "\\n" : c == '\\' ? "\\\\" : c < ' ' || c > '~' ? String.format("\\u%04x", (int) c)
                    : String.valueOf(c));
        }
        return out + (out.length() >= longest ? "… (" + text.length() + " characters)" : "");
    }
}
