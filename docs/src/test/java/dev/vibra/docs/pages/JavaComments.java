package dev.vibra.docs.pages;

import java.util.ArrayList;
import java.util.List;

/**
 * Tells comments from code. A comment is blanked out of the code (its length kept, so that columns hold), a line
 * comment is kept apart with its place. What stands inside a string, a text block or a character is code.
 */
final class JavaComments {
    /** A line comment: line and column of its first slash, counted from 0, and the text behind the slashes. */
    record Comment(int line, int column, String text) {}

    private final String source;
    private final StringBuilder code;
    private final List<Comment> comments = new ArrayList<>();
    private boolean open;
    private int at;

    private JavaComments(List<String> lines) {
        this.source = String.join("\n", lines);
        this.code = new StringBuilder(source);
    }

    static JavaComments of(List<String> lines) {
        JavaComments scan = new JavaComments(lines);
        while (scan.at < scan.source.length()) {
            scan.step();
        }
        return scan;
    }

    /** Lines of code with blanks where comments were. */
    List<String> codeLines() {
        return List.of(code.toString().split("\n", -1));
    }

    List<Comment> comments() {
        return comments;
    }

    /** True if the last comment has no end. */
    boolean endsInsideComment() {
        return open;
    }

    private void step() {
        if (source.startsWith("//", at)) {
            lineComment();
        } else if (source.startsWith("/*", at)) {
            blockComment();
        } else if (source.startsWith("\"\"\"", at)) {
            literal("\"\"\"", true);
        } else if (source.charAt(at) == '"' || source.charAt(at) == '\'') {
            literal(source.substring(at, at + 1), false);
        } else {
            at++;
        }
    }

    private void lineComment() {
        int end = source.indexOf('\n', at);
        end = end < 0 ? source.length() : end;
        int line = (int) source.substring(0, at).chars().filter(c -> c == '\n').count();
        comments.add(new Comment(line, at - source.lastIndexOf('\n', at) - 1, source.substring(at + 2, end)));
        blankUntil(end);
    }

    private void blockComment() {
        int end = source.indexOf("*/", at + 2);
        open = end < 0;
        blankUntil(open ? source.length() : end + 2);
    }

    private void blankUntil(int end) {
        for (; at < end; at++) {
            if (source.charAt(at) != '\n') {
                code.setCharAt(at, ' ');
            }
        }
    }

    private void literal(String quote, boolean manyLines) {
        at += quote.length();
        while (at < source.length() && !source.startsWith(quote, at)) {
            if (source.charAt(at) == '\n' && !manyLines) {
                return;
            }
            at += source.charAt(at) == '\\' ? 2 : 1;
        }
        at += quote.length();
    }
}
