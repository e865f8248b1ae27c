package dev.vibra.io;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The fields of one row, without blanks around them; the same object for each row. Of fields that are too long or too
 * many no more is kept than a message needs.
 */
final class CsvRow {
    static final int LONGEST_FIELD = 1000;
    static final int MOST_FIELDS = 1000;

    private final boolean skipEmpty;
    private final NumberText numbers = new NumberText();
    private byte[] text = new byte[4 * LONGEST_FIELD];
    private int[] ends = new int[4];
    private int fields;
    private int longField = -1;
    private int length;
    private int filled;

    /** Columns parted by any number of blanks have no empty fields. */
    CsvRow(boolean skipEmpty) {
        this.skipEmpty = skipEmpty;
    }

    void clear() {
        fields = 0;
        longField = -1;
    }

    void beginField() {
        length = 0;
        filled = 0;
        int room = start(fields) + LONGEST_FIELD;
        if (room > text.length) {
            text = Arrays.copyOf(text, 2 * room);
        }
    }

    void add(int character) {
        boolean isBlank = Character.isWhitespace(character);
        if (isBlank && length == 0) {
            return;
        }
        if (length < LONGEST_FIELD) {
            text[start(fields) + length] = (byte) character;
        }
        length++;
        filled = isBlank ? filled : length;
    }

    void endField() {
        if (filled == 0 && skipEmpty || fields > MOST_FIELDS) {
            return;
        }
        longField = filled > LONGEST_FIELD && longField < 0 ? fields : longField;
        if (fields == ends.length) {
            ends = Arrays.copyOf(ends, 2 * fields);
        }
        ends[fields] = start(fields) + Math.min(filled, LONGEST_FIELD);
        fields++;
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

    /** The first fields as text. */
    List<String> texts(int count) {
        List<String> texts = new ArrayList<>();
        for (int field = 0; field < count; field++) {
            texts.add(text(field));
        }
        return texts;
    }

    /** A field as text: in UTF-8 if its bytes may be read so, else in ISO 8859-1. */
    String text(int field) {
        ByteBuffer bytes = ByteBuffer.wrap(text, start(field), ends[field] - start(field));
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(bytes.duplicate()).toString();
        } catch (CharacterCodingException e) {
            return StandardCharsets.ISO_8859_1.decode(bytes).toString();
        }
    }
}
