package dev.vibra.io;

import dev.vibra.internal.Printable;
import java.io.IOException;
import java.nio.ByteBuffer;

/**
 * Cuts text into rows of fields by RFC 4180, reading forward: a quoted field may hold separators, line ends and doubled
 * quotes. A line ends in LF, CR or both; one that begins with # is a remark.
 */
final class CsvScanner {
    /** A remark of one line may be longer than a field. */
    private static final int LONGEST_LINE = 1 << 20;

    private final ByteReader in;
    private final char separator;
    private final CsvRow row;
    private final NumberText numbers = new NumberText();
    private long line;
    private long nextLine = 1;
    private boolean isAfterReturn;

    CsvScanner(ByteReader in, char separator, CsvRow row) {
        this.in = in;
        this.separator = separator;
        this.row = row;
    }

    /** Line of the file where the row begins, from 1. */
    long line() {
        return line;
    }

    /**
     * Takes the next row if it lies whole in the bytes at hand, with nothing but as many numbers as wanted; else all
     * is left as it was, but for the array.
     */
    boolean takeNumbers(double[] values) {
        ByteBuffer bytes = in.bytes();
        byte[] text = bytes.array();
        int limit = bytes.limit();
        int at = bytes.position();
        at += isAfterReturn && at < limit && text[at] == '\n' ? 1 : 0;
        for (int i = 0; i < values.length; i++) {
            at = numbers.scan(text, behindBlanks(text, at, limit), limit, separator != ',');
            if (at < 0 || !(Math.abs(numbers.value()) < Double.POSITIVE_INFINITY)) {
                return false;
            }
            values[i] = numbers.value();
            boolean isLast = i == values.length - 1;
            at = isLast || separator != ' ' ? behindBlanks(text, at, limit) : at;
            if (at == limit || !isLast && text[at++] != separator) {
                return false;
            }
        }
        if (text[at] != '\n' && text[at] != '\r') {
            return false;
        }
        line = nextLine;
        endLine(text[at]);
        bytes.position(at + 1);
        return true;
    }

    private static int behindBlanks(byte[] text, int from, int limit) {
        int at = from;
        while (at < limit && text[at] == ' ') {
            at++;
        }
        return at;
    }

    /** Takes the next row that is neither empty nor a remark; false at the end. */
    boolean takeRow() throws IOException {
        while (true) {
            int character = take();
            if (isAfterReturn && character == '\n') {
                character = take();
            }
            isAfterReturn = false;
            line = nextLine;
            if (character < 0) {
                return false;
            }
            if (character == '#') {
                skipRemark();
            } else if (isLineEnd(character)) {
                endLine(character);
            } else {
                takeFields(character);
                return true;
            }
        }
    }

    private void skipRemark() throws IOException {
        int size = 0;
        int character = take();
        for (; character >= 0 && !isLineEnd(character); character = take()) {
            checkSize(++size);
        }
        endLine(character);
    }

    private void takeFields(int first) throws IOException {
        row.clear();
        int end = takeField(first);
        while (end == separator) {
            end = takeField(take());
        }
        endLine(end);
    }

    /** Takes one field and what ends it: a separator, a line end, or -1 for that of the file. */
    private int takeField(int first) throws IOException {
        row.beginField();
        int character = first;
        if (first == '"') {
            character = takeQuoted();
            if (!isEnd(character)) {
                throw in.problem("is not a table: row that begins in line " + line + " has '"
                        + Printable.of(Character.toString(character)) + "' behind a closing quote");
            }
        } else {
            for (int size = 0; !isEnd(character); character = take()) {
                row.add(character);
                checkSize(++size);
            }
        }
        row.endField();
        return character;
    }

    /** Takes what stands between quotes, and one character behind them. */
    private int takeQuoted() throws IOException {
        int before = 0;
        for (int size = 0; ; checkSize(++size)) {
            int character = take();
            if (character == '"') {
                character = take();
                if (character != '"') {
                    return character;
                }
            } else if (character < 0) {
                return character;
            }
            nextLine += character == '\r' || character == '\n' && before != '\r' ? 1 : 0;
            row.add(character);
            before = character;
        }
    }

    private void checkSize(int size) {
        if (size > LONGEST_LINE) {
            throw in.problem("is not a table: row that begins in line " + line + " has a field longer than the buffer of "
                    + LONGEST_LINE + " characters (is there a quote that isn't closed?)");
        }
    }

    private void endLine(int character) {
        nextLine++;
        isAfterReturn = character == '\r';
    }

    private boolean isEnd(int character) {
        return character == separator || character < 0 || isLineEnd(character);
    }

    private static boolean isLineEnd(int character) {
        return character == '\n' || character == '\r';
    }

    private int take() throws IOException {
        ByteBuffer bytes = in.bytes();
        return bytes.hasRemaining() || in.ready(1) > 0 ? Byte.toUnsignedInt(bytes.get()) : -1;
    }
}
