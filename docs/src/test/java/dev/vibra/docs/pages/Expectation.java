package dev.vibra.docs.pages;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a trailing comment says that its statement gives; lines and columns count from 0, within the block. */
sealed interface Expectation {
    /** The value of the statement, as JShell prints it. */
    record Value(int line, int column, ExpectedText text) implements Expectation {}

    /** The exception of the statement, and a part of its message. */
    record Thrown(int line, String simpleName, String messagePart) implements Expectation {}

    /** A comment that was meant as an expectation and is none. */
    record Malformed(int line, String reason) implements Expectation {}

    /** The mark of a value. */
    String VALUE = "==>";
    /** The mark of an exception. */
    String THROWN = "!!>";
    /** Marks that one writes by mistake and that would never be compared. */
    Pattern NEARLY = Pattern.compile("^[=!\\-]+>.*");
    /** Simple class name and, behind a colon, a part of the message. */
    Pattern EXCEPTION = Pattern.compile("^([\\p{L}_$][\\p{L}\\p{N}_$]*)(?:\\s*:\\s*(.+))?$");

    /** Line of the block that the comment stands on, from 0. */
    int line();

    /** Reads a comment; empty if it is an ordinary one. */
    static Optional<Expectation> of(JavaComments.Comment comment) {
        String text = comment.text().strip();
        if (text.startsWith(VALUE)) {
            return Optional.of(value(comment, text.substring(VALUE.length()).strip()));
        }
        if (text.startsWith(THROWN)) {
            return Optional.of(thrown(comment, text.substring(THROWN.length()).strip()));
        }
        if (text.contains(VALUE) || text.contains(THROWN) || NEARLY.matcher(text).matches()) {
            return Optional.of(new Malformed(comment.line(),
                    "comment is no expectation, write `// ==> value` or `// !!> Exception`: //" + comment.text()));
        }
        return Optional.empty();
    }

    private static Expectation value(JavaComments.Comment comment, String text) {
        if (text.isEmpty()) {
            return new Malformed(comment.line(), "no value stands behind ==>");
        }
        ExpectedText expected = ExpectedText.value(text);
        if (expected.hasIdleTolerance()) {
            return new Malformed(comment.line(), "tolerance without a number before it: " + text);
        }
        int column = comment.column() + 2 + comment.text().indexOf(VALUE) + VALUE.length();
        return new Value(comment.line(), column, expected);
    }

    private static Expectation thrown(JavaComments.Comment comment, String text) {
        Matcher matcher = EXCEPTION.matcher(text);
        if (!matcher.matches()) {
            return new Malformed(comment.line(), "behind !!> stands no simple class name: " + text);
        }
        return new Thrown(comment.line(), matcher.group(1), matcher.group(2) == null ? "" : matcher.group(2));
    }
}
