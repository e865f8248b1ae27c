package dev.vibra.internal;

/**
 * Text of unknown origin for messages and terminals: what controls a terminal, turns the direction of writing, can't be
 * seen or is no character is shown as an escape, as in <code>&#92;u202e</code>.
 *
 * <p>That is control characters (line ends and tabs too), format characters such as marks of direction and joiners of
 * no width, separators of lines and paragraphs, and halves of surrogate pairs; beyond 16 bits both halves are written.
 * A backslash stays as it is: the text is for people, not for reading back.
 */
public final class Printable {
    /** As many characters of what a file holds are quoted in a message. */
    public static final int QUOTED = 40;

    private Printable() {}

    /**
     * Shows a text whole.
     *
     * @param text text of unknown origin
     * @return the text without any character that isn't seen
     */
    public static String of(String text) {
        return shortened(text, Integer.MAX_VALUE);
    }

    /**
     * Shows the beginning of a text, for a quote in a message.
     *
     * @param text text of unknown origin, of any length; no more of it is looked at than is shown
     * @return up to {@link #QUOTED} characters, and … if the text goes on
     */
    public static String quoted(String text) {
        return shortened(text, QUOTED);
    }

    /**
     * Shows the beginning of a text.
     *
     * @param text text of unknown origin
     * @param most largest number of characters shown, at least 1; an escape counts as all of its characters and is
     *     never cut
     * @return the text without any character that isn't seen, and … if it goes on
     * @throws IllegalArgumentException if the largest number is below 1
     */
    public static String shortened(String text, int most) {
        Require.atLeast("most", most, 1);
        StringBuilder shown = new StringBuilder();
        for (int at = 0; at < text.length(); ) {
            int character = text.codePointAt(at);
            String form = isSeen(character) ? Character.toString(character) : escape(character);
            if (form.length() > most - shown.length()) {
                return shown.append('…').toString();
            }
            shown.append(form);
            at += Character.charCount(character);
        }
        return shown.toString();
    }

    private static boolean isSeen(int character) {
        return switch (Character.getType(character)) {
            case Character.CONTROL, Character.FORMAT, Character.SURROGATE, Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> false;
            default -> true;
        };
    }

    private static String escape(int character) {
        StringBuilder form = new StringBuilder();
        for (char half : Character.toChars(character)) {
            String digits = Integer.toHexString(half);
            form.append("\\u").append("0".repeat(4 - digits.length())).append(digits);
        }
        return form.toString();
    }
}
