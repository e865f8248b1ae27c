package dev.vibra.docs.survey.input;

/**
 * One thing wrong in a survey folder.
 *
 * @param file name of the file
 * @param line line in the file, from 1; 0 if the trouble has no line
 * @param field path of the field, as in {@code points[1].unit}; empty if the trouble lies in no single field
 * @param text what is wrong and what is allowed
 */
public record Problem(String file, int line, String field, String text) {
    /** Returns the message, as in {@code machine.json, line 14, points[1].unit: must be one of ...: "furlong"}. */
    @Override
    public String toString() {
        String where = line > 0 ? file + ", line " + line : file;
        return field.isEmpty() ? where + ": " + text : where + ", " + field + ": " + text;
    }
}
