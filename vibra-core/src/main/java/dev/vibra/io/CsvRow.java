package dev.vibra.io;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * The fields of one row, without blanks around them, copied from the parser's buffer; the same object for each row. Of
 * fields that are too long or too many no more is kept than a message needs.
 */
final class CsvRow extends AbstractBaseCsvCallbackHandler<CsvRow> {
    static final int LONGEST_FIELD = 1000;
    static final int MOST_FIELDS = 1000;

    private final boolean skipEmpty;
    private final NumberText numbers = new NumberText();
    private char[] text = new char[64];
    private int[] ends = new int[4];
    private int fields;
    private int longField = -1;

    /** Columns parted by any number of blanks have no empty fields. */
    CsvRow(boolean skipEmpty) {
        this.skipEmpty = skipEmpty;
    }

    @Override
    protected void handleBegin(long line) {
        fields = 0;
        longField = -1;
    }

    @Override
    protected void handleField(int index, char[] buffer, int offset, int length, boolean quoted) {
        int from = offset;
        int end = offset + length;
        while (from < end && Character.isWhitespace(buffer[from])) {
            from++;
        }
        while (end > from && Character.isWhitespace(buffer[end - 1])) {
            end--;
        }
        if (end > from || !skipEmpty) {
            keep(buffer, from, end - from);
        }
    }

    private void keep(char[] buffer, int from, int length) {
        if (fields > MOST_FIELDS) {
            return;
        }
        longField = length > LONGEST_FIELD && longField < 0 ? fields : longField;
        int start = start(fields);
        int kept = Math.min(length, LONGEST_FIELD);
        if (start + kept > text.length) {
            text = Arrays.copyOf(text, 2 * (start + kept));
        }
        if (fields == ends.length) {
            ends = Arrays.copyOf(ends, 2 * fields);
        }
        System.arraycopy(buffer, from, text, start, kept);
        ends[fields++] = start + kept;
    }

    @Override
    protected CsvRow buildRecord() {
        return this;
    }

    /** Line of the file, from 1. */
    long line() {
        return getStartingLineNumber();
    }

    /** Number of fields, {@link #MOST_FIELDS} and one more if there are too many. */
    int fields() {
        return fields;
    }

    /** Number of the first field that is too long; -1 if there is none. */
    int longField() {
        return longField;
    }

    boolean isEmpty(int field) {
        return start(field) == ends[field];
    }

    /** Tells whether all fields are empty. */
    boolean isBlank() {
        return fields == 0 || ends[fields - 1] == 0;
    }

    void dropLast() {
        fields--;
    }

    double number(int field) {
        return numbers.parse(text, start(field), ends[field]);
    }

    boolean isPair(int field) {
        return NumberText.isPair(text, start(field), ends[field]);
    }

    private int start(int field) {
        return field == 0 ? 0 : ends[field - 1];
    }

    /** A field as text: in UTF-8 if its bytes may be read so, else in ISO 8859-1. */
    String text(int field) {
        String bytewise = new String(text, start(field), ends[field] - start(field));
        try {
            return StandardCharsets.UTF_8.newDecoder()
                    .decode(ByteBuffer.wrap(bytewise.getBytes(StandardCharsets.ISO_8859_1))).toString();
        } catch (CharacterCodingException e) {
            return bytewise;
        }
    }
}
