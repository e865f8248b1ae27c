package dev.vibra.docs.survey.input;

import dev.vibra.internal.Printable;

/**
 * One thing wrong in a survey folder. What isn't seen of a text, a control character for one, is shown as an escape,
 * and what is very long is cut: names and values come from files of unknown origin.
 *
 * @param file name of the file
 * @param line line in the file, from 1; 0 if the trouble has no line
 * @param field path of the field, as in {@code points[1].unit}; empty if the trouble lies in no single field
 * @param text what is wrong and what is allowed
 */
public record Problem(String file, int line, String field, String text) {
    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_TEXT = 1000;

    /**
     * Makes the texts printable.
     *
     * @param file see the record
     * @param line see the record
     * @param field see the record
     * @param text see the record
     */
    public Problem {
        file = Printable.shortened(file, LONGEST_NAME);
        field = Printable.shortened(field, LONGEST_NAME);
        text = Printable.shortened(text, LONGEST_TEXT);
    }

    /** Returns the message, as in {@code machine.json, line 14, points[1].unit: must be one of ...: "furlong"}. */
    @Override
    public String toString() {
        String where = line > 0 ? file + ", line " + line : file;
        return field.isEmpty() ? where + ": " + text : where + ", " + field + ": " + text;
    }
}
